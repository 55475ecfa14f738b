"""How short a layout of the true outlines can be: lengths below which none of any style goes.

Besides the area, each line across the fabric is looked at: it meets so many pieces as go beside
each other there, and a taper with the width that it has at that place. So a taper counts as slices,
each as narrow as its narrow end, and a scale of all widths says how much a line can hold (see
``layout.scales``).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.buying.lots import outline_area
from estimator.layout.knapsack import Item, Line
from estimator.layout.scales import best_scale
from estimator.needs.cut_piece import CutPiece
from estimator.needs.fits import on_cloth
from estimator.needs.selvedges import Breadth

SLICES = 16
"""Slices of a taper."""
FINENESS = 2_000
"""Widths are counted in so many parts of the fabric's, each rounded down to whole ones."""
MOST_ROUNDS = 120
"""Selections added to the linear programme at most."""


def outline_bound(pieces: Sequence[CutPiece], breadth: Breadth) -> int:
    """A length in ticks that no layout of these outlines, on open fabric, can go below."""
    return max(area_bound(pieces, breadth), _across_bound(pieces, breadth))


def area_bound(pieces: Sequence[CutPiece], breadth: Breadth) -> int:
    """The same by area and by the longest piece alone, which costs next to nothing."""
    longest = max(
        min(piece.length.value, piece.width.value) if piece.may_turn else piece.length.value
        for piece in pieces
    )
    return max(longest.ticks, -(-total_area(pieces, breadth) // breadth.usable.ticks))


def area_cut(pieces: Sequence[CutPiece], breadth: Breadth) -> int:
    """What the pieces leave of the cloth as they are chalked, circles by their arcs."""
    round_ = sum(
        (outline_area(piece) - piece.arc.area) * piece.quantity for piece in pieces if piece.arc
    )
    return total_area(pieces, breadth) - round_


def total_area(pieces: Sequence[CutPiece], breadth: Breadth) -> int:
    """The area of all the pieces in square ticks, as far as it is between the selvedges."""
    on_selvedges = (
        breadth.selvedge.ticks * len(piece.selvedges) * piece.length.value.ticks * piece.quantity
        for piece in pieces
    )
    return sum(outline_area(piece) * piece.quantity for piece in pieces) - sum(on_selvedges)


def _across_bound(pieces: Sequence[CutPiece], breadth: Breadth) -> int:
    """What the lines across hold of the widths that they meet; 0 where that is not found out."""
    part = max(1, breadth.usable.ticks // FINENESS)
    items, weights = [], []
    for piece in pieces:
        if piece.on_bias is not None:
            continue  # it meets each line with another width; its area counts
        for ways in _slices(piece, breadth):
            fitting = [(width // part, long) for width, long in ways if width >= part]
            if len(fitting) == len(ways):
                items.append(Item(piece.quantity, tuple(width for width, _ in fitting)))
                weights.append([long for _, long in fitting])
    line = Line(breadth.usable.ticks // part, items)
    scale = best_scale(line, weights, MOST_ROUNDS)
    return scale.length if scale else 0


def _slices(piece: CutPiece, breadth: Breadth) -> Iterator[list[tuple[int, int]]]:
    """The parts of a piece along the fabric: (width, length) of each in every way it may lie."""
    width, length = on_cloth(piece, breadth.selvedge).ticks, piece.length.value.ticks
    if piece.narrow is None:
        turned = [(length, width)] if piece.may_turn and length <= breadth.usable.ticks else []
        yield [(width, length), *turned]
        return
    narrow = max(0, width - (piece.width.value - piece.narrow).ticks)
    for number in range(SLICES):
        yield [(narrow + (width - narrow) * number // SLICES, length // SLICES)]
