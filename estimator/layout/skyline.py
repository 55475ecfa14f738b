"""The skyline: how far a box is filled, as level segments from one side of it to the other.

       |-----|              A segment is (start, level, width). No two neighbours are level,
|------|     |              so the lowest one is a gap between two walls; the sides of the box
|            |----|    <-   are walls as high as the box.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeAlias

Segment: TypeAlias = tuple[int, int, int]
Skyline: TypeAlias = tuple[Segment, ...]


def merged(segments: Sequence[Segment]) -> Skyline:
    """The same outline with level neighbours made one segment and empty ones left out."""
    out: list[Segment] = []
    level = -1
    for segment in segments:
        if not segment[2]:
            continue
        if segment[1] == level:
            start, _, width = out[-1]
            out[-1] = (start, level, width + segment[2])
        else:
            out.append(segment)
            level = segment[1]
    return tuple(out)


def lowest(skyline: Skyline) -> int:
    """Index of the lowest segment, the first of several."""
    found, level = 0, skyline[0][1]
    for index, segment in enumerate(skyline):
        if segment[1] < level:
            found, level = index, segment[1]
    return found


def walls(skyline: Skyline, index: int, top: int) -> tuple[int, int]:
    """Levels to the left and right of a segment; the sides of the box are `top` high."""
    left = skyline[index - 1][1] if index else top
    right = skyline[index + 1][1] if index + 1 < len(skyline) else top
    return left, right


def width_up_to(skyline: Skyline, level: int) -> int:
    """How much of the outline is no higher than `level`."""
    return sum(width for _, height, width in skyline if height <= level)


def raised(skyline: Skyline, index: int, level: int) -> Skyline:
    """The skyline with one segment given up to waste as far as `level`."""
    start, _, width = skyline[index]
    return merged((*skyline[:index], (start, level, width), *skyline[index + 1 :]))


def without_dead_ends(
    segments: Sequence[Segment], top: int, narrowest: int, shortest: int
) -> tuple[Skyline, int]:
    """Give up every place where no piece fits any more; the skyline left, and the area lost.

    That is where less than `shortest` is left below `top`, and gaps narrower than `narrowest`.
    """
    lost = 0
    last_level = top - shortest
    levelled = []
    for start, level, width in segments:
        if last_level < level < top:
            lost += width * (top - level)
            level = top
        levelled.append((start, level, width))
    skyline = merged(levelled)
    index = 0
    while index < len(skyline):
        _, level, width = skyline[index]
        if width < narrowest and level < top:
            left, right = walls(skyline, index, top)
            if left > level < right:
                up_to = min(left, right)
                lost += width * (up_to - level)
                if up_to > last_level and up_to < top:
                    lost += width * (top - up_to)
                    up_to = top
                skyline = raised(skyline, index, up_to)
                index = max(0, index - 2)
                continue
        index += 1
    return skyline, lost
