"""What a picture is made of, whatever it is written as: outlines, strokes, hatching, lettering.

Distances are in units of the picture, counted from its upper left corner to the right and down. A
unit is about a point on paper and a pixel on a phone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

Point = tuple[float, float]
Shape = tuple[Point, ...]
"""Corners in turn."""

INK, GREY, PAPER = "#1b2430", "#747c87", "#ffffff"
TINTS = ("#f6e7c1", "#cfe3f1", "#dcead0", "#f3d6cb", "#e3d9ee", "#e6e6e0")
"""Light and nearly equally so: they tell pieces apart at a glance, and nothing hangs on them."""
THIN, USUAL, HEAVY = 0.5, 1.0, 1.8
DASHES, DOTS, CHAIN = (4.0, 2.5), (1.0, 2.0), (8.0, 2.0, 1.5, 2.0)


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed shape. ``name`` tells what it is, for whoever points at it or reads the file."""

    corners: Shape
    fill: str = PAPER
    wide: float = USUAL
    dashes: tuple[float, ...] = ()
    name: str = ""


@dataclass(frozen=True, slots=True)
class Stroke:
    """An open line through points."""

    points: tuple[Point, ...]
    wide: float = USUAL
    colour: str = INK
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Hatch:
    """Slanted lines that fill the rectangle between two corners."""

    low: Point
    high: Point
    apart: float = 5.0

    def lines(self) -> Iterator[tuple[Point, Point]]:
        """Its lines, from the left edge or the bottom up to the right edge or the top."""
        (left, top), (right, bottom) = self.low, self.high
        wide, high = right - left, bottom - top
        for number in range(1, ceil((wide + high) / self.apart)):
            reach = number * self.apart
            start = (left + max(0.0, reach - high), top + min(high, reach))
            end = (left + min(wide, reach), top + max(0.0, reach - wide))
            yield start, end


@dataclass(frozen=True, slots=True)
class Lettering:
    """One line of text whose middle line is at ``at``; ``upright`` runs from below upwards.

    ``anchor`` tells which part of the line is there: start, middle or end.
    """

    at: Point
    text: str
    size: float = 9.0
    anchor: str = "start"
    upright: bool = False
    colour: str = INK


Mark = Outline | Stroke | Hatch | Lettering


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing with its title and a description in words for whoever cannot see it.

    ``stem`` names it among the pictures of a job, in letters that any file system takes.
    """

    stem: str
    width: float
    height: float
    title: str
    description: str
    marks: tuple[Mark, ...]


def rectangle(low: Point, high: Point) -> Shape:
    """The corners of a rectangle between its upper left and its lower right one."""
    return low, (high[0], low[1]), high, (low[0], high[1])
