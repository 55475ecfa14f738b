"""Rows of the stash that serve nothing, because of a slip in their item or their colour."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.faults import A_SLIP, alike, nearest
from estimator.job import Job
from estimator.plan import Bought, Fabric
from estimator.quoting import quoted


def strange_rows(job: Job) -> Iterator[str]:
    """A remark on each row whose item is neither in the catalog nor in a plan, or lacks a colour.

    It is no fault: the stash may hold what other plans name. Without a catalog nothing is said.
    """
    if not job.catalog.items:
        return
    known = {*job.catalog.items, *_named(job)}
    small = {name.casefold() for name in known}
    colours = _colours(job)
    for row, thing in job.stash.rows.items():
        if thing.item.casefold() not in small:
            what = (
                f"{job.stash.file}, row {row}: no catalog and no plan here has {quoted(thing.item)}"
            )
            yield f"{what}; {nearest(thing.item, known)}"
            continue
        own = job.stash.colour_of(thing)
        asked = colours.get(thing.item.casefold(), set())
        if not asked or own.casefold() in {one.casefold() for one in asked}:
            continue
        where = f"{job.stash.file}, row {row}: "
        if not own:
            in_words = " and ".join(map(quoted, sorted(asked)))
            yield f"{where}it has no colour, and {quoted(thing.item)} is asked for in {in_words}"
        elif meant := alike(own, asked, A_SLIP):
            yield (
                f"{where}{quoted(thing.item)} is not asked for in {quoted(own)}; "
                f"did you mean '{meant}'?"
            )


def _colours(job: Job) -> dict[str, set[str]]:
    """In which colours the plans ask for each item, by its name in small letters."""
    found: dict[str, set[str]] = {}
    for order in job.garments:
        things: tuple[Fabric | Bought, ...] = (*order.plan.fabric, *order.plan.bought)
        for thing in things:
            item = (thing.buy or thing.name).casefold()
            colour = thing.colour or job.stash.own_colours.get(item, "")
            found.setdefault(item, set()).add(colour)
    return {item: asked for item, asked in found.items() if "" not in asked}


def _named(job: Job) -> Iterator[str]:
    for order in job.garments:
        yield from (fabric.name for fabric in order.plan.fabric)
        yield from (thing.name for thing in order.plan.bought)
