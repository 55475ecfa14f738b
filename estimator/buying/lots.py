"""Pieces as they are laid: singly, or tapers head to tail in slanted rows.

Between neighbours that lie head to tail the slanted sides touch, so that a row of n gores of cut
top t and cut bottom b (the wider) takes n (t + b) / 2 + (b - t) / 2 across, and not n b.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from estimator.layout import Blank
from estimator.measure import Length
from estimator.needs.types import CutPiece


@dataclass(frozen=True, slots=True)
class Lot:
    """One rectangle of the layout: ``count`` copies of the piece of this number, side by side.

    Head to tail, each lies ``apart`` further from the selvedge than the one before it.
    """

    piece: int
    count: int
    name: str
    blank: Blank
    apart: Length | None = None


def single_lots(pieces: Sequence[CutPiece]) -> tuple[Lot, ...]:
    """Every piece by itself, a taper by the box round it."""
    return tuple(_lot(number, piece, 1, piece.quantity) for number, piece in enumerate(pieces))


def slanted_lots(pieces: Sequence[CutPiece], usable: Length, nap: bool) -> tuple[Lot, ...]:
    """Tapers head to tail, as many in a row as the fabric takes, and the other pieces singly.

    On a fabric with nap no piece may stand on its head, and each lies by itself.
    """
    if nap:
        return single_lots(pieces)
    return tuple(
        lot for number, piece in enumerate(pieces) for lot in _rows_of(number, piece, usable)
    )


def _rows_of(number: int, piece: CutPiece, usable: Length) -> Iterator[Lot]:
    count = min(piece.quantity, most_across(piece, usable))
    if count < 2:
        yield _lot(number, piece, 1, piece.quantity)
        return
    rows, rest = divmod(piece.quantity, count)
    yield _lot(number, piece, count, rows)
    if rest:
        yield _lot(number, piece, rest, 1)


def most_across(piece: CutPiece, usable: Length) -> int:
    """How many of a piece go head to tail across a fabric; 1 for what is no taper."""
    if piece.narrow is None:
        return 1
    wide, narrow = piece.width.value.ticks, piece.narrow.ticks
    return max(1, (2 * usable.ticks - (wide - narrow)) // (wide + narrow))


def slanted_width(piece: CutPiece, count: int) -> Length:
    """What ``count`` tapers head to tail take across: n (t + b) / 2 + (b - t) / 2."""
    wide = piece.width.value
    if piece.narrow is None or count == 1:
        return wide * count
    both, spread = wide + piece.narrow, wide - piece.narrow
    return Length(-(-(both.ticks * count + spread.ticks) // 2))


def outline_area(piece: CutPiece) -> int:
    """The area of a piece in square ticks: of a taper's outline, of any other piece's box."""
    across = piece.width.value if piece.narrow is None else piece.width.value + piece.narrow
    area = across.ticks * piece.length.value.ticks
    return area if piece.narrow is None else area // 2


def _lot(number: int, piece: CutPiece, count: int, quantity: int) -> Lot:
    name = piece.name if count == 1 else f"{piece.name}, {count} head to tail"
    blank = Blank(
        name=name,
        width=slanted_width(piece, count).ticks,
        length=piece.length.value.ticks,
        quantity=quantity,
        may_turn=piece.may_turn and count == 1,
    )
    if piece.narrow is None or count == 1:
        return Lot(number, count, name, blank)
    apart = Length((piece.width.value + piece.narrow).ticks // 2)
    return Lot(number, count, name, blank, apart)
