"""Rows of the stash that nothing can be cut or taken from, because nobody knows their item."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.faults import nearest
from estimator.job import Job
from estimator.quoting import quoted


def strange_rows(job: Job) -> Iterator[str]:
    """A remark on each row whose item is neither in the catalog nor in a plan.

    It is no fault: the stash may hold what other plans name. Without a catalog nothing is said.
    """
    if not job.catalog.items:
        return
    known = {*job.catalog.items, *_named(job)}
    small = {name.casefold() for name in known}
    for row, thing in job.stash.rows.items():
        if thing.item.casefold() not in small:
            what = (
                f"{job.stash.file}, row {row}: no catalog and no plan here has {quoted(thing.item)}"
            )
            yield f"{what}; {nearest(thing.item, known)}"


def _named(job: Job) -> Iterator[str]:
    for order in job.garments:
        yield from (fabric.name for fabric in order.plan.fabric)
        yield from (thing.name for thing in order.plan.bought)
