"""Elastics: cut shorter than the body, the opening or the edge, and joined after that."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.edges import EdgeRef
from estimator.faults import Wrong
from estimator.job import GarmentOrder
from estimator.measure import Length, decimal_text, tape_text
from estimator.needs.casings import check_depth
from estimator.needs.edge_lengths import EdgeLengths
from estimator.plan import Elastic, ElasticKind, Joined
from estimator.rules import TAIL_IMPERIAL, TAIL_METRIC
from estimator.working import SHRINKS, Reckoning, in_all

STRETCH = {
    ElasticKind.WOVEN: Fraction(10, 100),
    ElasticKind.BRAIDED: Fraction(15, 100),
    ElasticKind.KNITTED: Fraction(15, 100),
    ElasticKind.CLEAR: Fraction(10, 100),
    ElasticKind.FOLD_OVER: Fraction(10, 100),
    ElasticKind.SHIRRING: Fraction(0),
}
"""How much shorter than the body each kind is cut (common practice). Shirring elastic is sewn in
stretched, and drawn up it is about as long as the shirred edge."""


def stretch_of(elastic: Elastic, order: GarmentOrder) -> Fraction:
    """How much shorter an elastic is cut: as it says, as its garment says, else by its kind."""
    if elastic.stretch is not None:
        return elastic.stretch
    if elastic.kind is not None and order.plan.garment.elastic_stretch is None:
        return STRETCH[elastic.kind]
    return order.plan.garment.rules.elastic_stretch


def elastic_length(
    elastic: Elastic, shrinkage: Fraction, start: Reckoning, order: GarmentOrder
) -> Reckoning:
    """One run as it is bought: the stretch applies to ``start``, the overlap is added after."""
    rules = order.plan.garment.rules
    run = _in_use(elastic, start, order)
    if _joined(elastic) is Joined.IN_THE_ROUND:
        overlap = rules.elastic_overlap if elastic.overlap is None else elastic.overlap
        run = run.plus("overlap where it joins", overlap)
    elif elastic.kind is ElasticKind.SHIRRING:
        run = run.plus("two tails to knot", tail(order) * 2)
    else:
        run = run.plus("two ends caught in seams", rules.seam_allowance * 2)
    return run.divided_by(SHRINKS, 1 - shrinkage)


def _in_use(elastic: Elastic, start: Reckoning, order: GarmentOrder) -> Reckoning:
    """What of a run lies along the garment at rest: without its overlap, knots or caught ends."""
    return start.times("cut shorter, to be stretched", 1 - stretch_of(elastic, order))


def _joined(elastic: Elastic) -> Joined:
    usual = Joined.OPEN if elastic.kind is ElasticKind.SHIRRING else Joined.IN_THE_ROUND
    return elastic.joined or usual


def tail(order: GarmentOrder) -> Length:
    """What is left of shirring elastic at each end of a row, to knot it (common practice)."""
    return TAIL_METRIC if order.plan.garment.unit.metric else TAIL_IMPERIAL


def starts_of(
    elastic: Elastic, refs: tuple[EdgeRef, ...], edges: EdgeLengths
) -> tuple[Reckoning, int]:
    """The length an elastic is cut from, and how many times; ``refs`` are the edges it follows.

    Several edges are one path, over one piece of each: the front and the back of a leg opening.
    """
    if elastic.measure is not None:
        return Reckoning.start("body measure", elastic.measure), 1
    if elastic.opening is not None:
        return Reckoning.start("finished opening", elastic.opening), 1
    parts = [Reckoning.start(f"{ref}, one", edges.one(ref)) for ref in refs]
    return in_all("one after the other", parts), max(map(edges.how_many, refs))


def check_casing(
    elastic: Elastic, width: Length | None, start: Reckoning, edges: EdgeLengths
) -> None:
    """Raises Wrong where the elastic does not go through its casing, or the casing is shorter.

    ``start`` is what the elastic is cut from. Its overlap lies double in the casing, and what it
    shrinks it has lost before it is there.
    """
    ref = elastic.casing
    if ref is None:
        return
    unit = edges.order.tape
    check_depth(ref, "elastic", elastic.rows, width, edges)
    along = edges.share(ref, elastic.quantity)
    lies = _in_use(elastic, start, edges.order)
    if along.exact < lies.exact:
        raise Wrong(
            f"the casing is {tape_text(along.value, unit)} long, and the elastic in it "
            f"{tape_text(lies.value, unit)} without what its ends take",
            "check the body measure and the width of the piece",
            ("casing",),
        )


def elastic_on_each(
    elastic: Elastic, refs: tuple[EdgeRef, ...], edges: EdgeLengths
) -> Iterator[str]:
    """Says that pieces of which there are several have an elastic each; nothing of a ring."""
    count = max((edges.how_many(ref) for ref in refs if not edges.is_ring(ref)), default=1)
    if count == 1:
        return
    path = " and ".join(map(str, refs))
    each = f"on each of {count} × {path}" if len(refs) == 1 else f"over each {path}, {count} of it"
    named = ", ".join([f'"1 x {ref}"' for ref in refs] * 2) + (", ..." if count > 2 else "")
    yield (
        f"{elastic.name} is one {each}; for one over all of them, name each in the plan, as in "
        f"along = [{named}]."
    )


def elastic_defaults(order: GarmentOrder) -> Iterator[str]:
    """How each elastic is cut, where its plan does not say so."""
    unit, rules = order.tape, order.plan.garment.rules
    for elastic in order.plan.elastic:
        share = f"{decimal_text(stretch_of(elastic, order) * 100, 1)} %"
        if elastic.measure is not None:
            what = "the body measure"
        else:
            what = "its finished opening" if elastic.opening is not None else "its edge"
        usual = _usual_kind(elastic, order)
        kind = f", as is usual of {usual} elastic" if usual else ""
        cut = f"cut {share} shorter than {what}" if stretch_of(elastic, order) else f"cut to {what}"
        if _joined(elastic) is Joined.IN_THE_ROUND:
            overlap = rules.elastic_overlap if elastic.overlap is None else elastic.overlap
            ends = f"then overlapped {tape_text(overlap, unit)}"
        elif elastic.kind is ElasticKind.SHIRRING:
            ends = f"then {tape_text(tail(order), unit)} is left at each end to knot"
        else:
            ends = f"then {tape_text(rules.seam_allowance, unit)} is caught in a seam at each end"
        yield f"{elastic.name} is {cut}{kind}, {ends}."


def _usual_kind(elastic: Elastic, order: GarmentOrder) -> str:
    """The kind whose usual stretch is taken; nothing where a stretch is stated."""
    stated = elastic.stretch is not None or order.plan.garment.elastic_stretch is not None
    return "" if stated or elastic.kind is None else elastic.kind.value
