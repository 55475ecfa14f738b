"""A garment plan from its tables as they were written; all its complaints come together."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Any, get_args, get_origin

from pydantic import ValidationError

from estimator.faults import Fault, Faults, Places, Refused, Wrong, nearest
from estimator.faults import Path as PlanPath
from estimator.fields import Entry, named_in
from estimator.job import Reckoned
from estimator.measure import Length, Unit
from estimator.plan import Garment, Plan
from estimator.plan.garment import GARMENT_UNITS
from estimator.quoting import one_line, quoted
from estimator.readers.complaints import wrongs_in
from estimator.readers.reckoned import reckoned_sizes
from estimator.written import read_length


def _tables_of_plan() -> dict[str, type[Entry]]:
    """The tables of which a plan has any number, as ``Plan`` names them."""
    found = {}
    for key, field in Plan.model_fields.items():
        if get_origin(field.annotation) is tuple:
            found[key] = get_args(field.annotation)[0]
    return found


TABLES = _tables_of_plan()
_BY_HEADING: dict[str, type[Entry]] = {
    "[garment]": Garment,
    **{f"[[{key}]]": table for key, table in TABLES.items()},
}


@dataclass(frozen=True)
class PlanTables:
    """The tables of a plan as they were written, and where their values stand.

    ``faults`` are complaints about what is in none of the tables, ``unread`` those about values
    that stand in them as far as they go.
    """

    raw: dict[str, Any]
    places: Places
    faults: tuple[Fault, ...] = ()
    unread: tuple[tuple[PlanPath, Wrong], ...] = ()


@dataclass(frozen=True)
class Draft:
    """A plan as far as it could be read, with its complaints.

    ``plan`` holds the entries that are sound, and ``places`` follow them; ``unread`` names the
    others ("" for one without a name), so that what refers to them is not complained of as well.
    ``reckoned`` are the sizes that come from measures.
    """

    plan: Plan
    places: Places
    faults: tuple[Fault, ...] = ()
    unread: frozenset[str] = frozenset()
    reckoned: tuple[Reckoned, ...] = ()


def draft_of(tables: PlanTables, taken: Mapping[str, Length] | None = None) -> Draft:
    """A plan from its tables, wherever they stood.

    ``taken`` are a wearer's measures, which go before those of the plan.
    """
    raw = tables.raw
    places = replace(tables.places, names=_names(raw))
    faults = Faults()
    with faults.at(places, ()):
        _refuse_unknown_tables(raw, faults, places)
    context: dict[str, Any] = {"unit": _unit(raw)}
    context["measures"], context["unread_measures"] = _measures(raw, faults, places, context)
    if taken:
        context["measures"] = {**context["measures"], **taken}
        context["unread_measures"] -= set(taken)
    garment = _garment(raw, faults, places, context)
    entries: dict[str, tuple[Any, ...]] = {}
    unread: set[str] = set()
    lines, names = dict(places.lines), dict(places.names)
    for key, model in TABLES.items():
        sound, kept = [], []
        written = _tables(raw, key, faults, places)
        for number, table in enumerate(written):
            entry = _validated(table, model, (key, number), faults, places, context)
            if entry is None:
                unread.add(_name(table))
            else:
                sound.append(entry)
                kept.append(number)
        unread |= _refuse_twins(key, written, faults, places)
        entries[key] = tuple(sound)
        _renumber(lines, key, kept)
        _renumber(names, key, kept)
    if garment is None:
        raise Refused(faults.found)
    plan = Plan.model_construct(garment=garment, measures=context["measures"], **entries)  # type: ignore[arg-type]
    kept_places = replace(places, lines=lines, names=names)
    return Draft(
        plan,
        kept_places,
        _all_faults(tables, places, faults),
        frozenset(unread),
        reckoned_sizes(raw, TABLES, context["measures"], context["unit"]),
    )


def _all_faults(tables: PlanTables, places: Places, faults: Faults) -> tuple[Fault, ...]:
    """The complaints of whoever read the tables, and then those about what they say.

    What could not be read is not complained of again.
    """
    own = Faults()
    for path, wrong in tables.unread:
        own.add(places, path, wrong)
    told = {fault.where for fault in own.found}
    others = [fault for fault in faults.found if fault.where not in told]
    return (*tables.faults, *own.found, *others)


def measures_of(raw: Mapping[str, Any]) -> frozenset[str]:
    """The names under ``[measures]`` of a plan."""
    measures = raw.get("measures")
    return frozenset(map(one_line, measures)) if isinstance(measures, dict) else frozenset()


def measures_asked(raw: Any, known: Collection[str]) -> frozenset[str]:
    """Which of these measures the sizes of a plan are reckoned from."""
    asked: set[str] = set()
    waiting = [raw]
    while waiting:
        one = waiting.pop()
        if isinstance(one, list):
            waiting += one
        elif isinstance(one, dict):
            text = one.get("from")
            if set(one) == {"from"} and isinstance(text, str) and known:
                asked.update(named_in(text, known))
            waiting += one.values()
    return frozenset(asked)


def _refuse_unknown_tables(raw: dict[str, Any], faults: Faults, places: Places) -> None:
    known = Plan.model_fields
    for key in raw:
        if key not in known:
            with faults.at(places, (key,)):
                raise Wrong(f"there is no table {quoted(key)} in a plan", nearest(key, known))


def _unit(raw: dict[str, Any]) -> Unit:
    """The unit of bare numbers; a wrong one is complained of with the garment table."""
    garment = raw.get("garment")
    written = garment.get("unit") if isinstance(garment, dict) else None
    return GARMENT_UNITS.get(written, Unit.IN) if isinstance(written, str) else Unit.IN


def _garment(
    raw: dict[str, Any], faults: Faults, places: Places, context: dict[str, Any]
) -> Garment | None:
    if "garment" not in raw:
        faults.found.append(
            Fault(
                places.file,
                "the plan has no [garment] table",
                'start it with [garment] and name = "..."',
            )
        )
        return None
    found = _validated(raw["garment"], Garment, ("garment",), faults, places, context)
    if found is None:
        return _as_far_as_sound(raw["garment"], context)
    assert isinstance(found, Garment)
    return found


def _as_far_as_sound(table: Any, context: dict[str, Any]) -> Garment:
    """The garment table without what is wrong in it, so that the rest is judged by the rest."""
    nameless = {"name": "garment"}
    if not isinstance(table, dict):
        return Garment.model_validate(nameless)
    try:
        Garment.model_validate(nameless | table, context=context)
        faulty: set[object] = set()
    except ValidationError as error:
        faulty = {detail["loc"][0] for detail in error.errors()}
    sound = {key: value for key, value in table.items() if key not in faulty}
    return Garment.model_validate(nameless | sound, context=context)


def _names(raw: dict[str, Any]) -> dict[PlanPath, str]:
    """What complaints call each entry that has a name: ``piece 'skirt panel'``."""
    measures = raw.get("measures")
    names: dict[PlanPath, str] = {
        ("measures", name): f"measure {quoted(name)}"
        for name in (measures if isinstance(measures, dict) else ())
    }
    for key in TABLES:
        tables = raw.get(key)
        for number, table in enumerate(tables if isinstance(tables, list) else ()):
            if _name(table):
                names[(key, number)] = f"{key} {quoted(_name(table))}"
    return names


def _name(table: object) -> str:
    """The name of an entry as it was written; nothing where it has none that is text."""
    name = table.get("name") if isinstance(table, Mapping) else None
    return one_line(name) if isinstance(name, str) else ""


def _measures(
    raw: dict[str, Any], faults: Faults, places: Places, context: dict[str, Any]
) -> tuple[dict[str, Length], frozenset[str]]:
    """The measures, and the names of those that could not be read."""
    written = raw.get("measures", {})
    measures: dict[str, Length] = {}
    with faults.at(places, ("measures",)):
        if not isinstance(written, dict):
            raise Wrong("measures is not a table", 'write [measures] and waist = "28" under it')
    for name, size in written.items() if isinstance(written, dict) else ():
        with faults.at(places, ("measures", name)):
            if not name.strip():
                raise Wrong("a measure has no name", 'name it, as in waist = "28"')
            length = read_length(size, context["unit"])
            if not length:
                raise Wrong("the measure is zero", "write a length of more than zero")
            measures[name.strip()] = length
    names = {name.strip() for name in written} if isinstance(written, dict) else set()
    return measures, frozenset(names - set(measures))


def _tables(raw: dict[str, Any], key: str, faults: Faults, places: Places) -> list[Any]:
    written = raw.get(key, [])
    with faults.at(places, (key,)):
        if not isinstance(written, list):
            raise Wrong(f"[{key}] is one table where a list is meant", f"head each with [[{key}]]")
    return written if isinstance(written, list) else []


def _validated(
    table: Any,
    model: type[Entry],
    path: PlanPath,
    faults: Faults,
    places: Places,
    context: dict[str, Any],
) -> Entry | None:
    try:
        return model.model_validate(table, context=context)
    except ValidationError as error:
        for wrong in wrongs_in(error, model, _BY_HEADING):
            faults.add(places, path, wrong)
    return None


def _refuse_twins(key: str, tables: list[Any], faults: Faults, places: Places) -> set[str]:
    """Complains of names that stand twice, in capitals or not, and returns them.

    All tables are asked, sound or not, so that a plan is not refused anew once they are.
    """
    seen: dict[str, int] = {}
    twins: set[str] = set()
    for number, name in enumerate(map(_name, tables)):
        first = seen.setdefault(name.casefold(), number)
        if name and first != number:
            twins |= {name, _name(tables[first])}
            wrong = f"a second {key} is named {quoted(name)}, as is the one in "
            wrong += places.of((key, first)).removeprefix(f"{places.file}, ")
            faults.add(places, (key, number, "name"), Wrong(wrong, "give each its own name"))
    return twins


def _renumber(of_paths: dict[PlanPath, Any], key: str, kept: list[int]) -> None:
    """Makes what is known of the entries of an array follow those that were kept."""
    old = {path: one for path, one in of_paths.items() if path[:1] == (key,) and len(path) > 1}
    for path in old:
        del of_paths[path]
    new = {number: position for position, number in enumerate(kept)}
    for path, one in old.items():
        if path[1] in new:
            of_paths[(key, new[path[1]], *path[2:])] = one
