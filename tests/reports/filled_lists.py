"""Lists as people fill them in: written to a file, opened, changed, and written again."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.cell.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from estimator import Estimate, estimate
from estimator.bill import NO_FUNDS, Funds
from estimator.reports.buyers_list.columns import LIST_SHEET, NUMBER_OF, SUM_MARK
from estimator.reports.buyers_list.file import write_list
from tests.plans import plan

CLOAK = """
[garment]
name = "lamplighter's cloak"
currency = "USD"
[[fabric]]
name = "wool"
colour = "bottle green"
widths = [{ width = "60 in", price = "14.20 per yd" }, { width = "54 in", price = "12.90 per yd" }]
[[fabric]]
name = "lining"
role = "lining"
widths = ["54 in"]
[[piece]]
name = "panel"
quantity = 3
cut = ["wool", "lining"]
width = "24 1/4"
length = "44"
[[trim]]
name = "braid"
along = "panel: bottom"
price = "1.13 per yd"
[[notion]]
name = "clasp"
quantity = 2
price = "3.40 each"
"""
LONGER = CLOAK.replace('length = "44"', 'length = "53"')


needs_office = pytest.mark.skipif(
    shutil.which("soffice") is None, reason="LibreOffice is not installed"
)


def saved_by_office(path: Path, folder: Path) -> Path:
    """The workbook as LibreOffice reckons and saves it."""
    profile = f"-env:UserInstallation=file://{folder}/profile"
    saved = folder / "saved"
    subprocess.run(
        ["soffice", profile, "--headless", "--convert-to", "xlsx", "--outdir", saved, path],
        check=True,
        capture_output=True,
        timeout=120,
    )
    return saved / path.name


@cache
def cloak(text: str = CLOAK) -> Estimate:
    return estimate(plan(text))


def the_list(path: Path) -> tuple[Workbook, Worksheet]:
    book = load_workbook(path)
    sheet = book[LIST_SHEET]
    assert isinstance(sheet, Worksheet)
    return book, sheet


def row_of(sheet: Worksheet, item: str) -> int:
    """The row of the line of this item; there is just one."""
    column = NUMBER_OF["Item"]
    (row,) = (row for row in range(4, sheet.max_row + 1) if said(sheet, row, column) == item)
    return row


def said(sheet: Worksheet, row: int, column: int) -> object:
    value: object = sheet.cell(row, column).value
    return value


def at(sheet: Worksheet, item: str, heading: str) -> Cell:
    cell = sheet.cell(row_of(sheet, item), NUMBER_OF[heading])
    assert isinstance(cell, Cell)
    return cell


def value_at(path: Path, item: str, heading: str) -> object:
    value: object = at(the_list(path)[1], item, heading).value
    return value


def fill_in(path: Path, marks: Mapping[tuple[str, str], object]) -> None:
    """Writes into the cells of lines by (item, heading), as a person does, and saves the file."""
    book, sheet = the_list(path)
    for (item, heading), mark in marks.items():
        at(sheet, item, heading).value = mark  # type: ignore[assignment]
    book.save(path)


def free_row(sheet: Worksheet) -> int:
    """The first of the empty lines that stand ready for things of one's own."""
    item, key = NUMBER_OF["Item"], NUMBER_OF["Key"]
    return next(
        row
        for row in range(4, sheet.max_row + 1)
        if not said(sheet, row, item) and not said(sheet, row, key)
    )


def sum_row(sheet: Worksheet, name: str) -> int:
    """The row of a sum below the list, by the name in its key."""
    key = NUMBER_OF["Key"]
    rows = range(4, sheet.max_row + 1)
    return next(row for row in rows if said(sheet, row, key) == SUM_MARK + name)


def texts(path: Path) -> list[str]:
    """Every text of every sheet that a person sees."""
    book = load_workbook(path)
    return [
        str(cell.value)
        for sheet in book.worksheets
        if sheet.sheet_state == "visible"
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    ]


def written(text: str, folder: Path, funds: Funds = NO_FUNDS) -> Path:
    """The list of a plan, in a file of its own."""
    path = folder / "list.xlsx"
    write_list(estimate(plan(text)), path, funds)
    return path
