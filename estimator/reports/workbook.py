"""The spreadsheet: a list that a stranger can shop from, and the papers behind it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count
from typing import Any

from openpyxl import Workbook
from openpyxl.formatting.rule import FormulaRule
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from estimator.estimate import Estimate
from estimator.measure import Unit
from estimator.reports.assumptions import assumptions
from estimator.reports.cells import (
    BAND,
    HAIR,
    HEAD,
    LINE,
    MIDDLE,
    MONEY,
    PLAIN,
    RIGHT,
    SMALL,
    TITLE,
    WHOLE,
    WRAPPED,
    cell_at,
    fit_height,
    put,
    put_text,
)
from estimator.reports.fabric_papers import cut_table, layout_table, widths_table
from estimator.reports.shopping_list import Line, Section, sections, tape_unit, title_of
from estimator.reports.tables import Column, Format, Table, Value
from estimator.reports.working_lines import Working, cut_workings, workings

OPEN, DONE = "☐", "☑"
LIST_SHEET = "Shopping list"


def workbook_of(estimate: Estimate) -> Workbook:
    """The whole workbook; totals are live formulas, and everything else is plain values."""
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet), "a new workbook has a sheet"
    first.title = LIST_SHEET
    _ShoppingSheet(first, estimate).write()
    unit = tape_unit(estimate)
    _tables(book, "Cut list", [cut_table(estimate)], unit)
    _tables(book, "Layout", [layout_table(one, estimate) for one in estimate.fabrics], unit)
    _tables(book, "Widths", [widths_table(one, estimate) for one in estimate.fabrics], unit)
    _working_sheet(book, estimate)
    _sentences(
        book,
        "Assumptions",
        [
            ("Look at this", estimate.remarks),
            ("Taken for granted", assumptions(estimate)),
            ("Cautions", estimate.cautions),
        ],
    )
    return book


class _ShoppingSheet:
    """The first sheet: one line for each thing to buy, what matters in the shop first."""

    COLUMNS = (
        ("Got it", 7),
        ("Item", 26),
        ("Width", 10),
        ("Needed", 10),
        ("Buy", 9),
        ("Unit", 13),
        ("Colour and notes", 36),
        ("Unit price", 9),
        ("Cost", 10),
        ("Shop", 16),
        ("Key", 30),
    )
    NUMBERS = ("Needed", "Buy", "Unit price", "Cost")
    BUY, PRICE, COST = "E", "H", "I"

    def __init__(self, sheet: Worksheet, estimate: Estimate) -> None:
        self.sheet, self.estimate = sheet, estimate
        self.unit = tape_unit(estimate)
        self.row = 1
        self.ticks = DataValidation(type="list", formula1=f'"{OPEN},{DONE}"', allow_blank=True)
        self.cost_cells: list[str] = []
        self.spans: list[tuple[int, int]] = []

    def write(self) -> None:
        """Title, headings, the parts of the shop, totals, and what the buyer must know."""
        self._titles()
        head = self.row
        self._headings()
        for section in sections(self.estimate):
            self._section(section)
        self._totals()
        self._below()
        self.sheet.add_data_validation(self.ticks)
        self.sheet.freeze_panes = f"A{head + 1}"
        _print_setup(self.sheet, head)
        rule: Any = FormulaRule
        done = rule(formula=[f'$A{head + 1}="{DONE}"'], font=Font(color="7F7F7F", strike=True))
        self.sheet.conditional_formatting.add(f"A{head + 1}:J{self.row}", done)

    def _titles(self) -> None:
        put_text(self.sheet["A1"], f"Shopping list: {title_of(self.estimate)}")
        self.sheet["A1"].font = TITLE
        money = self.estimate.currency or "whatever the shop takes; no price is known"
        put_text(
            self.sheet["A2"], f"Prices in {money}. Fill in a missing unit price: costs follow."
        )
        self.sheet["A2"].font = SMALL
        self.row = 4

    def _headings(self) -> None:
        for number, (heading, wide) in enumerate(self.COLUMNS, start=1):
            cell = cell_at(self.sheet, self.row, number)
            put_text(cell, heading)
            cell.font, cell.fill, cell.border = HEAD, BAND, LINE
            cell.alignment = RIGHT if heading in self.NUMBERS else WRAPPED
            self.sheet.column_dimensions[get_column_letter(number)].width = wide
        self.row += 1

    def _section(self, section: Section) -> None:
        put_text(cell_at(self.sheet, self.row, 2), section.title)
        cell_at(self.sheet, self.row, 2).font = HEAD
        self.row += 1
        first = self.row
        for line in section.lines:
            self._line(line)
        last = self.row - 1
        self.spans.append((first, last))
        self._sum(f"{section.title} together", f"=SUM({self.COST}{first}:{self.COST}{last})")
        self.cost_cells.append(f"{self.COST}{self.row - 1}")
        self.row += 1

    def _line(self, line: Line) -> None:
        row, sheet = self.row, self.sheet
        put_text(cell_at(sheet, row, 1), OPEN)
        cell_at(sheet, row, 1).alignment = MIDDLE
        self.ticks.add(cell_at(sheet, row, 1))
        values: tuple[Value, ...] = (
            line.item,
            line.width,
            line.needed,
            line.buy,
            line.buy.unit,
            line.note,
        )
        for column, value in enumerate(values, start=2):
            put(cell_at(sheet, row, column), value, self.unit)
        _needed_unit(line, sheet, row)
        price = cell_at(sheet, row, 8)
        put(price, line.unit_price, self.unit)
        price.number_format = MONEY
        cost = cell_at(sheet, row, 9)
        cost.value = f'=IF({self.PRICE}{row}="","",ROUND({self.BUY}{row}*{self.PRICE}{row},2))'
        cost.number_format, cost.font, cost.alignment = MONEY, PLAIN, RIGHT
        put(cell_at(sheet, row, 10), line.shop, self.unit)
        put(cell_at(sheet, row, 11), line.key, self.unit)
        cell_at(sheet, row, 11).font = SMALL
        cell_at(sheet, row, 5).font = HEAD
        for column in range(1, len(self.COLUMNS) + 1):
            cell_at(sheet, row, column).border = HAIR
        fit_height(sheet, row)
        self.row += 1

    def _sum(self, label: str, formula: str, style: str = MONEY) -> None:
        put_text(cell_at(self.sheet, self.row, 2), label)
        cell_at(self.sheet, self.row, 2).font = SMALL
        cell = self.sheet[f"{self.COST}{self.row}"]
        cell.value, cell.number_format, cell.font, cell.alignment = formula, style, HEAD, RIGHT
        self.row += 1

    def _totals(self) -> None:
        if not self.cost_cells:
            return
        currency = f" ({self.estimate.currency})" if self.estimate.currency else ""
        self._sum(f"Total{currency}", "=" + "+".join(self.cost_cells))
        total = cell_at(self.sheet, self.row - 1, 2)
        total.font = HEAD
        for column in range(1, len(self.COLUMNS) + 1):
            cell_at(self.sheet, self.row - 1, column).fill = BAND
        blanks = "+".join(
            f"COUNTA(B{first}:B{last})-COUNT({self.PRICE}{first}:{self.PRICE}{last})"
            for first, last in self.spans
        )
        self._sum("Items without a price", f"={blanks}", WHOLE)

    def _below(self) -> None:
        self.row += 1
        lines = [*self.estimate.remarks, *self.estimate.cautions]
        lines += [line for line in assumptions(self.estimate) if "Thread" in line]
        lines.append("What was taken for granted stands on the sheet Assumptions.")
        for line in lines:
            cell = cell_at(self.sheet, self.row, 2)
            self.sheet.merge_cells(f"B{self.row}:J{self.row}")
            put_text(cell, line)
            cell.font, cell.alignment = SMALL, WRAPPED
            self.sheet.row_dimensions[self.row].height = 13 * (1 + len(line) // 130)
            self.row += 1


def _needed_unit(line: Line, sheet: Worksheet, row: int) -> None:
    """A quantity needed in another unit than it is bought in says so in its own cell."""
    if line.needed.unit and line.needed.unit != line.buy.unit:
        cell = cell_at(sheet, row, 4)
        cell.number_format += f' "{line.needed.unit}"'


def _print_setup(sheet: Worksheet, head: int) -> None:
    """One page wide, with the headings repeated on every page."""
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.print_title_rows = f"{head}:{head}"
    sheet.page_margins.left = sheet.page_margins.right = 0.4
    footer = sheet.oddFooter
    assert footer is not None, "a new sheet has an empty footer"
    footer.center.text = "&A, page &P of &N"


def _tables(book: Workbook, name: str, tables: list[Table], unit: Unit) -> None:
    """A sheet of typed tables, one under the other."""
    sheet = book.create_sheet(name)
    row = 1
    head = 1
    for number, table in enumerate(tables):
        put_text(cell_at(sheet, row, 1), table.title)
        cell_at(sheet, row, 1).font = TITLE
        row += 1
        for note in table.notes:
            put_text(cell_at(sheet, row, 1), note)
            cell_at(sheet, row, 1).font = SMALL
            row += 1
        if number == 0:
            head = row
        _heading_row(sheet, row, table.columns, unit)
        row += 1
        for values in table.rows:
            for column, value in enumerate(values, start=1):
                put(cell_at(sheet, row, column), value, unit)
                cell_at(sheet, row, column).border = HAIR
            fit_height(sheet, row)
            row += 1
        row += 1
    _print_setup(sheet, head)
    if len(tables) == 1:
        sheet.freeze_panes = f"A{head + 1}"


def _heading_row(sheet: Worksheet, row: int, columns: tuple[Column, ...], unit: Unit) -> None:
    for number, column in enumerate(columns, start=1):
        cell = cell_at(sheet, row, number)
        in_unit = f" ({unit.symbol})" if column.format is Format.TAPE else ""
        put_text(cell, column.heading + in_unit)
        cell.font, cell.fill, cell.border = HEAD, BAND, LINE
        cell.alignment = WRAPPED if column.format is Format.TEXT else RIGHT
        letter = get_column_letter(number)
        wide = sheet.column_dimensions[letter]
        wide.width = max(wide.width if letter in sheet.column_dimensions else 0, column.wide)
    fit_height(sheet, row)


def _working_sheet(book: Workbook, estimate: Estimate) -> None:
    sheet = book.create_sheet("Working")
    for letter, wide in zip("ABC", (52, 30, 24), strict=True):
        sheet.column_dimensions[letter].width = wide
    rows = count(1)
    for title, found in (
        ("What to buy", workings(estimate)),
        ("Cut sizes", cut_workings(estimate)),
    ):
        _bold(sheet, next(rows), title, TITLE)
        for working in found:
            _working(sheet, rows, working)
    _print_setup(sheet, 1)


def _working(sheet: Worksheet, rows: Iterator[int], working: Working) -> None:
    _bold(sheet, next(rows), working.title, HEAD)
    for line in working.lines:
        row = next(rows)
        for column, text in enumerate((line.label, line.done, line.result), start=1):
            put(cell_at(sheet, row, column), text, Unit.IN)
            cell_at(sheet, row, column).border = HAIR
        cell_at(sheet, row, 3).alignment = RIGHT
    row = next(rows)
    put_text(cell_at(sheet, row, 1), working.answer)
    cell_at(sheet, row, 1).font = HEAD
    next(rows)


def _bold(sheet: Worksheet, row: int, text: str, font: Font) -> None:
    put_text(cell_at(sheet, row, 1), text)
    cell_at(sheet, row, 1).font = font


def _sentences(book: Workbook, name: str, parts: list[tuple[str, tuple[str, ...]]]) -> None:
    sheet = book.create_sheet(name)
    sheet.column_dimensions["A"].width = 110
    rows = count(1)
    for title, lines in parts:
        if not lines:
            continue
        _bold(sheet, next(rows), title, TITLE)
        for line in lines:
            row = next(rows)
            put_text(cell_at(sheet, row, 1), line)
            cell_at(sheet, row, 1).font, cell_at(sheet, row, 1).alignment = PLAIN, WRAPPED
            fit_height(sheet, row)
        next(rows)
    _print_setup(sheet, 1)
