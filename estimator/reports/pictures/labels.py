"""What is lettered on a piece of a layout, and where it goes without touching the edge.

A label is tried level and then upright, in ever smaller letters, its grain arrow beside it. A piece
that has no room for its name bears its mark alone, and the name stands in a legend.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import sqrt

from estimator.reports.pictures.lettering import LEADING, width_of, wrapped
from estimator.reports.pictures.marks import THIN, Lettering, Mark, Point, Shape, Stroke
from estimator.reports.pictures.outlines import Grain

SIZES = (9.5, 8.0, 7.0)
SMALL_SIZES = (9.5, 8.0, 6.5, 5.0)
MOST_LINES = 3
MARGIN = 1.8
GAP = 3.0
BARB = 2.6
ARROWS = (14.0, 34.0)
"""The least and the greatest length of a grain arrow beside a name."""
_TRIED = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)


@dataclass(frozen=True, slots=True)
class Words:
    """What is to be said of a piece: its mark, its name, its size; and how its grain runs.

    ``one_way`` tells that it must not be turned end for end.
    """

    mark: str
    name: str
    size: str
    grain: Grain
    one_way: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """Lettering and arrow of a piece; ``in_full`` where its name and its size are on it."""

    marks: tuple[Mark, ...]
    in_full: bool


@dataclass(frozen=True, slots=True)
class _Block:
    """Lines of text of one size with an arrow before them or, ``stacked``, above them.

    ``long`` and ``high`` are as the text is read; ``upright`` turns the whole of it.
    """

    lines: tuple[str, ...]
    size: float
    arrow: float
    upright: bool = False
    stacked: bool = False

    @property
    def text(self) -> Point:
        """The length and the height of the lines."""
        long = max(width_of(line, self.size) for line in self.lines)
        return long, len(self.lines) * self.size * LEADING

    @property
    def beside(self) -> float:
        """What the arrow takes, and its distance from the text."""
        return self.arrow + GAP if self.arrow else 0.0

    @property
    def room(self) -> Point:
        """Width and height on the page."""
        long, high = self.text
        if self.stacked:
            long, high = max(long, self.arrow), high + self.beside
        else:
            long, high = long + self.beside, max(high, self.arrow)
        return (high, long) if self.upright else (long, high)


def label(shape: Shape, holes: tuple[Shape, ...], words: Words) -> Label:
    """The label of a piece of this shape, placed in it; without marks where not one sign fits."""
    left, top = min(x for x, _ in shape), min(y for _, y in shape)
    own, *cut_out = (
        tuple((round(x - left, 1), round(y - top, 1)) for x, y in one) for one in (shape, *holes)
    )
    found = _placed(own, tuple(cut_out), words)
    if found is None:
        return Label((), in_full=False)
    block, (x, y) = found
    marks = tuple(_marks(block, (x + left, y + top), words))
    return Label(marks, in_full=len(block.lines) > 1)


@lru_cache(maxsize=4096)
def _placed(shape: Shape, holes: tuple[Shape, ...], words: Words) -> tuple[_Block, Point] | None:
    """The first block that finds room, and the middle of its place."""
    wide, high = max(x for x, _ in shape), max(y for _, y in shape)
    for block in _blocks(words, wide, high):
        room = (block.room[0] + 2 * MARGIN, block.room[1] + 2 * MARGIN)
        if room[0] > wide or room[1] > high:
            continue
        for middle in _middles(wide, high):
            if _within(shape, holes, middle, room):
                return block, middle
    return None


def _blocks(words: Words, wide: float, high: float) -> Iterator[_Block]:
    """What could be lettered on a piece in a box of this size, the best first."""
    for size in SIZES:
        for upright in (False, True):
            room = (high if upright else wide) - 2 * MARGIN
            for lines in _broken(words, room, size):
                tall = len(lines) * size * LEADING
                arrow = min(max(ARROWS[0], tall), ARROWS[1])
                yield _Block(lines, size, arrow, upright)
                yield _Block(lines, size, ARROWS[0], upright, stacked=True)
    for size in SMALL_SIZES:
        for arrow in (max(size, 7.0), 0.0):
            for upright in (False, True):
                yield _Block((words.mark,), size, arrow, upright)
                yield _Block((words.mark,), size, arrow, upright, stacked=True)


def _broken(words: Words, room: float, size: float) -> Iterator[tuple[str, ...]]:
    """The name on one line, on two, on three, and the size of the piece below it on one or two."""
    found = []
    full = width_of(words.name, size)
    for part in range(1, MOST_LINES + 1):
        lines = wrapped(words.name, min(room, full / part * 1.25), size)
        if lines and len(lines) <= MOST_LINES and lines not in found:
            found.append(lines)
    across, by, along = words.size.partition("× ")
    for lines in found:
        yield (*lines, words.size)
    for lines in found:
        yield (*lines, across, f"{by}{along}")


def _middles(wide: float, high: float) -> list[Point]:
    """Places for the middle of a label, the middle of the piece first."""
    places = [(x, y) for x in _TRIED for y in _TRIED]
    places.sort(key=lambda one: (one[0] - 0.5) ** 2 + (one[1] - 0.5) ** 2)
    return [(x * wide, y * high) for x, y in places]


def _within(shape: Shape, holes: tuple[Shape, ...], middle: Point, room: Point) -> bool:
    """Whether a rectangle of this size round a point lies within a shape and beside its holes.

    Its edges are tried point by point; no corner of the shape may lie in it.
    """
    left, right = middle[0] - room[0] / 2, middle[0] + room[0] / 2
    top, bottom = middle[1] - room[1] / 2, middle[1] + room[1] / 2
    corners = (point for one in (shape, *holes) for point in one)
    if any(left < x < right and top < y < bottom for x, y in corners):
        return False
    steps = [0.0, 1.0] if len(shape) <= 4 and not holes else [step / 6 for step in range(7)]
    return all(
        inside(shape, point) and not any(inside(hole, point) for hole in holes)
        for at in steps
        for point in (
            (left + (right - left) * at, top),
            (left + (right - left) * at, bottom),
            (left, top + (bottom - top) * at),
            (right, top + (bottom - top) * at),
        )
    )


def inside(shape: Shape, point: Point) -> bool:
    """Whether a point lies in a shape: a ray from it crosses the outline an odd number of times."""
    x, y = point
    odd = False
    for (a, b), (c, d) in zip(shape, (*shape[1:], shape[0]), strict=True):
        if (b > y) != (d > y) and x < a + (y - b) * (c - a) / (d - b):
            odd = not odd
    return odd


def _marks(block: _Block, middle: Point, words: Words) -> Iterator[Mark]:
    """The lines of a block and its arrow round its middle; upright ones read from below upwards."""
    long, high = block.text
    across, down = block.beside / 2, 0.0
    sign = (-long / 2 - block.beside / 2 + block.arrow / 2, 0.0)
    if block.stacked:
        across, down = 0.0, block.beside / 2
        sign = (0.0, -high / 2 - block.beside / 2 + block.arrow / 2)
    if block.arrow:
        yield from arrow(_turned(sign, middle, block), block.arrow, words)
    first = -(len(block.lines) - 1) / 2
    for number, line in enumerate(block.lines):
        at = (across, down + (first + number) * block.size * LEADING)
        yield Lettering(_turned(at, middle, block), line, block.size, "middle", block.upright)


def _turned(point: Point, middle: Point, block: _Block) -> Point:
    x, y = point
    return (middle[0] + y, middle[1] - x) if block.upright else (middle[0] + x, middle[1] + y)


def arrow(middle: Point, long: float, words: Words) -> Iterator[Mark]:
    """A grain arrow of some length; with one head where all pieces lie one way."""
    part = long / 2 - 0.5
    x, y = {
        Grain.ALONG: (0.0, part),
        Grain.ACROSS: (part, 0.0),
        Grain.BIAS: (part / sqrt(2), part / sqrt(2)),
    }[words.grain]
    head, tail = (middle[0] + x, middle[1] + y), (middle[0] - x, middle[1] - y)
    yield Stroke((tail, head), THIN * 1.6)
    yield _barbs(head, (x / part, y / part))
    if not words.one_way:
        yield _barbs(tail, (-x / part, -y / part))


def _barbs(tip: Point, way: Point) -> Stroke:
    (x, y), (u, v) = tip, way
    sides = ((x - (u + v) * BARB, y - (v - u) * BARB), (x - (u - v) * BARB, y - (v + u) * BARB))
    return Stroke((sides[0], tip, sides[1]), THIN * 1.6)
