"""Cells of a spreadsheet: text that never becomes a formula, numbers that stay numbers."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from estimator.measure import MANY, Length, Unit
from estimator.reports.row_heights import fit_height
from estimator.reports.tables import Sold, Value

Across = tuple[int, int]
"""The first and the last of several columns."""
LONGEST_TEXT = 32_000
METRES, TENTHS, PERCENT, WHOLE = "0.00", "0.0", "0%", "0"
UNIT_PRICE = "#,##0.00####"
"""At least two decimals, and as many more as a price has; the buyer's own price as well."""
TITLE = Font(name="Calibri", size=15, bold=True)
HEAD = Font(name="Calibri", size=11, bold=True)
PLAIN = Font(name="Calibri", size=11)
SMALL = Font(name="Calibri", size=9, color="595959")
GREY = Font(name="Calibri", size=9, color="8C8C8C")
FINE = Font(name="Calibri", size=9)
FINE_HEAD = Font(name="Calibri", size=9, bold=True)
BAND = PatternFill("solid", fgColor="E4E1D6")
TO_FILL_IN = PatternFill("solid", fgColor="FFF8E1")
"""Of cells that the buyer writes in."""
LINE = Border(bottom=Side(style="thin", color="8C8C8C"))
HAIR = Border(bottom=Side(style="hair", color="8C8C8C"))
WRAPPED = Alignment(horizontal="left", vertical="top", wrap_text=True, indent=1)
MIDDLE = Alignment(horizontal="center", vertical="top")
RIGHT = Alignment(horizontal="right", vertical="top", wrap_text=True)
ACROSS = Alignment(horizontal="left", vertical="top", wrap_text=True)


def cell_at(sheet: Worksheet, row: int, column: int) -> Cell:
    """A cell that may be written to, by its row and column from 1."""
    cell = sheet.cell(row, column)
    assert isinstance(cell, Cell), "cells are merged only after they are written"
    return cell


def put(cell: Cell, value: Value, unit: Unit) -> None:
    """Writes a value as a number with its format, or as text that is never a formula."""
    cell.font = PLAIN
    cell.alignment = WRAPPED
    match value:
        case None:
            return
        case str():
            put_text(cell, value)
        case Length():
            number, style = _tape(value, unit)
            put_number(cell, number, style)
        case Sold():
            put_number(cell, value.shown, sold_format(value))
        case Decimal():
            put_number(cell, value, money_format(-int(value.as_tuple().exponent)))
        case Fraction():
            put_number(cell, value, PERCENT)
        case int():
            put_number(cell, value, WHOLE)


def put_text(cell: Cell, text: str) -> None:
    """Text from a plan: harmless characters, no formula whatever it begins with."""
    cell.value = harmless(text)
    cell.data_type = "s"
    cell.quotePrefix = text[:1] in tuple("=+-@")


def harmless(text: str) -> str:
    """Text without what a spreadsheet file cannot hold."""
    return ILLEGAL_CHARACTERS_RE.sub(" ", text)[:LONGEST_TEXT]


def put_number(cell: Cell, number: Fraction | Decimal | int, style: str) -> None:
    """A true number that a spreadsheet can reckon with."""
    cell.value = number if isinstance(number, int | Decimal) else float(number)
    cell.number_format = style
    cell.alignment = RIGHT


def money_format(decimals: int) -> str:
    """Amounts with so many decimals, thousands parted, and a minus before what is owed."""
    return "#,##0" + (f".{'0' * decimals}" if decimals else "")


def rounded(amount: str, decimals: int) -> str:
    """The part of a formula that rounds an amount to so many decimals, halves up.

    A half is seldom whole in binary: what is added keeps it from falling short, and is far below
    any price.
    """
    return f"ROUND({amount}+0.000000001,{decimals})"


def sold_format(sold: Sold) -> str:
    """Yards as fractions, metres with two decimals, put-ups as whole numbers."""
    if sold.shown >= MANY and sold.shown.denominator == 1:
        return WHOLE
    if sold.unit == Unit.M.symbol:
        return METRES
    if sold.unit == Unit.YD.symbol:
        return fraction_format(sold.shown) if sold.in_sixteenths else METRES
    return WHOLE


def put_across(sheet: Worksheet, row: int, columns: Across, text: str, font: Font) -> None:
    """Text over several columns, wrapped, in a row as high as it needs."""
    first, last = columns
    cell = cell_at(sheet, row, first)
    put_text(cell, text)
    cell.font, cell.alignment = font, ACROSS
    fit_height(sheet, row, last - first + 1)
    letters = get_column_letter(first), get_column_letter(last)
    if first < last:
        sheet.merge_cells(f"{letters[0]}{row}:{letters[1]}{row}")


def _tape(length: Length, unit: Unit) -> tuple[Fraction, str]:
    """A length as its tape reads it: inches to the sixteenth, metric ones to the millimetre."""
    parts = {Unit.IN: 16, Unit.CM: 10, Unit.MM: 1}[unit]
    size = unit.length
    nearest = (2 * length.ticks * parts + size.ticks) // (2 * size.ticks)
    number = Fraction(nearest, parts)
    return number, {Unit.CM: TENTHS, Unit.MM: WHOLE}.get(unit) or fraction_format(number)


def fraction_format(number: Fraction) -> str:
    """As many digits as the fraction has, so that it stands close to its whole number."""
    if number.denominator == 1:
        return WHOLE
    top = number.numerator % number.denominator
    return f"# {'?' * len(str(top))}/{'?' * len(str(number.denominator))}"
