"""All that is bought by its length: the runs of trims, elastics and closures, by their terms."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.catalog import Kind
from estimator.faults import Faults
from estimator.needs.closures import closure_of
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.elastics import check_casing, elastic_length, starts_of
from estimator.needs.trim_runs import edges_of, sane, trim_runs
from estimator.needs.types import BuyingTerms, Group, LengthNeed, Needs, Run, ToRun, key_of
from estimator.plan import Elastic, Trim
from estimator.working import Source


def elastic_runs(
    elastic: Elastic, to_run: ToRun, edges: EdgeLengths, source: Source
) -> tuple[Run, ...]:
    """An elastic's runs; raises Wrong for one that does not go through its casing."""
    refs = tuple(ref for one in elastic.along or () for ref in edges_of(one, edges))
    start, times = starts_of(elastic, refs, edges)
    run = elastic_length(elastic, to_run.terms.shrinkage, start, edges.order)
    check_casing(elastic, to_run.material.width, start, edges)
    count = sane(times * elastic.rows * elastic.quantity * edges.order.copies)
    return (Run(source, run, count),)


def length_needs(needs: Needs, edges: Sequence[EdgeLengths]) -> tuple[LengthNeed, ...]:
    """All that is bought by its length; ``edges`` holds those of each garment, as it is sewn.

    What is bought on the same terms is one need, so that its runs are totalled before rounding.
    Raises Refused with every complaint about the runs.
    """
    found: dict[BuyingTerms, LengthNeed] = {}
    faults = Faults()
    for one in needs.lengths:
        of_garment = edges[one.garment]
        with faults.at(of_garment.order.places, one.path):
            runs, notes = _runs_of(one, of_garment)
            found[one.terms] = _with_runs(found.get(one.terms), one, runs, notes)
    faults.refuse_if_any()
    return tuple(found.values())


def _runs_of(to_run: ToRun, edges: EdgeLengths) -> tuple[tuple[Run, ...], tuple[str, ...]]:
    """The runs of one entry of a plan, and what the list says of it."""
    entry = to_run.entry
    source = edges.order.source(entry.name, to_run.path)
    if isinstance(entry, Elastic):
        return elastic_runs(entry, to_run, edges, source), ()
    if isinstance(entry, Trim):
        return trim_runs(entry, to_run.material, edges, source), ()
    closure = closure_of(entry, edges)
    return closure.runs(entry, to_run.terms.shrinkage, edges.order, to_run.path), closure.notes


def _with_runs(
    before: LengthNeed | None, to_run: ToRun, runs: tuple[Run, ...], notes: tuple[str, ...]
) -> LengthNeed:
    terms = to_run.terms
    names = tuple(dict.fromkeys((*(before.names if before else ()), to_run.entry.name)))
    said = (*(before.notes if before else ()), *to_run.notes, *notes)
    return LengthNeed(
        key=key_of(terms.item, terms.colour, names),
        title=to_run.title,
        names=names,
        group=Group.ELASTICS if terms.kind is Kind.ELASTIC else Group.TRIMS,
        terms=terms,
        notes=tuple(dict.fromkeys(said)),
        runs=(*(before.runs if before else ()), *runs),
    )
