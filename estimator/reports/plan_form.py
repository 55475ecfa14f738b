"""A plan as a spreadsheet to fill in: a sheet for each of its tables, with what belongs in each.

Above the headings of a sheet stand its purpose, the meaning of each column and an example; below
them the plan's own entries, and room for more.
"""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from collections.abc import Mapping, Sequence
from typing import Any

from openpyxl import Workbook
from openpyxl.styles import Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from estimator.catalog import NO_CATALOG, Catalog
from estimator.faults import Path
from estimator.form.cells import Kind, Written
from estimator.form.filled import Row, filled_rows
from estimator.form.sheets import GIVEN, HOW_TO, REMARKS, YOURS, Column, Sheet, plan_sheets
from estimator.form.words import ABOUT
from estimator.measure import Unit
from estimator.plan.garment import GARMENT_UNITS
from estimator.reports.cells import (
    BAND,
    HEAD,
    LINE,
    PLAIN,
    SMALL,
    TITLE,
    WRAPPED,
    cell_at,
    put_across,
    put_text,
)
from estimator.reports.form_choices import Choices, Filled, validation_of
from estimator.reports.form_help import how_to_fill_in
from estimator.reports.printing import fit_if_hardly_more, print_setup
from estimator.reports.row_heights import BOLD, fit_height, text_width

SPARE_ROWS, FEWEST_ROWS = 15, 25
HELP_WIDE = 72
TEXT_FORMAT = "@"
TO_CHANGE = PatternFill("solid", fgColor="FFF2B3")
_HAIR = Side(style="hair", color="8C8C8C")
BOX = Border(left=_HAIR, right=_HAIR, top=_HAIR, bottom=_HAIR)
EXAMPLE = Font(name="Calibri", size=9, italic=True, color="595959")
_WIDE = {Kind.SIZE: 13.0, Kind.COUNT: 10.0, Kind.AMOUNT: 15.0, Kind.TEXT: 17.0, Kind.EDGE: 24.0,
         Kind.LIST: 26.0, Kind.TABLE: 26.0}  # fmt: skip
_UNIT_NAMES = {Unit.CM: "centimetres", Unit.MM: "millimetres", Unit.IN: "inches"}
_WIDE_NAMES, _WIDE_NOTES = 24.0, 40.0
ON_ONE_PAGE = 205.0
"""Digits: columns of more than this would be too small to read on one page's width."""
SPARE_PRINTED = 12
"""Empty rows on paper, to be filled in by hand."""


def plan_form(
    raw: Mapping[str, Any],
    opening: Sequence[str] = (),
    remarks: Mapping[Path, str] | None = None,
    shop: Catalog = NO_CATALOG,
) -> Workbook:
    """The form of a sound plan, from its tables as they were written.

    ``opening`` is what the plan says of itself, in paragraphs, and ``remarks`` what it says of its
    entries and keys; one that begins with CHANGE marks a cell. Items of ``shop`` can be chosen.
    """
    unit = GARMENT_UNITS.get(raw.get("garment", {}).get("unit", ""), Unit.IN)
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet), "a new workbook has a sheet"
    first.title = HOW_TO
    _help(first, opening, unit)
    rows = filled_rows(raw)
    filled: dict[tuple[str, ...], Filled] = {}
    writers: list[_Sheet] = []
    for sheet in plan_sheets():
        page = book.create_sheet(sheet.title)
        assert isinstance(page, Worksheet), "a new sheet is one for cells"
        writer = _Upright if sheet.upright else _Rows
        in_units = _in_units(filled[("garment",)]) if filled else ""
        writers.append(writer(page, sheet, rows[sheet.title], remarks or {}, unit, in_units))
        filled[sheet.keys] = writers[-1].write()
    choices = Choices(book, {keys: one for keys, one in filled.items() if one.letters}, shop)
    for one in writers:
        one.add_choices(choices)
    return book


def _help(page: Worksheet, opening: Sequence[str], unit: Unit) -> None:
    page.column_dimensions["A"].width = HELP_WIDE
    row = 1
    for heading, paragraphs in how_to_fill_in(opening, unit):
        put_across(page, row, (1, 1), heading, TITLE if row == 1 else HEAD)
        for text in paragraphs:
            row += 1
            put_across(page, row, (1, 1), text, PLAIN)
        row += 2
    print_setup(page, unit, landscape=False)
    fit_if_hardly_more(page, 1)


