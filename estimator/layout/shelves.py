"""Shelf packing: pieces by decreasing length into rows, small ones stacked in columns.

    |      |  c  |     |    A row is as high as its first piece. A piece goes on top of a column
    |  a   |-----|     |    that is wide enough, else into a new column beside the others, else
    |      |  b  |     |    it opens the next row. Columns start at the near selvedge.

First-fit decreasing height is the plain form of it (Coffman, Garey, Johnson and Tarjan, 1980).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from heapq import heapify, heappop, heappush
from itertools import product

from estimator.layout.across import SIDES_OF, Beside, Side, next_repeat
from estimator.layout.kinds import Kind
from estimator.layout.question import Cloth


@dataclass(frozen=True, slots=True, order=True)
class Piece:
    """A copy of the kind with index `kind`, of the size it has as it lies."""

    length: int
    width: int
    kind: int


@dataclass(frozen=True, slots=True, order=True)
class Stack:
    """A column still without a place: the pieces from the bottom up, the widest `width` wide."""

    width: int
    pieces: tuple[Piece, ...]
    side: Side = Side.NONE


@dataclass(frozen=True, slots=True, order=True)
class Shelf:
    """A row still without a place: `height` is that of its highest column."""

    height: int
    stacks: tuple[Stack, ...]


class Turn(Enum):
    """Which way round the pieces that may turn are laid."""

    UPRIGHT = "longer side along the fabric"
    ACROSS = "longer side across the fabric"


class Fit(Enum):
    """Where a piece goes when several rows could take it."""

    FIRST = "the first row with room"
    BEST = "the row that it fills best"
    NEXT = "the last row only"


@dataclass(frozen=True, slots=True)
class Rule:
    """One way to pack shelves; `stacks` says whether columns may hold more than one piece."""

    turn: Turn
    fit: Fit
    stacks: bool


FIRST_FIT = Rule(Turn.UPRIGHT, Fit.FIRST, stacks=False)
RULES = (
    FIRST_FIT,
    *(Rule(turn, fit, stacks=True) for turn, fit in product(Turn, (Fit.FIRST, Fit.BEST))),
)


class _OpenStack:
    """A column that can still grow; `used` is where its next piece would start."""

    __slots__ = ("pieces", "side", "used", "width")

    def __init__(self, width: int, side: Side) -> None:
        self.width = width
        self.side = side
        self.used = 0
        self.pieces: list[Piece] = []


class _OpenShelf:
    """A row that can still take columns `beside` those it has.

    `above` is the most that is open above one of its columns.
    """

    __slots__ = ("above", "beside", "height", "stacks")

    def __init__(self, height: int, cloth: Cloth) -> None:
        self.height = height
        self.above = 0
        self.beside = Beside(cloth)
        self.stacks: list[_OpenStack] = []

    def stack_for(
        self, piece: Piece, sides: tuple[Side, ...], repeat_across: int
    ) -> _OpenStack | None:
        """The narrowest column that this piece may be laid on top of."""
        fitting = [
            stack
            for stack in self.stacks
            if piece.width <= stack.width
            and stack.used + piece.length <= self.height
            and goes_on_top(piece.width, sides, stack.width, stack.side, repeat_across)
        ]
        return min(fitting, key=lambda stack: (stack.width, -stack.used), default=None)

    def side_for(self, piece: Piece, sides: tuple[Side, ...]) -> Side | None:
        """Where in the row a column with this piece may still be opened."""
        for side in sides:
            if piece.width <= self.beside.room_at(side):
                return side
        return None

    def opened(self, piece: Piece, side: Side) -> _OpenStack:
        """A new column for this piece."""
        stack = _OpenStack(piece.width, side)
        self.stacks.append(stack)
        self.beside.add(piece.width, side)
        return stack

    def lay(self, piece: Piece, stack: _OpenStack, repeat: int) -> None:
        """The piece on top of a column."""
        stack.pieces.append(piece)
        stack.used = next_repeat(stack.used + piece.length, repeat)
        self.above = max(self.height - one.used for one in self.stacks)

    def closed(self) -> Shelf:
        return shelf_of(
            self.height,
            [Stack(stack.width, tuple(stack.pieces), stack.side) for stack in self.stacks],
        )


def goes_on_top(
    width: int, sides: tuple[Side, ...], column: int, at: Side, repeat_across: int
) -> bool:
    """Whether a piece that may lie at `sides` keeps to them on top of a column held `at` an edge.

    At the far edge a narrower piece starts where the column does, short of the edge and off the
    repeat. Widths are in ticks; `column` is that of the column.
    """
    if at is Side.FAR:
        return (Side.FAR in sides and width == column) or (Side.NONE in sides and not repeat_across)
    return at in sides or Side.NONE in sides


def shelf_of(height: int, stacks: Iterable[Stack]) -> Shelf:
    """A row of these columns, the one with the longest piece at its foot first."""
    return Shelf(height, tuple(sorted(stacks, key=_tallest_first)))


def _tallest_first(stack: Stack) -> tuple[int, int, tuple[Piece, ...]]:
    return (-stack.pieces[0].length, -stack.width, stack.pieces)


def lie(kind: Kind, turn: Turn, cloth_width: int) -> tuple[int, int]:
    """(width, length) of a piece of this kind under a turn rule; upright if across is too wide."""
    if kind.may_turn and turn is Turn.ACROSS and kind.length <= cloth_width:
        return kind.length, kind.width
    return kind.width, kind.length


def pack(kinds: Sequence[Kind], cloth: Cloth, rule: Rule) -> list[Shelf]:
    """All pieces in rows, in the order in which the rows were opened."""
    shelves: list[_OpenShelf] = []
    for piece, quantity in _by_length(kinds, cloth.width, rule.turn):
        sides = SIDES_OF[kinds[piece.kind].held]
        _lay_copies(_Choices(piece, sides, cloth, rule), quantity, shelves)
    return [shelf.closed() for shelf in shelves]


def _by_length(kinds: Sequence[Kind], cloth_width: int, turn: Turn) -> Iterator[tuple[Piece, int]]:
    laid = []
    for index, kind in enumerate(kinds):
        width, length = lie(kind, turn, cloth_width)
        laid.append((Piece(length, width, index), kind.quantity))
    return iter(sorted(laid, key=lambda one: (-one[0].length, -one[0].width, one[0].kind)))


@dataclass(frozen=True, slots=True)
class _Choices:
    """Where a piece may go, held at one of these `sides`."""

    piece: Piece
    sides: tuple[Side, ...]
    cloth: Cloth
    rule: Rule

    def in_row(self, shelf: _OpenShelf) -> tuple[_OpenStack | None, Side | None] | None:
        """The column of a row on top of which the piece goes, or where it opens one; or None."""
        if self.rule.stacks:
            stack = shelf.stack_for(self.piece, self.sides, self.cloth.repeat_across)
            if stack is not None:
                return stack, None
        side = shelf.side_for(self.piece, self.sides)
        return None if side is None else (None, side)

    def rank(self, number: int, shelf: _OpenShelf) -> tuple[int, int] | None:
        """How far down the list of rows to choose from this one stands; None if it has no room."""
        anywhere = self.sides == (Side.NONE,)
        if anywhere and self.piece.width > shelf.beside.room and self.piece.length > shelf.above:
            return None  # most rows of a large show are full: they are not worth a closer look
        place = self.in_row(shelf)
        if place is None:
            return None
        if self.rule.fit is not Fit.BEST:
            return 0, number
        stack, _ = place
        return (stack.width if stack else shelf.beside.room) - self.piece.width, number


def _lay_copies(choices: _Choices, quantity: int, shelves: list[_OpenShelf]) -> None:
    """Lay copies of one piece, each in the row that the rule prefers.

    Only the row that takes a copy changes, so the others keep their places in the queue: thousands
    of copies ask each row once, and not once each.
    """
    piece, cloth = choices.piece, choices.cloth
    first = max(0, len(shelves) - 1) if choices.rule.fit is Fit.NEXT else 0
    ranks = (choices.rank(number, shelves[number]) for number in range(first, len(shelves)))
    queue = [rank for rank in ranks if rank is not None]
    heapify(queue)
    for _ in range(quantity):
        if queue:
            _, number = heappop(queue)
        else:
            number = len(shelves)
            shelves.append(_OpenShelf(piece.length, cloth))
        shelf = shelves[number]
        place = choices.in_row(shelf)
        assert place is not None, "a row in the queue, or a new one, takes the piece"
        stack, side = place
        if stack is None:
            assert side is not None, "a piece goes on top of a column, or opens one"
            stack = shelf.opened(piece, side)
        shelf.lay(piece, stack, cloth.repeat)
        rank = choices.rank(number, shelf)
        if rank is not None:
            heappush(queue, rank)
