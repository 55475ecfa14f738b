"""The ways in which the pieces of a box may lie, as arrays with an entry a way, or one a kind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from estimator.layout.box import Box
from estimator.layout.fill import FINEST_GRID
from estimator.layout.skylines import Flags, Whole

NEVER = 2**62
"""Longer than any cloth: the size of a piece that is not there."""

Marks = npt.NDArray[np.uint64]


@dataclass(frozen=True, slots=True)
class Ways:
    """The ways of those kinds of which a piece is left in some filling; sizes in units.

    `number`, `kind`, `across`, `along`, the latest places and `worth` have an entry a way; `number`
    is its place among all ways of the box, `kind` the index of its kind here. `narrowest`,
    `shortest` and `mark` have an entry a kind.
    """

    number: Whole
    kind: Whole
    across: Whole
    along: Whole
    latest_across: Whole
    latest_along: Whole
    worth: Whole
    narrowest: Whole
    shortest: Whole
    mark: Marks

    def of(self, kinds: Flags) -> Ways:
        """The ways of these kinds alone, numbered anew."""
        ways = kinds[self.kind]
        renumbered = np.cumsum(kinds) - 1
        return Ways(
            self.number[ways],
            renumbered[self.kind[ways]],
            self.across[ways],
            self.along[ways],
            self.latest_across[ways],
            self.latest_along[ways],
            self.worth[ways],
            self.narrowest[kinds],
            self.shortest[kinds],
            self.mark[kinds],
        )

    def narrowest_of(self, counts: Whole) -> Whole:
        """The narrowest piece left of each row of counts."""
        least: Whole = np.where(counts > 0, self.narrowest, NEVER).min(axis=1, initial=NEVER)
        return least

    def shortest_of(self, counts: Whole) -> Whole:
        """The shortest piece left of each row of counts."""
        least: Whole = np.where(counts > 0, self.shortest, NEVER).min(axis=1, initial=NEVER)
        return least


def ways_of(box: Box, worths: Sequence[int], marks: Sequence[int]) -> Ways:
    """All ways of a box's pieces; worths and marks are those of each kind."""
    lies = [(kind, lie) for kind, lies in enumerate(box.lies) for lie in lies]
    kind = np.array([kind for kind, _ in lies])
    across, along = (np.array([getattr(lie, s) for _, lie in lies]) for s in ("across", "along"))
    return Ways(
        np.arange(len(lies)),
        kind,
        across,
        along,
        np.array([lie.latest_across for _, lie in lies]),
        np.array([lie.latest_along for _, lie in lies]),
        np.array(worths)[kind],
        _least(across, kind, len(box.counts)),
        _least(along, kind, len(box.counts)),
        np.array(marks, dtype=np.uint64),
    )


def _least(sizes: Whole, kind: Whole, kinds: int) -> Whole:
    least = np.full(kinds, NEVER)
    np.minimum.at(least, kind, sizes)
    return least


class Unfilled:
    """How much of any room must stay empty, whichever of some pieces are laid into it."""

    def __init__(self, room: int, sizes: Whole, kind: Whole, most: Whole) -> None:
        """`sizes[w]` belongs to a piece of `kind[w]`, of which there are `most[kind]` at most."""
        self._table: Whole | None = None
        if room > FINEST_GRID:
            return
        of_kind: list[list[int]] = [[] for _ in most]
        for size, its_kind in zip(sizes.tolist(), kind.tolist(), strict=True):
            of_kind[its_kind].append(size)
        mask = (2 << room) - 1
        sums = 1
        for count, own in zip(most.tolist(), of_kind, strict=True):
            for _ in range(min(count, room // min(own))):
                more = sums
                for size in own:
                    more |= sums << size
                more &= mask
                if more == sums:
                    break
                sums = more
        bits = np.frombuffer(sums.to_bytes(room // 8 + 1, "little"), np.uint8)
        made = np.unpackbits(bits, bitorder="little")[: room + 1]
        rooms = np.arange(room + 1)
        self._table = rooms - np.maximum.accumulate(np.where(made, rooms, 0))

    def of(self, rooms: Whole) -> Whole:
        """What is left of each room at best."""
        return np.zeros_like(rooms) if self._table is None else self._table[rooms]
