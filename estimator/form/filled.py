"""A plan's tables as the filled rows of a form."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from estimator.edges import SIDES
from estimator.form.cells import Kind, Written, cell_of
from estimator.form.sheets import Column, KeyPath, Sheet, plan_sheets
from estimator.quoting import one_line


@dataclass(frozen=True)
class Row:
    """A filled row: what stands in each column, and the path in the plan of the entry it is."""

    cells: Mapping[Column, Written]
    path: KeyPath


def filled_rows(raw: Mapping[str, Any]) -> dict[str, list[Row]]:
    """The rows of each sheet by its title, from the tables of a sound plan as they were written."""
    return {sheet.title: list(_rows(sheet, raw)) for sheet in plan_sheets()}


def _rows(sheet: Sheet, raw: Mapping[str, Any]) -> Iterator[Row]:
    key = sheet.keys[0]
    if sheet.upright:
        yield Row(_cells(sheet.columns, raw.get(key, {})), (key,))
    elif sheet.of_measures:
        for name, size in raw.get(key, {}).items():
            of_name, of_size = sheet.columns
            yield Row({of_name: name, of_size: cell_of(size, Kind.SIZE)}, (key, name))
    elif sheet.of_entries:
        for table in sheet.parents:
            for number, entry in enumerate(raw.get(table, [])):
                yield from _inner_rows(sheet, table, number, entry)
    else:
        for number, entry in enumerate(raw.get(key, [])):
            yield Row(_cells(sheet.columns, entry), (key, number))


def _cells(columns: Sequence[Column], entry: Mapping[str, Any]) -> dict[Column, Written]:
    found = {}
    for column in columns:
        value = _value(column, entry)
        if value is not None:
            found[column] = cell_of(value, column.kind)
    return found


def _value(column: Column, entry: Mapping[str, Any]) -> Any:
    """What an entry says in a column; None for nothing, or for what has a row elsewhere."""
    first, *further = column.path
    value = entry.get(str(first))
    if value is None:
        return None
    if further and isinstance(further[0], int):
        return value[further[0]]
    if further:
        edge = value.get(further[0])
        return edge.get("finish", "seam") if isinstance(edge, Mapping) and _plain(edge) else (
            None if isinstance(edge, Mapping) else edge)  # fmt: skip
    if column.kind is Kind.TABLE and column.path == ("edges",):
        others = {k: edge for k, edge in value.items() if not _of_a_side(k, edge)}
        return others if others or not value else None
    if column.kind is Kind.LIST and column.listed:
        many = _listed(value)
        if any(isinstance(one, Mapping) for one in many) and column.inner:
            if all(_tells_more(one, column.inner) for one in many):
                return None
            return [_bare(one, column.inner) for one in many]
        return many
    return value


def _listed(value: Any) -> list[Any]:
    return list(value) if isinstance(value, list | tuple) else [value]


def _plain(edge: Mapping[str, Any]) -> bool:
    """Whether an edge says no more than its finish."""
    return set(edge) <= {"finish"}


def _of_a_side(name: str, edge: Any) -> bool:
    """Whether an edge has a column of its own on its piece's row."""
    return name in SIDES and (not isinstance(edge, Mapping) or _plain(edge))


def _bare(one: Any, key: str) -> Any:
    return cell_of(one[key], Kind.SIZE) if isinstance(one, Mapping) else one


def _tells_more(one: Any, key: str) -> bool:
    """Whether an entry of a list is more than the text that may stand for it."""
    return isinstance(one, Mapping) and (set(one) != {key} or not isinstance(one[key], str))


def _inner_rows(
    sheet: Sheet, table: str, number: int, entry: Mapping[str, Any]
) -> Iterator[Row]:  # fmt: skip
    field = sheet.keys[-1]
    whose: dict[Column, Written] = {sheet.own[-1]: one_line(str(entry.get("name", "")))}
    if len(sheet.own) > 1:
        whose[sheet.own[0]] = table
    held = entry.get(field)
    if held is None:
        return
    if sheet.by_name:
        for name, edge in held.items():
            if not _of_a_side(name, edge):
                told = edge if isinstance(edge, Mapping) else {sheet.bare: edge}
                cells = _cells(sheet.columns, {"": name, **told})
                yield Row({**whose, **cells}, (table, number, field, name))
        return
    many = _listed(held)
    texts = [one_line(str(_bare(one, sheet.bare))) for one in many] if sheet.bare else []
    telling = [text for text, one in zip(texts, many, strict=False) if _tells_more(one, sheet.bare)]
    to_tell_apart = {text for text in telling if texts.count(text) > 1}
    for position, one in enumerate(many):
        if not sheet.bare or _tells_more(one, sheet.bare) or texts[position] in to_tell_apart:
            told = one if isinstance(one, Mapping) else {sheet.bare: one}
            place = () if sheet.single else (position,)
            yield Row({**whose, **_cells(sheet.columns, told)}, (table, number, field, *place))
