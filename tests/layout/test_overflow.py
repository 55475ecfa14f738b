"""Fillings that got stuck are completed: each piece once, none over another, as low as it goes."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, Layout, Style
from estimator.layout.box import Lie, Put, box_for, spots_from
from estimator.layout.kinds import kinds_of, placements_of
from estimator.layout.overflow import completed
from tests.layout.cuttings import cuttings
from tests.verify_layout import assert_sound


@given(cuttings(), st.integers(25, 40))
@settings(max_examples=200, deadline=None)
def test_an_empty_box_is_completed_to_a_layout_that_can_be_cut(cutting, length):
    cloth, blanks = cutting
    kinds = kinds_of(blanks)
    box = box_for(kinds, cloth, length, 1)
    assert box is not None
    spots = spots_from(completed(box, []), kinds, cloth, 1)
    end = max(spot.along + spot.length for spot in spots)
    placements = placements_of(spots, kinds, blanks)
    assert_sound(cloth, blanks, Layout(cloth.width, end, placements, (), 0, Style.CLOSE))


def test_the_piece_left_over_goes_where_it_reaches_least_far():
    #   10 |-----|          the cuff of 4 x 3 goes on the right, from 6 to 9, and not on top
    #    6 |     |-----|
    #    0 |-----|-----|
    kinds = kinds_of([Blank("back", 5, 10), Blank("front", 5, 6), Blank("cuff", 4, 3)])
    box = box_for(kinds, Cloth(10), 10, 1)
    assert box is not None
    stuck = [Put(0, 0, 0, Lie(5, 10, 5, 0)), Put(1, 5, 0, Lie(5, 6, 5, 4))]
    assert completed(box, stuck)[2][:3] == (2, 5, 6)
