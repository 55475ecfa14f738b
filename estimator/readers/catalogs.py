"""A catalog from its file: a folder with two CSV tables, or a workbook with two sheets."""

from __future__ import annotations

from pathlib import Path

from estimator.catalog import Catalog
from estimator.faults import Fault, Faults, Refused
from estimator.readers.catalog_tables import CatalogTable, catalog_of
from estimator.readers.csv_cells import cells_of
from estimator.readers.files import read_text
from estimator.readers.workbooks import CellSheet, is_workbook, read_workbook

ITEMS, OFFERS = "items", "offers"
_RIGHT = f"name the folder that holds {ITEMS}.csv and {OFFERS}.csv, or a workbook of both"


def read_catalog(path: Path) -> Catalog:
    """Reads both tables of a catalog; raises Refused with every complaint about them."""
    if is_workbook(path):
        return _from_workbook(path)
    _refuse_no_folder(path)
    items, offers = (_from_csv(path / f"{name}.csv") for name in (ITEMS, OFFERS))
    return catalog_of(items, offers, Faults())


def _refuse_no_folder(folder: Path) -> None:
    try:
        if folder.is_dir():
            return
        wrong = "is not a folder" if folder.exists() else "does not exist"
    except OSError as problem:
        wrong = f"cannot be read ({problem.strerror})"
    raise Refused([Fault(str(folder), wrong, _RIGHT)])


def _from_csv(path: Path) -> CatalogTable:
    cells = cells_of(read_text(path, "a table of a catalog"), path)
    header = [name.strip().lower() for name in cells[0]] if cells else []

    def place(row: int, column: int | None) -> str:
        named = ""
        if column is not None:
            # of the heading itself the number tells more than the name that is wrong
            named = f", column {column if row == 1 else header[column - 1]}"
        return f"{path}, row {row}{named}"

    return CatalogTable(path.name, cells, place)


def _from_workbook(path: Path) -> Catalog:
    sheets = {sheet.title.strip().lower(): sheet for sheet in read_workbook(path, "a catalog")}
    missing = [name for name in (ITEMS, OFFERS) if name not in sheets]
    if missing:
        wrong = f"has no sheet {' and no sheet '.join(missing)}"
        raise Refused([Fault(str(path), wrong, f"name its two sheets {ITEMS} and {OFFERS}")])
    faults = Faults()
    tables = [_from_sheet(path, sheets[name], faults) for name in (ITEMS, OFFERS)]
    return catalog_of(tables[0], tables[1], faults)


def _from_sheet(path: Path, sheet: CellSheet, faults: Faults) -> CatalogTable:
    """The cells of a sheet as text; a formula in one is a fault."""

    def place(row: int, column: int | None) -> str:
        return f"{path}, {sheet.place(row, column)}"

    for (row, column), cell in sheet.cells.items():
        if cell.wrong:
            faults.found.append(Fault(place(row, column), cell.wrong.wrong, cell.wrong.right))
    wide = max((column for _, column in sheet.cells), default=0)
    cells = [[""] * wide for _ in range(max(sheet.rows, default=0))]
    for (row, column), cell in sheet.cells.items():
        cells[row - 1][column - 1] = str(cell.value)
    return CatalogTable(f"the sheet {sheet.title}", cells, place)
