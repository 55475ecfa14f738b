"""Straight rows: the shelves of the best rule, ordered on the cloth, with everything in its place.

With a lengthwise repeat each row starts on a multiple of it. The repeat is then charged between
rows and not after the last, so the row that would waste most of a repeat goes last.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Protocol, TypeVar

from estimator.layout.across import next_repeat, starts_across
from estimator.layout.answer import Column, Layout, Row, Style
from estimator.layout.kinds import Kind, Spot, placements_of
from estimator.layout.question import Blank, Cloth
from estimator.layout.shelves import Shelf


class HasHeight(Protocol):
    """A row as it is planned, or as it lies: it is so many ticks long on the cloth."""

    @property
    def height(self) -> int: ...


AnyRow = TypeVar("AnyRow", bound=HasHeight)


def in_order(shelves: Sequence[Shelf], repeat: int) -> tuple[Shelf, ...]:
    """Highest row first; with a repeat, the one that leaves most of its last repeat comes last."""
    ordered = sorted(shelves, key=lambda shelf: (-shelf.height, shelf.stacks))
    return tuple(with_most_to_spare_last(ordered, repeat))


def with_most_to_spare_last(rows: Sequence[AnyRow], repeat: int) -> list[AnyRow]:
    """The rows in their order, but for the one that leaves most of its last repeat."""
    if not repeat or not rows:
        return list(rows)
    spare = [next_repeat(row.height, repeat) - row.height for row in rows]
    last = spare.index(max(spare))
    return [*rows[:last], *rows[last + 1 :], rows[last]]


def starts(rows: Sequence[AnyRow], repeat: int) -> Iterator[tuple[int, AnyRow]]:
    """Each row with its distance from the cut end, in ticks."""
    at = 0
    for row in rows:
        yield at, row
        at = next_repeat(at + row.height, repeat)


def length_of(rows: Sequence[HasHeight], repeat: int) -> int:
    """Where the last row ends, in ticks."""
    return max((at + row.height for at, row in starts(rows, repeat)), default=0)


def score(shelves: Sequence[Shelf], cloth: Cloth) -> tuple[int, int, int, int]:
    """What is bought, rows, straight cuts, length: the less, the better, in this order."""
    length = length_of(shelves, cloth.repeat)
    return *bought_and_rows(shelves, cloth), cuts_of(shelves, cloth), length


def bought_and_rows(shelves: Sequence[Shelf], cloth: Cloth) -> tuple[int, int]:
    """What is bought, and the number of rows: the first part of their score."""
    return cloth.buys(length_of(shelves, cloth.repeat)), len(shelves)


def cuts_of(shelves: Sequence[Shelf], cloth: Cloth) -> int:
    """Straight cuts: one a row, one a column short of the selvedge, one or two a piece in it."""
    known: dict[int, int] = {}  # a row that is repeated is one and the same
    cuts = len(shelves)
    for shelf in shelves:
        if id(shelf) not in known:
            known[id(shelf)] = _cuts_in(shelf, cloth)
        cuts += known[id(shelf)]
    return cuts


def _cuts_in(shelf: Shelf, cloth: Cloth) -> int:
    """Straight cuts within one row."""
    cuts = 0
    for across, stack in starts_across(shelf.stacks, cloth):
        cuts += across + stack.width < cloth.width
        up_to_the_row = len(stack.pieces) == 1 and stack.pieces[0].length == shelf.height
        cuts += 0 if up_to_the_row else len(stack.pieces)
        cuts += sum(piece.width < stack.width for piece in stack.pieces)
    return cuts


def rows_layout(
    cloth: Cloth,
    kinds: Sequence[Kind],
    blanks: Sequence[Blank],
    shelves: Sequence[Shelf],
    bound: int,
) -> Layout:
    """These shelves, in this order, as a layout of the blanks."""
    bands = []
    for start, shelf in starts(shelves, cloth.repeat):
        columns = []
        for across, stack in starts_across(shelf.stacks, cloth):
            along = start
            spots = []
            for piece in stack.pieces:
                spots.append(Spot(piece.kind, across, along, piece.width, piece.length))
                along = next_repeat(along + piece.length, cloth.repeat)
            columns.append((across, stack.width, spots))
        bands.append((start, shelf.height, columns))
    every_spot = [spot for *_, columns in bands for *_, spots in columns for spot in spots]
    placements = placements_of(every_spot, kinds, blanks)
    at = {(placed.across, placed.along): placed for placed in placements}
    rows = tuple(
        Row(
            start,
            height,
            tuple(
                Column(left, width, tuple(at[spot.across, spot.along] for spot in spots))
                for left, width, spots in columns
            ),
        )
        for start, height, columns in bands
    )
    length = length_of(shelves, cloth.repeat)
    return Layout(cloth.width, length, placements, rows, bound, Style.STRAIGHT_ROWS)
