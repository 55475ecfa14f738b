"""How sheets print: paper, one page width, and what must stand together on a page."""

from __future__ import annotations

from collections.abc import Sequence

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from estimator.measure import Unit

Rows = tuple[int, int]
"""The first and the last row of what stands together."""
LETTER, A4 = 1, 9
_SIZES = {LETTER: (8.5, 11.0), A4: (8.27, 11.69)}
"""Width and height upright, in inches: ANSI Y14.1 size A, ISO 216 A4."""
SIDE, TOP, BOTTOM = 0.4, 0.4, 0.6
POINTS, PIXELS, DIGIT = 72, 96, 7
"""Points and pixels an inch, and pixels a digit of the usual font: a column's unit of width."""
SHRUNK_AT_MOST = 1.4
USUAL_HEIGHT = 15.0


def print_setup(sheet: Worksheet, unit: Unit, *, landscape: bool, head: int | None = None) -> None:
    """One page wide on the paper usual beside ``unit``; row ``head`` is repeated on every page."""
    page = sheet.page_setup
    page.orientation = "landscape" if landscape else "portrait"
    page.paperSize = A4 if unit.metric else LETTER
    page.fitToWidth, page.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    if head is not None:
        sheet.print_title_rows = f"{head}:{head}"
    margins = sheet.page_margins
    margins.left = margins.right = SIDE
    margins.top, margins.bottom, margins.header, margins.footer = TOP, BOTTOM, 0.3, 0.3
    footer = sheet.oddFooter
    assert footer is not None, "a new sheet has an empty footer"
    footer.center.text = "&A, page &P of &N"


def room_on_a_page(sheet: Worksheet, columns: int) -> float:
    """Points of row height that a page takes when ``columns`` columns are scaled to its width."""
    wide, high = _SIZES[A4 if sheet.page_setup.paperSize == A4 else LETTER]
    if sheet.page_setup.orientation == "landscape":
        wide, high = high, wide
    letters = [get_column_letter(number) for number in range(1, columns + 1)]
    needed = sum(sheet.column_dimensions[letter].width for letter in letters) * DIGIT / PIXELS
    scale = min(1.0, (wide - 2 * SIDE) / needed)
    return (high - TOP - BOTTOM) * POINTS / scale


def height_of(sheet: Worksheet, rows: Rows) -> float:
    """The height of some rows in points."""
    first, last = rows
    return sum(sheet.row_dimensions[row].height or USUAL_HEIGHT for row in range(first, last + 1))


def fit_if_hardly_more(sheet: Worksheet, columns: int) -> bool:
    """Whether all fits on one page; what is hardly more than one is made small enough for it."""
    whole = height_of(sheet, (1, sheet.max_row))
    fits = whole <= room_on_a_page(sheet, columns) * SHRUNK_AT_MOST
    if fits:
        sheet.page_setup.fitToHeight = 1
    return fits


def keep_together(sheet: Worksheet, columns: int, blocks: Sequence[Rows]) -> None:
    """Breaks pages between blocks, so that none that fits on a page is cut by its end."""
    if fit_if_hardly_more(sheet, columns):
        return
    room = room_on_a_page(sheet, columns)
    used = 0.0
    for first, last in blocks:
        height = height_of(sheet, (first, last))
        if used and used + height > room:
            sheet.row_breaks.append(Break(id=first - 1))
            used = 0.0
        used += height
        while used > room:
            used -= room
