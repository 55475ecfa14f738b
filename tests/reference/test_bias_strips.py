"""Bias strips against worked examples.

Source: the square rule of quilting and home-furnishing handbooks, side = sqrt(length x width), with
their worked examples: 250 in of 2 in strip, 22.36, so a 23 in square; 450 in of 2 1/4 in, 31.8, so
a 32 in square. The rule leaves nothing for joins: the program never takes less, and may take more.
"""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import INCH, Length
from estimator.needs.bias import LOST_AT_A_JOIN, bias_yield, cloth_for_bias, handbook_side
from estimator.written import length
from tests.plans import HEADING, by, complaints, cut_pieces, in_print

STRIP = """
[[piece]]
name = "binding"
cut = "print"
made = "bias strip"
width = "{wide}"
length = "{long}"
quantity = {quantity}
"""


def cloth(wide: str, long: str, quantity: int = 1) -> tuple[Length, Length]:
    text = STRIP.format(wide=wide, long=long, quantity=quantity)
    (piece,) = cut_pieces(in_print(text)).values()
    return piece.width.value, piece.length.value


@pytest.mark.parametrize(("long", "wide", "side"), [("250", "2", "23"), ("450", "2 1/4", "32")])
def test_the_square_of_the_handbooks(long: str, wide: str, side: str) -> None:
    assert handbook_side(length(long), length(wide)).up_to(INCH) == length(side)


def test_a_square_holds_its_joins_beyond_the_rule() -> None:
    # sqrt(128 x 2) is 16 exactly; beside the diagonal of 22.6 lie strips of 20.6, 16.6, 12.6, 8.6
    # and 4.6 on either side, 126 in all, and nine joins of 0.71 take them to 120
    assert bias_yield(length("16"), length("16"), length("2"), 10**9) < length("120 1/2")
    assert cloth("2", "128") == by("17", "17")


def test_strips_of_one_piece_come_from_one_square() -> None:
    assert cloth("2", "64", 2) == by("17", "17")


def test_a_square_wider_than_the_fabric_is_as_wide_as_it_is_and_longer() -> None:
    # 1250 in of 2 in is 2500 square inches and more: 45 wide, and over 55.6 long
    across, along = cloth("2", "1250")
    assert across == length("45")
    assert length("56") <= along <= length("62")


@given(st.integers(1, 900), st.integers(2, 24))
def test_strips_joined_reach_their_length_and_no_square_is_below_the_rule(
    long: int, eighths: int
) -> None:
    wanted, wide = long * INCH, length(f"{eighths}/8")
    across, along = cloth_for_bias(wanted, wide, length("45"), INCH)
    assert across.ticks * along.ticks >= wanted.ticks * wide.ticks
    # each strip by itself, in floats: two sets beside the diagonal, and those from edge to edge
    strips, beside = [], across.ticks * sqrt(2) - wide.ticks
    while beside >= wide.ticks:
        strips += [beside, beside]
        beside -= 2 * wide.ticks
    whole = (along - across).ticks / (wide.ticks * sqrt(2)) + 1e-6
    strips += [across.ticks * sqrt(2)] * int(whole)
    longest_first = sorted(strips, reverse=True)
    reached = max(
        sum(longest_first[:count]) - (count - 1) * LOST_AT_A_JOIN.ticks
        for count in range(1, len(strips) + 1)
    )
    assert reached * (1 + 1e-6) >= wanted.ticks


def test_a_binding_takes_its_length_from_the_edge_that_it_binds() -> None:
    apron = """
[[piece]]
name = "apron"
cut = "print"
width = "30"
length = "20"
[[piece]]
name = "binding"
cut = "print"
made = "bias strip"
width = "2"
onto = "apron: bottom"
"""
    piece = cut_pieces(in_print(apron))["binding"]
    assert piece.finished == (None, length("30"))
    assert piece.width.value == length("9")


def test_a_strip_as_wide_as_the_fabric_is_refused() -> None:
    (said,) = complaints(HEADING + STRIP.format(wide="30", long="40", quantity=1))
    assert "too wide to be cut on the bias" in said
