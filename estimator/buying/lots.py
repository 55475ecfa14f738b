"""Pieces as they are laid: singly, or tapers head to tail in slanted rows.

Between neighbours that lie head to tail the slanted sides touch, so that a row of n gores of cut
top t and cut bottom b (the wider) takes n (t + b) / 2 + (b - t) / 2 across, and not n b. Gores with
one square side lie in pairs that take t + b, their square sides outside; an odd last one takes b.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import cycle, islice

from estimator.buying.spread import Part, parts_laid
from estimator.layout import Blank, Held
from estimator.measure import Length, total
from estimator.needs.selvedges import Breadth
from estimator.needs.types import CutPiece


@dataclass(frozen=True, slots=True)
class Lot:
    """One rectangle of the layout: ``count`` copies of the piece of this number, side by side.

    Head to tail, each lies ``apart`` further from the near edge than the one before it, by
    turns where there are two distances. With one square side, that of the first is at that edge.
    ``layers`` pieces are cut at once; ``half`` says that it is half a piece, on the fold.
    """

    piece: int
    count: int
    name: str
    blank: Blank
    apart: tuple[Length, ...] = ()
    layers: int = 1
    half: bool = False


def single_lots(
    pieces: Sequence[CutPiece], breadth: Breadth, *, nap: bool = False
) -> tuple[Lot, ...]:
    """Every piece by itself, a taper by the box round it."""
    return tuple(_lot(part, 1, part.quantity) for part in parts_laid(pieces, breadth, nap=nap))


def slanted_lots(
    pieces: Sequence[CutPiece], breadth: Breadth, *, nap: bool = False
) -> tuple[Lot, ...]:
    """Tapers head to tail, as many in a row as the fabric takes, and the other pieces singly.

    On a fabric with nap no piece may stand on its head, and each lies by itself.
    """
    if nap:
        return single_lots(pieces, breadth, nap=nap)
    parts = parts_laid(pieces, breadth, nap=nap)
    return tuple(lot for part in parts for lot in _rows_of(part, breadth.of_a_layer))


def _rows_of(part: Part, width: Length) -> Iterator[Lot]:
    alone = part.half or part.held is not Held.FREE
    count = 1 if alone else min(part.quantity, most_across(part.piece, width))
    if count < 2:
        yield _lot(part, 1, part.quantity)
        return
    rows, rest = divmod(part.quantity, count)
    yield _lot(part, count, rows)
    if rest:
        yield _lot(part, rest, 1)


def most_across(piece: CutPiece, usable: Length) -> int:
    """How many of a piece go head to tail across a fabric; 1 for what is no taper."""
    apart = steps_apart(piece)
    if not apart:
        return 1
    rounds, room = divmod((usable - piece.width.value).ticks, sum(step.ticks for step in apart))
    count = 1 + rounds * len(apart)
    for step in apart:
        room -= step.ticks
        count += room >= 0
    return max(1, count)


def steps_apart(piece: CutPiece) -> tuple[Length, ...]:
    """How far each of a row head to tail lies from the one before it, by turns.

    With two slanted sides always (t + b) / 2; with one, t within a pair and b from pair to pair.
    Nothing for what is no taper, or lies on the bias.
    """
    if piece.narrow is None or piece.on_bias is not None:
        return ()
    if piece.square:
        return piece.narrow, piece.width.value
    return (Length(-(-(piece.width.value + piece.narrow).ticks // 2)),)


def slanted_width(piece: CutPiece, count: int) -> Length:
    """What ``count`` tapers head to tail take across."""
    apart = steps_apart(piece)
    return total((*islice(cycle(apart), count - 1), piece.width.value))


def outline_area(piece: CutPiece) -> int:
    """The area of a piece in square ticks: of a taper's outline and of a piece on the bias itself.

    Of any other piece, of its box.
    """
    wide, long = piece.on_bias or (piece.width.value, piece.length.value)
    across = wide * 2 if piece.narrow is None else wide + piece.narrow
    return across.ticks * long.ticks // 2


def _lot(part: Part, count: int, quantity: int) -> Lot:
    piece = part.piece
    name = part.name if count == 1 else f"{part.name}, {count} head to tail"
    blank = Blank(
        name=name,
        width=(part.width if count == 1 else slanted_width(piece, count)).ticks,
        length=piece.length.value.ticks,
        quantity=quantity,
        may_turn=piece.may_turn and count == 1 and part.held is Held.FREE,
        held=part.held,
    )
    apart = steps_apart(piece) if count > 1 else ()
    return Lot(part.number, count, name, blank, apart, part.layers, part.half)
