"""All that is bought by count: notions, zips, and bones that are sold ready cut."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.faults import Faults
from estimator.job import GarmentOrder, Job
from estimator.needs.closures import counted_bones, sold_ready_cut
from estimator.needs.counts import count_of
from estimator.needs.terms import buying_terms, notes_on
from estimator.needs.types import CountNeed, Group, key_of
from estimator.working import Operation, Step


def counted_in(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    """What one garment's order takes by count."""
    yield from _counts(order, job, faults)
    yield from _ready_cut(order, job, faults)


def _counts(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    for place, notion in enumerate(order.plan.notion):
        path = ("notion", place)
        with faults.at(order.places, path):
            terms = buying_terms(notion, order, job)
            item = job.catalog.items.get(terms.item)
            counted = count_of(notion, order)
            count = counted.count * order.copies + notion.spare
            source = order.source(notion.name, path)
            yield CountNeed(
                key=key_of(terms.item, terms.colour, [notion.name]),
                title=item.name if item else notion.name,
                names=(notion.name,),
                group=Group.NOTIONS,
                terms=terms,
                notes=(*notes_on(item, notion.note), *counted.notes),
                count=count,
                opening=notion.length,
                steps=counted.for_the_job(notion, order),
                takes=((source, count),),
                sources=(source,),
            )


def _ready_cut(order: GarmentOrder, job: Job, faults: Faults) -> Iterator[CountNeed]:
    """Bones that are not cut from a length, but counted in the lengths in which they are sold."""
    for place, entry in enumerate(order.plan.boning):
        path = ("boning", place)
        with faults.at(order.places, path):
            terms = buying_terms(entry, order, job)
            if not sold_ready_cut(entry, terms):
                continue
            item = job.catalog.items.get(terms.item)
            bones = counted_bones(entry, order)
            count = bones.count * order.copies
            source = order.source(entry.name, path)
            yield CountNeed(
                key=key_of(terms.item, terms.colour, [entry.name]),
                title=item.name if item else entry.name,
                names=(entry.name,),
                group=Group.NOTIONS,
                terms=terms,
                notes=(*notes_on(item, entry.note), *bones.notes),
                count=count,
                opening=bones.length.value,
                steps=bones.steps(entry, order),
                takes=((source, count),),
                sources=(source,),
                bone=bones.length.steps,
                shorter=entry.shorter,
            )


def counted_together(first: CountNeed, second: CountNeed) -> CountNeed:
    """What two garments take of one thing, bought as one."""
    total = first.count + second.count
    return replace(
        first,
        key=key_of(first.terms.item, first.terms.colour, first.names + second.names),
        names=tuple(dict.fromkeys(first.names + second.names)),
        notes=tuple(dict.fromkeys(first.notes + second.notes)),
        count=total,
        steps=(*first.steps, Step(f"{second.sources[0]}", Operation.ADD, second.count, total)),
        takes=first.takes + second.takes,
        sources=first.sources + second.sources,
    )
