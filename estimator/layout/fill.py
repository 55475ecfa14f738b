"""How well the pieces that are left can fill a width or a length: sums of their sizes.

Not every sum can be made. A gap of 50 for pieces of 20 and 30 can be filled; of one of 55 no more
than 50 can, whatever is laid beside each other in it. The sums are kept as the bits of one whole
number, so that adding a piece is a shift.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from estimator.layout.box import Box
from estimator.layout.question import Held

FINEST_GRID = 20_000
"""Boxes longer than this, in units, are searched without sums: the numbers get too long."""
ANY_SUM = 0
"""Stands for sums that are not worked out: nothing is foreseen to stay empty."""


class Left(NamedTuple):
    """What can still be done with some pieces: sums across and along, smallest sizes.

    `tall` says of the pieces too long to stand on each other: by the latest start of each kind, how
    wide all those are together that must start no later. `held` is the length of those held at the
    near, the far and either edge; None where no piece of the box is held.
    """

    sums_across: int
    sums_along: int
    narrowest: int
    shortest: int
    tall: tuple[tuple[int, int], ...]
    held: tuple[int, int, int] | None


class Fill:
    """Sums for each collection of pieces left over from one box, worked out when first asked."""

    def __init__(self, box: Box) -> None:
        self.box = box
        self._known: dict[Sequence[int], Left] = {}
        self._narrowest = [min(lie.across for lie in lies) for lies in box.lies]
        self._shortest = [min(lie.along for lie in lies) for lies in box.lies]
        self._tall = sorted(
            (max(lie.latest_along for lie in lies), self._narrowest[kind], kind)
            for kind, lies in enumerate(box.lies)
            if all(2 * lie.along > box.along for lie in lies)
        )
        self._too_fine = max(box.across, box.along) > FINEST_GRID
        self._mask_across = 0 if self._too_fine else (2 << box.across) - 1
        self._mask_along = 0 if self._too_fine else (2 << box.along) - 1

    def left(self, counts: tuple[int, ...]) -> Left:
        """Sums and smallest sizes of `counts[k]` pieces of each kind k."""
        known = self._known.get(counts)
        if known is None:
            known = self._known[counts] = self._work_out(counts)
        return known

    def _work_out(self, counts: tuple[int, ...]) -> Left:
        box = self.box
        kinds = [kind for kind, count in enumerate(counts) if count]
        narrowest = min((self._narrowest[kind] for kind in kinds), default=box.across + 1)
        shortest = min((self._shortest[kind] for kind in kinds), default=box.along + 1)
        tall, held = self._tall_of(counts), self._held_of(counts)
        if self._too_fine:
            return Left(ANY_SUM, ANY_SUM, narrowest, shortest, tall, held)
        across = along = 1
        for kind in kinds:
            lies = box.lies[kind]
            for _ in range(min(counts[kind], box.across // self._narrowest[kind])):
                more = across
                for lie in lies:
                    more |= across << lie.across
                across = more & self._mask_across
            for _ in range(min(counts[kind], box.along // self._shortest[kind])):
                more = along
                for lie in lies:
                    more |= along << lie.along
                along = more & self._mask_along
        return Left(across, along, narrowest, shortest, tall, held)

    def _tall_of(self, counts: tuple[int, ...]) -> tuple[tuple[int, int], ...]:
        width = 0
        by_latest: dict[int, int] = {}
        for latest, across, kind in self._tall:
            if counts[kind]:
                width += across * counts[kind]
                by_latest[latest] = width
        return tuple(by_latest.items())

    def _held_of(self, counts: tuple[int, ...]) -> tuple[int, int, int] | None:
        if not self.box.holds:
            return None
        lengths = dict.fromkeys(Held, 0)
        for count, held, along in zip(counts, self.box.held, self._shortest, strict=True):
            lengths[held] += count * along
        return lengths[Held.NEAR], lengths[Held.FAR], lengths[Held.EITHER]


def unfilled(sums: int, room: int) -> int:
    """What is left of `room` at best, with pieces of these sums."""
    if sums == ANY_SUM:
        return 0
    return room + 1 - (sums & ((2 << room) - 1)).bit_length()
