"""Blanks of one size are one kind, so that copies cost next to nothing and order plays no part.

The search only knows kinds. Which blank of a kind lies at which place is settled at the end, by
name and from the cut end up, so that the same pieces give the same layout in whatever order asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from estimator.layout.answer import Placement
from estimator.layout.question import Blank, Held


@dataclass(frozen=True, slots=True)
class Kind:
    """All the pieces of one size, one right to turn and one hold; sizes in ticks.

    A kind that may turn is stored upright (`width <= length`). `blanks` are the indexes of its
    blanks, one entry a copy, in the order in which they are given places.
    """

    width: int
    length: int
    may_turn: bool
    blanks: tuple[int, ...]
    held: Held = Held.FREE

    @property
    def quantity(self) -> int:
        """How many pieces of this kind are wanted."""
        return len(self.blanks)


@dataclass(frozen=True, slots=True)
class Spot:
    """A place taken by some piece of a kind: `kind` is its index, the sizes are as it lies."""

    kind: int
    across: int
    along: int
    width: int
    length: int


def kinds_of(blanks: Sequence[Blank]) -> tuple[Kind, ...]:
    """The kinds of these blanks: longest first, then widest, then those that may not turn."""
    copies: dict[tuple[int, int, bool, str], list[tuple[str, int, int]]] = {}
    for index, blank in enumerate(blanks):
        width, length = blank.width, blank.length
        turns = blank.may_turn and width != length
        if turns and width > length:
            width, length = length, width
        named = (blank.name, blank.width, index)
        key = (-length, -width, turns, blank.held.value)
        copies.setdefault(key, []).extend([named] * blank.quantity)
    return tuple(
        Kind(-width, -length, turns, tuple(index for *_, index in sorted(copies[key])), Held(held))
        for key in sorted(copies)
        for length, width, turns, held in (key,)
    )


def placements_of(
    spots: Iterable[Spot], kinds: Sequence[Kind], blanks: Sequence[Blank]
) -> tuple[Placement, ...]:
    """Give each spot a blank of its kind, from the cut end and the near selvedge on."""
    waiting = [iter(kind.blanks) for kind in kinds]
    placed = []
    for spot in sorted(spots, key=lambda s: (s.along, s.across)):
        index = next(waiting[spot.kind])
        blank = blanks[index]
        turned = blank.may_turn and blank.width != spot.width
        placed.append(Placement(index, spot.across, spot.along, spot.width, spot.length, turned))
    return tuple(placed)
