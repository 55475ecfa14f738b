"""Many skylines at once, as rows of two arrays: where each segment starts, and its level.

Each row begins and ends with a wall as high as the box: column 0 is the wall on the left, of no
width, and all columns after the last segment are the wall on the right, which starts where the box
ends. So every segment has a neighbour on both sides. Whole numbers throughout; see `skyline` for
what a skyline is.
"""

from __future__ import annotations

from typing import NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

Whole: TypeAlias = npt.NDArray[np.int64]
Flags: TypeAlias = npt.NDArray[np.bool_]


class Skylines(NamedTuple):
    """Start and level of every segment; one skyline a row, a wall at either end of it."""

    starts: Whole
    levels: Whole

    @property
    def across(self) -> int:
        """Where the wall on the right stands: the width of the box."""
        return int(self.starts[0, -1])

    @property
    def top(self) -> int:
        """How high the walls are: the length of the box."""
        return int(self.levels[0, -1])

    def of(self, rows: Whole | Flags) -> Skylines:
        """The skylines of these rows, in this order."""
        return Skylines(self.starts[rows], self.levels[rows])

    def widths(self) -> Whole:
        """Widths of the segments between the walls, one column fewer at either end."""
        return self.starts[:, 2:] - self.starts[:, 1:-1]


def flat(across: int, top: int) -> Skylines:
    """One empty box."""
    return Skylines(np.array([[0, 0, across]]), np.array([[top, 0, top]]))


def joined(parts: list[Skylines]) -> Skylines:
    """All skylines of these, one after another; shorter rows get more of their right wall."""
    columns = max(part.starts.shape[1] for part in parts)
    even = [
        Skylines(
            _longer(part.starts, columns, part.across), _longer(part.levels, columns, part.top)
        )
        for part in parts
    ]
    return Skylines(
        np.concatenate([part.starts for part in even]),
        np.concatenate([part.levels for part in even]),
    )


def _longer(array: Whole, columns: int, value: int) -> Whole:
    rows, had = array.shape
    if had == columns:
        return array
    return np.concatenate([array, np.full((rows, columns - had), value)], axis=1)


def merged(skylines: Skylines) -> Skylines:
    """The same outlines without empty segments and with level neighbours made one."""
    starts, levels = skylines
    empty = starts[:, 1:-1] == starts[:, 2:]
    # an empty segment starts where the next one does: level with it, it takes its place
    levels = levels.copy()
    np.copyto(levels[:, 1:-1], levels[:, 2:], where=empty)
    keep = np.ones(starts.shape, dtype=bool)
    # the first segment is never made one with the wall on its left: it would lose its start
    np.not_equal(levels[:, 2:], levels[:, 1:-1], out=keep[:, 2:])
    to = np.cumsum(keep, axis=1)
    columns = int(to[:, -1].max()) + 1
    rows, at = np.nonzero(keep)
    to = to[rows, at] - 1
    fewer = Skylines(
        np.full((len(keep), columns), skylines.across), np.full((len(keep), columns), skylines.top)
    )
    fewer.starts[rows, to] = starts[rows, at]
    fewer.levels[rows, to] = levels[rows, at]
    return fewer


def split(skylines: Skylines, at: Whole, start: Whole, left: Whole, right: Whole) -> Skylines:
    """Each skyline with its segment `at` split at `start`, `left` and `right` high; not merged."""
    rows, columns = skylines.starts.shape
    every = np.arange(rows)
    before = np.arange(columns) <= at[:, None]
    starts = np.empty((rows, columns + 1), dtype=np.int64)
    levels = np.empty((rows, columns + 1), dtype=np.int64)
    for whole, array in ((starts, skylines.starts), (levels, skylines.levels)):
        whole[:, 1:] = array
        np.copyto(whole[:, :-1], array, where=before)
    starts[every, at + 1] = start
    levels[every, at] = left
    levels[every, at + 1] = right
    return Skylines(starts, levels)


def without_dead_ends(
    skylines: Skylines, narrowest: Whole, shortest: Whole
) -> tuple[Skylines, Whole]:
    """Each skyline with the places given up where no piece fits any more, and the area lost.

    That is where less than `shortest` is left below the top, and gaps narrower than `narrowest`,
    those sizes being told for each skyline. What comes out is merged; what goes in need not be.
    """
    top = skylines.top
    last = (top - shortest)[:, None]
    lost = np.zeros(len(shortest), dtype=np.int64)
    levels = skylines.levels
    late = (levels > last) & (levels < top)
    if late.any():
        widths = np.diff(skylines.starts, axis=1, append=skylines.across)
        lost += np.where(late, widths * (top - levels), 0).sum(axis=1)
        skylines = Skylines(skylines.starts, np.where(late, top, levels))
    skylines = merged(skylines)
    while True:
        levels = skylines.levels
        inner, widths = levels[:, 1:-1], skylines.widths()
        wall = np.minimum(levels[:, :-2], levels[:, 2:])
        dead = (wall > inner) & (widths < narrowest[:, None]) & (widths > 0)
        if not dead.any():
            return skylines, lost
        up_to = np.where(wall > last, top, wall)
        lost += np.where(dead, widths * (up_to - inner), 0).sum(axis=1)
        levels = levels.copy()
        np.copyto(levels[:, 1:-1], up_to, where=dead)
        skylines = merged(Skylines(skylines.starts, levels))
