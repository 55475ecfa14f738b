"""A finished cutting layout: where each piece lies, in which row, and how good that is.

Distances are ticks. `across` is measured from the near selvedge, `along` from the cut end.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Style(Enum):
    """How the pieces are cut out."""

    STRAIGHT_ROWS = "straight rows"
    CLOSE = "close layout"


@dataclass(frozen=True, slots=True)
class Placement:
    """One copy of a blank on the cloth; `blank` is the index of the blank among those asked for.

    `width` and `length` are as it lies: where `turned`, they are the blank's own, exchanged.
    """

    blank: int
    across: int
    along: int
    width: int
    length: int
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Column:
    """Pieces one above another in a row, all starting at one distance from the near selvedge.

    `width` is that of the widest; `placements` go up from the start of the row.
    """

    across: int
    width: int
    placements: tuple[Placement, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """A band across the whole cloth, parted from the next by one straight cut."""

    start: int
    height: int
    columns: tuple[Column, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """Every piece placed once on a cloth of `width`; `length` is where the last piece ends.

    `bound` is a length that no layout of these pieces on this cloth can go below, of any style.
    `rows` is empty in a close layout; else its placements are those of `placements`.
    """

    width: int
    length: int
    placements: tuple[Placement, ...]
    rows: tuple[Row, ...]
    bound: int
    style: Style
