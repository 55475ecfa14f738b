"""Checks of what is sewn to what, before any width is chosen: seams, strips and trims."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from estimator.edges import EdgeRef, Finish
from estimator.faults import Faults, Wrong
from estimator.job import GarmentOrder
from estimator.measure import tape_text, total
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.makeup import in_sewing_order, takes_a_length
from estimator.needs.trim_runs import edges_of, followed_trim
from estimator.plan import Elastic, Seam, Trim
from estimator.quoting import quoted

_NOT_SEWN = {Finish.HEM, Finish.ROLLED, Finish.FOLD, Finish.CASING}


def check_sewing(order: GarmentOrder, faults: Faults) -> None:
    """Adds a complaint for every edge that is named and does not exist, or cannot be sewn."""
    edges = EdgeLengths(order, {})
    plan, places = order.plan, order.places
    for number, piece in enumerate(plan.piece):
        if piece.onto is not None:
            with faults.at(places, ("piece", number, "onto")):
                _check_edge(piece.onto, edges)
    with faults.at(places, ("piece",)):
        in_sewing_order(order)
    for number, seam in enumerate(plan.seam):
        with faults.at(places, ("seam", number)):
            _check_seam(seam, edges)
    seams = {seam.name for seam in plan.seam}
    along: dict[str, Sequence[Trim | Elastic]] = {"trim": plan.trim, "elastic": plan.elastic}
    for table, entries in along.items():
        for number, entry in enumerate(entries):
            for place, one in enumerate(entry.along or ()):
                if one in seams:
                    continue  # its edges were checked with it, and may have no length yet
                with faults.at(places, (table, number, "along", place)):
                    for ref in edges_of(one, edges):
                        _check_edge(ref, edges)
    for number, trim in enumerate(plan.trim):
        if trim.covers is None:  # those that cover a cord are checked where they are cut
            with faults.at(places, ("trim", number)):
                followed_trim(trim, plan)


def _check_edge(ref: EdgeRef, edges: EdgeLengths) -> None:
    """The edge exists and, unless its length hangs on a strip, has one."""
    edges.check(ref)
    if not takes_a_length(edges.piece(ref.piece)):
        edges.one(ref)


def _check_seam(seam: Seam, edges: EdgeLengths) -> None:
    refs = [ref for side in seam.edges for ref in side]
    for ref in refs:
        _check_edge(ref, edges)
        edge = edges.piece(ref.piece).edges.get(ref.edge)
        if edge is not None and edge.finish.finish in _NOT_SEWN:
            raise Wrong(
                f"{quoted(ref)} has a {edge.finish.finish.value} and is joined in a seam too",
                "finish it with seam, or take it out of the seam",
                ("edges",),
            )
    if seam.gathered is not None and seam.gathered not in refs:
        raise Wrong(
            f"{quoted(seam.gathered)} is gathered, and is not an edge of this seam",
            "name one of " + " and ".join(quoted(ref) for ref in refs),
            ("gathered",),
        )


EASED_IN = Fraction(1, 10)
"""An edge up to a tenth longer can be eased in without gathers (common practice)."""


def seam_remarks(edges: EdgeLengths) -> tuple[str, ...]:
    """Seams whose two sides differ by more than ease, with neither said to be gathered."""
    remarks = []
    unit = edges.order.tape
    for seam in edges.order.plan.seam:
        sides = [total(edges.all(ref).value for ref in side) for side in seam.edges]
        if seam.gathered is None and max(sides) > min(sides).times(1 + EASED_IN):
            names = " to ".join(
                f"{' and '.join(map(str, side))} ({tape_text(length, unit)})"
                for side, length in zip(seam.edges, sides, strict=True)
            )
            remarks.append(
                f"{edges.order.plan.garment.name}: the seam joins {names}; say which edge is "
                f"gathered, check the sizes, or name a part of a quantity{_as_in(seam, edges)}."
            )
    return tuple(remarks)


def _as_in(seam: Seam, edges: EdgeLengths) -> str:
    """An edge of the seam written for one of its pieces only, where there are more."""
    for side in seam.edges:
        for ref in side:
            if edges.how_many(ref) > 1:
                return f', as in "1 x {ref}"'
    return ""
