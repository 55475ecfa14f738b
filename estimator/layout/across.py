"""Across the cloth: where the columns of a row lie, and how much room is left beside them.

A column held at the near edge comes first and one held at the far edge last. With a repeat across,
each of the others starts on a multiple of it; the one that would waste most of a repeat goes last
among them, for the repeat is charged between columns and not after the last.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import IntEnum
from typing import Protocol, TypeVar

from estimator.layout.question import Cloth, Held


class Side(IntEnum):
    """The edge of the cloth at which a column is held."""

    NEAR = -1
    NONE = 0
    FAR = 1


class HasSide(Protocol):
    """A column of a row, as far as it matters here; its width in ticks."""

    @property
    def width(self) -> int: ...
    @property
    def side(self) -> Side: ...


SIDES_OF = {
    Held.FREE: (Side.NONE,),
    Held.NEAR: (Side.NEAR,),
    Held.FAR: (Side.FAR,),
    Held.EITHER: (Side.NEAR, Side.FAR),
}
"""The edges at which a piece may lie, the usual one first."""

ColumnT = TypeVar("ColumnT", bound=HasSide)


def next_repeat(distance: int, repeat: int) -> int:
    """The first start at or after `distance` that a print with this repeat allows; both ticks."""
    return -(-distance // repeat) * repeat if repeat else distance


def last_start(room: int, repeat: int) -> int:
    """The last start at or before `room` that a print with this repeat allows; both ticks."""
    return room // repeat * repeat if repeat else room


def starts_across(columns: Sequence[ColumnT], cloth: Cloth) -> Iterator[tuple[int, ColumnT]]:
    """Each column of a row with its distance from the near edge, in ticks."""
    repeat = cloth.repeat_across
    by_side: dict[Side, list[ColumnT]] = {side: [] for side in Side}
    for column in columns:
        by_side[column.side].append(column)
    free = by_side[Side.NONE]
    if repeat and free:
        wastes = [next_repeat(column.width, repeat) - column.width for column in free]
        free.append(free.pop(wastes.index(max(wastes))))
    across = 0
    for column in (*by_side[Side.NEAR], *free):
        yield across, column
        across = next_repeat(across + column.width, repeat)
    for column in by_side[Side.FAR]:
        yield cloth.width - column.width, column


class Beside:
    """What is left of a row's width beside the columns that it has already.

    `room` is the widest column that still goes into the row, held at no edge; `sides` are the edges
    at which none is held yet.
    """

    __slots__ = ("_free_waste", "_near_waste", "_repeat", "_used", "_width", "room", "sides")

    def __init__(self, cloth: Cloth) -> None:
        self._repeat = cloth.repeat_across
        self._width = cloth.width
        self._used = 0
        self._near_waste = 0
        self._free_waste: int | None = None
        self.room = cloth.width
        self.sides = {Side.NEAR, Side.FAR}

    def add(self, width: int, side: Side) -> None:
        """Lay a column of this width into the row."""
        self.sides.discard(side)
        whole = next_repeat(width, self._repeat)
        if side is Side.FAR:
            self._width -= width
        elif side is Side.NEAR:
            self._used += whole
            self._near_waste = whole - width
        else:
            self._used += whole
            self._free_waste = max(self._free_waste or 0, whole - width)
        self.room = max(self._width - self._used, self.whole_room)

    @property
    def whole_room(self) -> int:
        """Room for columns that take whole repeats, one of those here lying after them."""
        return last_start(self._width - self._used + (self._free_waste or 0), self._repeat)

    def room_at(self, side: Side) -> int:
        """The widest column that can still be held at this edge; below zero for none."""
        if side is Side.NONE:
            return self.room
        if side not in self.sides:
            return -1
        if side is Side.NEAR:
            return self._width if self._free_waste is None else self.whole_room
        waste = self._near_waste if self._free_waste is None else self._free_waste
        return self._width - self._used + waste
