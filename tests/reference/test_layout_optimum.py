"""Small layouts against their exact optimum, from a general-purpose constraint solver.

Oracle: OR-Tools CP-SAT, one worker, fixed seed, a limit on its own count of work.
"""

from __future__ import annotations

from random import Random

import pytest

from estimator.layout import Blank, Cloth, Held, lay_out
from tests.benchmarks.solver import shortest
from tests.verify_layout import assert_sound


def small_cutting(
    seed: int, *, may_turn: bool = False, repeat: int = 0, across: int = 0, holds: bool = False
) -> tuple[Cloth, list[Blank]]:
    chance = Random(f"{seed} {may_turn} {repeat}")
    holding = Random(f"{seed} held")
    width = chance.randint(20, 40)
    blanks = [
        Blank(
            f"piece {i}",
            chance.randint(4, width * 2 // 3),
            chance.randint(3, 25),
            chance.randint(1, 2),
            may_turn and chance.random() < 0.5,
            holding.choice(list(Held)) if holds else Held.FREE,
        )
        for i in range(chance.randint(3, 5))
    ]
    return Cloth(width, repeat, repeat_across=across), blanks


CASES = [
    *((seed, False, 0) for seed in range(12)),
    *((seed, True, 0) for seed in range(12)),
    *((seed, False, 6) for seed in range(6)),
    *((seed, True, 9) for seed in range(6)),
]


@pytest.mark.parametrize(("seed", "may_turn", "repeat"), CASES)
def test_the_shortest_layout_lies_between_bound_and_layout(seed, may_turn, repeat):
    cloth, blanks = small_cutting(seed, may_turn=may_turn, repeat=repeat)
    layout = lay_out(cloth, blanks)
    assert_sound(cloth, blanks, layout)
    exact = shortest(cloth, blanks)
    assert exact.proved
    assert layout.bound <= exact.length <= layout.length


HELD_AND_PLAID = [
    *((seed, 0, 0, True) for seed in range(20, 32)),
    *((seed, 0, 8, False) for seed in range(40, 50)),
    *((seed, 6, 8, True) for seed in range(60, 68)),
]


@pytest.mark.parametrize(("seed", "repeat", "across", "holds"), HELD_AND_PLAID)
def test_pieces_held_at_an_edge_or_matched_to_a_plaid_are_bounded_truly(
    seed, repeat, across, holds
):
    cloth, blanks = small_cutting(seed, repeat=repeat, across=across, holds=holds)
    layout = lay_out(cloth, blanks)
    assert_sound(cloth, blanks, layout)
    exact = shortest(cloth, blanks)
    assert exact.proved
    assert layout.bound <= exact.length <= layout.length
