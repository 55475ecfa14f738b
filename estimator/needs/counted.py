"""All that is bought by count: notions, zips, and bones that are sold ready cut."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.catalog import Catalog
from estimator.faults import Faults
from estimator.job import GarmentOrder, Job
from estimator.measure import Length
from estimator.needs.as_one import as_one
from estimator.needs.closures import counted_bones, sold_ready_cut
from estimator.needs.counts import count_of, spares_of
from estimator.needs.terms import buying_terms, notes_on
from estimator.needs.types import BuyingTerms, CountNeed, Group, key_of
from estimator.plan import Bought
from estimator.working import Operation, Source, Step


def counted_in(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    """What one garment's order takes by count."""
    yield from _counts(order, job, faults)
    yield from _ready_cut(order, job, faults)


def _counts(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    for place, notion in enumerate(order.plan.notion):
        path = ("notion", place)
        with faults.at(order.places, path):
            counted = count_of(notion, order)
            yield _need(
                notion,
                order.source(notion.name, path),
                buying_terms(notion, order, job),
                job.catalog,
                count=counted.count * order.copies + spares_of(notion, order),
                opening=notion.length,
                steps=counted.for_the_job(notion, order),
                notes=counted.notes,
            )


def _ready_cut(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    """Bones that are not cut from a length, but counted in the lengths in which they are sold."""
    for place, entry in enumerate(order.plan.boning):
        path = ("boning", place)
        with faults.at(order.places, path):
            terms = buying_terms(entry, order, job)
            if not sold_ready_cut(entry, terms):
                continue
            bones = counted_bones(entry, order)
            need = _need(
                entry,
                order.source(entry.name, path),
                terms,
                job.catalog,
                count=bones.count * order.copies,
                opening=bones.length.value,
                steps=bones.steps(entry, order),
                notes=bones.notes,
            )
            yield replace(need, bone=bones.length.steps, shorter=entry.shorter)


def _need(
    entry: Bought,
    source: Source,
    terms: BuyingTerms,
    catalog: Catalog,
    *,
    count: int,
    opening: Length | None,
    steps: tuple[Step, ...],
    notes: tuple[str, ...],
) -> CountNeed:
    item = catalog.items.get(terms.item)
    return CountNeed(
        key=key_of(terms.item, terms.colour, [entry.name]),
        title=item.name if item else entry.name,
        names=(entry.name,),
        group=Group.NOTIONS,
        terms=terms,
        notes=(*notes_on(item, entry.note), *notes),
        count=count,
        opening=opening,
        steps=steps,
        takes=((source, count),),
        sources=(source,),
    )


def counted_together(first: CountNeed, second: CountNeed) -> CountNeed:
    """What two garments take of one thing, bought as one."""
    total = first.count + second.count
    return replace(
        as_one(first, second),
        count=total,
        steps=(*first.steps, Step(f"{second.sources[0]}", Operation.ADD, second.count, total)),
        takes=first.takes + second.takes,
    )
