"""A show from a TOML file: garments with their plans and wearers; told from a plan by [show]."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from estimator.catalog import Shop
from estimator.faults import Fault, Faults, Places, Refused, Wrong, nearest
from estimator.fields import Entry
from estimator.quoting import quoted
from estimator.readers.complaints import wrongs_in
from estimator.readers.files import read_text
from estimator.readers.places import lines_of
from estimator.readers.plan_toml import parsed
from estimator.show import Costume, Show, ShowHeading

TABLES = ("show", "shop", "garment")


def is_show(path: Path) -> bool:
    """Whether a file is a show and no plan; of what cannot be read the plan's reader complains."""
    if path.suffix.lower() != ".toml":
        return False
    try:
        return "show" in tomllib.loads(read_text(path, "a plan"))
    except (Refused, ValueError, RecursionError):
        return False


def read_show(path: Path) -> tuple[Show, Places]:
    """Reads a show; raises Refused with every complaint about it."""
    text = read_text(path, "a show")
    raw = parsed(text, str(path))
    places = Places(str(path), lines_of(text.encode()), {})
    faults = Faults()
    for key in raw:
        if key not in TABLES:
            with faults.at(places, (key,)):
                raise Wrong(f"there is no table {quoted(key)} in a show", nearest(key, TABLES))
    if "show" not in raw:
        raise Refused([Fault(str(path), "is no show: it has no table [show]", "add [show]")])
    heading = _validated(raw["show"], ShowHeading, ("show",), faults, places)
    tables = raw.get("garment", [])
    if not isinstance(tables, list) or not tables:
        wrong, right = "the show has no garments", 'head each with [[garment]] and plan = "..."'
        raise Refused([*faults.found, Fault(places.of(("garment",)), wrong, right)])
    costumes = [
        _validated(table, Costume, ("garment", number), faults, places)
        for number, table in enumerate(tables)
    ]
    shops = raw.get("shop", [])
    with faults.at(places, ("shop",)):
        if not isinstance(shops, list):
            raise Wrong("[shop] is one table where a list is meant", "head each with [[shop]]")
    known = [
        _validated(table, Shop, ("shop", number), faults, places)
        for number, table in enumerate(shops if isinstance(shops, list) else ())
    ]
    faults.refuse_if_any()
    assert isinstance(heading, ShowHeading)
    garments = tuple(one for one in costumes if isinstance(one, Costume))
    return Show(heading, garments, tuple(one for one in known if isinstance(one, Shop))), places


def _validated(
    table: Any, model: type[Entry], path: tuple[str | int, ...], faults: Faults, places: Places
) -> Entry | None:
    try:
        return model.model_validate(table)
    except ValidationError as error:
        for wrong in wrongs_in(error, model):
            faults.add(places, path, wrong)
    return None
