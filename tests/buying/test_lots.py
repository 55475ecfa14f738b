"""Tapers head to tail in slanted rows, their true outlines checked by independent code."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, estimate
from estimator.buying.lots import outline_area
from estimator.reports.layout_papers import written_layouts
from estimator.written import length
from tests.plans import bought, complaints, draft, plan
from tests.verify_outlines import faults_in

CLOTH = """
[garment]
name = "gored skirt"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "twill"
widths = ["{width} in"]
{more}
[[piece]]
name = "gore"
quantity = {quantity}
cut = "twill"
shape = "taper"
top = "{top}"
bottom = "{bottom}"
length = "{long}"
"""


def gores(width: int, quantity: int, top: int, bottom: int, long: int, more: str = "") -> Estimate:
    return estimate(
        plan(
            CLOTH.format(
                width=width, quantity=quantity, top=top, bottom=bottom, long=long, more=more
            )
        )
    )


def test_five_gores_of_6_and_12_go_across_48_head_to_tail() -> None:
    # 5 x (6 + 12) / 2 + (12 - 6) / 2 = 48, where boxes of 12 take only four
    (choice,) = gores(48, 5, 6, 12, 30).fabrics
    assert [lot.count for lot in choice.chosen.laid.lots] == [5]
    assert choice.chosen.laid.cuts[0].length == length("30").ticks


def test_on_a_fabric_with_nap_no_gore_stands_on_its_head() -> None:
    (choice,) = gores(48, 5, 6, 12, 30, 'nap = "yes"').fabrics
    assert choice.chosen.laid.cuts[0].length == length("60").ticks


def test_head_to_tail_is_only_taken_where_it_buys_less() -> None:
    (choice,) = gores(48, 4, 6, 12, 30).fabrics
    assert [lot.count for lot in choice.chosen.laid.lots] == [1]


def test_a_taper_reports_the_waste_of_its_outline() -> None:
    # two gores of (6 + 12) / 2 x 30 in 48 x 31 1/2 (seven eighths of a yard)
    found = gores(48, 2, 6, 12, 30)
    assert found.fabrics[0].chosen.waste == 1 - Fraction(2 * 9 * 30 * 2, 48 * 63)
    assert bought(found, "twill").buy.bought == length("7/8 yd")


@settings(max_examples=40)
@given(
    st.integers(30, 60),
    st.integers(1, 14),
    st.integers(1, 20),
    st.integers(1, 20),
    st.integers(5, 40),
)
def test_gores_lie_beside_one_another_and_never_take_more_than_their_boxes(
    width: int, quantity: int, top: int, bottom: int, long: int
) -> None:
    chosen = gores(width, quantity, top, bottom, long).fabrics[0].chosen
    assert faults_in(chosen.pieces, chosen.laid, chosen.usable) == []
    boxed = CLOTH.replace('"taper"', '"box"').replace(
        'top = "{top}"\nbottom = "{bottom}"', 'width = "{wide}"'
    )
    text = boxed.format(width=width, quantity=quantity, wide=max(top, bottom), long=long, more="")
    boxes = estimate(plan(text)).fabrics[0].chosen
    assert chosen.buy.amount <= boxes.buy.amount
    assert chosen.laid.bound <= chosen.laid.cuts[0].length


@settings(max_examples=40)
@given(st.integers(2, 14), st.integers(1, 20), st.integers(1, 20), st.integers(5, 40))
def test_gores_that_lie_head_to_tail_are_bounded_by_their_outlines_at_every_width(
    quantity: int, top: int, bottom: int, long: int
) -> None:
    widths = CLOTH.replace('["{width} in"]', '["31 in", "36 in", "45 in", "52 in", "60 in"]')
    text = widths.format(quantity=quantity, top=top, bottom=bottom, long=long, more="")
    for option in estimate(plan(text)).fabrics[0].options:
        layout = option.laid.cuts[0]
        assert option.laid.bound <= layout.length
        assert layout.width == option.usable.ticks
        if option.laid.slanted:
            area = sum(outline_area(piece) * piece.quantity for piece in option.pieces)
            longest = length(str(long)).ticks
            assert option.laid.bound >= max(longest, -(-area // layout.width))


def test_a_taper_tells_its_narrow_end_and_how_far_each_lies_from_the_last() -> None:
    found = gores(48, 5, 6, 12, 30)
    (lot,) = found.fabrics[0].chosen.laid.lots
    assert lot.apart == (length("9"),)
    (piece,) = found.fabrics[0].chosen.pieces
    assert "cut 6 in at its narrow end" in piece.note
    rows = next(written_layouts(found.fabrics[0], found))[0].rows
    assert rows[0][2] == "gore, 5 head to tail, each 9 in on from the last"


def square_gores(width: int, quantity: int, side: str = "right side") -> Estimate:
    text = CLOTH.format(width=width, quantity=quantity, top=6, bottom=12, long=30, more="")
    return estimate(plan(f'{text}slant = "{side}"\n'))


@pytest.mark.parametrize(
    ("quantity", "width", "in_rows"),
    [
        # a pair takes 6 + 12 = 18 across, and an odd last one its own 12
        (4, 36, [4]),
        (5, 48, [5]),
        (3, 30, [3]),
        (10, 53, [5, 5]),
        (9, 48, [5, 4]),
    ],
)
def test_gores_with_a_square_side_take_both_their_ends_a_pair(
    quantity: int, width: int, in_rows: list[int]
) -> None:
    for side in ("left side", "right side"):
        chosen = square_gores(width, quantity, side).fabrics[0].chosen
        lots = [chosen.laid.lots[place.blank].count for place in chosen.laid.cuts[0].placements]
        assert sorted(lots, reverse=True) == in_rows
        assert faults_in(chosen.pieces, chosen.laid, chosen.usable) == []


def test_a_row_of_square_gores_tells_how_they_lie_by_turns() -> None:
    found = square_gores(48, 5)
    rows = next(written_layouts(found.fabrics[0], found))[0].rows
    assert rows[0][2] == (
        "gore, 5 head to tail and square sides together, by turns 6 in and 12 in on from the last"
    )


GORE = """
[[piece]]
name = "gore {n}"
quantity = {quantity}
cut = "twill"
shape = "taper"
top = "{top}"
bottom = "{bottom}"
length = "{long}"
slant = "{slant}"
"""
tapers = st.fixed_dictionaries(
    {
        "quantity": st.integers(1, 9),
        "top": st.integers(1, 25),
        "bottom": st.integers(1, 25),
        "long": st.integers(3, 40),
        "slant": st.sampled_from(["both sides", "left side", "right side"]),
    }
)


@settings(max_examples=150)
@given(
    st.integers(40, 60),
    st.lists(tapers, min_size=1, max_size=3),
    st.sampled_from(["yes", "no"]),
    st.sampled_from(["1/16", "1/64", "0.03"]),
    st.sampled_from(["0", "3/8", "5/8"]),
)
def test_no_outline_lies_over_another_or_off_the_fabric(
    width: int, gores: list[dict[str, object]], nap: str, mark: str, seam: str
) -> None:
    heading = CLOTH.format(width=width, quantity=1, top=1, bottom=2, long=3, more=f'nap = "{nap}"')
    heading = heading.replace('seam_allowance = "0"', f'seam_allowance = "{seam}"\nmark = "{mark}"')
    text = heading + "".join(GORE.format(n=n, **gore) for n, gore in enumerate(gores))
    found = draft(text)
    if complaints(text):  # a short gore leans so far that its seams take more than the fabric
        return
    chosen = estimate(found.plan).fabrics[0].chosen
    assert faults_in(chosen.pieces, chosen.laid, chosen.usable, nap=nap == "yes") == []
