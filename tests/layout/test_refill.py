"""What a long search keeps of a layout: the pieces before a line, where they lie."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, Layout, Style
from estimator.layout.box import box_for, spots_from
from estimator.layout.effort import Budget
from estimator.layout.kinds import kinds_of, placements_of
from estimator.layout.overflow import completed
from estimator.layout.refill import LINES, WHOLE_BOXES_FIRST, kept, line_of
from estimator.layout.wide_beam import LEANINGS, WideBeam
from tests.layout.cuttings import box_with_room, cuttings
from tests.verify_layout import assert_sound


def test_the_pieces_that_start_before_the_line_stay_the_lowest_first():
    #   10 |-----|--|       a back of 5 x 10, a front of 5 x 6 with two cuffs on it, 2 x 4 each
    #    6 |     |--|--|
    #    0 |-----|-----|
    kinds = kinds_of([Blank("back", 5, 10), Blank("front", 5, 6), Blank("cuff", 2, 4, 2)])
    box = box_for(kinds, Cloth(10), 10, 1)
    assert box is not None
    spots = spots_from(completed(box, []), kinds, Cloth(10), 1)
    assert [put[:3] for put in kept(box, spots, kinds, 1, 6)] == [(0, 0, 0), (1, 5, 0)]
    assert len(kept(box, spots, kinds, 1, 7)) == 4
    assert kept(box, spots, kinds, 1, 0) == []


def test_a_piece_that_would_reach_beyond_a_shorter_box_is_not_kept():
    kinds = kinds_of([Blank("yoke", 4, 3, 2)])
    long, short = (box_for(kinds, Cloth(4), length, 1) for length in (8, 6))
    assert long is not None
    assert short is not None
    spots = spots_from(completed(long, []), kinds, Cloth(4), 1)
    assert [put.along for put in kept(short, spots, kinds, 1, 6)] == [0, 3]
    shorter = box_for(kinds, Cloth(4), 5, 1)
    assert shorter is not None
    assert [put.along for put in kept(shorter, spots, kinds, 1, 5)] == [0]


def test_whole_boxes_come_first_and_then_the_line_comes_nearer_to_the_cut_end():
    lines = [
        line_of(attempt, 1_000) for attempt in range(1, WHOLE_BOXES_FIRST + 2 * len(LINES) + 1)
    ]
    assert lines[:WHOLE_BOXES_FIRST] == [0] * WHOLE_BOXES_FIRST
    turn = lines[WHOLE_BOXES_FIRST : WHOLE_BOXES_FIRST + len(LINES)]
    assert turn == sorted(turn, reverse=True)
    assert lines[WHOLE_BOXES_FIRST + len(LINES) :] == turn


@given(cuttings(holds=False), st.integers(0, 12), st.integers(0, 100), st.integers(0, 3))
@settings(max_examples=200, deadline=None)
def test_a_box_filled_anew_beyond_a_line_can_be_cut_and_what_was_kept_lies_where_it_did(
    cutting, slack, share, leaning
):
    cloth, blanks = cutting
    box, kinds = box_with_room(cloth, blanks, slack)
    if box is None:
        return
    spots = spots_from(completed(box, []), kinds, cloth, 1)
    stay = kept(box, spots, kinds, 1, box.along * share // 100)
    puts = WideBeam(box, LEANINGS[leaning], 1, Budget(10_000_000)).search(stay)
    if puts is None:
        return
    assert puts[: len(stay)] == stay
    assert max(put.along - put.lie.latest_along for put in puts) <= 0
    spots = spots_from(puts, kinds, cloth, 1)
    end = max(spot.along + spot.length for spot in spots)
    placements = placements_of(spots, kinds, blanks)
    assert_sound(cloth, blanks, Layout(cloth.width, end, placements, (), 0, Style.CLOSE))
