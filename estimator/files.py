"""From files to an estimate: plans, shows and a catalog are read, all complaints come together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from os import PathLike
from pathlib import Path
from typing import Literal

from estimator.bill import NO_FUNDS
from estimator.cast import Cast, cast_of
from estimator.catalog import NO_CATALOG, Catalog
from estimator.estimate import estimate
from estimator.estimated import Estimate
from estimator.faults import Fault, Faults, NamesAnUnread, Refused
from estimator.job import GarmentOrder, Job
from estimator.measure import Units
from estimator.memory import remembering
from estimator.readers.catalog_tables import refuse_unknown_shop
from estimator.readers.catalogs import read_catalog
from estimator.readers.plan_tables import Draft
from estimator.readers.plans import read_draft
from estimator.readers.show_toml import is_show
from estimator.readers.stash_table import read_stash
from estimator.shops import Shops
from estimator.stash import NO_STASH, Stash
from estimator.together import each_apart, settled_together
from estimator.workers import Told, estimates_of

FUNDS_LEFT_OUT = (
    "What a show says of its budget, tax and contingency is left out, for this list is not of that "
    "show alone: write takes them as --budget, --tax and --contingency."
)


def estimate_files(
    plans: Iterable[str | PathLike[str]],
    catalog: str | PathLike[str] | None = None,
    *,
    stash: str | PathLike[str] | None = None,
    fewest_shops: bool | None = None,
    thorough: bool = False,
    units: Units | None = None,
    processes: int = 1,
    memory: str | PathLike[str] | None = None,
    begun: Callable[[int], Told] | None = None,
) -> Estimate:
    """What to buy for the garments of these plans and shows together.

    ``stash`` is a table of what is in hand, and ``fewest_shops`` asks for those rather than for the
    least total; without them a show's own hold. ``thorough`` searches longer for layouts. Work is
    spread over so many ``processes``, and layouts are remembered in the file ``memory`` from run to
    run; ``begun`` is called with the number of estimates to make, and what it returns with those
    that are made.

    Papers read in ``units``, and what a plan offers without a price is sold by them.

    Raises Refused with every complaint about the files: those of a plan that could be read in part
    stand beside those of what its sound entries need. Raises ValueError for no plan at all, and
    TypeError for one file in the place of several.
    """
    if isinstance(plans, str | PathLike):
        raise TypeError("plans are several: write estimate_files([plan])")
    files = [Path(one) for one in plans]
    if not files:
        raise ValueError("there is no plan to estimate")
    faults: list[Fault] = []
    orders: list[GarmentOrder] = []
    shows: list[Cast] = []
    for path in files:
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
    tables = Path(catalog) if catalog else _of_shows("catalog", shows, faults)
    asked = tables or any(show.catalog for show in shows)
    shop = NO_CATALOG
    try:
        shop = read_catalog(tables) if tables else NO_CATALOG
    except Refused as refused:
        faults = [*refused.faults, *faults]
    job = Job(
        garments=tuple(replace(order, units=units) for order in orders),
        catalog=shop,
        thorough=thorough,
        title=", ".join(one.title for one in shows) if len(files) == len(shows) else "",
        notes=_notes(shows, alone=len(files) == 1),
        stash=_stash(Path(stash) if stash else None, shows, shop, faults),
        shops=_shops(fewest_shops, shows, shop, faults),
        funds=shows[0].funds if len(shows) == len(files) == 1 else NO_FUNDS,
    )
    kept = Path(memory) if memory else None
    with remembering(kept):
        if faults or len(orders) < 2:
            found = _judged(job, faults, unread=bool(asked) and shop is NO_CATALOG)
        else:
            jobs = (job.bought_new, *each_apart(job.bought_new))
            told = begun(len(jobs)) if begun else None
            whole, *apart = estimates_of(jobs, processes, told, kept)
            found = settled_together(job, whole, apart)
    remarks = [remark for show in shows for remark in show.remarks]
    if len(files) > 1 and any(show.funds != NO_FUNDS for show in shows):
        remarks.append(FUNDS_LEFT_OUT)
    return replace(found, remarks=(*found.remarks, *remarks)) if remarks else found


def _notes(shows: Sequence[Cast], *, alone: bool) -> tuple[str, ...]:
    """What the shows say of themselves; each names its show where others stand beside it."""
    return tuple(one.note if alone else f"{one.title}: {one.note}" for one in shows if one.note)


def _of_shows(
    what: Literal["catalog", "stash"], shows: Sequence[Cast], faults: list[Fault]
) -> Path | None:
    """The file that the shows name; several are complained of, as each would be for its own."""
    own: dict[Path, tuple[Path, Cast]] = {}
    for show in shows:
        file = show.catalog if what == "catalog" else show.stash
        if file:
            own.setdefault(file.resolve(), (file, show))
    found = list(own.values())
    if len(found) > 1:
        names = ", ".join(str(file) for file, _ in found)
        at = found[1][1].places.of(("show", what))
        right = f"name one with --{what}, or plan the shows one by one"
        faults.append(Fault(at, f"the shows name several files as {what}: {names}", right))
        return None
    return found[0][0] if found else None


def _stash(named: Path | None, shows: Sequence[Cast], shop: Catalog, faults: list[Fault]) -> Stash:
    """The stash that is named, or that of the shows; complaints about it go into ``faults``."""
    file = named or _of_shows("stash", shows, faults)
    try:
        return read_stash(file, shop) if file else NO_STASH
    except Refused as refused:
        faults += refused.faults
    return NO_STASH


def _shops(fewest: bool | None, shows: Sequence[Cast], shop: Catalog, faults: list[Fault]) -> Shops:
    """What each shop charges, as the catalog says unless a show does."""
    charges = {one.name: one.charge for one in shop.shops}
    found = Faults()
    for show in shows:
        for number, one in enumerate(show.shops):
            with found.at(show.places, ("shop", number)):
                if shop is not NO_CATALOG:
                    refuse_unknown_shop(one, shop)
                charges[one.name] = one.charge
    faults += found.found
    own = any(show.fewest for show in shows)
    return Shops(charges, own if fewest is None else fewest)


def _judged(job: Job, faults: list[Fault], *, unread: bool) -> Estimate:
    """The estimate, or every complaint: those about the files and those about what they ask.

    Without the catalog, where that is ``unread``, nobody knows what they may ask.
    """
    if not faults:
        return estimate(job)
    if unread:
        raise Refused(faults)
    try:
        estimate(job.bought_new)
    except Refused as refused:
        faults += refused.faults
    except NamesAnUnread:
        pass
    raise Refused(faults)


def _order(draft: Draft) -> GarmentOrder:
    return GarmentOrder(
        draft.plan, places=draft.places, unread=draft.unread, reckoned=draft.reckoned
    )
