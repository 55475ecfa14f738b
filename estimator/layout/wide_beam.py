"""A beam search wide enough for hundreds of pieces, in compiled code.

It asks what `beam` asks, and grows fillings as that does, at the lowest gap of each: a piece goes
to the higher wall of it, or the gap is given up to the lower one. The fewer pieces are left, the
more fillings are followed: the last pieces decide, and trying them costs least. The more pieces
there are, the fewer fillings are followed, so that other whims get their turn.

"Best" is the least waste, known and foreseen, for what has been put in, where pieces that run
nearly the whole width or length of the box count for more than their area: they find no room later.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum, sqrt
from random import Random
from typing import NamedTuple

import numpy as np

from estimator.layout.beam_room import (
    ACROSS,
    KIND,
    MARK,
    SEGMENTS,
    WASTED,
    WORTH_IN,
    Asked,
    Ways,
    Whole,
    room_for,
)
from estimator.layout.box import Box, Lie, Put
from estimator.layout.compiled_beam import FILLED, SPENT, grow
from estimator.layout.effort import Budget
from estimator.layout.fill import FINEST_GRID
from estimator.layout.overflow import covered
from estimator.layout.skyline import Segment

FIRST_WIDTH, FOR_PIECES = 120, 75
"""Fillings followed while all pieces are left, and the number of pieces for which that holds."""
LEAST_WIDTH, MOST_WIDTH = 8, 10_000
MOST_TIMES_AS_WIDE = 30
PLACES_A_UNIT = 52
"""Places that are tried here while the narrow beam tries one: its unit of work."""
SEED = 1857


class Leaning(NamedTuple):
    """What makes a filling look good, besides little waste.

    `large_first`: a constant added to the waste, as a share of the area to fill, so that those look
    better that have used the large pieces. `flush`: how much waste, in mean pieces, is forgiven for
    an edge that runs on. `awkward`: how much more a piece counts that is as wide or as long as the
    box, less as the square of its share of it. `whim`: by what share of it, up or down, the worth
    of a kind is drawn from a seed.
    """

    large_first: float
    flush: float
    awkward: float
    whim: float


LEANINGS = (
    Leaning(0.02, 0.1, 3.0, 0.2),
    Leaning(0.02, 0.2, 0.0, 0.2),
    Leaning(0.03, 0.1, 8.0, 0.2),
    Leaning(0.01, 0.05, 1.0, 0.2),
)
"""Tried one after another: none suits all cuttings."""


class WideBeam:
    """The search for one box; `seed` is what the leaning's whims are drawn from.

    After a search without success `stuck` holds the best filling that had no place for another
    piece; it is empty where the work allowed ended first.
    """

    def __init__(self, box: Box, leaning: Leaning, seed: int, budget: Budget) -> None:
        self.stuck: list[Put] = []
        self._box = box
        self._budget = budget
        self._worths = _worths(box, leaning, seed)
        self._lies = [(kind, lie) for kind, lies in enumerate(box.lies) for lie in lies]
        filled = box.across * box.along - box.spare
        self._asked = Asked(
            box.across,
            box.along,
            box.spare,
            int(leaning.large_first * filled),
            int(leaning.flush * filled / max(1, sum(box.counts))),
        )

    def search(self, kept: Sequence[Put] = ()) -> list[Put] | None:
        """A place for every piece, or None: none was found, which proves nothing.

        The pieces `kept` are in the box already, the lowest first, and stay where they are.
        """
        box = self._box
        outline: list[Segment] = [(0, 0, box.across)]
        counts = list(box.counts)
        for put in kept:
            outline = covered(outline, put)
            counts[put.kind] -= 1
        under = sum(level * width for _, level, width in outline)
        wasted = under - sum(put.lie.across * put.lie.along for put in kept)
        if wasted > box.spare:
            return None
        widths = _widths(sum(box.counts), sum(counts))
        room = room_for(int(widths.max(initial=1)), len(widths), len(outline), len(counts))
        ends = slice(len(outline) + 2)
        room.starts[0, 0, ends] = [0, *(start for start, _, _ in outline), box.across]
        room.levels[0, 0, ends] = [box.along, *(level for _, level, _ in outline), box.along]
        room.counts[0, 0] = counts
        worth = sum(self._worths[put.kind] for put in kept)
        room.facts[0, 0, [SEGMENTS, WASTED, WORTH_IN, MARK]] = [len(outline), wasted, worth, 0]
        sums = max(box.across, box.along) <= FINEST_GRID
        work = self._budget.work * PLACES_A_UNIT
        ways, marks = _ways_of(self._lies, self._worths), _marks(len(counts))
        scores = np.zeros(len(room.steps))
        ended, pieces, left = grow(
            tuple(self._asked), tuple(ways), tuple(room), scores, marks, sums, widths, work
        )
        self._budget.work -= 1 + (work - left) // PLACES_A_UNIT
        if ended == SPENT:
            return None
        puts = [*kept, *self._places(room.taken, pieces)]
        if ended == FILLED:
            return puts
        self.stuck = puts
        return None

    def _places(self, taken: Whole, pieces: int) -> list[Put]:
        """The best filling of so many pieces, piece by piece."""
        puts: list[Put] = []
        at = 0
        for level in reversed(range(pieces)):
            at, way, across, along = (int(fact) for fact in taken[:, level, at])
            kind, lie = self._lies[way]
            puts.append(Put(kind, across, along, lie))
        return puts[::-1]


def _widths(pieces: int, left: int) -> Whole:
    """How many fillings are followed, from so many pieces left down to the last one."""
    first = FIRST_WIDTH * sqrt((FOR_PIECES / pieces) ** 3)
    widths = (
        first * min(MOST_TIMES_AS_WIDE, sqrt((pieces / more) ** 3)) for more in range(left, 0, -1)
    )
    return np.array([max(LEAST_WIDTH, min(MOST_WIDTH, int(width))) for width in widths], np.int64)


def _ways_of(lies: Sequence[tuple[int, Lie]], worths: Sequence[int]) -> Ways:
    sizes = np.array([(kind, *lie[:4], worths[kind]) for kind, lie in lies], dtype=np.int64).T
    kinds = np.arange(len(worths) + 1)
    return Ways(
        np.ascontiguousarray(sizes),
        np.searchsorted(sizes[KIND], kinds).astype(np.int64),
        np.argsort(sizes[ACROSS], kind="stable").astype(np.int64),
    )


def _marks(kinds: int) -> Whole:
    """A number for each kind of which sums are hardly ever alike."""
    chance = Random(SEED)
    return np.array([chance.getrandbits(48) for _ in range(kinds)], dtype=np.int64)


def _worths(box: Box, leaning: Leaning, seed: int) -> list[int]:
    """What each kind counts when it is put in: all together as much as there is to fill."""
    chance = Random(seed)
    worths = []
    for lies in box.lies:
        area = min(lie.across * lie.along for lie in lies)
        share = min(max(lie.across / box.across, lie.along / box.along) for lie in lies)
        drawn = 1 + leaning.whim * (2 * chance.random() - 1)
        worths.append(area * (1 + leaning.awkward * share * share) * drawn)
    together = fsum(worth * count for worth, count in zip(worths, box.counts, strict=True))
    filled = box.across * box.along - box.spare
    return [max(1, int(worth * (filled / together))) for worth in worths]
