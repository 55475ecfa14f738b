"""The table of wearers: a row a wearer, a column a measure, as CSV or on a sheet of a workbook.

The first column is ``wearer``. A column ``unit`` says in what the bare numbers of a row are.
"""

from __future__ import annotations

from pathlib import Path

from estimator.faults import Fault, Faults, Refused
from estimator.measure import ZERO, Length, Unit
from estimator.plan.garment import GARMENT_UNITS
from estimator.quoting import NotReadable, one_line, quoted
from estimator.readers.written_tables import WrittenTable, refuse_too_many, table_from
from estimator.show import Measured, Wearers, as_spoken
from estimator.written import read_length

SHEET, WEARER, UNIT = "wearers", "wearer", "unit"
MOST_WEARERS = 5_000


def read_wearers(path: Path) -> Wearers:
    """Reads the table; raises Refused with every complaint about it."""
    faults = Faults()
    table = table_from(path, "a table of wearers", SHEET, faults)
    refuse_too_many(path, table.cells, MOST_WEARERS)
    header = [_heading(name) for name in table.cells[0]] if table.cells else []
    _check_header(header, table)
    rows: list[Measured] = []
    first: dict[str, int] = {}
    for number, cells in enumerate(table.cells[1:], start=2):
        if not any(cell.strip() for cell in cells):
            continue
        where = table.place(number, None)
        row = dict(zip(header, (one_line(cell).strip() for cell in cells), strict=False))
        name = row.get(WEARER, "")
        if not name:
            faults.found.append(Fault(where, "the row has no wearer", "fill in the wearer's name"))
            continue
        if any(cell.strip() for cell in cells[len(header) :]):
            wrong = "the row has more cells than the heading"
            faults.found.append(Fault(where, wrong, "put text with commas in quotes"))
        seen = first.setdefault(name.casefold(), number)
        if seen != number:
            wrong = f"{quoted(name)} stands here twice, as in row {seen}"
            faults.found.append(Fault(where, wrong, "give each wearer one row"))
        rows.append(Measured(name, number, _measures(row, number, table, faults)))
    faults.refuse_if_any()
    columns = tuple(name for name in header if name not in (WEARER, UNIT))
    return Wearers(str(path), columns, tuple(rows))


def _heading(written: str) -> str:
    """A heading as it stands; those that are no measure in capitals or not."""
    name = one_line(written).strip()
    return name.casefold() if name.casefold() in (WEARER, UNIT) else name


def _measures(
    row: dict[str, str], number: int, table: WrittenTable, faults: Faults
) -> dict[str, Length]:
    def complain(name: str, wrong: str, right: str) -> None:
        where = table.place(number, list(row).index(name) + 1)
        faults.found.append(Fault(where, wrong, right))

    written = row.get(UNIT, "")
    if written and written not in GARMENT_UNITS:
        complain(UNIT, f"{quoted(written)} is not a unit", "write in, cm or mm")
    unit: Unit | None = GARMENT_UNITS.get(written)
    measures = {}
    for name, cell in row.items():
        if name in (WEARER, UNIT) or not cell:
            continue
        try:
            measures[name] = read_length(cell, unit)
            if measures[name] == ZERO:
                raise NotReadable("the measure is zero", "write a length, or leave the cell empty")
        except NotReadable as problem:
            right = problem.right
            if unit is None and not written:
                right = f"{right}, or add a column unit with in or cm"
            complain(name, problem.wrong, right)
    return measures


def _check_header(header: list[str], table: WrittenTable) -> None:
    where = table.place(1, None)
    faults = []
    if WEARER not in header:
        faults.append(Fault(where, f"the column '{WEARER}' is missing", f"add a column {WEARER}"))
    seen: set[str] = set()
    for name in filter(None, header):
        if as_spoken(name) in seen:
            wrong = f"the column {quoted(name)} stands here twice"
            faults.append(Fault(where, wrong, "keep one of them"))
        seen.add(as_spoken(name))
    if "" in header:
        wrong = f"column {header.index('') + 1} has no heading"
        faults.append(Fault(where, wrong, "name the measure in it, or empty the column"))
    if faults:
        raise Refused(faults)
