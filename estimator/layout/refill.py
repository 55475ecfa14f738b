"""What the attempts of a long search keep of the best layout so far: the pieces up to some line.

The last pieces of a layout go where the first ones left room, and most layouts go wrong late. So
the pieces that start before a line across the cloth stay where they are, and only the box beyond it
is filled anew: that costs less than a whole box, and what is kept is known to be good.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from estimator.layout.box import Box, Put
from estimator.layout.kinds import Kind, Spot

WHOLE_BOXES_FIRST = 4
LINES = (70, 60, 50, 40, 30, 20, 0)
"""Where the line is, in hundredths of the length: one after another, again and again."""


def line_of(attempt: int, length: int) -> int:
    """The line up to which pieces are kept in an attempt, counted from 1; 0 keeps none."""
    if attempt <= WHOLE_BOXES_FIRST:
        return 0
    return length * LINES[(attempt - WHOLE_BOXES_FIRST - 1) % len(LINES)] // 100


def kept(box: Box, spots: Iterable[Spot], kinds: Sequence[Kind], unit: int, line: int) -> list[Put]:
    """The pieces of a layout that start before a line and may lie so in the box, lowest first.

    Spots and kinds are in ticks, the box and the line in units of so many ticks.
    """
    puts = []
    for spot in spots:
        across, along = spot.across // unit, spot.along // unit
        turned = spot.width != kinds[spot.kind].width
        puts += [
            Put(spot.kind, across, along, lie)
            for lie in box.lies[spot.kind]
            if lie.turned == turned and along < line and along <= lie.latest_along
        ]
    return sorted(puts, key=lambda put: (put.along, put.across))
