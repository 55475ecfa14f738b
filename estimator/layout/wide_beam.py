"""A beam search wide enough for hundreds of pieces: all fillings of a level scored as arrays.

It asks what `beam` asks, and grows fillings as that does, at the lowest gap of each: a piece goes
to the higher wall of it, or the gap is given up to the lower one. Every place of every piece in all
fillings is scored at once. The fewer pieces are left, the more fillings are followed: the last
pieces decide, and trying them costs least. Only a few descendants of each filling are kept, so that
a beam does not fill up with the likes of one.

"Best" is the least waste, known and foreseen, for what has been put in, where pieces that run
nearly the whole width or length of the box count for more than their area: they find no room later.

Geometry and waste are whole numbers. A score is a sum and a quotient of them in floats, each
rounded alike on every machine, and ties go by position: so every machine chooses the same.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import fsum, sqrt
from random import Random
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from estimator.layout.box import Box, Put
from estimator.layout.effort import Budget
from estimator.layout.gaps import Gaps, Level, gaps_of
from estimator.layout.skylines import (
    Flags,
    Skylines,
    Whole,
    flat,
    split,
    without_dead_ends,
)
from estimator.layout.ways import Marks, Unfilled, ways_of

FIRST_WIDTH = 30
"""Fillings followed while all pieces are left."""
MOST_TIMES_AS_WIDE = 30
DESCENDANTS = 2
"""So many of a filling's descendants are kept at most."""
LEVELS_WITH_THE_SAME_SUMS = 4
PLACES_A_UNIT = 16
FILLINGS_A_UNIT = 1 / 8
UNITS_A_LEVEL = 150
"""Work of a level, in units of the budget: for itself, for its fillings, and for the places."""
SEED = 1857
MIX = tuple(map(np.uint64, (0x9E3779B97F4A7C15, 0xC2B2AE3D27D4EB4F, 0xBF58476D1CE4E5B9)))
"""Odd numbers that mix the bits of a mark."""


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
"""Tried one after another, each from both sides; more than one, as none suits all cuttings."""


class _Step(NamedTuple):
    """What led to each filling of a level: the filling before, the way put in, and where."""

    before: Whole
    way: Whole
    across: Whole
    along: Whole


@dataclass(frozen=True, slots=True)
class _Steps:
    """Steps that may be taken: score, gap and way of each, where across, and to which wall."""

    score: npt.NDArray[np.float64]
    gap: Whole
    way: Whole
    across: Whole
    to_left: Flags

    def of(self, rows: Whole) -> _Steps:
        """These steps alone, in this order."""
        return _Steps(
            self.score[rows], self.gap[rows], self.way[rows], self.across[rows], self.to_left[rows]
        )


