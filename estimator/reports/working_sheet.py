"""The sheet of workings: two side by side, one line a step, none cut by the end of a page."""

from __future__ import annotations

from collections.abc import Sequence

from openpyxl.styles import Alignment
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from estimator.estimated import Estimate
from estimator.reports.cells import (
    ACROSS,
    FINE,
    FINE_HEAD,
    HAIR,
    LINE,
    TITLE,
    cell_at,
    put_across,
    put_text,
)
from estimator.reports.printing import Rows, keep_together, print_setup
from estimator.reports.row_heights import fit_height
from estimator.reports.units import tape_unit
from estimator.reports.working_lines import Working, cut_workings, workings

WIDTHS = {"A": 26, "B": 14, "C": 15, "D": 1, "E": 26, "F": 14, "G": 15}
SIDES = (1, 5)
"""The first columns of the working on the left and of the one on the right."""
FULL = (1, len(WIDTHS))
GAP = 7.0
_FINE_RIGHT = Alignment(horizontal="right", vertical="top", wrap_text=True)


def write_workings(sheet: Worksheet, estimate: Estimate) -> None:
    """The workings of what is bought, then those of each cut width beside its cut length."""
    for letter, wide in WIDTHS.items():
        sheet.column_dimensions[letter].width = wide
    unit = tape_unit(estimate)
    blocks: list[Rows] = []
    row = 1
    for title, found in (
        ("What to buy", workings(estimate)),
        ("Cut sizes", cut_workings(estimate)),
    ):
        for number in range(0, len(found), 2):
            first = row
            if number == 0:
                put_across(sheet, row, FULL, title, TITLE)
                row += 1
            row = _side_by_side(sheet, row, found[number : number + 2])
            blocks.append((first, row - 1))
    print_setup(sheet, unit, landscape=False)
    keep_together(sheet, len(WIDTHS), blocks)


def _side_by_side(sheet: Worksheet, row: int, pair: Sequence[Working]) -> int:
    """One or two workings from ``row`` on, and a little space; the row after them."""
    depth = max(len(working.lines) for working in pair) + 2
    for column, working in zip(SIDES, pair, strict=False):
        _working(sheet, row, column, working)
    for one in range(row + 1, row + depth):
        fit_height(sheet, one)
    titles = [cell_at(sheet, row, column) for column in SIDES[: len(pair)]]
    fit_height(sheet, row, 3)
    for cell in titles:
        last = get_column_letter(cell.column + 2)
        sheet.merge_cells(f"{cell.coordinate}:{last}{row}")
    sheet.row_dimensions[row + depth].height = GAP
    return row + depth + 1


def _working(sheet: Worksheet, row: int, column: int, working: Working) -> None:
    """Title, steps, and the figure as it stands on the list right below its last step."""
    title = cell_at(sheet, row, column)
    put_text(title, working.title)
    title.font, title.alignment = FINE_HEAD, ACROSS
    for number in range(3):
        cell_at(sheet, row, column + number).border = LINE
    for line in working.lines:
        row += 1
        for number, text in enumerate((line.label, line.done, line.result)):
            cell = cell_at(sheet, row, column + number)
            put_text(cell, text)
            cell.font, cell.border = FINE, HAIR
            cell.alignment = _FINE_RIGHT if number == 2 else ACROSS
    answer = cell_at(sheet, row + 1, column)
    put_text(answer, working.answer)
    answer.font = FINE_HEAD
