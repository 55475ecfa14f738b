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


NEXT_FIT = Rule(Turn.UPRIGHT, Fit.NEXT, stacks=False)
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
    open_shelves: list[_OpenShelf] = []
    for piece, quantity in _by_length(kinds, cloth.width, rule.turn):
        first_to_try = 0
        sides = SIDES_OF[kinds[piece.kind].held]
        for _ in range(quantity):
            first_to_try = _place(piece, sides, open_shelves, first_to_try, cloth, rule)
    return [shelf.closed() for shelf in open_shelves]


def _by_length(kinds: Sequence[Kind], cloth_width: int, turn: Turn) -> Iterator[tuple[Piece, int]]:
    laid = []
    for index, kind in enumerate(kinds):
        width, length = lie(kind, turn, cloth_width)
        laid.append((Piece(length, width, index), kind.quantity))
    return iter(sorted(laid, key=lambda one: (-one[0].length, -one[0].width, one[0].kind)))


def _place(
    piece: Piece,
    sides: tuple[Side, ...],
    shelves: list[_OpenShelf],
    first_to_try: int,
    cloth: Cloth,
    rule: Rule,
) -> int:
    """Lay one piece; returns the first row that could still take another one like it.

    Rows only fill up, so a row that refused a piece will refuse its copies too.
    """
    if rule.fit is Fit.NEXT:
        first_to_try = max(0, len(shelves) - 1)
    best: tuple[int, int] | None = None
    best_stack: _OpenStack | None = None
    best_side: Side | None = None
    first_open: int | None = None
    anywhere = sides == (Side.NONE,)
    for index in range(first_to_try, len(shelves)):
        shelf = shelves[index]
        if anywhere and piece.width > shelf.beside.room and piece.length > shelf.above:
            continue  # most rows of a large show are full: they are not worth a closer look
        stack = shelf.stack_for(piece, sides, cloth.repeat_across) if rule.stacks else None
        side = None if stack else shelf.side_for(piece, sides)
        if stack is None and side is None:
            continue
        first_open = index if first_open is None else first_open
        over = (stack.width if stack else shelf.beside.room) - piece.width
        if best is None or (over, index) < best:
            best, best_stack, best_side = (over, index), stack, side
        if rule.fit is not Fit.BEST:
            break
    if best is None:
        shelf, best_side = _OpenShelf(piece.length, cloth), sides[0]
        shelves.append(shelf)
        first_open = len(shelves) - 1
    else:
        shelf = shelves[best[1]]
    if best_stack is None:
        assert best_side is not None, "a piece goes on top of a column, or opens one"
        best_stack = shelf.opened(piece, best_side)
    shelf.lay(piece, best_stack, cloth.repeat)
    return first_open if first_open is not None else len(shelves) - 1
