"""Layouts in several cuts: no piece across a split, no cut longer than a bolt, each piece once."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import (
    Blank,
    Cloth,
    DoesNotFit,
    Effort,
    OffTheRepeat,
    lay_out,
    lay_out_in_cuts,
)
from tests.benchmarks.rectangles import cut_up
from tests.layout.cuttings import cuttings
from tests.verify_layout import assert_sound

BRIEF = Effort(700)


@given(cuttings(), st.integers(25, 60), st.booleans())
@settings(max_examples=200, deadline=None)
def test_every_cut_can_be_cut_from_one_bolt_and_each_piece_is_cut_once(cutting, longest, rows):
    cloth, blanks = cutting
    try:
        found = lay_out_in_cuts(cloth, blanks, longest, effort=BRIEF, rows_only=rows)
    except OffTheRepeat as refused:
        blank = blanks[refused.blank]
        may_turn = blank.may_turn and blank.length <= cloth.width
        shortest = min(blank.width, blank.length) if may_turn else blank.length
        assert shortest > longest - cloth.repeat
        return
    counted = Counter()
    for number, cut in enumerate(found.layouts):
        assert cut.length <= longest - (cloth.repeat if number else 0)
        here = Counter(place.blank for place in cut.placements)
        own = sorted(here)
        alone = [Blank(f"{n}", blanks[n].width, blanks[n].length, here[n], blanks[n].may_turn,
                       blanks[n].held) for n in own]  # fmt: skip
        assert_sound(cloth, alone, renamed(cut, {number: at for at, number in enumerate(own)}))
        counted += here
    assert counted == {number: blank.quantity for number, blank in enumerate(blanks)}
    assert found.bound <= sum(cut.length for cut in found.layouts)


def renamed(cut, names):
    def one(place):
        return replace(place, blank=names[place.blank])

    rows = tuple(
        replace(row, columns=tuple(
            replace(column, placements=tuple(map(one, column.placements)))
            for column in row.columns
        ))
        for row in cut.rows
    )  # fmt: skip
    return replace(cut, placements=tuple(map(one, cut.placements)), rows=rows)


@given(cuttings())
@settings(max_examples=50, deadline=None)
def test_a_bolt_that_is_long_enough_gives_the_layout_itself(cutting):
    cloth, blanks = cutting
    whole = lay_out(cloth, blanks, effort=BRIEF)
    found = lay_out_in_cuts(cloth, blanks, whole.length, effort=BRIEF)
    assert found.layouts == (whole,)
    assert found.bound == whole.bound


def test_a_piece_that_may_turn_lies_so_that_it_is_no_longer_than_a_bolt():
    found = lay_out_in_cuts(Cloth(50), [Blank("sash", 10, 45, 6, may_turn=True)], 30)
    assert all(place.turned for cut in found.layouts for place in cut.placements)
    assert [cut.length for cut in found.layouts] == [30, 30]


def test_a_piece_longer_than_a_bolt_is_refused():
    with pytest.raises(DoesNotFit, match="sash is 45 ticks long, the longest cut 40: 5 too long"):
        lay_out_in_cuts(Cloth(44), [Blank("sash", 10, 45, may_turn=True)], 40)


def test_pieces_that_leave_no_room_for_each_other_in_a_cut_take_one_each():
    # 150 + 4 > 153, both over half the width; with a narrow cuff one cut would do
    found = lay_out_in_cuts(Cloth(50), [Blank("train", 40, 150), Blank("cuff", 40, 4)], 153)
    assert found.fewest == len(found.layouts) == 2
    narrow = lay_out_in_cuts(Cloth(50), [Blank("train", 40, 150), Blank("cuff", 10, 4)], 153)
    assert narrow.fewest == len(narrow.layouts) == 1


def test_a_cut_holds_whole_rows():
    # rows of 40 on a bolt of 100: two a cut, so five of them take three cuts and not 200 / 100
    found = lay_out_in_cuts(Cloth(50), [Blank("panel", 30, 40, 5)], 100)
    assert found.fewest == len(found.layouts) == 3


def test_a_cut_of_a_matched_print_holds_rows_of_whole_repeats():
    # on a repeat of 8, pieces of 10 start at 0, 16 and 32, and a bolt of 34 takes two: 26 long
    found = lay_out_in_cuts(Cloth(50, repeat=8), [Blank("panel", 30, 10, 4)], 34)
    assert found.fewest == len(found.layouts) == 2
    plain = lay_out_in_cuts(Cloth(50), [Blank("panel", 30, 10, 3)], 34)
    matched = lay_out_in_cuts(Cloth(50, repeat=8), [Blank("panel", 30, 10, 3)], 34)
    assert (plain.fewest, matched.fewest) == (1, 2)


@given(
    seed=st.integers(0, 10_000),
    cuts=st.integers(2, 4),
    pieces=st.integers(2, 7),
    may_turn=st.booleans(),
)
@settings(max_examples=150, deadline=None)
def test_pieces_cut_from_so_many_lengths_are_never_said_to_need_more(seed, cuts, pieces, may_turn):
    made = [
        cut_up(
            seed + n, pieces, guillotine=True, width=30, length=40, may_turn=may_turn, slimmest=1
        )
        for n in range(cuts)
    ]
    blanks = [
        replace(blank, name=f"{n} {blank.name}")
        for n, one in enumerate(made)
        for blank in one.blanks
    ]
    found = lay_out_in_cuts(Cloth(30), blanks, 40, effort=BRIEF)
    assert found.fewest <= cuts
    assert found.bound <= 40 * cuts


def test_many_copies_take_no_more_than_a_few_cuts_different_from_each_other():
    blanks = [Blank("panel", 21, 33, 400), Blank("pocket", 7, 8, 1_000)]
    found = lay_out_in_cuts(Cloth(44), blanks, 500, effort=BRIEF)
    assert len({cut.placements for cut in found.layouts}) <= 4
    least = sum(cut.length for cut in found.layouts)
    assert found.bound <= least <= found.bound * 1.05


def test_of_a_matched_print_only_the_first_cut_is_as_long_as_a_bolt():
    # Rows of 30 on a repeat of 20 start at 0, 40 and 80, and end at 110: so many lie on a bolt of
    # 110. A further one has 90 left when it is trimmed: two rows, the last of which ends at 70.
    found = lay_out_in_cuts(Cloth(40, repeat=20), [Blank("panel", 40, 30, 5)], 110)
    assert [cut.length for cut in found.layouts] == [110, 70]


def test_a_second_piece_as_long_as_the_bolt_is_not_sure_to_start_on_the_repeat():
    cloth, panels = Cloth(40, repeat=20), [Blank("panel", 40, 90, 2)]
    with pytest.raises(OffTheRepeat, match="needs a further cut, of which 80 are sure"):
        lay_out_in_cuts(cloth, panels, 100)
    assert len(lay_out_in_cuts(Cloth(40, repeat=10), panels, 100).layouts) == 2


def test_a_piece_that_may_turn_lies_so_that_a_further_cut_takes_it():
    found = lay_out_in_cuts(Cloth(45, repeat=20), [Blank("sash", 40, 45, 2, may_turn=True)], 60)
    assert all(place.turned for cut in found.layouts for place in cut.placements)
    assert [cut.length for cut in found.layouts] == [40, 40]
