"""Beam search: fill a box piece by piece, following the most promising fillings side by side.

Each filling grows at its lowest gap: a piece goes into the corner of it at the higher wall, or the
gap is given up to the lower wall. After each piece only the best fillings are kept, as many as
the beam is wide. A filling that has wasted more than the box can spare is dropped; so is one that
equals another. "Best" is the least waste, known and foreseen, for the area filled, with a taste for
large pieces first and for edges that run on.
"""

from __future__ import annotations

from collections import Counter
from heapq import nsmallest
from math import sqrt
from operator import itemgetter
from typing import NamedTuple, TypeAlias

from estimator.layout.box import Lie, Put, keeps_to
from estimator.layout.effort import Budget
from estimator.layout.fill import Fill, Left, unfilled
from estimator.layout.question import Held
from estimator.layout.skyline import (
    Segment,
    Skyline,
    lowest,
    raised,
    walls,
    width_up_to,
    without_dead_ends,
)

GAPS_TRIED = 2
"""The lowest gap, and the next one if it is given up."""
DESCENDANTS = 2
"""So many of a filling's descendants are followed at most, lest all come to be alike;
all of them where there are not too many steps for the beam."""
MOST_TIMES_AS_WIDE = 30
"""A beam widens as pieces get fewer: the last ones decide, and trying them costs least."""


class _Filling(NamedTuple):
    skyline: Skyline
    counts: tuple[int, ...]
    wasted: int
    foreseen: int
    filled: int
    before: _Filling | None
    last: Put | None


class Taste(NamedTuple):
    """What makes a filling look good, besides little waste.

    `large_first`: a constant added to the waste, as a share of the area to fill, so that those look
    better that have used the large pieces. `flush`: how much waste, in mean pieces, is forgiven for
    each edge that a piece shares with its neighbour's end or with the far wall of its gap.
    """

    large_first: float
    flush: float


_Step: TypeAlias = tuple[float, _Filling, Skyline, int, int, Put, bool]


