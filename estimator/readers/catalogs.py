"""A catalog from its file: a folder with two CSV tables, or a workbook with two sheets.

A third, ``shops``, may be left out.
"""

from __future__ import annotations

from pathlib import Path

from estimator.catalog import Catalog
from estimator.faults import Fault, Faults, Refused
from estimator.readers.catalog_tables import catalog_of
from estimator.readers.table_rows import WrittenTable, table_from_csv
from estimator.readers.workbooks import CellSheet, is_workbook, read_workbook

ITEMS, OFFERS, SHOPS = "items", "offers", "shops"
_TABLE = "a table of a catalog"
_RIGHT = f"name the folder that holds {ITEMS}.csv and {OFFERS}.csv, or a workbook of both"


def read_catalog(path: Path) -> Catalog:
    """Reads the tables of a catalog; raises Refused with every complaint about them."""
    if is_workbook(path):
        return _from_workbook(path)
    _refuse_no_folder(path)
    items, offers = (table_from_csv(path / f"{name}.csv", _TABLE) for name in (ITEMS, OFFERS))
    shops = path / f"{SHOPS}.csv"
    of_shops = table_from_csv(shops, _TABLE) if shops.exists() else None
    return catalog_of(items, offers, Faults(), of_shops)


def _refuse_no_folder(folder: Path) -> None:
    try:
        if folder.is_dir():
            return
        wrong = "is not a folder" if folder.exists() else "does not exist"
    except OSError as problem:
        wrong = f"cannot be read ({problem.strerror})"
    raise Refused([Fault(str(folder), wrong, _RIGHT)])


def _from_workbook(path: Path) -> Catalog:
    sheets = {sheet.title.strip().lower(): sheet for sheet in read_workbook(path, "a catalog")}
    missing = [name for name in (ITEMS, OFFERS) if name not in sheets]
    if missing:
        wrong = f"has no sheet {' and no sheet '.join(missing)}"
        raise Refused([Fault(str(path), wrong, f"name its two sheets {ITEMS} and {OFFERS}")])
    faults = Faults()
    tables = {
        name: _from_sheet(path, sheets[name], faults)
        for name in (ITEMS, OFFERS, SHOPS)
        if name in sheets
    }
    return catalog_of(tables[ITEMS], tables[OFFERS], faults, tables.get(SHOPS))


def _from_sheet(path: Path, sheet: CellSheet, faults: Faults) -> WrittenTable:
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
    return WrittenTable(f"the sheet {sheet.title}", cells, place)
