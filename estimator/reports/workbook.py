"""The spreadsheet: the shopping list, and the papers behind it.

The list comes first, for a phone shows the first sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from openpyxl import Workbook
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from estimator.bill import NO_FUNDS, Funds
from estimator.estimated import Estimate
from estimator.measure import Unit
from estimator.reports.alike import alike_cuts
from estimator.reports.assumptions import assumptions
from estimator.reports.buyers_list.as_written import add_record
from estimator.reports.buyers_list.columns import LIST_SHEET
from estimator.reports.buyers_list.earlier import NO_EARLIER_LIST, EarlierList
from estimator.reports.buyers_list.sheet import ShoppingListSheet
from estimator.reports.cells import (
    BAND,
    HAIR,
    HEAD,
    LINE,
    PLAIN,
    RIGHT,
    SMALL,
    TITLE,
    WRAPPED,
    cell_at,
    put,
    put_across,
    put_text,
)
from estimator.reports.fabric_papers import cut_table, widths_table
from estimator.reports.foreign_sheets import copy_names, copy_sheet
from estimator.reports.layout_papers import written_layouts
from estimator.reports.measure_sheet import measure_tables
from estimator.reports.pictures.layout_pictures import layout_pictures, remnant_pictures
from estimator.reports.pictures.marks import Picture
from estimator.reports.pictures.trim_pictures import trim_pictures
from estimator.reports.pictures.widths_picture import is_compared, widths_picture
from estimator.reports.printing import (
    Rows,
    fit_if_hardly_more,
    height_of,
    keep_together,
    print_setup,
    room_on_a_page,
)
from estimator.reports.remnant_papers import remnant_layouts
from estimator.reports.row_heights import fit_height
from estimator.reports.savings import savings
from estimator.reports.sheet_pictures import put_picture
from estimator.reports.stash_papers import stash_table
from estimator.reports.tables import Column, Format, Table
from estimator.reports.units import tape_unit
from estimator.reports.where_it_goes import where_table
from estimator.reports.working_sheet import write_workings

GAP, BY_HAND = 12.0, 24.0
SENTENCE = 72
"""Digits: a column alone is cut off and not made smaller where a page is too narrow for it."""


def workbook_of(
    estimate: Estimate, funds: Funds = NO_FUNDS, earlier: EarlierList = NO_EARLIER_LIST
) -> Workbook:
    """The whole workbook; costs and sums are live formulas, and everything else is plain values.

    What people wrote into an earlier list stands in it again. ``funds`` go before those of the
    show.
    """
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet), "a new workbook has a sheet"
    first.title = LIST_SHEET
    shopping = ShoppingListSheet(first, estimate, funds.or_else(estimate.job.funds), earlier)
    shopping.write()
    _papers(book, estimate)
    add_record(book)
    shopping.carry_over()
    for sheet in earlier.sheets:
        copy_sheet(sheet, book)
    if earlier.sheets and (old := earlier.sheets[0].parent):
        copy_names(old, book)
    book.calculation.fullCalcOnLoad = True
    return book


def _papers(book: Workbook, estimate: Estimate) -> None:
    """The sheets behind the list."""
    unit = tape_unit(estimate)
    from_stash = stash_table(estimate)
    if from_stash:
        _tables(book.create_sheet("Stash"), [(from_stash, ())], unit, landscape=True)
    _tables(book.create_sheet("Where it goes"), [(where_table(estimate), ())], unit)
    _tables(book.create_sheet("Cut list"), [(cut_table(estimate), ())], unit, landscape=True)
    _tables(book.create_sheet("Layout"), [*_layouts(estimate), *_trims(estimate)], unit)
    _tables(
        book.create_sheet("Widths"),
        [
            (widths_table(one, estimate), [widths_picture(one, estimate)] * is_compared(one))
            for one in estimate.fabrics
        ],
        unit,
    )
    sized = [(table, ()) for table in measure_tables(estimate)]
    _tables(book.create_sheet("Measure sheet"), sized, unit, landscape=True, by_hand=True)
    write_workings(book.create_sheet("Working"), estimate)
    _sentences(
        book.create_sheet("Assumptions"),
        [
            ("Planned together", savings(estimate)),
            ("Look at this", estimate.remarks),
            ("Before sewing", estimate.advice),
            ("Taken for granted", assumptions(estimate)),
            ("Cautions", estimate.cautions),
        ],
        unit,
    )


def _layouts(estimate: Estimate) -> Iterator[tuple[Table, Sequence[Picture]]]:
    """Each remnant and each cut of each fabric as a table to chalk by, and drawn to scale."""
    for choice in estimate.fabrics:
        for number, (table, _) in enumerate(remnant_layouts(choice, estimate)):
            yield table, remnant_pictures(choice, number, estimate)
        layouts = written_layouts(choice, estimate)
        for (number, *_), (table, _) in zip(alike_cuts(choice), layouts, strict=True):
            yield table, layout_pictures(choice, number, estimate)


def _trims(estimate: Estimate) -> Iterator[tuple[Table, Sequence[Picture]]]:
    """Each trim as it is cut: a picture under its title."""
    for picture in trim_pictures(estimate):
        yield Table(picture.title, (), (), tape_unit(estimate)), [picture]


def _tables(
    sheet: Worksheet,
    tables: Sequence[tuple[Table, Sequence[Picture]]],
    unit: Unit,
    *,
    landscape: bool = False,
    by_hand: bool = False,
) -> None:
    """Typed tables one under the other, each with the pictures that belong below it.

    Rows that are written in ``by_hand`` are high enough for it.

    Headings are repeated on every page only where there is one table: they are not the others'.
    """
    columns = max((len(table.columns) for table, _ in tables), default=1) or 1
    _column_widths(sheet, [table for table, _ in tables])
    blocks: list[list[Rows]] = []
    heads: list[int] = []
    row = 1
    for table, below in tables:
        first = row
        for text, font in ((table.title, TITLE), *((note, SMALL) for note in table.notes)):
            put_across(sheet, row, (1, columns), text, font)
            row += 1
        if table.columns:
            _heading_row(sheet, row, table.columns, unit)
            heads.append(row)
            row = _rows(sheet, row + 1, table, unit, BY_HAND if by_hand else 0.0)
        starts = [first]
        for picture in below:
            starts.append(row)
            row = put_picture(sheet, row, picture)
        sheet.row_dimensions[row].height = GAP
        row += 1
        blocks.append([*zip(starts, [start - 1 for start in starts[1:]] + [row - 1], strict=True)])
    if len(tables) == len(heads) == 1:
        print_setup(sheet, unit, landscape=landscape, head=heads[0])
        sheet.freeze_panes = f"A{heads[0] + 1}"
        fit_if_hardly_more(sheet, columns)
    else:
        print_setup(sheet, unit, landscape=landscape)
        room = room_on_a_page(sheet, columns)
        keep_together(
            sheet, columns, [one for rows in blocks for one in _joined(sheet, rows, room)]
        )


def _joined(sheet: Worksheet, blocks: Sequence[Rows], room: float) -> Iterator[Rows]:
    """A table and its pictures, the first of them with the table where both fit on a page."""
    table, *pictures = blocks
    if pictures:
        both = (table[0], pictures[0][1])
        if height_of(sheet, both) <= room:
            table = both
            del pictures[0]
    yield table
    yield from pictures


def _rows(sheet: Worksheet, row: int, table: Table, unit: Unit, least: float) -> int:
    """The values of a table from ``row`` on; the row after them."""
    for values in table.rows:
        for column, value in enumerate(values, start=1):
            put(cell_at(sheet, row, column), value, unit)
            cell_at(sheet, row, column).border = HAIR
        fit_height(sheet, row)
        height = sheet.row_dimensions[row].height or least
        sheet.row_dimensions[row].height = max(height, least)
        row += 1
    return row


def _column_widths(sheet: Worksheet, tables: Sequence[Table]) -> None:
    """Each column as wide as the widest of its kind on the sheet."""
    for number in range(max((len(table.columns) for table in tables), default=0)):
        wide = max(table.columns[number].wide for table in tables if number < len(table.columns))
        sheet.column_dimensions[get_column_letter(number + 1)].width = wide


def _heading_row(sheet: Worksheet, row: int, columns: Sequence[Column], unit: Unit) -> None:
    for number, column in enumerate(columns, start=1):
        cell = cell_at(sheet, row, number)
        in_unit = f" ({unit.symbol})" if column.format is Format.TAPE else ""
        put_text(cell, column.heading + in_unit)
        cell.font, cell.fill, cell.border = HEAD, BAND, LINE
        cell.alignment = WRAPPED if column.format is Format.TEXT else RIGHT
    fit_height(sheet, row)


def _sentences(sheet: Worksheet, parts: Sequence[tuple[str, Sequence[str]]], unit: Unit) -> None:
    """Titled sentences, each in a row as high as it needs."""
    sheet.column_dimensions["A"].width = SENTENCE
    row = 1
    for title, lines in parts:
        if lines:
            put_across(sheet, row, (1, 1), title, TITLE)
            row += 1
        for line in lines:
            cell = cell_at(sheet, row, 1)
            put_text(cell, line)
            cell.font, cell.alignment = PLAIN, WRAPPED
            fit_height(sheet, row)
            row += 1
        if lines:
            sheet.row_dimensions[row].height = GAP
            row += 1
    print_setup(sheet, unit, landscape=False)
    fit_if_hardly_more(sheet, 1)
