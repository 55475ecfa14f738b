"""The rows of a stash table once a list is booked out, whatever kind of file they are from."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.measure import MANY, Length, Unit, decimal_text, natural_text, tape_text
from estimator.reports.stash_papers import LONG
from estimator.stash import MARKS, InHand, is_metric
from estimator.stash_after import Change
from estimator.written import largest_unit

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
        before = str(dict(zip(names, cells, strict=False)).get("length", ""))
        own = largest_unit(before)
        found.append(_with(cells, names, count="1", length=_length_text(length, own)))
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


def _length_text(length: Length, own: Unit | None = None) -> str:
    """A length in its ``own`` unit, down to a mark that people note it to: never more than it is.

    From so many yards or metres on it is told in them, the longer the more roughly: nobody measures
    a part spool to the sixteenth. One without a unit of its own is in the system that it fits.
    """
    metric = own.metric if own else is_metric(length)
    shop = Unit.M if metric else Unit.YD
    if own in (None, shop) and length >= shop.length * LONG:
        return _long_text(length, shop)
    if own is Unit.M:
        return f"{decimal_text(_down(length, MARKS[True]) / shop.length, 3)} m"
    on_mark = _down(length, MARKS[metric])
    if own is not None:
        return tape_text(on_mark, own.tape)
    return tape_text(on_mark, Unit.CM) if metric else natural_text(on_mark, Unit.IN)


def _long_text(length: Length, shop: Unit) -> str:
    """In whole yards and inches or metres and centimetres, and a very long one in whole ones."""
    if length >= shop.length * MANY:
        return f"{shop.length.times_into(length)} {shop.symbol}"
    if shop.metric:
        return f"{decimal_text(_down(length, Unit.CM.length) / shop.length, 2)} m"
    yards = shop.length.times_into(length)
    inches = Unit.IN.length.times_into(length - shop.length * yards)
    return f"{yards} yd {inches} in" if inches else f"{yards} yd"


def _down(length: Length, mark: Length) -> Length:
    return mark * mark.times_into(length)
