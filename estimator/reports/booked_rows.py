"""The rows of a stash table once a list is booked out, whatever kind of file they are from."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.measure import Length, Unit, natural_text, tape_text
from estimator.stash import MARKS, InHand, is_metric
from estimator.stash_after import Change

COLUMNS = tuple(InHand.model_fields)


def booked(
    table: Sequence[Sequence[object]], changed: Sequence[Change], added: Sequence[InHand]
) -> list[list[object]]:
    """The table with its changed rows and the new ones; all other cells as they were.

    Its first row is the heading. Columns that it lacks are added as they are needed.
    """
    header: list[object] = [*table[0]]
    names = [str(name or "").strip().lower() for name in header]
    for name in _missing(names, changed, added):
        header.append(name)
        names.append(name)
    by_row = {one.row: one for one in changed}
    found: list[list[object]] = [header]
    for number, row in enumerate(table[1:], start=2):
        cells: list[object] = [*row, *[""] * (len(names) - len(row))]
        change = by_row.get(number)
        found += [cells] if change is None else _changed(cells, names, change)
    found += [[_cell(row, name) for name in names] for row in added]
    return found


def _missing(names: list[str], changed: Sequence[Change], added: Sequence[InHand]) -> list[str]:
    """The columns that have to be added for what is written."""
    wanted = {"count"} if changed else set()
    for row in added:
        wanted |= {name for name in COLUMNS if _cell(row, name)}
    return [name for name in COLUMNS if name in wanted and name not in names]


def _changed(cells: list[object], names: list[str], change: Change) -> list[list[object]]:
    """A row with fewer of its things, and one for each length that was cut short."""
    found = []
    if change.stay:
        found.append(_with(cells, names, count=str(change.stay)))
    for length in change.cut:
        found.append(_with(cells, names, count="1", length=_length_text(length)))
    return found


def _with(cells: list[object], names: list[str], **values: str) -> list[object]:
    return [values.get(name, cell) for name, cell in zip(names, cells, strict=False)]


def _cell(row: InHand, name: str) -> str:
    if name not in COLUMNS:
        return ""
    value = getattr(row, name)
    if isinstance(value, Length):
        return _length_text(value)
    if isinstance(value, bool):
        return "yes" if value else ""
    return "" if value is None else str(value)


def _length_text(length: Length) -> str:
    """A length that reads back as it is where it lies on a mark of a tape; else down to one."""
    metric = is_metric(length)
    mark = MARKS[metric]
    on_mark = mark * mark.times_into(length)
    return tape_text(on_mark, Unit.CM) if metric else natural_text(on_mark, Unit.IN)
