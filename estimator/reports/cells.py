"""Cells of a spreadsheet: text that never becomes a formula, numbers that stay numbers."""

from __future__ import annotations

import textwrap
from decimal import Decimal
from fractions import Fraction

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, Cell
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.worksheet.worksheet import Worksheet

from estimator.measure import Length, Unit
from estimator.reports.tables import Sold, Value

LONGEST_TEXT = 32_000
EIGHTHS, SIXTEENTHS = "# ?/?", "# ??/??"
METRES, TENTHS, MONEY, PERCENT, WHOLE = "0.00", "0.0", "#,##0.00", "0%", "0"
LINE_HEIGHT = 15.0
TITLE = Font(name="Calibri", size=15, bold=True)
HEAD = Font(name="Calibri", size=11, bold=True)
PLAIN = Font(name="Calibri", size=11)
SMALL = Font(name="Calibri", size=9, color="595959")
BAND = PatternFill("solid", fgColor="E4E1D6")
LINE = Border(bottom=Side(style="thin", color="8C8C8C"))
HAIR = Border(bottom=Side(style="hair", color="8C8C8C"))
WRAPPED = Alignment(horizontal="left", vertical="top", wrap_text=True, indent=1)
MIDDLE = Alignment(horizontal="center", vertical="top")
RIGHT = Alignment(horizontal="right", vertical="top", wrap_text=True)


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
            put_number(cell, value, MONEY)
        case Fraction():
            put_number(cell, value, PERCENT)
        case int():
            put_number(cell, value, WHOLE)


def put_text(cell: Cell, text: str) -> None:
    """Text from a plan: harmless characters, no formula whatever it begins with."""
    cell.value = ILLEGAL_CHARACTERS_RE.sub(" ", text)[:LONGEST_TEXT]
    cell.data_type = "s"
    cell.quotePrefix = text[:1] in tuple("=+-@")


def put_number(cell: Cell, number: Fraction | Decimal | int, style: str) -> None:
    """A true number that a spreadsheet can reckon with."""
    cell.value = number if isinstance(number, int | Decimal) else float(number)
    cell.number_format = style
    cell.alignment = RIGHT


def sold_format(sold: Sold) -> str:
    """Yards as fractions, metres with two decimals, put-ups as whole numbers."""
    if sold.unit == Unit.M.symbol:
        return METRES
    if sold.unit == Unit.YD.symbol:
        return fraction_format(sold.shown) if sold.eighths else METRES
    return WHOLE


def _tape(length: Length, unit: Unit) -> tuple[Fraction, str]:
    """A length as its tape reads it: inches to the sixteenth, centimetres to the millimetre."""
    parts = 10 if unit.metric else 16
    size = unit.length
    nearest = (2 * length.ticks * parts + size.ticks) // (2 * size.ticks)
    number = Fraction(nearest, parts)
    return number, TENTHS if unit.metric else fraction_format(number)


def fraction_format(number: Fraction) -> str:
    """Fractions are shown with as many digits as they need, so that they stand close."""
    if number.denominator == 1:
        return WHOLE
    return EIGHTHS if number.denominator < 10 else SIXTEENTHS


def fit_height(sheet: Worksheet, row: int) -> None:
    """Makes a row as high as its wrapped texts need, which not every program does by itself."""
    lines = 1
    for cell in sheet[row]:
        if (
            isinstance(cell.value, str)
            and not cell.value.startswith("=")
            and cell.alignment.wrap_text
        ):
            wide = sheet.column_dimensions[cell.column_letter].width - 2
            lines = max(lines, _wrapped_lines(cell.value, wide))
    sheet.row_dimensions[row].height = LINE_HEIGHT * lines


def _wrapped_lines(text: str, wide: float) -> int:
    return sum(
        max(1, len(textwrap.wrap(part, max(4, int(wide))))) for part in text.splitlines() or [""]
    )
