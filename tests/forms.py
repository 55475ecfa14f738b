"""Forms of plans as a person fills them in: cells are found by their headings, and typed into."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

from openpyxl import load_workbook

from estimator import Refused
from estimator.catalog import NO_CATALOG, Catalog
from estimator.files import estimate_files
from estimator.readers.remarks import opening_remarks, remarks_in
from estimator.reports.plan_form import plan_form
from estimator.reports.saving import workbook_bytes

SKIRT = """\
# Skirt of two panels.
[garment]
name = "skirt"
unit = "in"
[measures]
waist = "28"
[[fabric]]
name = "print"
widths = ["45 in"]
[[piece]]
name = "panel"
quantity = 2
cut = "print"
width = "20 1/4"   # CHANGE: half of the hem
length = "26"
[[trim]]
name = "hem ribbon"
along = "panel: bottom"
"""


def write_form(path: Path, toml: str = SKIRT, shop: Catalog = NO_CATALOG) -> Path:
    path.write_bytes(form_bytes(toml) if shop is NO_CATALOG else form_bytes_of(toml, shop))
    return path


def form_bytes_of(toml: str, shop: Catalog) -> bytes:
    return workbook_bytes(
        plan_form(tomllib.loads(toml), opening_remarks(toml), remarks_in(toml), shop)
    )


@cache
def form_bytes(toml: str) -> bytes:
    """A form without a catalog; the same one is wanted again and again."""
    return form_bytes_of(toml, NO_CATALOG)


class Form:
    """A form that is open in a spreadsheet program."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.book = load_workbook(path)

    def head(self, sheet: str) -> int:
        rows = self.book[sheet].iter_rows()
        return next(row[0].row for row in rows if row[0].fill.fill_type and row[0].font.b)

    def column(self, sheet: str, heading: str) -> int:
        row = self.book[sheet][self.head(sheet)]
        return next(cell.column for cell in row if cell.value == heading)

    def row(self, sheet: str, first: str) -> int:
        """The row whose first cell says this; the first empty row for nothing."""
        page, row = self.book[sheet], self.head(sheet) + 1
        while (page.cell(row, 1).value or "") != first:
            row += 1
        return row

    def put(self, sheet: str, first: str, heading: str, value: object) -> str:
        """Types a value under a heading, into the row of this name; says which cell it was."""
        cell = self.book[sheet].cell(self.row(sheet, first), self.column(sheet, heading))
        cell.value = value
        return f"sheet {sheet}, cell {cell.coordinate}"

    def yours(self, line: str, value: object) -> None:
        """Types a value into a line of the garment's sheet."""
        self.put("Garment", line, "Yours", value)

    def add(self, sheet: str, **values: object) -> None:
        """A new row below the others; headings are written with _ for their blanks."""
        row = self.row(sheet, "")
        for heading, value in values.items():
            column = self.column(sheet, heading.replace("_", " "))
            self.book[sheet].cell(row, column).value = value

    def empty(self, sheet: str, first: str) -> None:
        """Empties the row of this name."""
        row = self.row(sheet, first)
        for cell in self.book[sheet][row]:
            cell.value = None

    def save(self) -> Path:
        self.book.save(self.path)
        return self.path


def complaints(path: Path) -> list[str]:
    """All that a filled-in form is refused for, as it would be printed; none for a sound one."""
    try:
        estimate_files([path])
    except Refused as refused:
        return [str(fault).removeprefix(f"{path}, ") for fault in refused.faults]
    return []
