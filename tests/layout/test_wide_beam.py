"""The wide beam: what it finds lies in the box, and it is the same each time."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import EVERYDAY, Blank, Cloth, Effort, Held, Layout, Style, lay_out
from estimator.layout.box import Box, Lie, box_for, spots_from
from estimator.layout.effort import Budget
from estimator.layout.fill import FINEST_GRID
from estimator.layout.kinds import kinds_of, placements_of
from estimator.layout.wide_beam import LEANINGS, WideBeam
from tests.benchmarks.rectangles import cut_up
from tests.layout.cuttings import box_with_room, cuttings
from tests.verify_layout import assert_sound

PLENTY = 10_000_000


@given(cuttings(holds=False), st.integers(0, 20), st.integers(0, 3), st.booleans())
@settings(max_examples=250, deadline=None)
def test_what_a_wide_beam_finds_can_be_cut_whichever_side_it_fills_from(
    cutting, slack, leaning, on_side
):
    cloth, blanks = cutting
    box, kinds = box_with_room(cloth, blanks, slack)
    if box is None:
        return
    asked = box.on_its_side() if on_side else box
    beam = WideBeam(asked, LEANINGS[leaning], 1, Budget(PLENTY))
    puts = beam.search()
    counts = list(asked.counts)
    for put in puts if puts is not None else beam.stuck:
        counts[put.kind] -= 1
        assert 0 <= put.across <= put.lie.latest_across
        assert 0 <= put.along <= put.lie.latest_along
    if puts is None:
        assert min(counts) >= 0
        assert any(counts)
        return
    assert not any(counts)
    if on_side:
        for one, other in combinations(puts, 2):
            assert apart(one, other)
        return
    spots = spots_from(puts, kinds, cloth, 1)
    end = max(spot.along + spot.length for spot in spots)
    placements = placements_of(spots, kinds, blanks)
    assert_sound(cloth, blanks, Layout(cloth.width, end, placements, (), 0, Style.CLOSE))


def apart(one, other):
    return (
        one.across + one.lie.across <= other.across
        or other.across + other.lie.across <= one.across
        or one.along + one.lie.along <= other.along
        or other.along + other.lie.along <= one.along
    )


@pytest.mark.parametrize("guillotine", [True, False])
def test_a_rectangle_cut_into_a_dozen_is_put_together_again(guillotine):
    cut = cut_up(3, 12, guillotine=guillotine, width=40, length=60, slimmest=4)
    box = box_for(kinds_of(cut.blanks), Cloth(40), 60, 1)
    puts = WideBeam(box, LEANINGS[0], 0, Budget(PLENTY)).search()
    assert puts is not None
    assert sum(put.lie.across * put.lie.along for put in puts) == 40 * 60


def test_the_same_box_is_filled_the_same_way_each_time():
    cut = cut_up(5, 30, guillotine=False)
    box = box_for(kinds_of(cut.blanks), Cloth(cut.width), cut.length * 21 // 20, 1)
    found = [WideBeam(box, LEANINGS[0], 7, Budget(PLENTY)).search() for _ in range(2)]
    assert found[0] is not None
    assert found[0] == found[1]


def test_a_beam_whose_work_ended_first_leaves_no_filling_behind():
    cut = cut_up(5, 30, guillotine=False)
    box = box_for(kinds_of(cut.blanks), Cloth(cut.width), cut.length, 1)
    beam = WideBeam(box, LEANINGS[0], 0, Budget(500))
    assert beam.search() is None
    assert beam.stuck == []


def test_a_box_measured_too_finely_for_sums_is_filled_all_the_same():
    fine = FINEST_GRID * 3
    half = Lie(fine // 2, fine // 2, fine - fine // 2, 0)
    box = Box(fine, fine // 2, (1, 1), ((half,), (half,)), (Held.FREE,) * 2, true=True)
    puts = WideBeam(box, LEANINGS[0], 0, Budget(PLENTY)).search()
    assert puts is not None
    assert sorted(put.across for put in puts) == [0, fine // 2]


@given(cuttings(most=6))
@settings(max_examples=20, deadline=None)
def test_what_is_searched_beyond_the_everyday_limit_never_buys_more_or_proves_less(cutting):
    cloth, blanks = cutting
    layouts = [
        lay_out(cloth, blanks, effort=Effort(EVERYDAY.work + more)) for more in (0, 2_000, 8_000)
    ]
    for brief, long in pairwise(layouts):
        assert_sound(cloth, blanks, long)
        assert (cloth.buys(long.length), long.length) <= (cloth.buys(brief.length), brief.length)
        assert cloth.buys(brief.bound) <= cloth.buys(long.bound)


def test_a_long_search_comes_nearer_to_a_rectangle_cut_up():
    cut = cut_up(11, 40, guillotine=False)
    kinds: list[Blank] = list(cut.blanks)
    everyday = lay_out(Cloth(cut.width), kinds)
    longer = lay_out(Cloth(cut.width), kinds, effort=Effort(150_000))
    assert_sound(Cloth(cut.width), kinds, longer)
    assert cut.length <= longer.length < everyday.length
