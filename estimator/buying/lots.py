"""Pieces as they are laid: singly, or tapers head to tail in slanted rows.

Between neighbours that lie head to tail the slanted sides touch, so that a row of n gores of cut
top t and cut bottom b (the wider) takes n (t + b) / 2 + (b - t) / 2 across, and not n b. Gores with
one square side lie in pairs that take t + b, their square sides outside; an odd last one takes b.

On a plaid each of a row starts on the next repeat across. Lengthwise, those that stand right way up
start on the repeat and those on their heads end on it: so what is at one distance from the hem is
the same on all of them, if the print is the same both ways.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import cycle, islice

from estimator.buying.spread import Part, parts_laid
from estimator.layout import Blank, Cloth, Held, next_repeat
from estimator.measure import ZERO, Length, total, whole_ticks
from estimator.needs.cut_piece import CutPiece
from estimator.needs.selvedges import Breadth


@dataclass(frozen=True, slots=True)
class Lot:
    """One rectangle of the layout: ``count`` copies of the piece of this number, side by side.

    Head to tail, each lies ``apart`` further from the near edge than the one before it, by
    turns where there are two distances. With one square side, that of the first is at that edge.
    Those on their heads lie ``shift`` further from the cut end. ``layers`` pieces are cut at once;
    ``half`` says that it is half a piece, on the fold. ``spare`` are cut beyond what is asked for.
    """

    piece: int
    count: int
    name: str
    blank: Blank
    apart: tuple[Length, ...] = ()
    layers: int = 1
    half: bool = False
    shift: Length = ZERO
    spare: int = 0


def single_lots(
    pieces: Sequence[CutPiece], breadth: Breadth, cloth: Cloth, *, nap: bool = False
) -> tuple[Lot, ...]:
    """Every piece by itself, a taper by the box round it."""
    return tuple(_lot(part, 1, part.quantity) for part in _parts(pieces, breadth, cloth, nap))


def _parts(pieces: Sequence[CutPiece], breadth: Breadth, cloth: Cloth, nap: bool) -> Iterator[Part]:
    """Every piece as it is laid; what is matched keeps to its own selvedge."""
    matched = bool(cloth.repeat or cloth.repeat_across)
    return parts_laid(pieces, breadth, one_way=nap or matched)


def slanted_lots(
    pieces: Sequence[CutPiece], breadth: Breadth, cloth: Cloth, *, nap: bool = False
) -> tuple[Lot, ...]:
    """Tapers head to tail, as many in a row as the fabric takes, and the other pieces singly.

    On a fabric with nap no piece may stand on its head, and each lies by itself. ``cloth`` has the
    repeats of what is matched.
    """
    if nap:
        return single_lots(pieces, breadth, cloth, nap=nap)
    parts = _parts(pieces, breadth, cloth, nap)
    return tuple(lot for part in parts for lot in _rows_of(part, cloth))


def _rows_of(part: Part, cloth: Cloth) -> Iterator[Lot]:
    alone = part.half or part.held is not Held.FREE
    row = _Row.of(part.piece, cloth)
    count = 1 if alone else min(part.quantity, row.most_across(Length(cloth.width)))
    if count < 2:
        yield _lot(part, 1, part.quantity)
        return
    rows, rest = divmod(part.quantity, count)
    yield _lot(part, count, rows, row)
    if rest:
        yield _lot(part, rest, 1, row)


@dataclass(frozen=True, slots=True)
class _Row:
    """Tapers of one piece head to tail: how far each lies from the one before it, by turns.

    Nothing ``apart`` for what is no taper, or lies on the bias. Those on their heads are ``shift``
    further along.
    """

    piece: CutPiece
    apart: tuple[Length, ...] = ()
    shift: Length = ZERO

    @classmethod
    def of(cls, piece: CutPiece, cloth: Cloth) -> _Row:
        """With two slanted sides always (t + b) / 2 apart; with one, t in a pair and b from it.

        Each step goes up to the repeat across. Tapers whose wide end is further along come nearer
        to one another when every second one is shifted, by the shift's part of the slant.
        """
        if not is_taper(piece):
            return cls(piece)
        assert piece.narrow is not None, "a taper has a narrow end"
        wide, narrow, long = piece.width.value, piece.narrow, piece.length.value
        shift = Length(next_repeat(long.ticks, cloth.repeat)) - long
        nearer = Fraction((wide - narrow).ticks * shift.ticks, long.ticks)
        nearer = nearer if piece.on_its_head else Fraction(0)
        apart: tuple[Length, ...]
        if piece.square:
            apart = (whole_ticks(narrow.ticks + nearer), wide)
        else:
            apart = (whole_ticks((wide + narrow).ticks / Fraction(2) + nearer / 2),)
        across = cloth.repeat_across
        return cls(piece, tuple(Length(next_repeat(a.ticks, across)) for a in apart), shift)

    def most_across(self, usable: Length) -> int:
        """How many go head to tail across a fabric; 1 for what is no taper."""
        if not self.apart:
            return 1
        room = usable - self.piece.width.value
        rounds, rest = divmod(room.ticks, sum(step.ticks for step in self.apart))
        count = 1 + rounds * len(self.apart)
        for step in self.apart:
            rest -= step.ticks
            count += rest >= 0
        return max(1, count)

    def width_of(self, count: int) -> Length:
        """What so many head to tail take across."""
        return total((*islice(cycle(self.apart), count - 1), self.piece.width.value))


def is_taper(piece: CutPiece) -> bool:
    """Whether a piece is a taper along the fabric, which may lie head to tail with others."""
    return piece.narrow is not None and piece.on_bias is None


def outline_area(piece: CutPiece) -> int:
    """The area of a piece in square ticks: of a taper's outline and of a piece on the bias itself.

    Of any other piece, of its box.
    """
    wide, long = piece.on_bias or (piece.width.value, piece.length.value)
    across = wide * 2 if piece.narrow is None else wide + piece.narrow
    return across.ticks * long.ticks // 2


def _lot(part: Part, count: int, quantity: int, row: _Row | None = None) -> Lot:
    piece = part.piece
    in_row = row if count > 1 else None
    name = f"{part.name}, {count} head to tail" if in_row else part.name
    shift = in_row.shift if in_row else ZERO
    blank = Blank(
        name=name,
        width=(in_row.width_of(count) if in_row else part.width).ticks,
        length=(piece.length.value + shift).ticks,
        quantity=quantity,
        may_turn=piece.may_turn and not in_row and part.held is Held.FREE,
        held=part.held,
    )
    apart = in_row.apart if in_row else ()
    spare = part.spare * count
    return Lot(part.number, count, name, blank, apart, part.layers, part.half, shift, spare)
