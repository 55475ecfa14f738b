"""How narrow the bolt may measure before more is needed."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.narrowest import narrowest_serving
from estimator.written import length
from tests.plans import plan

CLOTH = """
[garment]
name = "apron"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "check"
widths = ["{width} in"]
"""
PANEL = """
[[piece]]
name = "panel {n}"
quantity = {quantity}
cut = "check"
width = "{wide}"
length = "{long}"
"""


def apron(width: int, *pieces: tuple[int, int, int], more: str = "") -> FabricChoice:
    text = CLOTH.format(width=width) + more
    for number, (wide, long, quantity) in enumerate(pieces):
        text += PANEL.format(n=number, wide=wide, long=long, quantity=quantity)
    return estimate(plan(text)).fabrics[0]


def test_two_panels_of_20_serve_down_to_40_and_below_that_take_a_second_row() -> None:
    found = narrowest_serving(apron(45, (20, 27, 2)))
    assert found is not None
    assert found.usable == length("40")
    assert found.next_down == length("39")
    assert found.then_buy == length("1 1/2 yd")


def test_below_the_widest_piece_nothing_can_be_bought() -> None:
    found = narrowest_serving(apron(45, (41, 27, 1)))
    assert found is not None
    assert (found.usable, found.next_down, found.then_buy) == (length("41"), length("40"), None)


def test_a_fabric_that_shrinks_across_is_measured_before_it_is_washed() -> None:
    # 38 / 0.95 = 40
    found = narrowest_serving(apron(45, (19, 27, 2), more='shrinkage_across = "5 %"\n'))
    assert found is not None
    assert found.usable == length("40")


def test_strips_that_take_the_width_of_the_fabric_have_no_narrowest() -> None:
    strip = '[[piece]]\nname = "frill"\ncut = "check"\nmade = "joined strip"\n'
    strip += 'length = "4"\nring = "80"\n'
    assert narrowest_serving(estimate(plan(CLOTH.format(width=45) + strip)).fabrics[0]) is None


@pytest.mark.parametrize("width", [45, 48, 51, 54, 59])
def test_the_narrowest_does_not_hang_on_the_width_from_which_it_is_asked(width: int) -> None:
    # 40 x 27 in, 20 x 16, 10 x 11 twice: on 40 in, 27 + 16 in one below the other are 43 in
    found = narrowest_serving(apron(width, (40, 27, 1), (20, 16, 1), (10, 11, 2)))
    assert found is not None
    assert (found.usable, found.next_down, found.then_buy) == (length("40"), length("39"), None)


def test_a_band_on_the_far_selvedge_moves_in_with_it() -> None:
    # 45 in with two selvedges of 1/2 in: bands of 5 in take 4 1/2 at either edge, beside 30: 39
    text = CLOTH.format(width=45).replace('selvedge = "0"', 'selvedge = "1/2"')
    band = PANEL.format(n="at the edge", wide=5, long=27, quantity=2) + 'edges.left = "selvedge"\n'
    text += band + PANEL.format(n=1, wide=30, long=27, quantity=1)
    found = narrowest_serving(estimate(plan(text)).fabrics[0])
    assert found is not None
    assert (found.usable, found.next_down) == (length("39"), length("38"))


def test_on_folded_fabric_both_layers_are_as_wide_as_the_layout_reaches() -> None:
    # a pair of 12 beside a half of 8 on the fold is 20 a layer; of a plaid on a repeat of 4, whose
    # fold may lie 1 in off the middle, 21
    for repeat, wide in (("0", "40"), ("4", "42")):
        text = CLOTH.format(width=50) + f'laid = "folded"\nrepeat_across = "{repeat}"\n'
        text += PANEL.format(n=1, wide=12, long=27, quantity=2)
        text += PANEL.format(n=2, wide=8, long=27, quantity=1) + 'edges.left = "fold"\n'
        found = narrowest_serving(estimate(plan(text)).fabrics[0])
        assert found is not None
        assert found.usable == length(wide)


SIZES = st.tuples(st.integers(3, 30), st.integers(3, 30), st.integers(1, 4))


@settings(max_examples=15)
@given(st.lists(SIZES, min_size=1, max_size=5))
def test_cloth_of_the_narrowest_width_is_bought_in_the_same_length(
    pieces: list[tuple[int, int, int]],
) -> None:
    choice = apron(44, *pieces)
    found = narrowest_serving(choice)
    assert found is not None
    assert found.next_down < found.usable <= length("44")
    assert found.then_buy is None or found.then_buy > choice.chosen.buy.bought
    exact = found.usable.ticks * 64 // length("1 in").ticks
    text = CLOTH.replace('["{width} in"]', f'["{exact}/64 in"]')
    for number, (wide, long, quantity) in enumerate(pieces):
        text += PANEL.format(n=number, wide=wide, long=long, quantity=quantity)
    assert estimate(plan(text)).fabrics[0].chosen.buy.bought <= choice.chosen.buy.bought


@settings(max_examples=15)
@given(st.lists(SIZES, min_size=2, max_size=6))
def test_a_wider_fabric_never_needs_more_length(pieces: list[tuple[int, int, int]]) -> None:
    text = CLOTH.replace('["{width} in"]', '["33 in", "36 in", "41 in", "45 in", "54 in"]')
    for number, (wide, long, quantity) in enumerate(pieces):
        text += PANEL.format(n=number, wide=wide, long=long, quantity=quantity)
    options = estimate(plan(text)).fabrics[0].options
    lengths = [option.buy.amount for option in options]
    assert lengths == sorted(lengths, reverse=True)
    assert all(option.laid.cuts[0].bound <= option.laid.cuts[0].length for option in options)