class Beam:
    """The search for one box, `width` fillings at a time at first.

    After a search `stuck` holds the best filling that had no place for another piece, and none
    where the work allowed ended first: a longer search might never come to it. `narrow` tells
    whether fillings were left out that a wider beam would follow.
    """

    def __init__(self, fill: Fill, width: int, taste: Taste, budget: Budget) -> None:
        box = fill.box
        self.narrow = False
        self.stuck: list[Put] = []
        self._box = box
        self._width = width
        self._budget = budget
        self._fill = fill
        self._spare = box.spare
        area = box.across * box.along - box.spare
        self._lead = taste.large_first * area
        self._bonus = taste.flush * area / max(1, sum(box.counts))

    def search(self) -> list[Put] | None:
        """A place for every piece, or None: none was found, which proves nothing."""
        if self._spare < 0:
            return None
        empty = ((0, 0, self._box.across),)
        level = [_Filling(empty, self._box.counts, 0, 0, 0, None, None)]
        for left in range(sum(self._box.counts), 0, -1):
            steps = [step for filling in level for step in self._steps(filling)]
            best = level[0]
            level = self._best(steps, self._width_for(left))
            if self._budget.spent:
                return None
            if not level:
                self.stuck = _places(best)
                return None
        return _places(level[0])

    def _steps(self, filling: _Filling) -> list[_Step]:
        """Every piece in every corner of the lowest gaps, with a score quick to work out."""
        top = self._box.along
        skyline, wasted, foreseen = filling.skyline, filling.wasted, filling.foreseen
        left = self._fill.left(filling.counts)
        steps: list[_Step] = []
        for tried in range(GAPS_TRIED):
            if tried:
                foreseen = sum(_foreseen(skyline, top, left))
            index = lowest(skyline)
            _, level, width = skyline[index]
            if level >= top:
                break
            self._fill_gap(filling, skyline, index, wasted, foreseen, left, steps)
            up_to = min(walls(skyline, index, top))
            wasted += width * (up_to - level)
            if wasted > self._spare:
                break
            skyline = raised(skyline, index, up_to)
        self._budget.work -= len(steps)
        return steps

    def _fill_gap(
        self,
        filling: _Filling,
        skyline: Skyline,
        index: int,
        wasted: int,
        foreseen: int,
        left: Left,
        steps: list[_Step],
    ) -> None:
        top = self._box.along
        spare, filled = self._spare, filling.filled
        lead, bonus = self._lead, self._bonus
        start, level, gap = skyline[index]
        wall_left, wall_right = walls(skyline, index, top)
        sums_along = left.sums_along
        # what the gap had been foreseen to waste is worked out anew for each piece put into it
        base = (
            wasted
            + foreseen
            - unfilled(left.sums_across, gap) * (min(wall_left, wall_right) - level)
            - gap * unfilled(sums_along, top - level)
        )
        for kind, count in enumerate(filling.counts):
            if not count:
                continue
            held = self._box.held[kind]
            for lie in self._box.lies[kind]:
                across, along = lie.across, lie.along
                if across > gap or level > lie.latest_along:
                    continue
                over = base + across * unfilled(sums_along, top - level - along)
                area = filled + across * along
                rest = gap - across
                height = level + along
                at_left = wall_left >= wall_right or start + rest > lie.latest_across
                at_right = not at_left
                if held is not Held.FREE:
                    at_left = keeps_to(held, start, lie)
                    at_right = rest > 0 and keeps_to(held, start + rest, lie)
                if at_left and start <= lie.latest_across:
                    waste = over + self._beside(skyline, index, height, rest, wall_right, -1, left)
                    if waste <= spare * 2:
                        put = Put(kind, start, level, lie)
                        flush = (height == wall_left) + (0 if rest else 1 + (height == wall_right))
                        score = (waste + lead - bonus * flush) / area
                        steps.append((score, filling, skyline, index, wasted, put, True))
                if at_right:
                    waste = over + self._beside(skyline, index, height, rest, wall_left, 1, left)
                    if waste <= spare * 2:
                        put = Put(kind, start + rest, level, lie)
                        score = (waste + lead - bonus * (height == wall_right)) / area
                        steps.append((score, filling, skyline, index, wasted, put, False))

    def _beside(
        self,
        skyline: Skyline,
        index: int,
        height: int,
        rest: int,
        far_wall: int,
        side: int,
        left: Left,
    ) -> int:
        """Waste foreseen in the rest of the gap, and in the neighbour that may get walled in."""
        top = self._box.along
        level = skyline[index][1]
        waste = 0
        if rest:
            up_to = min(height, far_wall)
            if rest < left.narrowest:
                waste += rest * (up_to - level) + rest * unfilled(left.sums_along, top - up_to)
            else:
                waste += unfilled(left.sums_across, rest) * (up_to - level)
                waste += rest * unfilled(left.sums_along, top - level)
        near = index + side
        if 0 <= near < len(skyline):
            _, near_level, near_width = skyline[near]
            if near_level < height:
                beyond = near + side
                wall = skyline[beyond][1] if 0 <= beyond < len(skyline) else top
                if wall > near_level:
                    depth = min(wall, height) - near_level
                    waste += unfilled(left.sums_across, near_width) * depth
        return waste

    def _width_for(self, left: int) -> int:
        """How many fillings are followed when so many pieces are left."""
        pieces = sum(self._box.counts)
        return int(self._width * min(MOST_TIMES_AS_WIDE, sqrt((pieces / left) ** 3)))

    def _best(self, steps: list[_Step], wanted: int) -> list[_Filling]:
        """The fillings that the best steps lead to, each once."""
        found: dict[tuple[Skyline, tuple[int, ...]], _Filling] = {}
        followed: Counter[int] = Counter()
        descendants = DESCENDANTS if len(steps) > wanted else wanted
        for step in nsmallest(3 * wanted, steps, key=itemgetter(0)):
            before = id(step[1])
            if followed[before] == descendants:
                self.narrow = True
                continue
            followed[before] += 1
            filling = self._after(step)
            if filling is None:
                continue
            found.setdefault((filling.skyline, filling.counts), filling)
            if len(found) == wanted:
                self.narrow = True
                break
        self._budget.work -= 3 * len(found)
        return list(found.values())

    def _after(self, step: _Step) -> _Filling | None:
        """The filling after a step; None if it wastes too much or leaves tall pieces no room."""
        _, before, skyline, index, wasted, put, at_left = step
        kind, across, along, lie = put
        counts = before.counts
        counts = (*counts[:kind], counts[kind] - 1, *counts[kind + 1 :])
        left = self._fill.left(counts)
        start, level, gap = skyline[index]
        piece: Segment = (across, along + lie.along, lie.across)
        rest = gap - lie.across
        beside = (
            (piece, (start + lie.across, level, rest)) if at_left else ((start, level, rest), piece)
        )
        top = self._box.along
        settled, lost = without_dead_ends(
            (*skyline[:index], *beside, *skyline[index + 1 :]), top, left.narrowest, left.shortest
        )
        wasted += lost
        gaps, tops = _foreseen(settled, top, left)
        if wasted + max(gaps, tops) > self._spare:
            return None
        if any(width_up_to(settled, latest) < width for latest, width in left.tall):
            return None
        if left.held and not _edges_serve(left.held, settled, top):
            return None
        filled = before.filled + _area(lie)
        return _Filling(settled, counts, wasted, gaps + tops, filled, before, put)


def _area(lie: Lie) -> int:
    return lie.across * lie.along


def _edges_serve(held: tuple[int, int, int], skyline: Skyline, top: int) -> bool:
    """Whether the pieces still to be held at the near, the far or either edge find the length."""
    near, far, either = held
    near_room, far_room = top - skyline[0][1], top - skyline[-1][1]
    return near <= near_room and far <= far_room and near + far + either <= near_room + far_room


def _foreseen(skyline: Skyline, top: int, left: Left) -> tuple[int, int]:
    """Area that must go to waste because no sum of pieces fills it: in gaps, and up to the top.

    Both are true by themselves; the same place may be counted in both.
    """
    gaps = tops = 0
    last = len(skyline) - 1
    before = top
    for index, (_, level, width) in enumerate(skyline):
        after = skyline[index + 1][1] if index < last else top
        if level < top:
            tops += width * unfilled(left.sums_along, top - level)
            if before > level < after:
                gaps += unfilled(left.sums_across, width) * (min(before, after) - level)
        before = level
    return gaps, tops


def _places(filling: _Filling) -> list[Put]:
    puts = []
    at: _Filling | None = filling
    while at is not None and at.last is not None:
        puts.append(at.last)
        at = at.before
    return puts[::-1]
