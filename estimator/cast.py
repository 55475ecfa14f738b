"""A show made into garments: each plan read anew with the measures of each of its wearers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from estimator.bill import NO_FUNDS, Funds
from estimator.catalog import Shop
from estimator.faults import Fault, Faults, Places, Refused, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.quoting import quoted
from estimator.readers.plan_tables import PlanTables, draft_of, measures_asked
from estimator.readers.plans import read_tables
from estimator.readers.show_toml import is_show, read_show
from estimator.readers.wearers_table import read_wearers
from estimator.show import ALL, Costume, Measured, Wearers, in_words


@dataclass
class Cast:
    """A show's garments in the order of its file, and the complaints about its files."""

    title: str
    catalog: Path | None
    stash: Path | None = None
    fewest: bool = False
    shops: tuple[Shop, ...] = ()
    funds: Funds = NO_FUNDS
    places: Places = field(default_factory=Places)
    orders: list[GarmentOrder] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)


def cast_of(path: Path) -> Cast:
    """Reads a show, its wearers and its plans; files are found from the show's own folder.

    Raises Refused where the show itself cannot be read.
    """
    show, places = read_show(path)
    folder = path.parent
    heading = show.heading
    cast = Cast(
        heading.name,
        catalog=folder / heading.catalog if heading.catalog else None,
        stash=folder / heading.stash if heading.stash else None,
        fewest=heading.shops == "fewest",
        shops=show.shops,
        funds=heading.funds,
        places=places,
    )
    wearers: Wearers | None = None
    if heading.wearers:
        try:
            wearers = read_wearers(folder / heading.wearers)
        except Refused as refused:
            cast.faults += refused.faults
            return cast
    faults = Faults()
    for number, costume in enumerate(show.costumes):
        with faults.at(places, ("garment", number)), faults.of_others():
            for order in _orders(folder / costume.plan, costume, wearers, faults):
                cast.orders.append(order)
    cast.faults += faults.found
    return cast


def _orders(
    path: Path, costume: Costume, wearers: Wearers | None, faults: Faults
) -> Iterator[GarmentOrder]:
    """The garment for each of its wearers, or one by the measures of the plan."""
    if is_show(path):
        right = "name the plans of its garments"
        raise Wrong(f"{quoted(path.name)} is a show, not a plan", right, ("plan",))
    tables = read_tables(path)
    who = _who(costume, wearers)
    if wearers is not None:
        _refuse_missing(tables, path, who, wearers)
    for one in who or (None,):
        draft = draft_of(tables, one.measures if one else None)
        faults.found += draft.faults
        name = one.name if one else ""
        yield GarmentOrder(
            draft.plan, costume.count, name, draft.places, draft.unread, draft.reckoned
        )


def _who(costume: Costume, wearers: Wearers | None) -> tuple[Measured, ...]:
    if not costume.wearers:
        return ()
    if wearers is None:
        raise Wrong(
            "it names wearers, and the show has no table of them",
            'add wearers = "wearers.csv" to [show]',
            ("wearers",),
        )
    if costume.wearers == (ALL,):
        return wearers.rows
    found = []
    for place, name in enumerate(costume.wearers):
        one = wearers.named(name)
        if one is None:
            wrong = f"{wearers.file} has no wearer {quoted(name)}"
            raise Wrong(
                wrong, nearest(name, (row.name for row in wearers.rows)), ("wearers", place)
            )
        found.append(one)
    return tuple(found)


def _refuse_missing(
    tables: PlanTables, path: Path, who: tuple[Measured, ...], wearers: Wearers
) -> None:
    """Raises Refused where the sizes of a plan ask for what was not measured of some wearers."""
    asked = measures_asked(tables.raw, wearers.columns)
    found = []
    for name in wearers.columns:
        lacking = [one for one in who if name in asked and name not in one.measures]
        if lacking:
            rows = ", ".join(str(one.row) for one in lacking[:5])
            more = f" and {len(lacking) - 5} more" if len(lacking) > 5 else ""
            whom = in_words(tuple(one.name for one in lacking))
            found.append(
                Fault(
                    f"{wearers.file}, column {name}, row{'s' if len(lacking) > 1 else ''} "
                    f"{rows}{more}",
                    f"the {name} of {whom} is missing, and {path.name} asks for it",
                    "measure it and fill it in",
                )
            )
    if found:
        raise Refused(found)
