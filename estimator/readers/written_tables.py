"""Tables with one heading row as they were written: a CSV file, or a sheet of a workbook."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from estimator.faults import Fault, Faults, Refused
from estimator.form.sheets import OWN_SHEETS
from estimator.quoting import one_line
from estimator.readers.csv_cells import cells_of
from estimator.readers.files import read_text
from estimator.readers.workbooks import CellSheet, is_workbook, read_workbook

MOST_ROWS = 20_000
"""Rows of a table, whatever stands in them; a table may allow fewer."""


@dataclass(frozen=True)
class WrittenTable:
    """A table as it was written: its cells from the heading on, row by row, all of them text.

    ``name`` is what complaints call it, and ``place`` words a row and a column of it, both from 1.
    """

    name: str
    cells: Sequence[Sequence[str]]
    place: Callable[[int, int | None], str]

    @property
    def header(self) -> list[str]:
        """The names of the columns as they are looked for."""
        return [name.strip().lower() for name in self.cells[0]] if self.cells else []


def table_from(path: Path, what: str, sheet: str, faults: Faults) -> WrittenTable:
    """A table in a file of its own: CSV, or of a workbook the sheet of that name or the first.

    Complaints call it ``what`` it is. Raises Refused for no such table; what cannot be used of a
    cell of a workbook goes into ``faults``.
    """
    if is_workbook(path):
        return table_from_sheet(path, sheet_for(path, read_workbook(path, what), sheet), faults)
    return table_from_csv(path, what)


def sheet_for(path: Path, sheets: Sequence[CellSheet], name: str) -> CellSheet:
    """The sheet of that name, in capitals or not, or the first that is not for notes."""
    named = [one for one in sheets if one.title.strip().lower() == name]
    others = [one for one in sheets if one.cells and not one.title.lower().startswith(OWN_SHEETS)]
    found = next(iter([*named, *others]), None)
    if found is None:
        raise Refused([Fault(str(path), "has nothing on its sheets", f"name its sheet {name}")])
    return found


def table_from_csv(path: Path, what: str) -> WrittenTable:
    """A table saved as CSV; complaints call it ``what`` it is. Raises Refused for no such table."""
    cells = cells_of(read_text(path, what), path)

    def place(row: int, column: int | None) -> str:
        named = ""
        if column is not None:
            # of the heading itself the number tells more than the name that is wrong
            heading = one_line(cells[0][column - 1]).strip()
            named = f", column {column if row == 1 else heading}"
        return f"{path}, row {row}{named}"

    refuse_too_many(path, cells, MOST_ROWS)
    return WrittenTable(path.name, cells, place)


def refuse_too_many(path: Path, cells: Sequence[Sequence[str]], most: int) -> None:
    """Raises Refused for a table of more rows than ``most``, before each is complained of."""
    rows = sum(1 for row in cells[1:] if any(cell.strip() for cell in row))
    if rows > most:
        wrong, right = f"the table has {rows} rows", f"keep at most {most} in it"
        raise Refused([Fault(str(path), wrong, right)])


def table_from_sheet(path: Path, sheet: CellSheet, faults: Faults) -> WrittenTable:
    """The cells of a sheet as text; a formula in one is a fault."""

    def place(row: int, column: int | None) -> str:
        return f"{path}, {sheet.place(row, column)}"

    for (row, column), cell in sheet.cells.items():
        if cell.wrong:
            faults.found.append(Fault(place(row, column), cell.wrong.wrong, cell.wrong.right))
    wide = max((column for _, column in sheet.cells), default=0)
    cells = [[""] * wide for _ in range(max(sheet.rows, default=0))]
    for (row, column), cell in sheet.cells.items():
        cells[row - 1][column - 1] = str(cell.value)
    return WrittenTable(f"the sheet {sheet.title}", cells, place)
