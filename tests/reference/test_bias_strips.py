"""Bias strips against worked examples.

Source: the square rule of quilting and home-furnishing handbooks, side = sqrt(length x width), with
their worked examples: 250 in of 2 in strip from a 23 in square (22.36), 450 in of 2 1/4 in from a
32 in square (31.8).
"""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import INCH
from estimator.written import length
from tests.plans import by, cut_pieces, in_print

STRIP = """
[[piece]]
name = "binding"
cut = "print"
made = "bias strip"
width = "{wide}"
length = "{long}"
quantity = {quantity}
"""


def square(wide: str, long: str, quantity: int = 1) -> tuple[object, object]:
    text = STRIP.format(wide=wide, long=long, quantity=quantity)
    (piece,) = cut_pieces(in_print(text)).values()
    return piece.width.value, piece.length.value


@pytest.mark.parametrize(
    ("long", "wide", "side"), [("250", "2", "23"), ("450", "2 1/4", "32"), ("200", "2", "20")]
)
def test_bias_strips_come_from_the_square_of_the_handbooks(long: str, wide: str, side: str) -> None:
    assert square(wide, long) == by(side, side)


def test_several_strips_come_from_one_square() -> None:
    assert square("2", "125", 2) == by("23", "23")


def test_a_square_wider_than_the_fabric_is_as_wide_as_it_is_and_longer() -> None:
    # 1250 in of 2 in is 2500 square inches: 45 wide, 55.6 long
    assert square("2", "1250") == by("45", "56")


@given(st.integers(1, 400), st.integers(1, 12))
def test_the_square_holds_the_strips_and_is_less_than_an_inch_beyond_the_rule(
    long: int, quarters: int
) -> None:
    across, along = square(f"{quarters}/4", str(long))
    assert across == along
    side = (across.ticks) / INCH.ticks  # type: ignore[attr-defined]
    rule = sqrt(long * quarters / 4)
    assert rule - 1e-9 <= side < rule + 1


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
    assert piece.finished == (length("2"), length("30"))
    assert piece.width.value == length("8")
