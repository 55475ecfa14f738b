"""A stash that is a sheet of a workbook, with the rows of what is left written into it."""

from __future__ import annotations

import io
from collections.abc import Sequence
from copy import copy
from pathlib import Path
from typing import Any

from openpyxl import load_workbook
from openpyxl.cell.cell import Cell, MergedCell
from openpyxl.worksheet.worksheet import Worksheet

from estimator.faults import Refused
from estimator.readers.stash_table import SHEET, TABLE
from estimator.readers.workbooks import read_workbook
from estimator.readers.written_tables import sheet_for
from estimator.reports.booked_rows import booked
from estimator.reports.drawings import drawings_on
from estimator.reports.saving import earlier_content, refused, workbook_bytes
from estimator.stash import InHand
from estimator.stash_after import Change

_KEEP = "keep the stash in a workbook without them, or as CSV"


def with_rows(
    path: Path, content: bytes, changed: Sequence[Change], added: Sequence[InHand]
) -> bytes:
    """The workbook with its rows changed and the new ones below them, its other sheets as they are.

    Raises Refused where something in it would be lost: pictures, charts, merged cells.
    """
    if earlier_content(path) != content:
        raise refused(path, "has changed while this was worked out", "run it again")
    title = sheet_for(path, read_workbook(path, TABLE), SHEET).title
    try:
        drawn = sum(drawings_on(content).values())
        book = load_workbook(io.BytesIO(content))
        sheet = book[title]
    except Refused:
        raise
    except Exception:
        # what a damaged file makes the spreadsheet library raise has no end
        raise refused(path, "is damaged", "save it again from a spreadsheet program") from None
    if drawn:
        raise refused(path, "holds pictures or charts, which would be lost", _KEEP)
    if sheet.merged_cells.ranges:
        raise refused(path, f"has merged cells on the sheet {title}", "part them again")
    before = [[cell.value for cell in row] for row in sheet.iter_rows()]
    _write(sheet, booked(before, changed, added), len(before))
    return workbook_bytes(book)


def _write(sheet: Worksheet, rows: Sequence[Sequence[object]], before: int) -> None:
    """The rows in their places, those below the table before in the look of its last one."""
    for number, row in enumerate(rows, start=1):
        for column, value in enumerate(row, start=1):
            cell = sheet.cell(number, column)
            assert isinstance(cell, Cell), "merged cells are refused"
            counted = isinstance(value, str) and value.isascii() and value.isdigit()
            written: Any = int(str(value)) if counted else value
            cell.value = None if value == "" else written
            if isinstance(value, str) and cell.value == value:
                cell.data_type = "s"  # what somebody wrote is never a formula
            if number > before > 1:
                _look_like(sheet.cell(before, column), cell)
    for number in range(len(rows) + 1, before + 1):
        for cell in sheet[number]:
            cell.value = None


def _look_like(other: Cell | MergedCell, cell: Cell) -> None:
    for look in ("font", "fill", "border", "alignment", "protection"):
        setattr(cell, look, copy(getattr(other, look)))
    cell.number_format = other.number_format
