"""What a wide beam is asked and what it writes on, as arrays of whole numbers.

An outline is a row of segments between two walls as high as the box: entry 0 is the wall on the
left, of no width, and the entry after the last segment is the wall on the right, which starts where
the box ends. So every segment has a neighbour on both sides; see `skyline` for what a skyline is.
Starts and levels of outlines are rows of two arrays.
"""

from __future__ import annotations

from typing import NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

Whole: TypeAlias = npt.NDArray[np.int64]
Scores: TypeAlias = npt.NDArray[np.float64]

GAPS = 2
"""Gaps of a filling that are tried."""
DESCENDANTS = 3
"""Most steps from one filling, so that a beam does not fill up with the likes of one."""
KIND, ACROSS, ALONG, LATEST_ACROSS, LATEST_ALONG, WORTH = range(6)
"""Rows of the sizes of ways."""
SEGMENTS, WASTED, WORTH_IN, MARK = range(4)
"""Facts of a filling; equal pieces put in give an equal mark."""
AT = 2
"""The segment that is a gap: a fact of a gap, after the segments of its outline and the waste."""
FILLING, GAP, WAY, X, Y, TO_LEFT = range(6)
"""Facts of a step: which piece goes into which gap of which filling, and where."""


class Asked(NamedTuple):
    """The box, the area of it that may go to waste, and what flatters a filling, as areas.

    `lead` is added to all waste; `flush` is forgiven for each edge that runs on in a neighbour's.
    """

    across: int
    along: int
    spare: int
    lead: int
    flush: int


class Ways(NamedTuple):
    """The ways in which pieces may lie, a column a way in `sizes`, those of one kind together.

    The ways of kind k are `first[k]` up to `first[k + 1]`; `by_width` has all, the narrowest first.
    """

    sizes: Whole
    first: Whole
    by_width: Whole


class Room(NamedTuple):
    """All that a beam writes on.

    Two levels of fillings in turn: outlines, counts of the pieces left, and facts. For each filling
    its gaps, with the outline in which that gap is the lowest. The steps of a level. What was taken
    to come to each filling of each level: the filling before, the way, and where it lies across and
    along. The marks of the fillings met, and at which level.
    """

    starts: Whole
    levels: Whole
    counts: Whole
    facts: Whole
    gap_starts: Whole
    gap_levels: Whole
    gap_facts: Whole
    steps: Whole
    taken: Whole
    met: Whole
    met_in: Whole


def room_for(fillings: int, levels: int, segments: int, kinds: int) -> Room:
    """Room for so many fillings a level, so many pieces to put in, and so many segments at first.

    A piece adds one segment to an outline at most, before it is merged.
    """

    def whole(*shape: int) -> Whole:
        return np.zeros(shape, dtype=np.int64)

    columns = segments + levels + 4
    steps = fillings * DESCENDANTS
    met = 64
    while met < 4 * fillings:
        met *= 2
    return Room(
        starts=whole(2, fillings, columns),
        levels=whole(2, fillings, columns),
        counts=whole(2, fillings, kinds),
        facts=whole(2, fillings, 4),
        gap_starts=whole(fillings, GAPS, columns),
        gap_levels=whole(fillings, GAPS, columns),
        gap_facts=whole(fillings, GAPS, 3),
        steps=whole(steps, 6),
        taken=whole(4, levels, fillings),
        met=whole(met),
        met_in=whole(met),
    )
