"""Pydantic's complaints in the words of the trade: what is wrong, and what would be right."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from estimator.faults import Path, Wrong, nearest, one_of
from estimator.fields import Entry
from estimator.quoting import quoted

NO_TABLES: Mapping[str, type[Entry]] = {}


def wrongs_in(
    error: ValidationError, model: type[Entry], tables: Mapping[str, type[Entry]] = NO_TABLES
) -> list[Wrong]:
    """Each complaint of a failed validation of ``model``, ``at`` its path within the table.

    ``tables`` are those of the file by their headings, of which one may have the key that is meant.
    """
    details = error.errors()
    inside = {detail["loc"][:depth] for detail in details for depth in range(len(detail["loc"]))}
    return [
        _wrong(detail, model, tables)
        for detail in details
        if not (detail["type"] == "too_short" and detail["loc"] in inside)
    ]


_REMEDIES = {
    "string_type": "write it as text, in quotes",
    "string_too_short": "write at least one letter",
    "string_too_long": "write it shorter",
    "string_pattern_mismatch": "leave the colon out: it parts a piece from its edge",
    "tuple_type": "write a list in square brackets, one entry in it or several",
    "too_short": "write more entries into the list",
    "too_long": "write fewer entries into the list",
    "dict_type": 'write a table in braces, as in { bottom = "hem 1" }',
    "model_type": "write a table of keys and values",
    "int_type": "write a whole number, without quotes",
    "int_from_float": "write a whole number",
    "greater_than_equal": "write a whole number, zero or more",
    "less_than_equal": "write a smaller number",
    "value_error": "write it shorter",
}


def _wrong(detail: ErrorDetails, model: type[Entry], tables: Mapping[str, type[Entry]]) -> Wrong:
    at: Path = tuple(detail["loc"])
    context: dict[str, Any] = detail.get("ctx", {})
    name = _name(at)
    written = detail["input"]
    match detail["type"]:
        case "refused":
            said = context["wrong"]
            about = "" if not at or said.startswith(f"{name} ") else f"{name}: "
            return Wrong(f"{about}{said}", context["right"], at)
        case "extra_forbidden":
            key = str(at[-1])
            others = [name for name, table in tables.items() if key in table.model_fields]
            right = nearest(key, _keys(model, at))
            if others and len(at) == 1:
                right = f"it is a key of {', '.join(others)}"
            return Wrong(f"there is no key {quoted(key)} here", right, at)
        case "missing":
            return Wrong(f"{quoted(at[-1])} is missing", f"add {at[-1]}", at)
        case "enum" | "literal_error":
            choices = re.findall(r"'([^']+)'", str(context["expected"]))
            letters = "".join(choices)
            # of words with numbers in them the nearest in spelling is not what was meant
            counted = any(map(str.isdigit, letters))
            spelt = isinstance(written, str) and any(map(str.isalpha, letters)) and not counted
            right = nearest(written, choices) if spelt else one_of(choices)
            return Wrong(f"{name} cannot be {quoted(written)}", right, at)
        case _:
            right = _REMEDIES.get(detail["type"], detail["msg"].lower())
            return Wrong(f"{name} cannot be {quoted(written)}", right, at)


def _name(at: Path) -> str:
    """What a complaint calls the value at a path: its key, or the edge whose finish it is."""
    keys = [part for part in at if isinstance(part, str)]
    if keys[-3:-2] == ["edges"] or keys[-2:-1] == ["edges"]:
        edge = keys[keys.index("edges") + 1]
        return edge if keys[-1] in (edge, "finish") else f"{edge} {keys[-1]}"
    return keys[-1] if keys else "this"


def _keys(model: type[Entry], at: Path) -> list[str]:
    """The keys of the table in which the last part of a path stands."""
    for part in at[:-1]:
        if isinstance(part, str) and part in model.model_fields:
            inner = _table_in(model.model_fields[part].annotation)
            model = inner or model
    return list(model.model_fields)


def _table_in(annotation: Any) -> type[Entry] | None:
    if isinstance(annotation, type) and issubclass(annotation, Entry):
        return annotation
    return next((found for arg in get_args(annotation) if (found := _table_in(arg))), None)
