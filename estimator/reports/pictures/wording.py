"""How the pieces of a layout are called in its picture: a mark, a name and a size."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from estimator.buying.lots import Lot
from estimator.layout import Layout, Placement, Style
from estimator.measure import Length, Unit, tape_text
from estimator.needs.cut_piece import CutPiece
from estimator.reports.pictures.labels import Label, Words
from estimator.reports.pictures.lettering import harmless
from estimator.reports.pictures.outlines import Drawn


@dataclass(frozen=True)
class Namer:
    """The words for each piece of one cut.

    ``numbers`` are those under which the table of a close layout lists its places; in straight rows
    there are none, and pieces bear the letters of the cut list.
    """

    pieces: Sequence[CutPiece]
    several: frozenset[str]
    numbers: Mapping[Placement, int]
    unit: Unit

    @classmethod
    def of(cls, pieces: Sequence[CutPiece], cut: Layout, unit: Unit) -> Namer:
        """Names that several garments share are told with their garments."""
        owners: dict[str, set[tuple[str, str]]] = {}
        for piece in pieces:
            whose = (piece.source.garment, piece.source.wearer)
            owners.setdefault(piece.name, set()).add(whose)
        numbers: dict[Placement, int] = {}
        if cut.style is Style.CLOSE:
            placed = sorted(cut.placements, key=lambda one: (one.along, one.across))
            numbers = {place: number for number, place in enumerate(placed, start=1)}
        several = frozenset(name for name, whose in owners.items() if len(whose) > 1)
        return cls(pieces, several, numbers, unit)

    def words(self, one: Drawn, *, one_way: bool) -> Words:
        """What the label of a piece says."""
        name = self._name(one)
        mark = self._mark(one)
        said = f"{mark} {name}" if self.numbers else name
        return Words(mark, said, self._size(one), one.grain, one_way)

    def entries(self, labels: Sequence[tuple[Drawn, Label]]) -> tuple[str, ...]:
        """A line for all pieces alike whose names do not stand on them: their marks, then those."""
        found: dict[str, dict[str, None]] = {}
        for one, label in labels:
            if not label.in_full:
                of_name = found.setdefault(f"{self._name(one)}, {self._size(one)}", {})
                of_name[self._mark(one)] = None
        return tuple(f"{', '.join(marks)}: {name}" for name, marks in found.items())

    def _mark(self, one: Drawn) -> str:
        if self.numbers:
            return str(self.numbers[one.place])
        return lettered(one.number)

    def _name(self, one: Drawn) -> str:
        piece = self.pieces[one.number]
        name = piece.name + one.lot.name.removeprefix(piece.name) if one.lot.count == 1 else ""
        name = harmless(name or piece.name)
        if piece.name in self.several:
            source = piece.source
            who = f"{source.garment} for {source.wearer}" if source.wearer else source.garment
            return f"{name} of {harmless(who)}"
        return name

    def _size(self, one: Drawn) -> str:
        """Width by length as the cut list has them; of what lies on the fold, of the half."""
        piece = self.pieces[one.number]
        wide, long = piece.on_bias or (piece.width.value, piece.length.value)
        if one.lot.half:
            wide = _half(one.lot)
        symbol = self.unit.symbol
        across, along = (
            tape_text(one, self.unit).removesuffix(f" {symbol}") for one in (wide, long)
        )
        if piece.narrow is not None and not one.lot.half:
            narrow = tape_text(piece.narrow, self.unit).removesuffix(f" {symbol}")
            across = f"{narrow} to {across}"
        return f"{across} × {along} {symbol}"


def _half(lot: Lot) -> Length:
    return Length(lot.blank.width)


def lettered(number: int) -> str:
    """A to Z, then AA to ZZ and so on, as columns of a spreadsheet are lettered."""
    more, last = divmod(number, len(ascii_uppercase))
    return (lettered(more - 1) if more else "") + ascii_uppercase[last]
