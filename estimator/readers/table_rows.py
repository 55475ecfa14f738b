"""The rows of a table with one heading row, each read as an entry; every complaint has its cell."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar

from pydantic import ValidationError

from estimator.faults import Fault, Faults, Refused, Wrong, nearest
from estimator.fields import Entry
from estimator.fraction_dates import refuse_date
from estimator.quoting import NotReadable, one_line, quoted
from estimator.readers.complaints import wrongs_in
from estimator.readers.written_tables import WrittenTable

EntryT = TypeVar("EntryT", bound=Entry)

IN_WORDS = ("notes", "note", "name", "item", "shop", "shelf", "colour", "fibres", "place")
"""Columns in which a date is no mistake."""


def rows_of(
    table: WrittenTable, model: type[EntryT], faults: Faults, unread: set[str]
) -> Iterator[tuple[int, EntryT]]:
    """The sound rows of a table with their row numbers as a spreadsheet program shows them.

    The items of the other rows go into ``unread``: the row's own complaint is enough. Raises
    Refused for a heading that is not that of such a table.
    """
    header = table.header
    _check_header(header, table, model)
    for number, row in enumerate(table.cells[1:], start=2):
        cells = {name: cell.strip() for name, cell in zip(header, row, strict=False)}
        if not any(cell.strip() for cell in row):
            continue
        if any(cell.strip() for cell in row[len(header) :]):
            wrong = "the row has more cells than the heading"
            faults.found.append(
                Fault(table.place(number, None), wrong, "put text with commas in quotes")
            )
            unread.add(one_line(cells.get("item", "")))
            continue
        wrongs: list[Wrong] = []
        try:
            for name in cells:
                _refuse_date(cells[name], name)
            entry = model.model_validate({name: cell for name, cell in cells.items() if cell})
        except ValidationError as error:
            wrongs = wrongs_in(error, model)
        except Wrong as wrong_cell:
            wrongs = [wrong_cell]
        for one in wrongs:
            complain(faults, table, number, one)
        if wrongs:
            unread.add(one_line(cells.get("item", "")))
        else:
            yield number, entry


def complain(faults: Faults, table: WrittenTable, row: int, wrong: Wrong) -> None:
    """Note what is wrong with a row, or with the cell of it that ``wrong`` is at."""
    header = table.header
    column = str(wrong.at[0]) if wrong.at else ""
    number = header.index(column) + 1 if column in header else None
    faults.found.append(Fault(table.place(row, number), wrong.wrong, wrong.right))


def _refuse_date(cell: str, column: str) -> None:
    if column in IN_WORDS:
        return
    try:
        refuse_date(cell)
    except NotReadable as problem:
        raise Wrong(problem.wrong, problem.right, (column,)) from None


def _check_header(header: list[str], table: WrittenTable, model: type[Entry]) -> None:
    known = model.model_fields
    faults = [
        Fault(table.place(1, number), f"there is no column {quoted(name)} in this table",
              nearest(name, known))
        for number, name in enumerate(header, start=1)
        if name not in known
    ]  # fmt: skip
    faults += [
        Fault(table.place(1, None), f"the column {quoted(name)} is missing", f"add a column {name}")
        for name, field in known.items()
        if field.is_required() and name not in header
    ]
    faults += [
        Fault(
            table.place(1, None), f"the column {quoted(name)} stands here twice", "keep one of them"
        )
        for name in dict.fromkeys(header)
        if header.count(name) > 1
    ]
    if faults:
        raise Refused(faults)
