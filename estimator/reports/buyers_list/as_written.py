"""What the program wrote into a list, kept in the list itself, to tell the buyer's writing from it.

It stands on a hidden sheet, which every spreadsheet program keeps when it saves the file.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.buyers_list.columns import COLUMNS, LIST_SHEET, NUMBER_OF
from estimator.reports.cells import cell_at, put_text

RECORD_SHEET = "As written"
_TITLE = "What the program wrote, so that the next list keeps what you write. Leave it as it is."
_PICTURES = "pictures"

CellValue = str | float | int | bool | Decimal | datetime | date | time


class Formula(str):
    """A formula that a person wrote, to be told from a text that begins like one."""


Line = Mapping[str, str]
"""The texts of one line of the list by their headings."""


@dataclass(frozen=True)
class Record:
    """What an earlier list said as it was written.

    ``lines`` are those of the list by their keys; ``others`` counts the texts of each sheet beyond
    them; ``pictures`` counts the pictures of each sheet.
    """

    lines: Mapping[str, Line]
    others: Mapping[str, Counter[str]]
    pictures: Mapping[str, int]


def text_said(value: object) -> str:
    """A cell's value as text that no spreadsheet program changes when it saves the file."""
    if isinstance(value, bool):
        return str(value)
    if isinstance(value, int | float | Decimal):
        return f"{float(value):.9g}"
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    return " ".join(str(value or "").split())


def is_formula(value: object) -> bool:
    """Whether a cell's content reads as a formula; whether it is one, its type must say."""
    return isinstance(value, str) and value.startswith("=")


def add_record(book: Workbook) -> None:
    """Puts the record of all that the workbook holds by now on a hidden sheet of its own."""
    rows: list[tuple[str, str, str, str]] = []
    for sheet in book.worksheets:
        rows += _said_by(sheet)
    record = book.create_sheet(RECORD_SHEET)
    put_text(cell_at(record, 1, 1), _TITLE)
    for number, row in enumerate(rows, start=2):
        for column, text in enumerate(row, start=1):
            if text:
                put_text(cell_at(record, number, column), text)
    record.sheet_state = "hidden"


def _said_by(sheet: Worksheet) -> list[tuple[str, str, str, str]]:
    """Sheet, key of the line or nothing, heading or nothing, and text."""
    found = [(sheet.title, "", _PICTURES, str(pictures_on(sheet)))]
    is_list = sheet.title == LIST_SHEET
    for number, row in enumerate(sheet.iter_rows(), start=1):
        cells = [cell for cell in row if cell.value not in (None, "")]
        key = str(sheet.cell(number, NUMBER_OF["Key"]).value or "") if is_list else ""
        for cell in cells:
            heading = COLUMNS[cell.column - 1].heading if key and key != "Key" else ""
            found.append((sheet.title, key if heading else "", heading, text_said(cell.value)))
    return found


def pictures_on(sheet: Worksheet) -> int:
    """How many pictures and charts were put on a sheet."""
    return len(getattr(sheet, "_images", ())) + len(getattr(sheet, "_charts", ()))


def record_in(book: Workbook) -> Record | None:
    """The record of an earlier list; None in a workbook that is not one of ours."""
    if RECORD_SHEET not in book.sheetnames:
        return None
    rows = book[RECORD_SHEET].iter_rows(max_col=4, values_only=True)
    if text_said((next(rows, None) or [""])[0]) != _TITLE:
        return None
    lines: dict[str, dict[str, str]] = defaultdict(dict)
    others: dict[str, Counter[str]] = defaultdict(Counter)
    pictures: dict[str, int] = {}
    for row in rows:
        sheet, key, heading, text = ("" if value is None else str(value) for value in row)
        if key:
            lines[key][heading] = text
        elif heading == _PICTURES:
            pictures[sheet] = int(text)
            others[sheet].update(())
        else:
            others[sheet][text] += 1
    return Record(dict(lines), dict(others), pictures)
