"""Sheets that people added to a list of ours: they go along when it is written again."""

from __future__ import annotations

from copy import copy

from openpyxl import Workbook
from openpyxl.cell.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.cells import cell_at


def copy_sheet(sheet: Worksheet, book: Workbook) -> None:
    """A sheet with its values, formulas and looks at the end of another workbook."""
    new = book.create_sheet(sheet.title)
    for row in sheet.iter_rows():
        for cell in row:
            if isinstance(cell, Cell):
                _copy_cell(cell, cell_at(new, cell.row, cell.column))
    for letter, column in sheet.column_dimensions.items():
        new.column_dimensions[letter].width = column.width
        new.column_dimensions[letter].hidden = column.hidden
    for number, height in sheet.row_dimensions.items():
        new.row_dimensions[number].height = height.height
    for span in sheet.merged_cells.ranges:
        new.merge_cells(str(span))
    for formatting in sheet.conditional_formatting:
        for rule in formatting.rules:
            new.conditional_formatting.add(str(formatting.sqref), rule)
    for check in sheet.data_validations.dataValidation:
        new.add_data_validation(copy(check))
    new.sheet_state = sheet.sheet_state
    new.freeze_panes = sheet.freeze_panes


def copy_names(old: Workbook, book: Workbook) -> None:
    """Names that people gave to cells, for the formulas of their own sheets."""
    for name, defined in old.defined_names.items():
        book.defined_names[name] = copy(defined)


def _copy_cell(old: Cell, new: Cell) -> None:
    new.value, new.data_type = old.value, old.data_type
    if old.has_style:
        for look in ("font", "fill", "border", "alignment", "protection"):
            setattr(new, look, copy(getattr(old, look)))
        new.number_format = old.number_format
    if old.comment is not None:
        new.comment = copy(old.comment)
    if old.hyperlink is not None:
        new.hyperlink = copy(old.hyperlink)
