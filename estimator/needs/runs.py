"""Runs of trim and elastic: how long each unbroken length is, and how many there are.

Order of arithmetic: finished length, fullness, whole repeats, then the overlap or the ends. So
fullness never multiplies an allowance.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from estimator.catalog import Kind
from estimator.edges import EdgeRef
from estimator.faults import Path, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import Length
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.types import BuyingTerms, Group, LengthNeed, Needs, Run, key_of
from estimator.plan import Elastic, Joined, Seam, Trim
from estimator.working import Reckoning
from estimator.written import quoted


def trim_runs(trim: Trim, repeat: Length | None, edges: EdgeLengths, path: Path) -> tuple[Run, ...]:
    """The runs of a trim in the whole job. ``repeat`` is one scallop or motif, or None.

    Raises Wrong for an edge or a seam that does not exist.
    """
    order = edges.order
    source = order.source(trim.name, path)
    alike = trim.rows * order.copies * trim.quantity
    return tuple(
        Run(source, _sewn_on(trim, repeat, finished, order), count * alike)
        for finished, count in _finished_lengths(trim, edges)
    )


def _finished_lengths(trim: Trim, edges: EdgeLengths) -> list[tuple[Reckoning, int]]:
    if trim.length is not None:
        return [(Reckoning.start("finished length as stated", trim.length), 1)]
    refs = [edge_of(one, edges) for one in trim.along or ()]
    if trim.run == "each":
        return [
            (
                Reckoning.start(f"{ref}, one", edges.one(ref)),
                ref.count or edges.piece(ref.piece).quantity,
            )
            for ref in refs
        ]
    whole = edges.all(refs[0])
    for ref in refs[1:]:
        whole = whole.plus(str(ref), edges.all(ref).value)
    return [(whole, 1)]


def edge_of(one: EdgeRef | str, edges: EdgeLengths) -> EdgeRef:
    """An edge as it is, or the ungathered edge of the seam that a text names."""
    if isinstance(one, EdgeRef):
        return one
    seams = {seam.name: seam for seam in edges.order.plan.seam if seam.name}
    if one not in seams:
        raise Wrong(
            f"there is no seam {quoted(one)}",
            nearest(one, seams) if seams else 'name an edge, as in "skirt panel: bottom"',
        )
    return _ungathered(seams[one])


def _ungathered(seam: Seam) -> EdgeRef:
    """The edge that gives a seam its length: the one that is not gathered, else the first."""
    first, second = seam.edges
    return second if seam.gathered == first else first


def _sewn_on(
    trim: Trim, repeat: Length | None, finished: Reckoning, order: GarmentOrder
) -> Reckoning:
    rules = order.plan.garment.rules
    run = finished.times("fullness", trim.fullness)
    if repeat is not None:
        run = run.up_to("whole repeats", repeat)
    if trim.joined is Joined.IN_THE_ROUND:
        if repeat is not None:
            return run.plus("one repeat overlapped where the round joins", repeat)
        overlap = rules.overlap if trim.overlap is None else trim.overlap
        return run.plus("overlap where the round joins", overlap)
    match trim.ends:
        case "turned under":
            return run.plus("two ends turned under", rules.turn_under * 2)
        case "in a seam":
            return run.plus("two ends caught in seams", rules.seam_allowance * 2)
        case "raw":
            return run


def elastic_runs(elastic: Elastic, order: GarmentOrder, path: Path) -> tuple[Run, ...]:
    """An elastic's runs: the stretch applies to the body measure, the overlap is added after."""
    rules = order.plan.garment.rules
    stretch = rules.elastic_stretch if elastic.stretch is None else elastic.stretch
    run = Reckoning.start("body measure", elastic.measure)
    run = run.times("cut shorter, to be stretched", Fraction(1) - stretch)
    if elastic.joined is Joined.IN_THE_ROUND:
        overlap = rules.elastic_overlap if elastic.overlap is None else elastic.overlap
        run = run.plus("overlap where it joins", overlap)
    else:
        run = run.plus("two ends caught in seams", rules.seam_allowance * 2)
    count = elastic.rows * elastic.quantity * order.copies
    return (Run(order.source(elastic.name, path), run, count),)


def length_needs(needs: Needs, edges: Sequence[EdgeLengths]) -> tuple[LengthNeed, ...]:
    """All that is bought by its length; ``edges`` holds those of each garment, as it is sewn.

    What is bought on the same terms is one need, so that its runs are totalled before rounding.
    """
    found: dict[BuyingTerms, LengthNeed] = {}
    for one in needs.lengths:
        entry, of_garment = one.entry, edges[one.garment]
        runs = (
            elastic_runs(entry, of_garment.order, one.path)
            if isinstance(entry, Elastic)
            else trim_runs(entry, one.repeat, of_garment, one.path)
        )
        before = found.get(one.terms)
        found[one.terms] = LengthNeed(
            key=before.key if before else key_of(one.terms.item, one.terms.colour, entry.name),
            title=one.title,
            names=tuple(dict.fromkeys((*(before.names if before else ()), entry.name))),
            group=Group.ELASTICS if one.terms.kind is Kind.ELASTIC else Group.TRIMS,
            terms=one.terms,
            runs=(*(before.runs if before else ()), *runs),
        )
    return tuple(found.values())
