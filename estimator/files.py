"""From files to an estimate: plans and a catalog are read, and all complaints come together."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from estimator.catalog import NO_CATALOG
from estimator.estimate import Estimate, estimate
from estimator.faults import Fault, NamesAnUnread, Refused
from estimator.job import GarmentOrder, Job
from estimator.readers.catalog_csv import read_catalog
from estimator.readers.plan_toml import Draft
from estimator.readers.plans import read_draft


def estimate_files(
    plans: Sequence[Path], catalog: Path | None = None, *, thorough: bool = False
) -> Estimate:
    """What to buy for the garments of these plans together; ``thorough`` searches longer.

    Raises Refused with every complaint about the files: those of a plan that could be read in part
    stand beside those of what its sound entries need.
    """
    faults: list[Fault] = []
    drafts: list[Draft] = []
    shop = NO_CATALOG
    try:
        shop = read_catalog(catalog) if catalog else NO_CATALOG
    except Refused as refused:
        faults += refused.faults
    for path in plans:
        try:
            drafts.append(read_draft(path))
        except Refused as refused:
            faults += refused.faults
    faults += [fault for draft in drafts for fault in draft.faults]
    job = Job(tuple(map(_order, drafts)), shop, thorough)
    if not faults:
        return estimate(job)
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
