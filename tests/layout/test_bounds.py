"""Lower bounds, each on an example that it alone can judge."""

from __future__ import annotations

import pytest

from estimator.layout import Blank, Cloth, Held
from estimator.layout.bounds import lower_bound
from estimator.layout.kinds import kinds_of
from tests.benchmarks.solver import shortest


def bound(width, *blanks, repeat=0):
    return lower_bound(
        kinds_of([Blank(f"blank {i}", *b) for i, b in enumerate(blanks)]), Cloth(width, repeat)
    )


def test_the_area_over_the_width_rounds_up_to_a_tick():
    assert bound(10, (3, 3, 7)) == 7  # 63 / 10


def test_no_layout_is_shorter_than_its_longest_piece():
    assert bound(10, (1, 50)) == 50


def test_a_piece_that_may_turn_counts_with_its_shorter_side_if_the_cloth_takes_it():
    assert bound(60, (3, 50, 1, True)) == 3
    assert bound(40, (3, 50, 1, True)) == 50


def test_pieces_over_half_the_width_lie_one_above_another():
    assert bound(100, (51, 20, 3)) == 60
    assert bound(100, (50, 20, 3)) == 30


def test_with_a_repeat_the_last_piece_alone_may_leave_part_of_it():
    # two of 5 on a repeat of 10 start at 0 and 10 and end at 15
    assert bound(100, (99, 5, 2), repeat=10) == 15


def test_a_small_piece_does_not_lower_the_bound_of_those_with_a_repeat():
    assert bound(100, (99, 5, 2), (1, 1), repeat=10) == 15


HELD = [
    # a band of 12 at one selvedge leaves 33 of 45 free: 35 lies above it or below
    ((Blank("band", 12, 30, held=Held.NEAR), Blank("panel", 35, 20)), 50),
    # two at either selvedge lie beside each other, the wide one beside neither
    ((Blank("band", 20, 30, 2, held=Held.EITHER), Blank("wide", 26, 20, held=Held.EITHER)), 50),
    ((Blank("near", 23, 30, held=Held.NEAR), Blank("far", 23, 20, held=Held.FAR)), 50),
    # the narrow one may lie beside the wide one, so only the others add up
    ((Blank("slip", 5, 40, held=Held.NEAR), Blank("band", 12, 30, held=Held.NEAR),
      Blank("panel", 35, 50)), 80),
]  # fmt: skip


@pytest.mark.parametrize(("blanks", "least"), HELD)
def test_what_cannot_lie_beside_pieces_held_at_an_edge_lies_above_them(blanks, least):
    cloth = Cloth(45)
    assert lower_bound(kinds_of(blanks), cloth) == least == shortest(cloth, blanks).length
