"""The true outline of every piece where a layout puts it, in ticks on the cloth.

``across`` counts from the inner edge of the near selvedge or from the fold, ``along`` from the cut
end. Tapers lie head to tail as their lots say, halves at the fold, parts of circles as arcs, and
pieces on the bias at 45 degrees. A piece whose edge is the fabric's own reaches into the selvedge.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from math import sqrt

from estimator.buying.lots import Lot
from estimator.buying.one_width import WidthOption
from estimator.layout import Held, Layout, Placement
from estimator.needs.cut_piece import CutPiece
from estimator.reports.pictures.arcs import part_of_circle
from estimator.reports.pictures.marks import Shape


class Grain(Enum):
    """How the length of a piece runs on the cloth."""

    ALONG = "along"
    ACROSS = "across"
    BIAS = "at 45 degrees"


@dataclass(frozen=True, slots=True)
class Drawn:
    """One copy of a piece as it is chalked: its corners in turn, and ``holes`` in it.

    ``number`` is that of the piece in the option, ``place`` that of its lot in the layout.
    ``boxed`` says that only the box round it is known.
    """

    number: int
    lot: Lot
    place: Placement
    corners: Shape
    grain: Grain
    holes: tuple[Shape, ...] = ()
    boxed: bool = False


def outlines(option: WidthOption, cut: Layout) -> Iterator[Drawn]:
    """Every copy of every piece of one cut, in the order of its placements."""
    for place in cut.placements:
        lot = option.laid.lots[place.blank]
        yield from _of_lot(option, option.pieces[lot.piece], lot, place)


def _of_lot(option: WidthOption, piece: CutPiece, lot: Lot, place: Placement) -> Iterator[Drawn]:
    left = float(place.across)
    right = float(place.across + place.width)
    near, far = _on_selvedges(option, piece, lot, place)
    edge = option.breadth.selvedge.ticks
    left, right = left - edge * near, right + edge * far
    other_side = (far and not near and piece.selvedges == ("left",)) or (
        near and not far and piece.selvedges == ("right",)
    )
    mirrored = other_side and option.breadth.folded  # the copy that lies so is the under layer's
    for number in range(lot.count):
        if number and lot.apart:
            left += lot.apart[(number - 1) % len(lot.apart)].ticks
        head = (number % 2 == 1) != (piece.square == "right" and lot.count > 1)
        shape, holes = _shape(piece, lot, place, right - left)
        wide, long = piece.width.value.ticks, place.length
        if mirrored:
            shape = tuple((wide - x, y) for x, y in reversed(shape))
        if head != (other_side and not mirrored):
            shape = tuple((wide - x, long - y) for x, y in shape)
        yield Drawn(
            number=lot.piece,
            lot=lot,
            place=place,
            corners=_moved(shape, left, place.along),
            grain=_grain(piece, place),
            holes=tuple(_moved(hole, left, place.along) for hole in holes),
            boxed=piece.boxed and piece.narrow is None and not piece.arc and not piece.on_bias,
        )


def _on_selvedges(
    option: WidthOption, piece: CutPiece, lot: Lot, place: Placement
) -> tuple[bool, bool]:
    """Whether a piece reaches into the near selvedge, and into the far one."""
    if not piece.selvedges:
        return False, False
    if option.breadth.folded:
        return False, True
    both = len(piece.selvedges) == 2
    near = both or (place.across == 0 and lot.blank.held is not Held.FAR)
    return near, both or not near


def _grain(piece: CutPiece, place: Placement) -> Grain:
    if piece.on_bias is not None:
        return Grain.BIAS
    return Grain.ACROSS if place.turned else Grain.ALONG


def _shape(
    piece: CutPiece, lot: Lot, place: Placement, wide: float
) -> tuple[Shape, tuple[Shape, ...]]:
    """A piece in a box that starts at (0, 0), its top further along; and the holes in it."""
    if piece.on_bias is not None:
        return _on_bias(piece), ()
    if piece.narrow is not None and not place.turned:
        own = piece.width.value.ticks
        return _taper(piece, own, piece.length.value.ticks, half_of=wide if lot.half else 0), ()
    if piece.arc is not None:
        arc = piece.arc.turned if place.turned else piece.arc.half if lot.half else piece.arc
        return part_of_circle(arc, wide, place.length)
    return _rectangle(wide, place.length), ()


def _rectangle(wide: float, long: float) -> Shape:
    return (0, 0), (wide, 0), (wide, long), (0, long)


def _taper(piece: CutPiece, wide: float, long: float, *, half_of: float) -> Shape:
    """A taper with its wide end at the cut end, unless that is its top; or its half at the fold."""
    assert piece.narrow is not None, "only a taper comes here"
    narrow = piece.narrow.ticks
    start = {"left": 0.0, "right": wide - narrow, "": (wide - narrow) / 2}[piece.square]
    if half_of:
        shape: Shape = (0, 0), (half_of, 0), (half_of - start, long), (0, long)
    else:
        shape = (0, 0), (wide, 0), (start + narrow, long), (start, long)
    if piece.on_its_head and piece.on_bias is None:
        shape = tuple((x, long - y) for x, y in reversed(shape))
    return shape


def _on_bias(piece: CutPiece) -> Shape:
    assert piece.on_bias is not None, "only a piece on the bias comes here"
    wide, long = (size.ticks for size in piece.on_bias)
    tapers = piece.narrow is not None
    shape = _taper(piece, wide, long, half_of=0) if tapers else _rectangle(wide, long)
    way = -1 if piece.square == "right" else 1  # else its box would be long the other way
    turned = [((x * way + y) / sqrt(2), (y - x * way) / sqrt(2)) for x, y in shape]
    left, low = min(x for x, _ in turned), min(y for _, y in turned)
    return tuple((x - left, y - low) for x, y in turned)


def _moved(shape: Shape, across: float, along: float) -> Shape:
    return tuple((x + across, y + along) for x, y in shape)
