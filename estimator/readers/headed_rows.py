"""The rows of a sheet by their headings, wherever these stand and in whatever order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from itertools import islice

from estimator.faults import Fault, Refused, nearest
from estimator.form.sheets import REMARKS, Column, Sheet
from estimator.quoting import one_line, quoted
from estimator.readers.workbooks import Cell, CellSheet

FIRST_ROWS = 40
"""Among these the headings are looked for."""
Complain = Callable[[str, str, str], None]
"""Takes a complaint: its place on the sheet, what is wrong, and what would be right."""


def rows_of(
    form: Sheet, sheet: CellSheet, complain: Complain
) -> Iterator[tuple[int, dict[int, Column], Mapping[int, Cell]]]:
    """Each filled row with the columns of the sheet; what stands outside them is complained of."""
    if not sheet.cells:
        return
    known = {name: column for column in form.all_columns for name in column.names}
    head, found = headings_of(sheet, set(known))
    columns: dict[int, Column] = {}
    unread = set()
    for number, cell in sheet.rows[head].items():
        heading = text_of_cell(cell)
        column = known.get(heading.casefold())
        if column and column not in columns.values():
            columns[number] = column
        elif heading.casefold() == REMARKS.casefold():
            unread.add(number)
        else:
            wrong = f"there is no column {quoted(heading)} on this sheet"
            right = nearest(heading, [one.heading for one in form.all_columns])
            if column:
                wrong, right = f"the column {quoted(heading)} stands here twice", "keep one"
            complain(sheet.place(head, number), wrong, right)
            unread.add(number)
    if not found:
        return
    for row, filled in sheet.rows.items():
        if row <= head:
            continue
        cells = {n: cell for n, cell in filled.items() if n not in unread}
        for number in [n for n in cells if n not in columns]:
            complain(sheet.place(row, number), "this column has no heading",
                           f"write under a heading, or head it {REMARKS}")  # fmt: skip
        cells = {n: cell for n, cell in cells.items() if n in columns}
        if cells:
            yield row, columns, cells


def headings_of(sheet: CellSheet, known: set[str]) -> tuple[int, dict[str, int]]:
    """The row of headings and the column of each; raises Refused where there is none."""
    best: tuple[int, dict[str, int]] = (0, {})
    for row, filled in islice(sheet.rows.items(), FIRST_ROWS):
        texts = {text_of_cell(cell).casefold(): number for number, cell in filled.items()}
        found = {text: number for text, number in texts.items() if text in known}
        if len(found) > len(best[1]):
            best = row, found
    if len(best[1]) < 2:
        wrong = "has no row of headings"
        right = "copy it from a new form: estimator new NAME plan.xlsx"
        raise Refused([Fault(f"{sheet.file}, sheet {sheet.title}", wrong, right)])
    return best


def text_of_cell(cell: Cell | None) -> str:
    """What a cell says, on one line; nothing for an empty one."""
    return one_line(str(cell.value)) if cell else ""
