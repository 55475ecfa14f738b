"""Small cuttings for the laws: sizes on a coarse grid, so that pieces often just fit or not."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, Held
from estimator.layout.box import Box, box_for
from estimator.layout.kinds import Kind, kinds_of


def up_to_a_step(length: int, *, step: int) -> int:
    """What a shop sells that cuts whole steps only."""
    return -(-length // step) * step


def buys_by(step: int) -> Callable[[int], int]:
    return partial(up_to_a_step, step=step)


@st.composite
def cuttings(
    draw: st.DrawFn,
    *,
    most: int = 9,
    most_copies: int = 3,
    turns: bool = True,
    repeats: bool = True,
    holds: bool = True,
) -> tuple[Cloth, list[Blank]]:
    """A cloth 12 to 30 wide and up to `most` blanks that all fit on it."""
    width = draw(st.integers(12, 30))
    repeat = draw(st.sampled_from([0, 0, 0, 4, 7, 10])) if repeats else 0
    across_repeat = draw(st.sampled_from([0, 0, 0, 3, 5, 8])) if repeats else 0
    step = draw(st.sampled_from([1, 3, 8]))
    some_held = holds and draw(st.booleans())
    blanks = []
    for index in range(draw(st.integers(1, most))):
        across = draw(st.integers(1, width))
        along = draw(st.integers(1, 25))
        copies = draw(st.integers(1, most_copies))
        may_turn = draw(st.booleans()) if turns else False
        held = draw(st.sampled_from(Held)) if some_held and not may_turn else Held.FREE
        blanks.append(Blank(f"piece {index}", across, along, copies, may_turn, held))
    return Cloth(width, repeat, buys_by(step), across_repeat), blanks


def box_with_room(
    cloth: Cloth, blanks: list[Blank], slack: int
) -> tuple[Box | None, tuple[Kind, ...]]:
    """The box as long as the area of the blanks asks, and ``slack`` longer, with their kinds."""
    kinds = kinds_of(blanks)
    area = sum(one.width * one.length * one.quantity for one in blanks)
    return box_for(kinds, cloth, area // cloth.width + slack, 1), kinds
