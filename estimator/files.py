"""From files to an estimate: plans, shows and a catalog are read, all complaints come together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from estimator.cast import Cast, cast_of
from estimator.catalog import NO_CATALOG, Catalog
from estimator.estimate import Estimate, estimate
from estimator.faults import Fault, NamesAnUnread, Refused
from estimator.job import GarmentOrder, Job
from estimator.measure import Units
from estimator.readers.catalogs import read_catalog
from estimator.readers.plan_tables import Draft
from estimator.readers.plans import read_draft
from estimator.readers.show_toml import is_show
from estimator.together import beside_each_apart, each_apart
from estimator.workers import Told, estimates_of


def estimate_files(
    plans: Sequence[Path],
    catalog: Path | None = None,
    *,
    thorough: bool = False,
    units: Units | None = None,
    processes: int = 1,
    memory: Path | None = None,
    begun: Callable[[int], Told] | None = None,
) -> Estimate:
    """What to buy for the garments of these plans and shows together.

    ``thorough`` searches longer for layouts. Work is spread over so many ``processes``; ``begun``
    is called with the number of estimates to make, and what it returns with those that are made.
    The processes remember layouts in the file ``memory`` from run to run.

    Papers read in ``units``, and what a plan offers without a price is sold by them.

    Raises Refused with every complaint about the files: those of a plan that could be read in part
    stand beside those of what its sound entries need.
    """
    faults: list[Fault] = []
    orders: list[GarmentOrder] = []
    shows: list[Cast] = []
    for path in plans:
        try:
            if is_show(path):
                shows.append(cast_of(path))
                faults += shows[-1].faults
                orders += shows[-1].orders
            else:
                draft = read_draft(path)
                faults += draft.faults
                orders.append(_order(draft))
        except Refused as refused:
            faults += refused.faults
    catalog = catalog or next((one.catalog for one in shows if one.catalog), None)
    shop = NO_CATALOG
    try:
        shop = read_catalog(catalog) if catalog else NO_CATALOG
    except Refused as refused:
        faults = [*refused.faults, *faults]
    title = ", ".join(one.title for one in shows) if len(plans) == len(shows) else ""
    read_in = tuple(replace(order, units=units) for order in orders)
    job = Job(read_in, shop, thorough, title)
    if not faults and len(orders) > 1:
        jobs = (job, *each_apart(job))
        told = begun(len(jobs)) if begun else None
        whole, *apart = estimates_of(jobs, processes, told, memory)
        return beside_each_apart(whole, apart)
    return _judged(job, faults, catalog)


def _judged(job: Job, faults: list[Fault], catalog: Path | None) -> Estimate:
    """The estimate, or every complaint: those about the files and those about what they ask."""
    if not faults:
        return estimate(job)
    shop: Catalog = job.catalog
    if shop is NO_CATALOG and catalog:
        raise Refused(faults)
    try:
        estimate(job)
    except Refused as refused:
        faults += refused.faults
    except NamesAnUnread:
        pass
    raise Refused(faults)


def _order(draft: Draft) -> GarmentOrder:
    return GarmentOrder(draft.plan, places=draft.places, unread=draft.unread)
