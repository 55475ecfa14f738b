"""A show made into garments: each plan read anew with the measures of each of its wearers."""

from __future__ import annotations

from collections.abc import Iterator, Set
from dataclasses import dataclass, field, replace
from pathlib import Path

from estimator.bill import NO_FUNDS, Funds
from estimator.catalog import Shop
from estimator.faults import A_SLIP, Fault, Faults, Places, Refused, Wrong, alike, nearest
from estimator.job import GarmentOrder
from estimator.quoting import quoted
from estimator.readers.plan_tables import PlanTables, draft_of, measures_asked, measures_of
from estimator.readers.plans import read_tables
from estimator.readers.show_toml import is_show, read_show
from estimator.readers.wearers_table import read_wearers
from estimator.show import ALL, Costume, Measured, Wearers, as_spoken, in_words


@dataclass
class Cast:
    """A show's garments in the order of its file, and the complaints about its files."""

    title: str
    catalog: Path | None
    note: str = ""
    stash: Path | None = None
    fewest: bool = False
    shops: tuple[Shop, ...] = ()
    funds: Funds = NO_FUNDS
    places: Places = field(default_factory=Places)
    orders: list[GarmentOrder] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)


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
        note=heading.note,
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
    spoken_of: set[str] = set()
    spared: set[Path] = set()
    for number, costume in enumerate(show.costumes):
        plan = folder / costume.plan
        with faults.at(places, ("garment", number)), faults.of_others():
            tables = _tables_of(plan)
            spoken_of |= measures_of(tables.raw)
            for order in _orders(plan, tables, costume, wearers, faults):
                cast.orders.append(replace(order, with_spares=plan.resolve() not in spared))
                spared.add(plan.resolve())
    cast.faults += faults.found
    cast.remarks += _slips(wearers, spoken_of)
    return cast


def _tables_of(path: Path) -> PlanTables:
    if is_show(path):
        right = "name the plans of its garments"
        raise Wrong(f"{quoted(path.name)} is a show, not a plan", right, ("plan",))
    return read_tables(path)


def _orders(
    path: Path, tables: PlanTables, costume: Costume, wearers: Wearers | None, faults: Faults
) -> Iterator[GarmentOrder]:
    """The garment for each of its wearers, or one by the measures of the plan."""
    if wearers is not None:
        wearers = wearers.measured_as(measures_of(tables.raw))
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
    if "wearers" not in costume.model_fields_set:
        return ()
    if not costume.wearers:
        right = "name them, or leave wearers out where the measures of the plan hold"
        raise Wrong("it is for wearers and names none", right, ("wearers",))
    if wearers is None:
        raise Wrong(
            "it names wearers, and the show has no table of them",
            'add wearers = "wearers.csv" to [show]',
            ("wearers",),
        )
    if costume.wearers == (ALL,):
        if not wearers.rows:
            right = "write a row for each wearer"
            raise Wrong(f"there is nobody in {wearers.file}", right, ("wearers",))
        return wearers.rows
    found: dict[str, Measured] = {}
    for place, name in enumerate(costume.wearers):
        one = wearers.named(name)
        if one is None:
            wrong = f"{wearers.file} has no wearer {quoted(name)}"
            raise Wrong(
                wrong, nearest(name, (row.name for row in wearers.rows)), ("wearers", place)
            )
        if one.name in found:
            right = "name each once, and write count = 2 for two of the garment"
            raise Wrong(f"{quoted(one.name)} is named twice", right, ("wearers", place))
        found[one.name] = one
    return tuple(found.values())


def _slips(wearers: Wearers | None, spoken_of: Set[str]) -> Iterator[str]:
    """Columns that no plan asks for, and that are spelt almost like a measure that has none.

    It is no fault: the table may hold what other shows ask for.
    """
    if wearers is None:
        return
    own = {as_spoken(column) for column in wearers.columns}
    without = [name for name in sorted(spoken_of) if as_spoken(name) not in own]
    known = {as_spoken(name) for name in spoken_of}
    for column in wearers.columns:
        if as_spoken(column) in known:
            continue
        meant = alike(column, without, A_SLIP)
        if meant:
            yield (
                f"{wearers.file}, column {column}: no plan here has a measure {quoted(column)}, "
                f"and the table has none {quoted(meant)}; did you mean that?"
            )


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
