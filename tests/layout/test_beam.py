"""The close search: its skyline, its sums, and what it finds on cuttings with a known answer."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, Effort, Held, Style, lay_out
from estimator.layout.beam import Beam, Taste
from estimator.layout.box import Box, Lie, box_for
from estimator.layout.effort import Budget
from estimator.layout.fill import Fill, unfilled
from estimator.layout.kinds import kinds_of
from estimator.layout.rungs import longest_buying_less, longest_buying_same
from estimator.layout.skyline import merged, without_dead_ends
from tests.benchmarks.rectangles import cut_up
from tests.layout.cuttings import buys_by
from tests.verify_layout import assert_sound


def outline(puts, width):
    """The skyline of placed pieces, worked out column by column."""
    levels = [
        max(
            (p.along + p.lie.along for p in puts if p.across <= x < p.across + p.lie.across),
            default=0,
        )
        for x in range(width)
    ]
    return merged([(x, level, 1) for x, level in enumerate(levels)])


@given(seed=st.integers(0, 5_000), pieces=st.integers(2, 14), slack=st.integers(0, 12))
@settings(max_examples=200, deadline=None)
def test_every_filling_lies_in_its_box_with_no_piece_below_the_outline_of_those_before(
    seed, pieces, slack
):
    cut = cut_up(seed, pieces, guillotine=False, width=20, length=30, slimmest=1)
    box = box_for(kinds_of(cut.blanks), Cloth(20), 30 + slack, 1)
    puts = Beam(Fill(box), 6, Taste(0.05, 0.1), Budget(10_000)).search()
    if puts is None:
        return
    assert len(puts) == len(cut.blanks)
    for count, put in enumerate(puts):
        assert 0 <= put.across <= 20 - put.lie.across
        assert put.along <= 30 + slack - put.lie.along
        for start, level, width in outline(puts[:count], 20):
            beside = start + width <= put.across or put.across + put.lie.across <= start
            assert beside or level <= put.along


def test_level_neighbours_are_one_segment_and_empty_ones_none():
    assert merged([(0, 5, 3), (3, 5, 2), (5, 2, 0), (5, 5, 1), (6, 1, 4)]) == ((0, 5, 6), (6, 1, 4))


def test_a_gap_too_narrow_for_any_piece_is_given_up_to_its_lower_wall():
    #  10 |--|  |--|        the gap of 2 between walls of 10 and 8 is lost up to 8: 2 x 3
    settled, lost = without_dead_ends([(0, 10, 4), (4, 5, 2), (6, 8, 4)], 30, 3, 1)
    assert settled == ((0, 10, 4), (4, 8, 6))
    assert lost == 6


def test_a_place_too_near_the_end_for_any_piece_is_given_up_to_the_end():
    settled, lost = without_dead_ends([(0, 26, 4), (4, 5, 6)], 30, 3, 5)
    assert settled == ((0, 30, 4), (4, 5, 6))
    assert lost == 16


def test_the_sums_of_what_is_left_tell_how_well_a_gap_can_be_filled():
    lies = ((Lie(20, 7, 40, 40),), (Lie(30, 9, 40, 40),))
    left = Fill(Box(60, 60, (1, 1), lies, (Held.FREE, Held.FREE), true=True)).left((1, 1))
    assert [unfilled(left.sums_across, room) for room in (19, 20, 29, 30, 49, 50, 55)] == [
        19, 0, 9, 0, 19, 0, 5,
    ]  # fmt: skip
    assert (left.narrowest, left.shortest) == (20, 7)


def test_the_longest_length_that_buys_less_is_the_end_of_the_step_before():
    cloth = Cloth(width=10, buys=buys_by(8))
    assert longest_buying_less(cloth, 17) == 16
    assert longest_buying_less(cloth, 16) == 8
    assert longest_buying_less(cloth, 0) == -1
    assert longest_buying_same(cloth, 17, 100) == 24
    assert longest_buying_same(cloth, 17, 20) == 20


def test_a_pinwheel_that_no_rows_can_make_is_found():
    #   |-------|---|     four of 7 x 3 (two of them turned) round one of 4 x 4 fill 10 x 10
    #   |---|   |   |
    #   |   |---|   |
    #   |---|-------|
    blanks = [Blank("long", 3, 7, 2), Blank("wide", 7, 3, 2), Blank("middle", 4, 4)]
    layout = lay_out(Cloth(width=10), blanks)
    assert_sound(Cloth(width=10), blanks, layout)
    assert (layout.style, layout.length, layout.bound) == (Style.CLOSE, 10, 10)


def test_without_any_work_allowed_the_rows_are_the_answer():
    blanks = [Blank("long", 3, 7, 2), Blank("wide", 7, 3, 2), Blank("middle", 4, 4)]
    assert lay_out(Cloth(width=10), blanks, effort=Effort(0)).style is Style.STRAIGHT_ROWS


def test_a_close_layout_that_saves_no_step_is_not_taken():
    blanks = [Blank("long", 3, 7, 2), Blank("wide", 7, 3, 2), Blank("middle", 4, 4)]
    cloth = Cloth(width=10, buys=buys_by(20))
    layout = lay_out(cloth, blanks)
    assert layout.style is Style.STRAIGHT_ROWS
    assert cloth.buys(layout.length) == cloth.buys(layout.bound) == 20


def test_tall_pieces_are_told_by_how_late_they_may_start_and_how_wide_they_are_together():
    #  in a box 10 long: two of 8 must start by 2, three of 6 by 4; those of 4 may stand on others
    kinds = kinds_of([Blank("tall", 3, 8, 2), Blank("high", 2, 6, 3), Blank("low", 5, 4)])
    box = box_for(kinds, Cloth(20), 10, 1)
    assert box is not None
    assert Fill(box).left((2, 3, 1)).tall == ((2, 6), (4, 12))
    assert Fill(box).left((0, 1, 1)).tall == ((4, 2),)