def _in_units(garment: Filled) -> str:
    """The formula that says in which unit sizes are, as it stands on the garment's sheet."""
    text = '"' + _UNIT_NAMES[Unit.IN] + '"'
    for unit in (Unit.CM, Unit.MM):
        text = f'IF({garment.cells[("unit",)]}="{unit.symbol}","{_UNIT_NAMES[unit]}",{text})'
    return f'="A size without a unit is in "&{text}&"."'


class _Sheet(ABC):
    """A sheet as it is being written."""

    @abstractmethod
    def write(self) -> Filled:
        """Fills the sheet, and says where its columns stand."""

    def __init__(
        self,
        page: Worksheet,
        sheet: Sheet,
        rows: Sequence[Row],
        remarks: Mapping[Path, str],
        unit: Unit,
        in_units: str,
    ) -> None:
        self.page, self.sheet, self.rows = page, sheet, rows
        self.remarks, self.unit, self.in_units = remarks, unit, in_units
        self.cells: dict[Column, str] = {}

    def add_choices(self, choices: Choices) -> None:
        """Drop-down lists, and what each cell says of itself."""
        for column, cells in self.cells.items():
            formula, closed = choices.of(self.sheet, column)
            made = validation_of(column, formula, closed=closed)
            made.add(cells)
            self.page.add_data_validation(made)

    def _put(self, row: int, number: int, column: Column, value: Written | None) -> None:
        """A cell to be filled in, with what is in it already; all but counts are text."""
        cell = cell_at(self.page, row, number)
        if isinstance(value, int | float) and column.kind in (Kind.COUNT, Kind.AMOUNT):
            cell.value = value
        else:
            cell.number_format = "General" if column.kind is Kind.COUNT else TEXT_FORMAT
            if value is not None:
                put_text(cell, str(value))
        cell.font, cell.alignment, cell.border = PLAIN, WRAPPED, BOX

    def _remark(self, row: Row, column: Column) -> tuple[str, bool]:
        """What is said of a cell, and whether it is to be changed."""
        if self.sheet.of_measures:
            said = self.remarks.get(row.path, "") if column.kind is Kind.SIZE else ""
        else:
            said = self.remarks.get((*row.path, *(one for one in column.path if one != "")), "")
        asked = re.match(r"CHANGE\b(:\s*)?", said)
        if not asked:
            return said, False
        rest = said[asked.end() :].strip()
        return (rest if asked[1] or not rest else f"change {rest}"), True

    def _top(self, columns: int) -> int:
        """Title and purpose; the row after them."""
        about = ABOUT.get(".".join(self.sheet.keys)) or ABOUT.get(self.sheet.keys[-1]) or ""
        across = (1, max(1, min(columns, 6)))
        put_across(self.page, 1, across, self.sheet.title, TITLE)
        put_across(self.page, 2, across, about, PLAIN)
        return 3


class _Upright(_Sheet):
    """A table whose keys stand one below the other."""

    WIDE = (20.0, 24.0, 46.0, 16.0, 34.0)

    def write(self) -> Filled:
        page = self.page
        for number, wide in enumerate(self.WIDE, start=1):
            page.column_dimensions[get_column_letter(number)].width = wide
        head = self._top(len(self.WIDE))
        for number, text in enumerate((GIVEN, YOURS, "Meaning", "For example", REMARKS), start=1):
            cell = cell_at(page, head, number)
            put_text(cell, text)
            cell.font, cell.fill, cell.border, cell.alignment = HEAD, BAND, LINE, WRAPPED
        (values,) = self.rows
        for row, column in enumerate(self.sheet.columns, start=head + 1):
            put_text(cell_at(page, row, 1), column.heading)
            self._put(row, 2, column, values.cells.get(column))
            said, to_change = self._remark(values, column)
            texts = (column.words.meaning, column.example, said)
            for number, text in enumerate(texts, start=3):
                put_text(cell_at(page, row, number), text)
            for number in (1, 3, 4, 5):
                cell = cell_at(page, row, number)
                cell.font = PLAIN if number in (1, 5) else SMALL
                cell.alignment, cell.border = WRAPPED, BOX
            if to_change:
                cell_at(page, row, 2).fill = TO_CHANGE
            fit_height(page, row)
            self.cells[column] = f"B{row}"
        page.freeze_panes = f"A{head + 1}"
        print_setup(page, self.unit, landscape=True, head=head)
        title = page.title
        cells = {column.path: f"'{title}'!$B${cell[1:]}" for column, cell in self.cells.items()}
        return Filled(title, (head + 1, head + len(cells)), {}, cells)


