"""The whole program from top to bottom: a job goes in, an estimate comes out.

    plan + catalog -> needs -> at each width on offer: make-up -> layout -> runs, thread -> buying

Each stage is a pure function from frozen values to frozen values. Files are read before this
module and written after it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from estimator.buying.fabric_widths import (
    FabricChoice,
    at_all_widths,
    choose_width,
    offers_by_width,
)
from estimator.buying.settle import settled
from estimator.buying.small_things import lines_for
from estimator.buying.thread import buy_thread
from estimator.buying.types import Purchase
from estimator.catalog import NO_CATALOG, Catalog
from estimator.estimated import (
    CUT_FROM,
    Estimate,
    bill_of_what_hangs_on_widths,
    bill_with_charges,
    listed,
)
from estimator.faults import Faults, Refused
from estimator.job import GarmentOrder, Job
from estimator.measure import Unit
from estimator.needs.care import advice_for
from estimator.needs.cautions import cautions_for
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.granted import granted_of
from estimator.needs.joins import joins_of
from estimator.needs.makeup import sewn_lengths
from estimator.needs.of_job import needs_of
from estimator.needs.runs import length_needs
from estimator.needs.selvedges import breadth_of
from estimator.needs.sewing import seam_remarks
from estimator.needs.sewn import Sewn
from estimator.needs.stitching import sewn_in
from estimator.needs.strange_rows import strange_rows
from estimator.needs.thread import granted_of_thread, thread_needs
from estimator.needs.types import FabricNeed, LengthNeed, Needs
from estimator.plan import Plan
from estimator.ring_widths import Widths, beside_the_others, ring_setting_widths


def estimate(job: Job | Plan, catalog: Catalog = NO_CATALOG, *, thorough: bool = False) -> Estimate:
    """What to buy for a job, or for one plan with a catalog; ``thorough`` searches longer.

    Raises Refused, with every complaint, for a plan that cannot be made or bought.
    """
    if isinstance(job, Plan):
        job = Job((GarmentOrder(job),), catalog, thorough)
    faults = Faults()
    needs = needs_of(job, faults)
    notions = _notions(needs, faults)
    faults.refuse_if_any()
    found = []
    refused = []
    for widths in ring_setting_widths(needs):
        try:
            found.append(_at_widths(job, needs, notions, widths))
        except Refused as refusal:
            refused.append(refusal)
    if not found:
        raise refused[0]
    if job.is_bought_new:
        return beside_the_others(min(found, key=bill_of_what_hangs_on_widths), found)
    # each choice of the widths that set rings has its own use of the stash and its own shops
    ways = [settle(one) for one in found]
    return beside_the_others(min(ways, key=bill_with_charges), ways)


def settle(found: Estimate) -> Estimate:
    """An estimate of what is bought new, with the stash used first and the shops chosen."""
    if found.job.is_bought_new:
        return found
    stash, shops = found.job.stash, found.job.shops
    others = [one for one in found.purchases if one.group not in CUT_FROM]
    unit = found.job.garments[0].tape if found.job.garments else Unit.IN
    own = settled(found.fabrics, others, stash, shops, unit)
    return replace(
        found,
        fabrics=own.fabrics,
        purchases=listed(own.fabrics, own.others),
        visits=own.visits,
        remarks=(*found.remarks, *own.remarks, *strange_rows(found.job)),
        bought_new=found,
    )


def _at_widths(job: Job, needs: Needs, notions: Sequence[Purchase], widths: Widths) -> Estimate:
    """The estimate for one choice of the widths that set rings; the others are chosen here."""
    edges = [_sewn(number, order, needs, widths) for number, order in enumerate(needs.garments)]
    fabrics: list[FabricChoice] = []
    trims: list[Purchase] = []
    faults = Faults()
    for need in needs.fabrics:
        with faults.of_others():
            fabrics.append(_fabric(need, edges, widths, _unit(needs)))
    with faults.of_others():
        trims = _trims(needs, edges)
    sewn = _sewn_in(needs, edges, fabrics, faults)
    threads = _threads(needs, sewn, faults)
    faults.refuse_if_any()
    return Estimate(
        job=job,
        currency=needs.currency,
        fabrics=tuple(fabrics),
        purchases=listed(fabrics, [*trims, *notions, *threads]),
        granted=_granted(needs, edges, sewn),
        remarks=tuple(remark for one in edges for remark in seam_remarks(one)),
        cautions=cautions_for(job, [need.terms.kind for need in needs.counts]),
        advice=advice_for(job),
    )


def _sewn(number: int, order: GarmentOrder, needs: Needs, widths: Widths) -> EdgeLengths:
    """The edges of one garment as it is sewn from fabrics of these widths."""
    breadths = {
        name: breadth_of(need.terms, widths[need.terms][0])
        for need in needs.fabrics
        if need.terms in widths
        for garment, name in need.used_as
        if garment == number
    }
    faults = Faults()
    with faults.at(order.places, ()):
        return sewn_lengths(order, breadths)
    raise Refused(faults.found)


def _fabric(
    need: FabricNeed, edges: Sequence[EdgeLengths], widths: Widths, unit: Unit
) -> FabricChoice:
    """One fabric at each width on offer, and the width chosen."""
    groups = (widths[need.terms],) if need.terms in widths else offers_by_width(need.terms)
    return choose_width(need, at_all_widths(need, groups, dict(enumerate(edges)), unit))


def _trims(needs: Needs, edges: Sequence[EdgeLengths]) -> list[Purchase]:
    """Trims and elastics; raises Refused with every complaint about them."""
    faults = Faults()
    purchases: list[Purchase] = []
    needed: tuple[LengthNeed, ...] = ()
    with faults.of_others():
        needed = length_needs(needs, edges)
    for need in needed:
        with faults.about(need.runs[0].source.where):
            purchases += lines_for(need, _unit(needs))
    faults.refuse_if_any()
    return purchases


def _sewn_in(
    needs: Needs,
    edges: Sequence[EdgeLengths],
    fabrics: Sequence[FabricChoice],
    faults: Faults,
) -> list[tuple[Sewn, ...]]:
    """What is sewn in each garment whose plan asks for thread; nothing of the others."""
    asked = {thread.garment for thread in needs.threads}
    cut = [(choice.need, choice.chosen.pieces) for choice in fabrics]
    found: list[tuple[Sewn, ...]] = [()] * len(edges)
    for number, one in enumerate(edges):
        if number in asked:
            with faults.about(needs.garments[number].places.file):
                found[number] = sewn_in(one, joins_of(number, one, cut))
    return found


def _threads(needs: Needs, sewn: Sequence[Sequence[Sewn]], faults: Faults) -> list[Purchase]:
    """Thread for all that is sewn."""
    purchases: list[Purchase] = []
    for need in thread_needs(needs, sewn):
        with faults.about(need.sources[0].where):
            purchases += buy_thread(need)
    return purchases


def _granted(
    needs: Needs, edges: Sequence[EdgeLengths], sewn: Sequence[Sequence[Sewn]]
) -> tuple[str, ...]:
    """What was taken for granted of each garment's trims and thread."""
    found: list[str] = []
    for number, one in enumerate(edges):
        threads = [thread for thread in needs.threads if thread.garment == number]
        found += [*granted_of(one), *granted_of_thread(one.order, sewn[number], threads)]
    return tuple(found)


def _notions(needs: Needs, faults: Faults) -> list[Purchase]:
    """What is bought by count, whatever the widths."""
    purchases: list[Purchase] = []
    for need in needs.counts:
        with faults.about(need.sources[0].where):
            purchases += lines_for(need, _unit(needs))
    return purchases


def _unit(needs: Needs) -> Unit:
    """The tape's unit of the first garment, in which complaints and notes are worded."""
    return needs.garments[0].tape if needs.garments else Unit.IN
