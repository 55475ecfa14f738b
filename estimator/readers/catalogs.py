"""A catalog from its file: a folder with two CSV tables, or a workbook with two sheets.

A third, ``shops``, may be left out.
"""

from __future__ import annotations

from collections.abc import Mapping
from os import PathLike
from pathlib import Path

from estimator.catalog import Catalog
from estimator.faults import Fault, Faults, Refused
from estimator.readers.catalog_tables import catalog_of
from estimator.readers.workbooks import is_workbook, read_workbook
from estimator.readers.written_tables import WrittenTable, table_from_csv, table_from_sheet

ITEMS, OFFERS, SHOPS = "items", "offers", "shops"
_TABLE = "a table of a catalog"
_RIGHT = f"name the folder that holds {ITEMS}.csv and {OFFERS}.csv, or a workbook of both"


def read_catalog(path: str | PathLike[str]) -> Catalog:
    """Reads the tables of a catalog; raises Refused with every complaint about them."""
    return _read(Path(path))[0]


def written_catalog(path: Path) -> Mapping[str, WrittenTable]:
    """The tables of a sound catalog as they were written, by their names; raises Refused."""
    return _read(path)[1]


def _read(path: Path) -> tuple[Catalog, Mapping[str, WrittenTable]]:
    faults = Faults()
    tables = _from_workbook(path, faults) if is_workbook(path) else _from_folder(path)
    return catalog_of(tables[ITEMS], tables[OFFERS], faults, tables.get(SHOPS)), tables


def _from_folder(path: Path) -> Mapping[str, WrittenTable]:
    _refuse_no_folder(path)
    names = [ITEMS, OFFERS] + ([SHOPS] if (path / f"{SHOPS}.csv").exists() else [])
    return {name: table_from_csv(path / f"{name}.csv", _TABLE) for name in names}


def _refuse_no_folder(folder: Path) -> None:
    try:
        if folder.is_dir():
            return
        wrong = "is not a folder" if folder.exists() else "does not exist"
    except OSError as problem:
        wrong = f"cannot be read ({problem.strerror})"
    raise Refused([Fault(str(folder), wrong, _RIGHT)])


def _from_workbook(path: Path, faults: Faults) -> Mapping[str, WrittenTable]:
    sheets = {sheet.title.strip().lower(): sheet for sheet in read_workbook(path, "a catalog")}
    missing = [name for name in (ITEMS, OFFERS) if name not in sheets]
    if missing:
        wrong = f"has no sheet {' and no sheet '.join(missing)}"
        raise Refused([Fault(str(path), wrong, f"name its two sheets {ITEMS} and {OFFERS}")])
    return {
        name: table_from_sheet(path, sheets[name], faults)
        for name in (ITEMS, OFFERS, SHOPS)
        if name in sheets
    }
