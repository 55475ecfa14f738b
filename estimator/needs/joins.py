"""How many joins strips and circles have, once they are cut from fabric of a known width."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from estimator.needs.cut_piece import CutPiece
from estimator.needs.cutting import with_own_sizes
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.stitching import is_sewn_apart, may_have_joins
from estimator.needs.types import FabricNeed


def joins_of(
    garment: int, edges: EdgeLengths, cut: Sequence[tuple[FabricNeed, Sequence[CutPiece]]]
) -> Mapping[str, int]:
    """The joins of each piece of a garment, in all its copies and in all fabrics sewn apart.

    ``cut`` holds each fabric's pieces as they are bought. A strip of n widths has n - 1 joins
    beside the seam that closes it, as has a circle of n parts.
    """
    order = edges.order
    roles = {fabric.name: fabric.role for fabric in order.plan.fabric}
    names = {(garment, name): need for need, _ in cut for garment, name in need.used_as}
    pieces = {need.terms: pieces for need, pieces in cut}
    found: dict[str, int] = {}
    for number, piece in enumerate(order.plan.piece):
        if not may_have_joins(piece):
            continue
        source = order.source(piece.name, ("piece", number))
        for place, one in enumerate(piece.cut):
            need = names.get((garment, one.fabric))  # none of a fabric that could not be read
            if need is None or (place and not is_sewn_apart(one, roles[one.fabric])):
                continue
            of_fabric = pieces[need.terms]
            parts = sum(part.quantity for part in of_fabric if part.source == source)
            whole = with_own_sizes(piece, one).quantity * order.copies
            found[piece.name] = found.get(piece.name, 0) + max(parts - whole, 0)
    return {name: count for name, count in found.items() if count}
