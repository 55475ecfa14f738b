"""Values of a plan as they stand in the cells of a form, and back.

A size that comes from measures is written ``from waist / 2``; several names stand in one cell with
``;`` between, in double quotes where a name has one of these marks itself. What has no plainer form
is written as in TOML, in braces or brackets.
"""

from __future__ import annotations

import csv
import io
import json
import re
import tomllib
from collections.abc import Mapping
from enum import Enum
from typing import Any

from estimator.edges import read_edge_ref
from estimator.faults import Wrong
from estimator.quoting import NotReadable, one_line, quoted

Written = str | int | float


class Kind(Enum):
    """How the values of a column are written."""

    TEXT = "text"
    SIZE = "size"
    COUNT = "count"
    AMOUNT = "amount"
    EDGE = "edge"
    LIST = "list"
    TABLE = "table"


def cell_of(value: object, kind: Kind) -> Written:
    """A value of a plan as it stands in a cell of this kind."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    match kind:
        case Kind.TEXT:
            return one_line(str(value))
        case Kind.LIST:
            many = value if isinstance(value, list) else [value]
            plain = [_plain(one) for one in many]
            texts = [one for one in plain if one is not None]
            return _joined(texts) if texts and len(texts) == len(many) else in_toml(many)
        case Kind.EDGE:
            text = _plain(value)
            return in_toml(value) if text is None else text
        case Kind.SIZE if isinstance(value, Mapping) and set(value) == {"from"}:
            return f"from {one_line(str(value['from']))}"
        case Kind.SIZE if isinstance(value, int | float):
            return str(value)
    return value if isinstance(value, str | int | float) else in_toml(value)


def value_of(cell: Written, kind: Kind) -> Any:
    """What a cell of this kind says; raises Wrong where it is in braces that cannot be read."""
    if kind is Kind.TEXT:
        return str(cell)
    if not isinstance(cell, str):
        return [str(cell)] if kind is Kind.LIST else cell
    text = cell.strip()
    if text[:1] in ("{", "["):
        return _from_toml(text)
    match kind:
        case Kind.SIZE if re.match(r"from\s", text, re.IGNORECASE):
            return {"from": text[4:].strip()}
        case Kind.COUNT if text.isascii() and text.isdigit() and len(text) < 10:
            return int(text)
        case Kind.LIST:
            return _parted(text)
    return text


def _plain(one: object) -> str | None:
    """One of a list as a text that is read as the same thing; None if there is no such text."""
    if isinstance(one, int | float) and not isinstance(one, bool):
        return str(one)
    if isinstance(one, str):
        return one_line(one) or None
    if isinstance(one, Mapping) and {"piece", "edge"} <= set(one):
        count = f"{one['count']} x " if one.get("count") else ""
        text = one_line(f"{count}{one['piece']}: {one['edge']}")
        try:
            return text if read_edge_ref(text) == read_edge_ref(one) else None
        except NotReadable:
            return None
    return None


def _joined(texts: list[str]) -> str:
    return "; ".join(
        '"' + text.replace('"', '""') + '"' if re.match(r'["{\[]', text) or ";" in text else text
        for text in texts
    )


def _parted(text: str) -> list[str]:
    try:
        rows = list(
            csv.reader(io.StringIO(_on_one_line(text)), delimiter=";", skipinitialspace=True)
        )
    except csv.Error as problem:
        wrong = f"{quoted(text)} is no list ({problem})"
        raise Wrong(wrong, "write names with ; between") from None
    return [one.strip() for row in rows for one in row if one.strip()]


def key_in_toml(name: str) -> str:
    """A key as TOML writes it: in quotes only if it must be (TOML 1.0, keys)."""
    return name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else in_toml(name)


def in_toml(value: object) -> str:
    """A value on one line as TOML writes it."""
    if isinstance(value, Mapping):
        pairs = (f"{key_in_toml(key)} = {in_toml(one)}" for key, one in value.items())
        return "{ " + ", ".join(pairs) + " }" if value else "{}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(in_toml, value)) + "]"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value)


def _on_one_line(text: str) -> str:
    return text.replace("\r", " ").replace("\n", " ")


def _from_toml(text: str) -> Any:
    right = 'write it like { neckline = { length = "15", finish = "faced" } }'
    try:
        return tomllib.loads(f"cell = {_on_one_line(text)}")["cell"]
    except (ValueError, RecursionError):
        raise Wrong(f"{quoted(text)} cannot be read", right) from None
