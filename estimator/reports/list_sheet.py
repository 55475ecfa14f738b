"""The first sheet of the workbook: the list that a stranger can shop from."""

from __future__ import annotations

from typing import Any

from openpyxl.formatting.rule import FormulaRule
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from estimator.estimate import Estimate
from estimator.reports.cells import (
    BAND,
    GREY,
    HAIR,
    HEAD,
    LINE,
    MIDDLE,
    MONEY,
    PLAIN,
    RIGHT,
    SMALL,
    TITLE,
    UNIT_PRICE,
    WHOLE,
    WRAPPED,
    Across,
    cell_at,
    put,
    put_across,
    put_text,
)
from estimator.reports.printing import Rows, fit_if_hardly_more, print_setup
from estimator.reports.row_heights import fit_height
from estimator.reports.shopping_list import (
    NOTHING,
    Line,
    Section,
    garment_notes,
    sections,
    title_of,
    without_thread,
)
from estimator.reports.tables import Value
from estimator.reports.units import tape_unit

OPEN, DONE = "☐", "☑"
GAP = 7.0


def write_shopping_list(sheet: Worksheet, estimate: Estimate) -> None:
    """Fills an empty sheet with the list; costs and totals are live formulas."""
    _ShoppingList(sheet, estimate).write()


class _ShoppingList:
    """One line for each thing to buy, what matters in the shop first; the key is not printed."""

    COLUMNS = (
        ("Got it", 7.5),
        ("Item", 24),
        ("Width", 9.5),
        ("Needed", 10),
        ("Buy", 8),
        ("Unit", 13.5),
        ("Colour and notes", 36),
        ("Unit price", 11),
        ("Cost", 10),
        ("Shop", 18),
        ("Key", 30),
    )
    PRINTED: Across = (1, 10)
    BELOW: Across = (2, 10)
    NUMBERS = ("Needed", "Buy", "Unit price", "Cost")
    BUY, PRICE, COST = "E", "H", "I"

    def __init__(self, sheet: Worksheet, estimate: Estimate) -> None:
        self.sheet, self.estimate = sheet, estimate
        self.unit = tape_unit(estimate)
        self.row = 1
        self.ticks = DataValidation(type="list", formula1=f'"{OPEN},{DONE}"', allow_blank=True)
        self.cost_cells: list[str] = []
        self.spans: list[Rows] = []

    def write(self) -> None:
        """Title, headings, the parts of the shop, totals, and what the buyer must know."""
        self._widths()
        self._titles()
        head = self.row
        self._headings()
        for section in sections(self.estimate):
            self._section(section)
        self._totals()
        self._below()
        self.sheet.add_data_validation(self.ticks)
        self.sheet.freeze_panes = f"A{head + 1}"
        self._print(head)
        rule: Any = FormulaRule
        done = rule(formula=[f'$A{head + 1}="{DONE}"'], font=Font(color="7F7F7F", strike=True))
        self.sheet.conditional_formatting.add(f"A{head + 1}:J{self.row}", done)

    def _widths(self) -> None:
        for number, (_, wide) in enumerate(self.COLUMNS, start=1):
            self.sheet.column_dimensions[get_column_letter(number)].width = wide

    def _print(self, head: int) -> None:
        """Without the keys, which are for the next list and not for the shop."""
        sheet = self.sheet
        sheet.print_area = f"A1:J{self.row - 1}"
        print_setup(sheet, self.unit, landscape=True, head=head)
        fit_if_hardly_more(sheet, self.PRINTED[1])

    def _titles(self) -> None:
        put_across(self.sheet, 1, self.PRINTED, f"Shopping list: {title_of(self.estimate)}", TITLE)
        self.row = 2
        for note in garment_notes(self.estimate):
            self._across(self.PRINTED, note, PLAIN)
        money = self.estimate.currency
        said = f"Prices in {money}. " if money else "No price is known. "
        said = f"{said}Fill in a missing unit price: costs follow."
        self._across(self.PRINTED, said if self.estimate.purchases else NOTHING, SMALL)
        self._gap()

    def _across(self, columns: Across, text: str, font: Font) -> None:
        put_across(self.sheet, self.row, columns, text, font)
        self.row += 1

    def _gap(self) -> None:
        self.sheet.row_dimensions[self.row].height = GAP
        self.row += 1

    def _headings(self) -> None:
        for number, (heading, _) in enumerate(self.COLUMNS, start=1):
            cell = cell_at(self.sheet, self.row, number)
            put_text(cell, heading)
            cell.font, cell.fill, cell.border = HEAD, BAND, LINE
            cell.alignment = RIGHT if heading in self.NUMBERS else WRAPPED
        fit_height(self.sheet, self.row)
        self.row += 1

    def _section(self, section: Section) -> None:
        put_text(cell_at(self.sheet, self.row, 2), section.title)
        cell_at(self.sheet, self.row, 2).font = HEAD
        fit_height(self.sheet, self.row)
        self.row += 1
        first = self.row
        for line in section.lines:
            self._line(line)
        last = self.row - 1
        self.spans.append((first, last))
        costs = f"{self.COST}{first}:{self.COST}{last}"
        self._sum(f"{section.title} together", _sum_of(costs))
        self.cost_cells.append(f"{self.COST}{self.row - 1}")
        self._gap()

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
        price.number_format = UNIT_PRICE
        cost = cell_at(sheet, row, 9)
        cost.value = f'=IF({self.PRICE}{row}="","",ROUND({self.BUY}{row}*{self.PRICE}{row},2))'
        cost.number_format, cost.font, cost.alignment = MONEY, PLAIN, RIGHT
        put(cell_at(sheet, row, 10), line.shop, self.unit)
        put(cell_at(sheet, row, 11), line.key, self.unit)
        cell_at(sheet, row, 11).font = GREY
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
        fit_height(self.sheet, self.row)
        self.row += 1

    def _totals(self) -> None:
        if not self.cost_cells:
            return
        currency = f" ({self.estimate.currency})" if self.estimate.currency else ""
        self._sum(f"Total{currency}", _sum_of(",".join(self.cost_cells)))
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
        self._gap()
        lines = [*self.estimate.remarks, *self.estimate.advice, *self.estimate.cautions]
        lines += without_thread(self.estimate)
        lines.append("What was taken for granted stands on the sheet Assumptions.")
        for line in lines:
            self._across(self.BELOW, line, SMALL)


def _sum_of(cells: str) -> str:
    """A sum that stays empty as long as there is nothing to add."""
    return f'=IF(COUNT({cells})=0,"",SUM({cells}))'


def _needed_unit(line: Line, sheet: Worksheet, row: int) -> None:
    """A quantity needed in another unit than it is bought in says so in its own cell."""
    if line.needed.unit and line.needed.unit != line.buy.unit:
        cell = cell_at(sheet, row, 4)
        cell.number_format += f' "{line.needed.unit}"'
