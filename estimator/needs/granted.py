"""What was taken for granted of trims, elastics and buttons, for the reader to question."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.needs.counts import thickness_granted
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.elastics import elastic_defaults, elastic_on_each
from estimator.needs.sewn_on import defaults_of
from estimator.needs.trim_runs import edges_of, granted_of_runs


def granted_of(edges: EdgeLengths) -> tuple[str, ...]:
    """Lines for the list, each with its garment's name."""
    name = edges.order.plan.garment.name
    return tuple(f"{name}: {line}" for line in _lines(edges))


def _lines(edges: EdgeLengths) -> Iterator[str]:
    garment = edges.order.plan.garment
    yield from granted_of_runs(edges)
    for trim in edges.order.plan.trim:
        yield from defaults_of(trim, garment.rules, edges.order.tape)
    for elastic in edges.order.plan.elastic:
        refs = tuple(ref for one in elastic.along or () for ref in edges_of(one, edges))
        yield from elastic_on_each(elastic, refs, edges)
    yield from elastic_defaults(edges.order)
    flat = (thickness_granted(one, garment.unit) for one in edges.order.plan.notion)
    yield from filter(None, flat)
