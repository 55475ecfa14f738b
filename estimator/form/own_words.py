"""Complaints in the words of a form: headings and sheets where a text plan has keys and tables."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache

from estimator.edges import SIDES
from estimator.faults import Path, Wrong
from estimator.form.sheets import Sheet, plan_sheets


def in_form_words(at: Path, wrong: Wrong) -> Wrong:
    """A complaint about the value at a path, as a person reads it who has a form before them."""
    table, inner, key = _column_at(at)
    own = next((heading for sheet in plan_sheets() if _is_meant(sheet, table, inner)
                for name, heading in _columns_of(sheet) if name == key), "")  # fmt: skip
    said = (_of_itself(text, key, own) for text in (wrong.wrong, wrong.right))
    what, remedy = (_translated(text, _headings(table, inner)) for text in said)
    return Wrong(what, remedy, wrong.at)


def _column_at(at: Path) -> tuple[str, str, str]:
    """Table, key with a sheet of its own (if it is on one) and key of the column, of a path."""
    table, rest = (str(at[0]), at[2:]) if at else ("", ())
    if len(at) == 2 and isinstance(at[1], str):
        return table, "", at[1]
    keys = [part for part in rest if isinstance(part, str)]
    if keys[:1] == ["edges"] and keys[1:2] and (keys[1] in SIDES) and keys[2:] in ([], ["finish"]):
        return table, "", f"edges.{keys[1]}"
    if keys[:1] == ["edges"] and len(keys) > 2:
        return table, "edges", keys[2]
    if len(keys) > 1:
        return table, keys[0], keys[1]
    return table, "", ".".join(map(str, rest[:2]))


@cache
def _headings(table: str, inner: str) -> Mapping[str, str]:
    """Every key with its heading: those of the sheet meant go before those of other sheets."""
    found: dict[str, str] = {}
    for sheet in sorted(plan_sheets(), key=lambda one: not _is_meant(one, table, inner)):
        for key, heading in _columns_of(sheet):
            found.setdefault(key, heading)
    return found


def _is_meant(sheet: Sheet, table: str, inner: str) -> bool:
    if inner:
        return sheet.keys[-1] == inner and table in sheet.parents
    return sheet.keys == (table,)


def _columns_of(sheet: Sheet) -> Iterator[tuple[str, str]]:
    for column in sheet.columns:
        yield ".".join(map(str, column.path)), column.heading


_USER = r"(?<!\w)'[^']*'(?!\w)"
"""What somebody wrote, as complaints quote it: it stays as it is."""
_FROM = r'\{ from = "(?P<measure>[^"]*)" \}'
_STATED = r'(?P<key>\b[a-z_]+) = (?P<value>"[^"]*"|\[[^\]]*\]|\{[^}]*\}|\w+)'
_UNDERSCORED = r"\b(?P<name>[a-z]+(?:_[a-z]+)+)\b"
_IN_QUOTES = r'(?<![^\s(])"(?P<text>[^"]+)"'
_TABLE = r"\[\[?(?P<table>[a-z]+)\]\]?(?: table)?"
_SEVERAL = ("with a list for several on one side", "with ; between several on one side")
_TOKEN = re.compile("|".join((f"(?P<user>{_USER})", _FROM, _STATED, _UNDERSCORED, _TABLE,
                              _IN_QUOTES)))  # fmt: skip


def _of_itself(text: str, key: str, heading: str) -> str:
    """What a complaint says of its own key, said of the column's heading."""
    name = re.escape(key.rpartition(".")[2])
    if not heading:
        return re.sub(r"^edges: ", "", text)
    text = re.sub(rf"^{name}(?=: | cannot )", heading, text)
    text = re.sub(rf"^'{name}' is missing$", f"{heading} is missing", text)
    return re.sub(rf"^add {name}$", f"fill in {heading}", text)


def _translated(text: str, headings: Mapping[str, str]) -> str:
    titles = {sheet.keys[0]: sheet.title for sheet in reversed(plan_sheets())}

    def word(found: re.Match[str]) -> str:
        if found["user"]:
            return found[0]
        if found["measure"] is not None:
            return f"from {found['measure']}"
        if found["key"]:
            return _stated(found["key"], found["value"], headings)
        if found["name"]:
            return headings.get(found["name"], found[0])
        if found["table"]:
            title = titles.get(found["table"])
            return f"sheet {title}" if title else found[0]
        return found["text"]

    return _TOKEN.sub(word, text).replace(*_SEVERAL)


def _named_edges() -> str:
    return next(sheet.title for sheet in plan_sheets() if sheet.keys == ("piece", "edges"))


def _stated(key: str, value: str, headings: Mapping[str, str]) -> str:
    """``along = "skirt: bottom"`` as it goes into a cell: ``skirt: bottom under Along``."""
    many = re.findall(r'"([^"]*)"', value)
    if value.startswith("{"):
        inner = re.findall(r'([a-z_]+) = "([^"]*)"', value)
        before = "edges." if key == "edges" else ""
        cells = " and ".join(f"{text} under {headings.get(before + of, of)}" for of, text in inner)
        if before:
            return cells
        return f"a row for {key} on the sheet {_named_edges()} with {cells}"
    if key == "edges" and "edges.0" in headings and len(many) == 2:
        return f"{many[0]} under {headings['edges.0']} and {many[1]} under {headings['edges.1']}"
    plain = "; ".join(many) if many else value
    plain = "a name" if plain == "..." else plain
    return f"{plain} under {headings[key]}" if key in headings else f"{key} = {plain}"
