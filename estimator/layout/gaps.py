"""Where a piece may go next in many fillings at once: the lowest gap of each that takes one.

A gap that takes no piece left is given up to the lower of its walls, and so is, for once, one that
does: a filling may do better to leave it empty.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from estimator.layout.skylines import Flags, Skylines, Whole, joined, merged
from estimator.layout.ways import Marks, Ways


@dataclass(frozen=True, slots=True)
class Level:
    """Fillings with equally many pieces: outline, pieces left, waste, worth put in, a mark each."""

    outlines: Skylines
    counts: Whole
    wasted: Whole
    worth: Whole
    marks: Marks


@dataclass(frozen=True, slots=True)
class Gaps:
    """A gap of each outline in which something fits: of which filling, and how it lies.

    `fits` tells for each way of each kind whether it fits.
    """

    outlines: Skylines
    wasted: Whole
    filling: Whole
    index: Whole
    level: Whole
    width: Whole
    fits: Flags

    def of(self, rows: Flags) -> Gaps:
        """The gaps of these rows alone."""
        return Gaps(
            self.outlines.of(rows),
            self.wasted[rows],
            self.filling[rows],
            self.index[rows],
            self.level[rows],
            self.width[rows],
            self.fits[rows],
        )


def gaps_of(level: Level, ways: Ways, spare: int) -> Gaps | None:
    """The lowest gap of each filling that takes a piece, and the next lowest one.

    Those that come to waste more than `spare` are left out; None if no gap is left.
    """
    top = level.outlines.top
    parts: list[Gaps] = []
    outlines, wasted = level.outlines, level.wasted
    filling = np.arange(len(wasted))
    unskipped = np.ones(len(wasted), dtype=bool)
    is_left = (level.counts > 0)[:, ways.kind]
    while True:
        every = np.arange(len(wasted))
        starts, levels = outlines
        index = levels.argmin(axis=1)
        low = levels[every, index]
        start = starts[every, index]
        width = starts[every, index + 1] - start
        fits = is_left[filling] & (ways.across <= width[:, None])
        fits &= (ways.latest_across >= start[:, None]) & (ways.latest_along >= low[:, None])
        some = fits.any(axis=1)
        if some.any():
            parts.append(Gaps(outlines, wasted, filling, index, low, width, fits).of(some))
        on = (~some | unskipped) & (low < top)
        up_to = np.minimum(levels[every, index - 1], levels[every, index + 1])
        wasted = wasted + width * (up_to - low)
        on &= wasted <= spare
        if not on.any():
            return _joined(parts) if parts else None
        unskipped = (unskipped & ~some)[on]
        levels = levels.copy()
        levels[every, index] = up_to
        outlines = merged(Skylines(starts[on], levels[on]))
        wasted, filling = wasted[on], filling[on]


def _joined(parts: list[Gaps]) -> Gaps:
    return Gaps(
        joined([part.outlines for part in parts]),
        np.concatenate([part.wasted for part in parts]),
        np.concatenate([part.filling for part in parts]),
        np.concatenate([part.index for part in parts]),
        np.concatenate([part.level for part in parts]),
        np.concatenate([part.width for part in parts]),
        np.concatenate([part.fits for part in parts]),
    )
