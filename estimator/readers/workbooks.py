"""What the cells of a spreadsheet hold; every way in which a file fails is a complaint."""

from __future__ import annotations

import datetime
import io
import warnings
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from pathlib import Path
from typing import Any

from openpyxl import load_workbook
from openpyxl.utils import get_column_letter

from estimator.faults import Fault, Refused, Wrong
from estimator.readers.files import read_bytes

LARGEST_UNPACKED, LARGEST_TEXT = 60_000_000, 10_000_000
LARGEST_PART, LARGEST_STYLES = 6_000_000, 700_000
"""Bytes. A catalog of as many rows as are read has 6 million in all; pictures are not looked at."""
MOST_ROWS, MOST_COLUMNS, MOST_CELLS = 5_000, 200, 5_000_000
STYLES = "xl/styles.xml"
SUFFIXES = (".xlsx", ".xlsm")
_PROTECTED = b"\xd0\xcf\x11\xe0"
"""The first bytes of a compound file: a workbook with a password, or one of an old program."""
_SAVE = "save it as .xlsx from a spreadsheet program"

CellValue = str | int | float


@dataclass(frozen=True, slots=True)
class Cell:
    """What a cell holds, and why that cannot be used, if so: a formula, an error.

    A date is its ISO text and a percentage ``5 %``; readers of lengths tell a date by its text.
    """

    value: CellValue
    wrong: Wrong | None = None


@dataclass(frozen=True)
class CellSheet:
    """The filled cells of a sheet by row and column, both from 1; ``file`` is its workbook."""

    file: str
    title: str
    cells: Mapping[tuple[int, int], Cell]

    @cached_property
    def rows(self) -> Mapping[int, Mapping[int, Cell]]:
        """The rows in which anything stands, from the top, and their filled cells by columns."""
        found: dict[int, dict[int, Cell]] = {}
        for (row, column), cell in sorted(self.cells.items(), key=lambda pair: pair[0]):
            found.setdefault(row, {})[column] = cell
        return found

    def place(self, row: int, column: int | None = None) -> str:
        """A cell, or a row, as complaints name it within the file."""
        cell = f"row {row}" if column is None else f"cell {get_column_letter(column)}{row}"
        return f"sheet {self.title}, {cell}"


def is_workbook(path: Path) -> bool:
    """Whether a file is a spreadsheet by its name."""
    return path.suffix.lower() in SUFFIXES


def read_workbook(path: Path, what: str) -> list[CellSheet]:
    """The sheets of a workbook that is ``what`` (a plan, a catalog), in their order.

    Raises Refused for what is missing, damaged, protected, no spreadsheet, or too large.
    """
    held = read_bytes(path, what)
    _refuse_foreign(path, held)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            book = load_workbook(io.BytesIO(held), read_only=True)
            return [_cells(path, sheet) for sheet in book.worksheets]
    except Refused:
        raise
    except Exception:
        # What a damaged file makes the spreadsheet library raise has no end (syntax, key, index,
        # zlib, struct errors); whatever it is, nothing can be read from it.
        raise _refused(path, "is damaged: its cells cannot be read",
                       "open it in a spreadsheet program and save it again") from None  # fmt: skip


def _refuse_foreign(path: Path, held: bytes) -> None:
    """Raises Refused for a file that is no workbook of today, or would unpack to far too much."""
    if held.startswith(_PROTECTED):
        wrong = "is protected with a password, or is a workbook of an old kind"
        raise _refused(path, wrong, f"{_SAVE}, without a password")
    try:
        with zipfile.ZipFile(io.BytesIO(held)) as archive:
            _refuse_large(path, archive)
            names = set(archive.namelist())
            if "xl/workbook.xml" not in names:
                raise _refused(path, "is no Excel workbook", _SAVE)
            for name in sorted(names):
                if name.endswith((".xml", ".rels")) and b"<!DOCTYPE" in archive.read(name):
                    raise _refused(path, "holds what no spreadsheet program writes", _SAVE)
    except Refused:
        raise
    except Exception:
        # As above, a damaged archive has no end of errors: of zip files, zlib, lzma, the system.
        raise _refused(path, "is no Excel workbook, or a damaged one", _SAVE) from None


def _refuse_large(path: Path, archive: zipfile.ZipFile) -> None:
    """Raises Refused for what would unpack to more than a plan or a catalog can hold."""
    sizes = {entry.filename: entry.file_size for entry in archive.infolist()}
    written = {name: size for name, size in sizes.items() if name.endswith((".xml", ".rels"))}
    if written.get(STYLES, 0) > LARGEST_STYLES:
        right = "copy its cells, their values alone, into a new workbook"
        raise _refused(path, "has more styles of cells than a person can tell apart", right)
    much = [size for size in written.values() if size > LARGEST_PART]
    much += [size for size in [sum(written.values())] if size > LARGEST_TEXT]
    much += [size for size in [sum(sizes.values())] if size > LARGEST_UNPACKED]
    if much:
        wrong = f"unpacks to {max(much) // 1_000_000} megabytes, more than is read of a workbook"
        raise _refused(path, wrong, "check that it is the right file")


def _cells(path: Path, sheet: Any) -> CellSheet:
    found: dict[tuple[int, int], Cell] = {}
    sheet.reset_dimensions()
    looked_at = 0
    for number, row in enumerate(sheet.iter_rows(), start=1):
        looked_at += 1 + len(row)
        if looked_at > MOST_CELLS:
            wrong = "the sheet has too many cells without anything in them"
            where = f"{path}, sheet {sheet.title}, row {number}"
            raise Refused([Fault(where, wrong, "delete the empty rows below and columns beside")])
        for cell in row:
            made = _cell(cell)
            if made is None:
                continue
            if number > MOST_ROWS or cell.column > MOST_COLUMNS:
                far = f"row {MOST_ROWS}" if number > MOST_ROWS else f"column {MOST_COLUMNS}"
                where = f"{path}, sheet {sheet.title}, cell {cell.coordinate}"
                raise Refused([Fault(where, f"the sheet goes on beyond {far}", _SHORTER)])
            found[(number, cell.column)] = made
    return CellSheet(str(path), sheet.title, found)


_SHORTER = "leave out what is not of the plan or catalog"


def _cell(cell: Any) -> Cell | None:
    """A filled cell; None for an empty one."""
    value = cell.value
    if value is None or (isinstance(value, str) and not value.strip()):
        return None
    if cell.data_type == "f":
        wrong = Wrong("the cell holds a formula", "write its result as a plain value")
        return Cell(str(value)[:200], wrong)
    if cell.data_type == "e":
        return Cell(str(value), Wrong(f"the cell holds an error, {value}", "write the value again"))
    if isinstance(value, datetime.datetime | datetime.date):
        return Cell(value.isoformat()[:10])
    if isinstance(value, datetime.time | datetime.timedelta):
        wrong = Wrong(f"the cell holds a time of day, {value}", "format it as text and write again")
        return Cell(str(value), wrong)
    if isinstance(value, bool):
        return Cell("yes" if value else "no")
    if isinstance(value, str):
        return Cell(value)
    if "%" in str(cell.number_format):
        share = f"{Decimal(repr(value)) * 100:.6f}".rstrip("0").rstrip(".")
        return Cell(f"{share} %")
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return Cell(int(value))
    return Cell(value if isinstance(value, int | float) else str(value))


def _refused(path: Path, wrong: str, right: str) -> Refused:
    return Refused([Fault(str(path), wrong, right)])
