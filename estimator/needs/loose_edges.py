"""Edges of pieces that no seam names: hems, overedged edges, and halves of seams."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from estimator.edges import SEWN, SIDES, EdgeRef, Finish
from estimator.measure import ZERO, total
from estimator.needs.allowances import allowances_of
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.outlines import point_of
from estimator.needs.sewn import Sewn, times_over
from estimator.needs.types import ToCut
from estimator.plan import Made, Piece, Shape, Work
from estimator.working import Reckoning

_HEMMED = {Finish.HEM, Finish.ROLLED, Finish.CASING, Finish.TURNED}
_HALF_A_SEAM = {*SEWN, Finish.SELVEDGE}
_SEWN_DOWN = {Made.FOLDED_BAND, Made.BIAS_STRIP}
"""Made so that their second long edge is sewn down once more over the seam."""


def loose_edges(
    piece: Piece, edges: EdgeLengths, covered: Counter[tuple[str, str]]
) -> Iterator[Sewn]:
    """Edges in no seam by their finish; of those only partly in seams, the others."""
    cut = ToCut(edges.order, (), piece, piece.cut[0])
    finishes = dict(allowances_of(cut).finishes)
    finishes |= {name: edge.finish for name, edge in piece.edges.items() if name not in SIDES}
    if not _has_length(piece, point := point_of(piece)):
        finishes.pop(point, None)
    hemmed = [name for name, edge in finishes.items() if edge.finish in _HEMMED]
    replaced = _Replaced(piece, edges, hemmed)
    halves: dict[int, list[str]] = {}
    for name, edge in finishes.items():
        there = times_over(EdgeRef(piece.name, name), edges)
        left = max(there - covered[piece.name, name], 0)
        finish = edge.finish
        if finish in _HEMMED:
            hem = _all_of(piece, [name], there, edges, f"{finish.value} of", Work.HEMS)
            yield replaced.off(hem, [name], there)
        elif finish is Finish.SERGED:
            yield _all_of(piece, [name], there, edges, "serged", Work.OVEREDGING)
        elif finish not in _HALF_A_SEAM or not left:
            continue
        elif piece.made in _SEWN_DOWN and name in ("left", "right"):
            yield _all_of(piece, [name], left, edges, "sewn along", Work.SEAMS)
        else:
            halves.setdefault(left, []).append(name)
    for left, names in halves.items():
        both = _all_of(piece, names, left, edges, "edges in no other seam,", Work.SEAMS)
        both = replaced.off(both, names, left)
        yield replace(both, length=both.length.divided_by("each half of a seam", 2))


def _has_length(piece: Piece, side: str) -> bool:
    return side in piece.edges and piece.edges[side].length is not None


def _all_of(
    piece: Piece, names: list[str], count: int, edges: EdgeLengths, what: str, work: Work
) -> Sewn:
    long = total(edges.one(EdgeRef(piece.name, name)) for name in names)
    one = Reckoning.start(f"{what} {piece.name}: {' + '.join(names)}", long)
    return Sewn(work, one.times("so many pieces", count))


class _Replaced:
    """What the named edges of a box take the place of: sides of the paper's rectangle.

    An outline inside a box that has no bay is no longer than the box round it; so a side that is
    not said to be of a length of its own is sewn for what the named edges leave of it: hems for
    hems, seams for seams.
    """

    def __init__(self, piece: Piece, edges: EdgeLengths, hemmed: Sequence[str]) -> None:
        self.piece, self.edges, self.hemmed = piece, edges, hemmed
        self.left = {True: ZERO, False: ZERO}
        if piece.made is Made.FLAT and piece.shape is Shape.BOX:
            for name, edge in piece.edges.items():
                is_hem = name in hemmed
                if name not in SIDES and (is_hem or edge.finish.finish in _HALF_A_SEAM):
                    self.left[is_hem] += edges.one(EdgeRef(piece.name, name)) * piece.quantity

    def off(self, sewn: Sewn, names: Sequence[str], count: int) -> Sewn:
        """The same without what its sides need not be sewn for, named edges being sewn instead."""
        sides = [one for one in names if one in SIDES and not _has_length(self.piece, one)]
        there = total(self.edges.one(EdgeRef(self.piece.name, one)) for one in sides) * count
        is_hem = names[0] in self.hemmed
        off = min(self.left[is_hem], there)
        self.left[is_hem] -= off
        return replace(sewn, length=sewn.length.minus("named edges in their place", off))
