"""How many lines a text takes in a cell, and so how high a row is: not every program fits rows."""

from __future__ import annotations

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

BASE_SIZE = 11.0
LEADING = 1.37
"""A line's height in sizes of its font: Calibri's 15 points at size 11."""
_PADDING = 0.7
_INDENT = 1.3
BOLD = 1.09
"""How much wider than plain letters bold ones are."""
_WIDTHS = {
    **dict.fromkeys("iljI.,;:'|!()[] ", 0.5),
    **dict.fromkeys('ftr/-"°', 0.7),
    **dict.fromkeys("sczkvxy", 0.88),
    **dict.fromkeys("mwMW@%—", 1.6),
}
"""Widths of characters in widths of a digit, which is a column's unit; from memory of common fonts,
the wider one where they differ."""


def text_width(text: str) -> float:
    """A text's width in digits of its own font: capitals are wider, and most of other scripts."""
    return sum(_WIDTHS.get(char) or _usual(char) for char in text)


def _usual(char: str) -> float:
    if ord(char) > 0x2E7F:
        return 2.0
    return 1.15 if char.isupper() else 0.98


def lines_needed(text: str, room: float) -> int:
    """The lines that a text takes where ``room`` digits fit on one; long words are broken."""
    return sum(_lines_of(part, room) for part in text.splitlines() or [""])


def _lines_of(part: str, room: float) -> int:
    lines, used = 1, 0.0
    for word in part.split():
        width = text_width(word)
        gap = text_width(" ") if used else 0.0
        if used and used + gap + width > room:
            lines, used, gap = lines + 1, 0.0, 0.0
        if width > room:
            lines += int(width // room)
            width %= room
        used += gap + width
    return lines


def fit_height(sheet: Worksheet, row: int, spread: int = 0) -> None:
    """Makes a row as high as its texts need; its first text lies across ``spread`` columns."""
    height = BASE_SIZE * LEADING
    if any(cell.value is not None for cell in sheet[row]):
        height = 0.0
    for cell in sheet[row]:
        if cell.value is None:
            continue
        size = cell.font.sz or BASE_SIZE
        lines = 1
        if isinstance(cell.value, str) and cell.data_type == "s" and cell.alignment.wrap_text:
            columns = range(cell.column, cell.column + max(1, spread))
            wide = sum(sheet.column_dimensions[get_column_letter(one)].width for one in columns)
            indent = _INDENT * (cell.alignment.indent or 0)
            room = (wide - _PADDING - indent) * BASE_SIZE / size / (BOLD if cell.font.b else 1)
            lines = lines_needed(cell.value, max(1.0, room))
        height = max(height, lines * size * LEADING)
    sheet.row_dimensions[row].height = round(height + 0.5, 1)
