"""What was taken for granted of trims, elastics and buttons, for the reader to question."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.needs.counts import thickness_granted
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.elastics import elastic_defaults, elastic_on_each
from estimator.needs.sewn_on import defaults_of
from estimator.needs.trim_runs import edges_of, followed_edges
from estimator.plan import Trim


def granted_of(edges: EdgeLengths) -> tuple[str, ...]:
    """Lines for the list, each with its garment's name."""
    name = edges.order.plan.garment.name
    return tuple(f"{name}: {line}" for line in _lines(edges))


def _lines(edges: EdgeLengths) -> Iterator[str]:
    garment = edges.order.plan.garment
    trims = edges.order.plan.trim
    yield from filter(None, (_taken_together(trim, edges) for trim in trims))
    yield from filter(None, (_taken_as_straight(trim, edges) for trim in trims))
    for trim in trims:
        yield from defaults_of(trim, garment.rules, edges.order.tape)
    for elastic in edges.order.plan.elastic:
        refs = tuple(ref for one in elastic.along or () for ref in edges_of(one, edges))
        yield from elastic_on_each(elastic, refs, edges)
    yield from elastic_defaults(edges.order)
    flat = (thickness_granted(one, garment.unit) for one in edges.order.plan.notion)
    yield from filter(None, flat)


def _taken_together(trim: Trim, edges: EdgeLengths) -> str:
    """What was taken for granted of a trim over several pieces; nothing where the plan says it."""
    if trim.run is not None:
        return ""
    refs = [ref for ref in followed_edges(trim, edges) if not edges.is_ring(ref)]
    over = [ref for ref in refs if edges.how_many(ref) > 1]
    if not over or any(ref.edge in ("left", "right") for ref in refs):
        return ""
    names = " and ".join(f"{edges.how_many(ref)} × {ref}" for ref in over)
    return (
        f"{trim.name} is one run over {names}, sewn to one another; for a run on each, say "
        "so in the plan (run: each)."
    )


def _taken_as_straight(trim: Trim, edges: EdgeLengths) -> str:
    """Rows inside an edge of stated length that says nothing of its curve are as long as it is."""
    if trim.row_spacing is None and not trim.from_edge:
        return ""
    stated = []
    for ref in followed_edges(trim, edges):
        edge = edges.piece(ref.piece).edges.get(ref.edge)
        if edge is not None and edge.length is not None and edge.curve is None:
            stated.append(str(ref))
    if not stated:
        return ""
    return (
        f"{trim.name}: rows inside {' and '.join(stated)} are taken as long as the edge; of a "
        'curved one write its curve, as in curve = "hollow 1/2" for half a neckline.'
    )
