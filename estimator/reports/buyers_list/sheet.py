"""The first sheet of the workbook: the list that a stranger can shop from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, time
from decimal import Decimal

from openpyxl.cell.cell import Cell
from openpyxl.styles import Font, Protection
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.worksheet import Worksheet

from estimator.bill import Funds
from estimator.estimated import Estimate
from estimator.measure import Unit
from estimator.prices import decimals_of
from estimator.reports.buyers_list.as_written import CellValue, Formula, text_said
from estimator.reports.buyers_list.checks import add_checks, add_marks
from estimator.reports.buyers_list.columns import (
    CARRIED,
    CHARGE_MARK,
    COLUMNS,
    DONE,
    LAST_PRINTED,
    LETTER_OF,
    NUMBER_OF,
    OPEN,
)
from estimator.reports.buyers_list.earlier import EarlierList, own_key
from estimator.reports.buyers_list.lines import ListLine, asides, filled_in, list_lines
from estimator.reports.buyers_list.sums import line_formulas, write_sums
from estimator.reports.cells import (
    BAND,
    GREY,
    HAIR,
    HEAD,
    LINE,
    MIDDLE,
    PLAIN,
    RIGHT,
    SMALL,
    TITLE,
    TO_FILL_IN,
    UNIT_PRICE,
    WRAPPED,
    Across,
    cell_at,
    money_format,
    put_across,
    put_text,
)
from estimator.reports.made import made
from estimator.reports.printing import fit_if_hardly_more, print_setup
from estimator.reports.row_heights import fit_height
from estimator.reports.shopping_list import NOTHING, notes_of, title_of, without_thread
from estimator.reports.units import tape_unit
from estimator.shops import Visit

HEADING_ROW = 3
GAP = 7.0
SWATCH = 33.0
"""Points: room for a snippet of cloth under the name of its colour."""
FRACTIONS = "# ??/??"
ROWS_TO_ADD = 6
"""Empty lines in which the buyer adds things of their own."""
PRINTED: Across = (1, LAST_PRINTED)
TITLED: Across = (1, NUMBER_OF["Shop, shelf"])
BELOW: Across = (2, NUMBER_OF["Notes"])
OPEN_TO_ALL = Protection(locked=False)
FINER = Font(name="Calibri", size=9.5)
SMALLER = ("Instead", "Notes", "Part of the shop")
_DATE_FORMATS = {datetime: "yyyy-mm-dd hh:mm", date: "yyyy-mm-dd", time: "hh:mm"}


class ShoppingListSheet:
    """One line for each thing to buy; sums below refer to whole columns, so lines may be sorted.

    It is written in two steps, so that what the program says can be told from what people wrote:
    ``write`` puts down the program's own words, and ``carry_over`` those of the earlier list.
    """

    def __init__(
        self, sheet: Worksheet, estimate: Estimate, funds: Funds, earlier: EarlierList
    ) -> None:
        self.sheet, self.estimate, self.funds, self.earlier = sheet, estimate, funds, earlier
        self.decimals = decimals_of(estimate.currency)
        self.lines = list_lines(estimate, earlier)
        self.first = HEADING_ROW + 1
        self.first_own = self.first + len(self.lines)
        self.last = self.first_own + len(earlier.own) + ROWS_TO_ADD - 1
        self.row_of: dict[str, int] = {}
        self.below = self.last + 1

    def write(self) -> None:
        """Title, headings, lines, sums, and what the buyer must know."""
        for column in COLUMNS:
            self.sheet.column_dimensions[LETTER_OF[column.heading]].width = column.wide
        self._titles()
        self._headings()
        for row, line in enumerate(self.lines, start=self.first):
            self._line(row, line)
        for row in range(self.first_own, self.last + 1):
            self._own_row(row)
        self.row_of |= write_sums(
            self.sheet,
            (self.first, self.last),
            self.estimate.currency,
            self.funds,
            self._visits(),
        )
        self.below = max([self.last, *self.row_of.values()]) + 1
        self._below()
        add_marks(self.sheet, (self.first, self.last))
        add_checks(self.sheet, (self.first, self.last), self.row_of)
        self.sheet.freeze_panes = f"{LETTER_OF['Buy']}{self.first}"
        self.sheet.auto_filter.ref = f"A{HEADING_ROW}:{LETTER_OF['Key']}{self.last}"
        self._protect()

    def _visits(self) -> list[Visit]:
        """The shops that charge for a visit, and those of the earlier list that were paid."""
        now = [one for one in self.estimate.visits if one.charge]
        written = {*self.earlier.filled_in, *self.earlier.asides}
        shops = {key.removeprefix(CHARGE_MARK) for key in written if key.startswith(CHARGE_MARK)}
        return [*now, *(Visit(one, Decimal(0)) for one in sorted(shops - {v.shop for v in now}))]

    def carry_over(self) -> None:
        """What people wrote into the earlier list, each in its place again; then the print area."""
        for line in self.lines:
            row = self.row_of[line.key]
            self._fill(row, filled_in(line, self.earlier), asides(line, self.earlier))
        for key, written in self.earlier.filled_in.items():
            if key in self.row_of and key not in {line.key for line in self.lines}:
                self._fill(self.row_of[key], written, self.earlier.asides.get(key, ()))
        for row, own in enumerate(self.earlier.own, start=self.first_own):
            self._fill(row, own, ())
        self._highlight()
        if self.earlier.elsewhere:
            self._say([CARRIED], HEAD)
            self._say(self.earlier.elsewhere, PLAIN)
        for row in range(self.first, self.last + 1):
            self._height(row)
        self._print()

    def _titles(self) -> None:
        put_across(self.sheet, 1, TITLED, f"Shopping list: {title_of(self.estimate)}", TITLE)
        money = self.estimate.currency
        said = f"Prices in {money}. " if money else "No price is known. "
        said += (
            f"Fill in the light cells: {DONE} for what you have got, and what you really bought "
            "and paid where that is not as listed. Empty lines are for things of your own."
        )
        put_across(self.sheet, 2, TITLED, said if self.lines else NOTHING, SMALL)

    def _headings(self) -> None:
        for number, column in enumerate(COLUMNS, start=1):
            cell = cell_at(self.sheet, HEADING_ROW, number)
            put_text(cell, column.heading)
            cell.font, cell.fill, cell.border = HEAD, BAND, LINE
            cell.alignment = RIGHT if column.number else WRAPPED
        fit_height(self.sheet, HEADING_ROW)

    def _line(self, row: int, line: ListLine) -> None:
        for heading, value in line.values.items():
            if value not in (None, ""):
                self._put(row, heading, value)
        for heading, style in line.formats.items():
            self._cell(row, heading).number_format = style
        put_text(self._cell(row, "Got it"), OPEN)
        put_text(self._cell(row, "Key"), line.key)
        self._style(row, unlocked={one.heading for one in COLUMNS if one.by_buyer})
        if line.since:
            changed = self._cell(row, "Since the last list")
            changed.font, changed.fill = HEAD, BAND
        if line.values.get("Unit") == Unit.YD.symbol:
            self._cell(row, "Actual quantity").number_format = FRACTIONS
        if line.values.get("Price") is None:
            self._open(self._cell(row, "Price"))
        self.row_of[line.key] = row

    def _own_row(self, row: int) -> None:
        own = {one.heading for one in COLUMNS if not one.reckoned and one.heading != "Key"}
        self._style(row, unlocked=own)

    def _style(self, row: int, unlocked: set[str]) -> None:
        """Formulas, fonts and borders of a line, and which of its cells may be written in."""
        for heading, formula in line_formulas(row, self.decimals).items():
            self._cell(row, heading).value = formula
        for column in COLUMNS:
            cell = self._cell(row, column.heading)
            cell.border, cell.font = HAIR, PLAIN
            cell.alignment = RIGHT if column.number else WRAPPED
            if column.reckoned:
                cell.number_format = money_format(self.decimals)
            if column.heading in SMALLER:
                cell.font = FINER
            if column.heading in unlocked:
                self._open(cell)
        for heading in ("Price", "Actual price"):
            self._cell(row, heading).number_format = self._unit_price
        self._cell(row, "Actual quantity").number_format = "General"
        self._cell(row, "Got it").alignment = MIDDLE
        self._cell(row, "Buy").font = HEAD
        self._cell(row, "Key").font = GREY
        self._height(row)

    @property
    def _unit_price(self) -> str:
        return UNIT_PRICE if self.decimals else "General"

    def _open(self, cell: Cell) -> None:
        cell.protection, cell.fill = OPEN_TO_ALL, TO_FILL_IN

    def _height(self, row: int) -> None:
        fit_height(self.sheet, row)
        height = self.sheet.row_dimensions[row].height or 0.0
        if row < self.first_own:
            self.sheet.row_dimensions[row].height = max(SWATCH, height)

    def _cell(self, row: int, heading: str) -> Cell:
        return cell_at(self.sheet, row, NUMBER_OF[heading])

    def _put(self, row: int, heading: str, value: CellValue) -> None:
        """A value as a number, a date or text; a formula only where a person wrote one."""
        cell = self._cell(row, heading)
        if isinstance(value, str) and not isinstance(value, Formula):
            put_text(cell, value)
            return
        cell.value = str(value) if isinstance(value, Formula) else value
        cell.quotePrefix = False
        for kind, style in _DATE_FORMATS.items():
            if isinstance(value, kind):
                cell.number_format = style
                break

    def _fill(self, row: int, written: Mapping[str, CellValue], said: Iterable[str]) -> None:
        """What a person wrote into a line; what no longer has a cell to go to joins their notes."""
        notes = [text_said(written["Your notes"])] if "Your notes" in written else []
        for heading, value in written.items():
            cell = self._cell(row, heading)
            if not cell.protection.locked and heading != "Your notes":
                self._put(row, heading, value)
            elif heading != "Your notes":
                notes.append(f"{heading}: {text_said(value)}")
        notes += [text for text in said if text not in notes]
        if len(notes) > 1 or (notes and isinstance(written.get("Your notes", ""), str)):
            put_text(self._cell(row, "Your notes"), "; ".join(notes))
        elif notes:
            self._put(row, "Your notes", written["Your notes"])

    def _highlight(self) -> None:
        """Colours in which people marked cells."""
        rows = dict(self.row_of)
        rows |= {own_key(n): self.first_own + n for n in range(len(self.earlier.own))}
        for key, fills in self.earlier.highlights.items():
            for heading, fill in fills.items() if key in rows else ():
                self._cell(rows[key], heading).fill = fill

    def _below(self) -> None:
        self.sheet.row_dimensions[self.below].height = GAP
        self.below += 1
        found = self.estimate
        told = [*made(found), *notes_of(found), *found.remarks, *found.advice, *found.cautions]
        told += without_thread(found)
        told.append("What was taken for granted stands on the sheet Assumptions.")
        self._say(told, SMALL)

    def _say(self, lines: Sequence[str], font: Font) -> None:
        for line in lines:
            put_across(self.sheet, self.below, BELOW, line, font)
            self.below += 1

    def _protect(self) -> None:
        """Against accident only: there is no password; lines may be filtered and widened."""
        protection = self.sheet.protection
        protection.sheet = True
        for allowed in ("sort", "autoFilter", "formatCells", "formatColumns", "formatRows"):
            setattr(protection, allowed, False)

    def _print(self) -> None:
        """Without the keys; the sums stand together, on a page of their own where all fills one.

        Where the list ends on its last page hangs on the fonts of whoever prints it.
        """
        sheet = self.sheet
        last = LETTER_OF["Since the last list"]
        sheet.print_area = f"A1:{last}{self.below - 1}"
        print_setup(sheet, tape_unit(self.estimate), landscape=True, head=HEADING_ROW)
        if not fit_if_hardly_more(sheet, PRINTED[1]):
            sheet.row_breaks.append(Break(id=self.last))