class _Rows(_Sheet):
    """A table with a row for each entry."""

    def write(self) -> Filled:
        page = self.page
        used = {column for row in self.rows for column in row.cells}
        columns = sorted(self.sheet.all_columns, key=lambda one: (not one.common, one not in used))
        remarks_at = sum(one.common for one in columns) + 1
        numbers = {
            column: number + (number >= remarks_at) for number, column in enumerate(columns, 1)
        }
        wide = {number: _wide(column) for column, number in numbers.items()}
        wide[remarks_at] = _WIDE_NOTES
        for number, one in wide.items():
            page.column_dimensions[get_column_letter(number)].width = one
        above = self._top(len(wide))
        if any(column.kind is Kind.SIZE for column in columns):
            put_across(page, above, (1, min(len(wide), 6)), "", SMALL)
            cell_at(page, above, 1).value = self.in_units
            above += 1
        head = above + 2
        for column, number in numbers.items():
            example = f"e.g. {column.example}" if column.example else ""
            self._heading(above, number, (column.words.meaning, example, column.heading))
        self._heading(above, remarks_at, ("for you; not read", "", REMARKS))
        for row in range(above, head + 1):
            fit_height(page, row)
        last = head + max(FEWEST_ROWS, len(self.rows) + SPARE_ROWS)
        for row in range(head + 1, last + 1):
            self._row(row, self.rows[row - head - 1 : row - head], numbers, remarks_at)
        letters = {column.path: get_column_letter(number) for column, number in numbers.items()}
        for column in columns:
            letter = letters[column.path]
            self.cells[column] = f"{letter}{head + 1}:{letter}{last}"
        page.freeze_panes = f"B{head + 1}"
        self._print(head, last, wide, max([remarks_at, *(numbers[one] for one in used)]))
        return Filled(page.title, (head + 1, last), letters)

    def _heading(self, above: int, number: int, texts: tuple[str, str, str]) -> None:
        for row, (text, font) in enumerate(zip(texts, (SMALL, EXAMPLE, HEAD), strict=True), above):
            cell = cell_at(self.page, row, number)
            put_text(cell, text)
            cell.font, cell.alignment = font, WRAPPED
            if font is HEAD:
                cell.fill, cell.border = BAND, LINE

    def _row(
        self, row: int, entry: Sequence[Row], numbers: Mapping[Column, int], remarks_at: int
    ) -> None:
        said = [self.remarks.get(one.path, "") for one in entry if not self.sheet.of_measures]
        for column, number in numbers.items():
            self._put(row, number, column, entry[0].cells.get(column) if entry else None)
            if entry:
                text, to_change = self._remark(entry[0], column)
                of_which = "" if self.sheet.of_measures else f"{column.heading}: "
                said.append(f"{of_which}{text}" if text else "")
                if to_change:
                    cell_at(self.page, row, number).fill = TO_CHANGE
        cell = cell_at(self.page, row, remarks_at)
        put_text(cell, ". ".join(filter(None, said)))
        cell.font, cell.alignment, cell.border = SMALL, WRAPPED, BOX
        fit_height(self.page, row)

    def _print(self, head: int, last: int, wide: Mapping[int, float], columns: int) -> None:
        """The columns up to Remarks, and those beyond that the plan uses, as far as rows go.

        Across one page if it can be read there; else over several, the names on each.
        """
        page = self.page
        print_setup(page, self.unit, landscape=True, head=head)
        rows = min(last, head + len(self.rows) + SPARE_PRINTED)
        page.print_area = f"A1:{get_column_letter(columns)}{rows}"
        setup = page.sheet_properties.pageSetUpPr
        if sum(wide[one] for one in range(1, columns + 1)) > ON_ONE_PAGE and setup is not None:
            setup.fitToPage = False
            self.page.page_setup.scale = 75
            self.page.print_title_cols = "A:A"


def _wide(column: Column) -> float:
    """A column's width in digits: no word of its heading is broken."""
    if column.path == ("note",):
        return _WIDE_NOTES
    if column.path in (("name",), ("piece",), ("fabric",)):
        return _WIDE_NAMES
    word = max(map(text_width, column.heading.split()))
    return max(_WIDE[column.kind], round(word * BOLD, 1) + 3)
