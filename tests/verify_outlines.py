"""An independent checker of true outlines: it shares no code with what lays the pieces.

It knows the frozen types of pieces, lots and layouts, and nothing else. Each piece is drawn by its
corners where the written layout puts it: tapers every second one on its head, pieces on the bias
at 45 degrees, all others as rectangles. What lies over something else, or off the fabric, is
reported in words. Corners are exact, but for those on the bias: 1 / sqrt 2 is taken to 40 decimals.

A taper is drawn with its wide end near the cut end, unless the plan has it at the top. Every second
one of a row stands on its head; where the row is longer than the taper, it ends where the row does.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from estimator.buying.laying import Laid
from estimator.buying.lots import Lot
from estimator.layout import Layout, Placement
from estimator.measure import Length
from estimator.needs.cut_piece import CutPiece

Point = tuple[Fraction, Fraction]
Corners = tuple[Point, ...]

INVERSE_ROOT_2 = Fraction(7071067811865475244008443621048490392848, 10**40)


@dataclass(frozen=True)
class Outline:
    """One copy of a piece as it is chalked: its corners in turn, in ticks."""

    piece: int
    name: str
    corners: Corners
    on_its_head: bool = False

    def __str__(self) -> str:
        across, along = min(x for x, _ in self.corners), min(y for _, y in self.corners)
        return f"{self.name} at {float(across):.0f} across, {float(along):.0f} along"


def faults_in(
    pieces: Sequence[CutPiece], laid: Laid, usable: Length, *, nap: bool = False
) -> list[str]:
    """Everything that is wrong with these outlines, in words; an empty list if they can be cut."""
    drawn = outlines(pieces, laid)
    return [
        *_not_as_wanted(pieces, drawn),
        *(f"{one}: on its head, on a fabric with nap" for one in drawn if nap and one.on_its_head),
        *_beyond_their_places(pieces, laid),
        *(fault for cut in laid.cuts for fault in _in_one_cut(pieces, laid, cut, usable)),
    ]


def _in_one_cut(
    pieces: Sequence[CutPiece], laid: Laid, cut: Layout, usable: Length
) -> Iterator[str]:
    drawn = _of_cut(pieces, laid, cut)
    yield from _off_the_fabric(drawn, usable, cut.length)
    for one, other in combinations(drawn, 2):
        if overlap(one.corners, other.corners):
            yield f"{one}: over {other}"


def outlines(pieces: Sequence[CutPiece], laid: Laid) -> list[Outline]:
    """Every copy of every piece where the layout puts it."""
    return [one for cut in laid.cuts for one in _of_cut(pieces, laid, cut)]


def _of_cut(pieces: Sequence[CutPiece], laid: Laid, cut: Layout) -> list[Outline]:
    return [
        one
        for place in cut.placements
        for one in _of_lot(pieces[laid.lots[place.blank].piece], laid.lots[place.blank], place)
    ]


def overlap(one: Corners, other: Corners) -> bool:
    """Two convex outlines lie over one another unless a line along some edge parts them."""
    for corners in (one, other):
        for (x, y), (u, v) in zip(corners, corners[1:] + corners[:1], strict=True):
            normal = (v - y, x - u)
            if normal == (0, 0):
                continue
            reach = [[a * normal[0] + b * normal[1] for a, b in shape] for shape in (one, other)]
            if max(reach[0]) <= min(reach[1]) or max(reach[1]) <= min(reach[0]):
                return False
    return True


def _of_lot(piece: CutPiece, lot: Lot, place: Placement) -> Iterator[Outline]:
    at = place.across
    for number in range(lot.count):
        if number and lot.apart:
            at += lot.apart[(number - 1) % len(lot.apart)].ticks
        head = (number % 2 == 1) != (piece.square == "right" and lot.count > 1)
        shape = _drawn(piece, place, on_its_head=head)
        corners = tuple((x + at, y + place.along) for x, y in shape)
        yield Outline(lot.piece, piece.name, corners, lot.count > 1 and number % 2 == 1)


def _drawn(piece: CutPiece, place: Placement, *, on_its_head: bool) -> Corners:
    """The corners of a piece whose box starts at (0, 0)."""
    if piece.narrow is None and piece.on_bias is None:
        wide, long = Fraction(place.width), Fraction(place.length)
        return (Fraction(0), Fraction(0)), (wide, Fraction(0)), (wide, long), (Fraction(0), long)
    width, length = piece.on_bias or (piece.width.value, piece.length.value)
    wide, long = Fraction(width.ticks), Fraction(length.ticks)
    narrow = wide if piece.narrow is None else Fraction(piece.narrow.ticks)
    start = {"left": Fraction(0), "right": wide - narrow, "": (wide - narrow) / 2}[piece.square]
    zero = Fraction(0)
    corners: Corners = (zero, zero), (wide, zero), (start + narrow, long), (start, long)
    if piece.on_its_head and piece.on_bias is None:
        corners = tuple((x, long - y) for x, y in reversed(corners))
    if piece.on_bias is not None:
        mirrored = piece.square == "right"  # else the short way of its box would lie along
        return _at_45_degrees(corners, -1 if mirrored else 1)
    if on_its_head:
        corners = tuple((wide - x, place.length - y) for x, y in corners)
    return corners


def _at_45_degrees(corners: Corners, way: int) -> Corners:
    turned = [((x * way + y) * INVERSE_ROOT_2, (y - x * way) * INVERSE_ROOT_2) for x, y in corners]
    left, low = min(x for x, _ in turned), min(y for _, y in turned)
    return tuple((x - left, y - low) for x, y in turned)


def _not_as_wanted(pieces: Sequence[CutPiece], drawn: Sequence[Outline]) -> Iterator[str]:
    found = Counter(one.piece for one in drawn)
    for number, piece in enumerate(pieces):
        if found[number] != piece.quantity:
            yield f"{piece.name}: wanted {piece.quantity}, placed {found[number]}"


def _beyond_their_places(pieces: Sequence[CutPiece], laid: Laid) -> Iterator[str]:
    for place in (place for cut in laid.cuts for place in cut.placements):
        lot = laid.lots[place.blank]
        for one in _of_lot(pieces[lot.piece], lot, place):
            within = all(
                place.across <= x <= place.across + place.width
                and place.along <= y <= place.along + place.length
                for x, y in one.corners
            )
            if not within:
                yield f"{one}: reaches beyond the place of its lot"


def _off_the_fabric(drawn: Sequence[Outline], usable: Length, end: int) -> Iterator[str]:
    for one in drawn:
        if any(not (0 <= x <= usable.ticks and 0 <= y <= end) for x, y in one.corners):
            yield f"{one}: off the fabric"