class WideBeam:
    """The search for one box; `seed` is what the leaning's whims are drawn from.

    After a search without success `stuck` holds the best filling that had no place for another
    piece; it is empty where the work allowed ended first.
    """

    def __init__(self, box: Box, leaning: Leaning, seed: int, budget: Budget) -> None:
        self.stuck: list[Put] = []
        self._box = box
        self._budget = budget
        self._spare = box.spare
        self._pieces = sum(box.counts)
        filled = box.across * box.along - box.spare
        self._lead = leaning.large_first * filled
        self._bonus = leaning.flush * filled / max(1, self._pieces)
        chance = Random(SEED)
        marks = [chance.getrandbits(63) for _ in box.counts]
        self._ways = ways_of(box, _worths(box, leaning, seed), marks)
        self._lies = [(kind, lie) for kind, lies in enumerate(box.lies) for lie in lies]
        self._steps: list[_Step] = []

    def search(self) -> list[Put] | None:
        """A place for every piece, or None: none was found, which proves nothing."""
        if self._spare < 0:
            return None
        none = np.zeros(1, dtype=np.int64)
        empty = flat(self._box.across, self._box.along)
        level = Level(empty, np.array([self._box.counts]), none, none, none.astype(np.uint64))
        for number in range(self._pieces):
            if number % LEVELS_WITH_THE_SAME_SUMS == 0:
                level = self._of_kinds_left(level)
            after = self._after(level, self._width(self._pieces - number))
            if self._budget.spent:
                return None
            if after is None:
                self.stuck = self._places()
                return None
            level = after
        return self._places()

    def _width(self, left: int) -> int:
        """How many fillings are followed when so many pieces are left."""
        return int(FIRST_WIDTH * min(MOST_TIMES_AS_WIDE, sqrt((self._pieces / left) ** 3)))

    def _of_kinds_left(self, level: Level) -> Level:
        """The same fillings, told without the kinds that are used up in all of them.

        From now on no more is foreseen as waste than the pieces left force.
        """
        most = level.counts.max(axis=0)
        kinds = most > 0
        ways = self._ways = self._ways.of(kinds)
        most = most[kinds]
        self._empty_across = Unfilled(self._box.across, ways.across, ways.kind, most)
        self._empty_along = Unfilled(self._box.along, ways.along, ways.kind, most)
        return replace(level, counts=level.counts[:, kinds])

    def _after(self, level: Level, width: int) -> Level | None:
        """The best fillings with one piece more; None where no filling has room for one."""
        gaps = gaps_of(level, self._ways, self._spare)
        if gaps is None:
            return None
        steps = self._scored(level, gaps)
        best = _best(steps.score, gaps.filling[steps.gap], width + width // 3)
        work = UNITS_A_LEVEL + len(best) * FILLINGS_A_UNIT + len(steps.way) // PLACES_A_UNIT
        self._budget.work -= int(work)
        return self._grown(level, gaps, steps.of(best), width)

    def _scored(self, level: Level, gaps: Gaps) -> _Steps:
        """Every piece in every gap that it fits, at the higher wall, with its score."""
        ways, top = self._ways, self._box.along
        across, along = self._empty_across, self._empty_along
        narrowest = ways.narrowest_of(level.counts)[gaps.filling]
        starts, levels = gaps.outlines
        every = np.arange(len(gaps.wasted))
        empty_along = along.of(top - gaps.level)
        wall_left, wall_right = levels[every, gaps.index - 1], levels[every, gaps.index + 1]
        to_left = wall_left >= wall_right
        near, far = np.maximum(wall_left, wall_right), np.minimum(wall_left, wall_right)

        # the neighbour at the near wall may get walled in by the piece
        beside = np.where(to_left, gaps.index - 1, gaps.index + 1)
        beyond = np.clip(np.where(to_left, beside - 1, beside + 1), 0, levels.shape[1] - 1)
        ends = np.append(starts, np.full((len(every), 1), self._box.across), axis=1)
        beside_width = ends[every, beside + 1] - ends[every, beside]
        beside_waste = np.where(beside_width < narrowest, beside_width, across.of(beside_width))
        beyond_level = levels[every, beyond]

        # what the gap had been foreseen to waste is worked out anew for each piece put into it
        widths = gaps.outlines.widths()
        inner = levels[:, 1:-1]
        depth = np.minimum(levels[:, :-2], levels[:, 2:]) - inner
        empty = np.where(widths < narrowest[:, None], widths, across.of(widths))
        foreseen = np.where(depth > 0, empty * depth, 0) + widths * along.of(top - inner)
        base = gaps.wasted + foreseen.sum(axis=1) - foreseen[every, gaps.index - 1]

        at, way = np.nonzero(gaps.fits)
        here = starts[every, gaps.index][at]
        at_right = here + gaps.width[at] - ways.across[way]
        # a piece that may not start so far across goes to the left, where it does fit
        goes_left = to_left[at] | (at_right > ways.latest_across[way])
        places = np.where(goes_left, here, at_right)
        gap_level, gap_width, far_wall = gaps.level[at], gaps.width[at], far[at]
        wide, long = ways.across[way], ways.along[way]
        rest, reach = gap_width - wide, gap_level + long
        up_to = np.minimum(reach, far_wall)
        waste = base[at] + wide * along.of(top - reach)
        waste += np.where(
            rest < narrowest[at],
            rest * (up_to - gap_level + along.of(top - up_to)),
            across.of(rest) * (up_to - gap_level) + rest * empty_along[at],
        )
        near_wall = near[at]
        walled_in = np.minimum(beyond_level[at], reach) - near_wall
        waste += beside_waste[at] * np.maximum(walled_in, 0)
        flush = (reach == near_wall) + (rest == 0) * (1 + (reach == far_wall))
        worth = level.worth[gaps.filling[at]] + ways.worth[way]
        score = (waste + self._lead - self._bonus * flush) / worth
        return _Steps(score, at, way, places, goes_left)

    def _grown(self, level: Level, gaps: Gaps, steps: _Steps, width: int) -> Level | None:
        """The fillings that these steps lead to, each once; None where all waste too much."""
        gap, way, across, to_left = steps.gap, steps.way, steps.across, steps.to_left
        every = np.arange(len(gap))
        ways = self._ways
        kind, before = ways.kind[way], gaps.filling[gap]
        counts = level.counts[before]
        counts[every, kind] -= 1
        index, along = gaps.index[gap], gaps.level[gap]
        reach = along + ways.along[way]
        outlines = split(
            gaps.outlines.of(gap),
            index,
            np.where(to_left, across + ways.across[way], across),
            np.where(to_left, reach, along),
            np.where(to_left, along, reach),
        )
        outlines, lost = without_dead_ends(
            outlines, ways.narrowest_of(counts), ways.shortest_of(counts)
        )
        wasted = gaps.wasted[gap] + lost
        marks = level.marks[before] + ways.mark[kind]
        may = np.nonzero(wasted + self._foreseen(outlines) <= self._spare)[0]
        if not len(may):
            return None
        _, once = np.unique((_marks_of(outlines) ^ marks)[may], return_index=True)
        kept = may[np.sort(once)[:width]]
        self._steps.append(_Step(before[kept], ways.number[way[kept]], across[kept], along[kept]))
        return Level(
            outlines.of(kept),
            counts[kept],
            wasted[kept],
            (level.worth[before] + ways.worth[way])[kept],
            marks[kept],
        )

    def _foreseen(self, outlines: Skylines) -> Whole:
        """Area that must go to waste because no sum of pieces fills it: in gaps, or up to the top.

        The same place may be counted in both, so only the greater holds.
        """
        inner, widths = outlines.levels[:, 1:-1], outlines.widths()
        depth = np.minimum(outlines.levels[:, :-2], outlines.levels[:, 2:]) - inner
        in_gaps = np.where(depth > 0, self._empty_across.of(widths) * depth, 0).sum(axis=1)
        above = (widths * self._empty_along.of(self._box.along - inner)).sum(axis=1)
        more: Whole = np.maximum(in_gaps, above)
        return more

    def _places(self) -> list[Put]:
        """The best filling so far, piece by piece."""
        puts: list[Put] = []
        at = 0
        for step in reversed(self._steps):
            kind, lie = self._lies[int(step.way[at])]
            puts.append(Put(kind, int(step.across[at]), int(step.along[at]), lie))
            at = int(step.before[at])
        return puts[::-1]


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


def _best(score: npt.NDArray[np.float64], filling: Whole, wanted: int) -> Whole:
    """The indexes of the best steps, the best first, of each filling only a few."""
    some = np.arange(len(score))
    if len(score) > 4 * wanted:
        least = np.partition(score, 4 * wanted - 1)[4 * wanted - 1]
        some = np.nonzero(score <= least)[0]
    some = some[np.argsort(score[some], kind="stable")]
    by_filling = np.argsort(filling[some], kind="stable")
    ordered = filling[some][by_filling]
    rank = np.empty(len(some), dtype=np.int64)
    rank[by_filling] = np.arange(len(some)) - np.searchsorted(ordered, ordered)
    return some[rank < DESCENDANTS][:wanted]


def _marks_of(outlines: Skylines) -> Marks:
    """A number for each outline, the same for the same and hardly ever for another."""
    starts, levels = outlines.starts.astype(np.uint64), outlines.levels.astype(np.uint64)
    mixed = starts * MIX[0] + levels * MIX[1]
    mixed ^= mixed >> np.uint64(29)
    mixed *= MIX[2]
    mixed ^= mixed >> np.uint64(32)
    # how many columns of right wall a row has is no part of its outline
    here = outlines.starts < outlines.across
    marks: Marks = np.where(here, mixed, np.uint64(0)).sum(axis=1, dtype=np.uint64)
    return marks
