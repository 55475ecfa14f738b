"""Parts of circles as they lie in their boxes: arcs in short straight steps, and straight edges."""

from __future__ import annotations

from math import asin, ceil, cos, pi, sin

from estimator.needs.arc import Arc
from estimator.reports.pictures.marks import Point, Shape

STEPS_OF_A_QUARTER = 24
_QUARTER = pi / 2


def part_of_circle(arc: Arc, wide: float, long: float) -> tuple[Shape, tuple[Shape, ...]]:
    """The outline in a box of this size that starts at (0, 0), and the holes in it.

    The waist lies further along than the hem, as the top of any piece does.
    """
    inner, outer = arc.inner.ticks, arc.outer.ticks
    beyond = arc.across.ticks, arc.along.ticks
    middle = (wide / 2, long / 2)
    quarters = round(arc.share * 4)
    if quarters == 4:
        hole = _arc(inner, 0, 4, middle)[:-1]
        return _arc(outer, 0, 4, middle)[:-1], (hole,) if inner > 0 else ()
    if quarters == 3:
        shape = _between(inner, outer, (1, 4), beyond, middle)
    elif quarters == 1:
        shape = _between(inner, outer, (0, 1), (beyond[1], beyond[0]), beyond)
    elif wide > long:
        shape = _between(inner, outer, (0, 2), (sum(beyond),) * 2, (wide / 2, sum(beyond)))
    else:
        shape = _between(inner, outer, (-1, 1), (sum(beyond),) * 2, (sum(beyond), long / 2))
    return tuple((x, long - y) for x, y in shape), ()


def _between(
    inner: float,
    outer: float,
    ends: tuple[float, float],
    beyond: tuple[float, float],
    middle: Point,
) -> Shape:
    """From one straight edge to the other, each so far ``beyond`` the ray that it is sewn on.

    ``ends`` are the directions of the rays in quarters of a turn. A waist so narrow that the
    allowances meet in it begins where they do.
    """
    inner = max(inner, *beyond)

    def arc(radius: float) -> Shape:
        if not radius:
            return (middle,)
        start, end = (asin(one / radius) / _QUARTER for one in beyond)
        return _arc(radius, ends[0] - start, ends[1] + end, middle)

    return (*arc(outer), *reversed(arc(inner)))


def _arc(radius: float, start: float, end: float, middle: Point) -> Shape:
    """Points of an arc from one direction to another, both in quarters of a turn."""
    steps = ceil((end - start) * STEPS_OF_A_QUARTER)
    turns = (_QUARTER * (start + (end - start) * step / steps) for step in range(steps + 1))
    return tuple((middle[0] + radius * cos(turn), middle[1] + radius * sin(turn)) for turn in turns)
