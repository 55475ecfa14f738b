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
from tests.verify_outlines import Corners, faults_in, outlines

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


def test_gores_head_to_tail_are_bounded_by_the_pieces_that_cannot_lie_so_as_well() -> None:
    # five gores in a row of 30 in, and three panels below one another: 120 in. The outlines come to
    # 5 x 6 x 30 + 3 x 37 1/2 x 40 = 5400 square inches, 112 1/2 in of 48: so the panels tell more.
    text = CLOTH.format(width=48, quantity=5, top=1, bottom=11, long=30, more="")
    panels = '[[piece]]\nname = "panel"\nquantity = 3\ncut = "twill"\nwidth = "37 1/2"\n'
    chosen = estimate(plan(text + panels + 'length = "40"\n')).fabrics[0].chosen
    assert chosen.laid.slanted
    assert chosen.laid.length == length("150")
    assert chosen.laid.bound == length("120").ticks


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


@settings(max_examples=100)
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


def matched(repeat: str, across: str) -> str:
    return f'repeat = "{repeat}"\nrepeat_across = "{across}"'


def test_gores_of_a_plaid_lie_head_to_tail_from_one_repeat_across_to_the_next() -> None:
    # (5 15/16 + 14 3/16) / 2 = 10 1/16, up to 12: 3 x 12 + 14 3/16 is 50 3/16 of 60 in: one row
    text = CLOTH.format(
        width=60, quantity=4, top="5 15/16", bottom="14 3/16", long=31, more=matched("0", "6")
    )
    found = estimate(plan(text))
    chosen = found.fabrics[0].chosen
    assert [(lot.count, lot.apart) for lot in chosen.laid.lots] == [(4, (length("12"),))]
    assert chosen.buy.bought == length("7/8 yd")


def test_gores_of_a_print_matched_lengthwise_stand_on_their_heads_with_the_end_on_the_repeat() -> (
    None
):
    # 30 in on a repeat of 8: those on their heads end at 32 and so begin at 2
    found = gores(48, 5, 6, 12, 30, matched("8", "0"))
    chosen = found.fabrics[0].chosen
    (lot,) = chosen.laid.lots
    assert lot.shift == length("2")
    assert chosen.laid.cuts[0].length == length("32").ticks
    rows = next(written_layouts(found.fabrics[0], found))[0].rows
    assert rows[0][2] == (
        "gore, 5 head to tail, each 9 in on from the last, those on their heads 2 in further from "
        "the cut end"
    )


def test_gores_that_are_longer_than_a_bolt_when_shifted_to_the_repeat_lie_by_themselves() -> None:
    # 30 in goes on a bolt of 1 yd, of which 34 in are left when its ends are straightened; shifted
    # to end on a repeat of 7 in, a row would be 35 in
    text = CLOTH.replace('straightening = "0"', 'straightening = "1"').format(
        width=36, quantity=2, top=10, bottom=1, long=30, more=matched("7", "0") + '\nbolt = "1 yd"'
    )
    chosen = estimate(plan(text)).fabrics[0].chosen
    assert [lot.count for lot in chosen.laid.lots] == [1]


@pytest.mark.parametrize(("top", "bottom", "apart"), [(6, 12, "9"), (12, 6, "9 1/5")])
def test_gores_shifted_on_their_heads_need_more_room_where_their_wide_end_is_the_top(
    top: int, bottom: int, apart: str
) -> None:
    # Shifted by 2 of 30 in, a wide end moves along a slant of 3 in 30 by 1/5 in: towards the next
    # gore's narrow end, or towards its wide one.
    chosen = gores(49, 5, top, bottom, 30, matched("8", "0")).fabrics[0].chosen
    assert [lot.apart for lot in chosen.laid.lots] == [(length(apart),)]
    assert faults_in(chosen.pieces, chosen.laid, chosen.usable) == []


@settings(max_examples=60)
@given(
    st.integers(40, 60),
    st.lists(tapers, min_size=1, max_size=2),
    st.integers(0, 9),
    st.integers(0, 9),
)
def test_gores_of_a_matched_print_have_the_same_bars_at_the_same_height_of_their_outlines(
    width: int, gores: list[dict[str, object]], repeat: int, across: int
) -> None:
    text = CLOTH.format(
        width=width, quantity=1, top=1, bottom=2, long=3, more=matched(str(repeat), str(across))
    ) + "".join(GORE.format(n=n, **gore) for n, gore in enumerate(gores))
    chosen = estimate(plan(text)).fabrics[0].chosen
    assert faults_in(chosen.pieces, chosen.laid, chosen.usable) == []
    inch = length("1 in").ticks
    for one in outlines(chosen.pieces, chosen.laid):
        piece = chosen.pieces[one.piece]
        across_at = [x for x, _ in one.corners]
        along_at = [y for _, y in one.corners]
        lies_upright = _wide_end_first(one.corners) != piece.on_its_head
        level = piece.narrow == piece.width.value
        if repeat:
            starts = min(along_at) % (repeat * inch) == 0
            ends = max(along_at) % (repeat * inch) == 0
            assert (starts or ends) if level else (starts if lies_upright else ends)
        if across:
            assert min(across_at) % (across * inch) == 0


def _wide_end_first(corners: Corners) -> bool:
    """Whether the wide end of a taper is nearer to the cut end than the narrow one."""
    ends = sorted({y for _, y in corners})
    near, far = ([x for x, y in corners if y == end] for end in (ends[0], ends[-1]))
    return max(near) - min(near) > max(far) - min(far)
