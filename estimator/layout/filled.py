"""Rows one after another, each filled as well as it can be with what is left.

The longest piece left makes the row as high as it is and stands first in it. Pieces that are held
at an edge of the cloth go to the edges of the row. The rest of the width is a knapsack of columns,
each of one kind stacked as often as the height allows; what is still open above a column takes the
shorter pieces that fill it best. A row is repeated while there are pieces for it, so that many
copies cost no more than one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from estimator.layout.across import SIDES_OF, Beside, Side, next_repeat
from estimator.layout.kinds import Kind
from estimator.layout.knapsack import Item, Line
from estimator.layout.question import Cloth
from estimator.layout.shelves import Piece, Shelf, Stack, goes_on_top, shelf_of

Lies = tuple[tuple[tuple[int, int], ...], ...]
"""For each kind, the (width, length) it may lie in."""


WORK_OF_A_ROW = 200
"""Steps of a knapsack that take as long as the rest of the work on a row."""


@dataclass(frozen=True, slots=True)
class Column:
    """`pieces` of one kind above one another, all lying the same way."""

    kind: int
    width: int
    length: int
    pieces: int
    side: Side = Side.NONE


class RowFiller:
    """Fills rows; `worth[k]` is what a piece of kind k is worth in a row, by which it is chosen.

    `work` counts the steps of all knapsacks.
    """

    def __init__(
        self, kinds: Sequence[Kind], lies: Lies, worth: Sequence[float], cloth: Cloth
    ) -> None:
        self._lies = lies
        self._worth = worth
        self._cloth = cloth
        self._repeat = cloth.repeat
        self._sides = [SIDES_OF[kind.held] for kind in kinds]
        self._counts = [kind.quantity for kind in kinds]
        self.work = 0

    def rows(self) -> list[Shelf]:
        """All pieces in rows, the highest first."""
        shelves: list[Shelf] = []
        while any(self._counts):
            before = list(self._counts)
            shelf = self._row()
            used = [was - now for was, now in zip(before, self._counts, strict=True)]
            times = min(was // took for was, took in zip(before, used, strict=True) if took)
            shelves.extend([shelf] * times)
            self._counts = [was - times * took for was, took in zip(before, used, strict=True)]
        return shelves

    def _row(self) -> Shelf:
        self.work += WORK_OF_A_ROW
        first = self._longest()
        height = first.length
        beside = Beside(self._cloth)
        columns = [first]
        self._lay(first, beside)
        columns += self._at_the_edges(height, beside)
        columns += self._beside(height, beside)
        stacks = []
        for column in sorted(columns, key=lambda one: (self._open(one, height), one.kind)):
            piece = Piece(column.length, column.width, column.kind)
            above = self._above(column, height)
            stacks.append(Stack(column.width, (*[piece] * column.pieces, *above), column.side))
        return shelf_of(height, stacks)

    def _lay(self, column: Column, beside: Beside) -> None:
        beside.add(column.width, column.side)
        self._counts[column.kind] -= column.pieces

    def _longest(self) -> Column:
        """The piece left that needs the highest row, each lying as flat as it may."""
        flattest = (
            (min((length, width) for width, length in self._lies[kind]), kind)
            for kind, count in enumerate(self._counts)
            if count
        )
        (length, width), kind = max(flattest, key=lambda one: (one[0], -one[1]))
        return Column(kind, width, length, 1, self._sides[kind][0])

    def _at_the_edges(self, height: int, beside: Beside) -> list[Column]:
        """At each edge of the cloth still open, the held pieces of the greatest worth."""
        columns = []
        for side in (Side.NEAR, Side.FAR):
            held = [
                column
                for kind, sides in enumerate(self._sides)
                if side in sides
                for column in self._columns_of(kind, height, beside.room_at(side), side)
            ]
            if held:
                columns.append(max(held, key=self._worth_of))
                self._lay(columns[-1], beside)
        return columns

    def _worth_of(self, column: Column) -> float:
        return self._worth[column.kind] * column.pieces

    def _columns_of(self, kind: int, height: int, room: int, side: Side) -> list[Column]:
        """The columns of one kind alone, as high as they may be, one for each way it may lie."""
        count = self._counts[kind]
        return [
            Column(kind, width, length, min(count, self._stacked(length, height)), side)
            for width, length in self._lies[kind]
            if count and width <= room and length <= height
        ]

    def _beside(self, height: int, beside: Beside) -> list[Column]:
        """The columns of the greatest worth in the rest of the row."""
        room, across = beside.whole_room, self._cloth.repeat_across
        ways = [
            own
            for kind, sides in enumerate(self._sides)
            if Side.NONE in sides and (own := self._columns_of(kind, height, beside.room, sides[0]))
        ]
        items = [
            Item(
                self._counts[own[0].kind] // max(column.pieces for column in own),
                tuple(next_repeat(column.width, across) for column in own),
            )
            for own in ways
        ]
        line = Line(room, items)
        columns = []
        chosen = line.best([[*map(self._worth_of, own)] for own in ways])[1] if items else []
        self.work += line.work + len(items)
        for item, which in chosen:
            columns.append(ways[item][which])
            self._lay(columns[-1], beside)
        return columns

    def _above(self, column: Column, height: int) -> list[Piece]:
        """The pieces of the greatest worth that still go on top of a column."""
        start = next_repeat(column.length, self._repeat) * column.pieces
        room = height - start
        pieces = [
            piece
            for kind, count in enumerate(self._counts)
            if count and (piece := self._flattest(kind, column, room))
        ]
        if not pieces:
            return []
        step = self._repeat
        # the last piece may leave part of its repeat, so that much more room is there to be filled
        line = Line(
            next_repeat(room, step) if step else room,
            [Item(self._counts[p.kind], (next_repeat(p.length, step),)) for p in pieces],
        )
        chosen = [pieces[item] for item, _ in line.best([[self._worth[p.kind]] for p in pieces])[1]]
        self.work += line.work + len(pieces)
        above: list[Piece] = []
        at = start
        for piece in sorted(chosen, reverse=True):
            if self._counts[piece.kind] and at + piece.length <= height:
                self._counts[piece.kind] -= 1
                above.append(piece)
                at = next_repeat(at + piece.length, step)
        return above

    def _flattest(self, kind: int, column: Column, room: int) -> Piece | None:
        """The flattest way in which a piece of a kind goes on top of a column, if any."""
        sides, across = self._sides[kind], self._cloth.repeat_across
        ways = [
            Piece(length, width, kind)
            for width, length in self._lies[kind]
            if width <= column.width
            and length <= room
            and goes_on_top(width, sides, column.width, column.side, across)
        ]
        return min(ways, default=None)

    def _open(self, column: Column, height: int) -> int:
        """Area left above a column, counted below zero: the most open column comes first."""
        return -(height - column.length * column.pieces) * column.width

    def _stacked(self, length: int, height: int) -> int:
        """How many pieces of one length stand above one another in a row."""
        return 1 + (height - length) // next_repeat(length, self._repeat)
