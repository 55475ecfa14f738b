"""A garment plan from a TOML file. Syntax faults come alone, all others of a plan together."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from estimator.faults import Fault, Faults, Places, Refused, Wrong, nearest
from estimator.faults import Path as PlanPath
from estimator.fields import Entry
from estimator.measure import Length, Unit
from estimator.plan import Elastic, Fabric, Garment, Notion, Piece, Plan, Seam, Trim
from estimator.plan.garment import GARMENT_UNITS
from estimator.readers.complaints import wrongs_in
from estimator.readers.files import read_text
from estimator.readers.places import lines_of
from estimator.written import quoted, read_length

TABLES: dict[str, type[Entry]] = {
    "fabric": Fabric,
    "piece": Piece,
    "seam": Seam,
    "trim": Trim,
    "elastic": Elastic,
    "notion": Notion,
}


@dataclass(frozen=True)
class Draft:
    """A plan as far as it could be read, with its complaints.

    ``plan`` holds the entries that are sound; ``unread`` names the others, so that what refers to
    them is not complained of as well. ``places`` follow the entries of ``plan``.
    """

    plan: Plan
    places: Places
    faults: tuple[Fault, ...] = ()
    unread: frozenset[str] = frozenset()


def read_plan(path: Path) -> Draft:
    """Reads a plan; raises Refused where nothing can be made of the file at all."""
    return plan_from_text(read_text(path, "a plan"), str(path))


def plan_from_text(text: str, file: str = "plan") -> Draft:
    """A plan from TOML text; ``file`` is how complaints name it. Raises Refused for bad syntax."""
    raw = _parsed(text, file)
    places = Places(file, lines_of(text.encode()))
    faults = Faults()
    with faults.at(places, ()):
        _refuse_unknown_tables(raw, faults, places)
    context = {"unit": _unit(raw), "measures": {}}
    context["measures"] = _measures(raw, faults, places, context)
    garment = _garment(raw, faults, places, context)
    entries: dict[str, tuple[Any, ...]] = {}
    unread: set[str] = set()
    lines = dict(places.lines)
    for key, model in TABLES.items():
        sound, kept = [], []
        for number, table in enumerate(_tables(raw, key, faults, places)):
            entry = _validated(table, model, (key, number), faults, places, context)
            if entry is None:
                unread |= {
                    str(table[k]) for k in ("name",) if isinstance(table, Mapping) and k in table
                }
            else:
                sound.append(entry)
                kept.append(number)
        _refuse_twins(key, sound, kept, faults, places)
        entries[key] = tuple(sound)
        _renumber(lines, key, kept)
    if garment is None:
        raise Refused(faults.found)
    plan = Plan.model_construct(garment=garment, measures=context["measures"], **entries)  # type: ignore[arg-type]
    return Draft(plan, Places(file, lines), tuple(faults.found), frozenset(unread))


def _parsed(text: str, file: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        found = re.search(r"\(at line (\d+), column (\d+)\)", str(problem))
        lines = text.split("\n")
        line = int(found[1]) if found else len(lines)
        said = re.sub(r"\s*\(at .*\)$", "", str(problem))
        where = f"{file}, line {line}" + (f", column {found[2]}" if found else "")
        raise Refused(
            [Fault(where, f"this is not TOML: {said}", _remedy(lines[line - 1]))]
        ) from None
    except RecursionError:
        raise Refused([Fault(file, "brackets are nested too deep", "write it flatter")]) from None


def _remedy(line: str) -> str:
    bare = re.match(r"\s*([\w-]+)\s*=\s*([\d.½¼¾/\s\w%-]+?)\s*(?:#.*)?$", line)
    if bare:
        return f'write it in quotes: {bare[1]} = "{bare[2]}"'
    return 'a plan holds lines such as width = "20 1/4" under headings such as [[piece]]'


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
        name = raw["garment"].get("name") if isinstance(raw["garment"], dict) else None
        return Garment(name=name if isinstance(name, str) and name.strip() else "garment")
    assert isinstance(found, Garment)
    return found


def _measures(
    raw: dict[str, Any], faults: Faults, places: Places, context: dict[str, Any]
) -> dict[str, Length]:
    written = raw.get("measures", {})
    measures: dict[str, Length] = {}
    with faults.at(places, ("measures",)):
        if not isinstance(written, dict):
            raise Wrong("measures is not a table", 'write [measures] and waist = "28" under it')
    for name, size in written.items() if isinstance(written, dict) else ():
        with faults.at(places, ("measures", name)):
            length = read_length(size, context["unit"])
            if not length:
                raise Wrong(
                    f"the measure {quoted(name)} is zero", "write a length of more than zero"
                )
            measures[name] = length
    return measures


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
        for wrong in wrongs_in(error, model):
            faults.add(places, path, wrong)
    return None


def _refuse_twins(
    key: str, entries: list[Any], numbers: list[int], faults: Faults, places: Places
) -> None:
    seen: dict[str, int] = {}
    for entry, number in zip(entries, numbers, strict=True):
        if not entry.name:
            continue
        with faults.at(places, (key, number, "name")):
            first = seen.setdefault(entry.name.casefold(), number)
            if first != number:
                raise Wrong(
                    f"a second {key} is named {quoted(entry.name)}, as is the one at "
                    f"{places.of((key, first))}",
                    "give each its own name",
                )


def _renumber(lines: dict[PlanPath, int], key: str, kept: list[int]) -> None:
    """Makes the places of an array follow the entries that were kept."""
    old = {path: line for path, line in lines.items() if path[:1] == (key,) and len(path) > 1}
    for path in old:
        del lines[path]
    new = {number: position for position, number in enumerate(kept)}
    for path, line in old.items():
        if path[1] in new:
            lines[(key, new[path[1]], *path[2:])] = line
