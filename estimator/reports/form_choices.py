"""The drop-down choices of a plan's form, and the help that a cell shows when it is chosen.

Names of fabrics, pieces, edges and seams are taken from the form's own sheets by formulas, so that
what a person adds can be chosen at once. Those formulas stand on a hidden sheet that is not read.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from openpyxl import Workbook
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from estimator.catalog import Catalog, Kind
from estimator.edges import SIDES
from estimator.form.cells import Kind as Written
from estimator.form.sheets import LISTS, Column, KeyPath, Sheet
from estimator.reports.cells import cell_at, put_text

KINDS = {
    "fabric": {Kind.FABRIC},
    "trim": {Kind.TRIM},
    "elastic": {Kind.ELASTIC},
    "notion": {Kind.ZIP, Kind.SEPARATING_ZIP, Kind.THREAD, Kind.NOTION},
}
"""What a table of a plan may buy; any other table may buy anything."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A sheet of the form as it is written: its rows for entries, and where its columns stand.

    ``cells`` are the addresses of keys that stand one below the other.
    """

    title: str
    rows: tuple[int, int]
    letters: Mapping[KeyPath, str]
    cells: Mapping[KeyPath, str] = field(default_factory=dict)

    def cell(self, path: KeyPath, row: int) -> str:
        """The address of a cell, from any sheet."""
        title = self.title.replace("'", "''")
        return f"'{title}'!${self.letters[path]}${row}"

    def names(self, path: KeyPath = ("name",)) -> str:
        """The filled cells of a column, as a formula."""
        first, last = self.cell(path, self.rows[0]), f"${self.letters[path]}${self.rows[1]}"
        return f"OFFSET({first},0,0,MAX(1,COUNTA({first}:{last})),1)"


class Choices:
    """The hidden sheet with all that may be chosen, filled from the left."""

    def __init__(self, book: Workbook, filled: Mapping[tuple[str, ...], Filled], shop: Catalog):
        self.filled, self.shop = filled, shop
        sheet = book.create_sheet(LISTS)
        assert isinstance(sheet, Worksheet), "a new sheet is one for cells"
        sheet.sheet_state = "hidden"
        self.sheet = sheet
        self.names = {
            keys[0]: one.names()
            for keys, one in filled.items()
            if len(keys) == 1 and ("name",) in one.letters
        }
        self.ranges: dict[tuple[str, ...], str] = {}
        self.columns = 0
        self.edges, self.runs = self._edges_and_seams()

    def of(self, sheet: Sheet, column: Column) -> tuple[str, bool]:
        """The formula for a column's choices, or nothing, and whether there are no others."""
        first = str(column.path[0])
        if column.choices:
            return self._listed(column.choices), column.closed
        if column.path == (first,) and first in self.names and sheet.keys != (first,):
            return self.names[first], False
        if column.inner in self.names:
            return self.names[column.inner], False
        if column.of_edges:
            seams_too = column.kind is Written.LIST and len(column.path) == 1
            return (self.runs if seams_too else self.edges), False
        if column.path == ("buy",):
            items = self._items(sheet.keys[0])
            return (self._listed(items) if items else ""), False
        return "", False

    def _items(self, table: str) -> tuple[str, ...]:
        kinds = KINDS.get(table, set(Kind))
        return tuple(name for name, item in self.shop.items.items() if item.kind in kinds)

    def _listed(self, words: Sequence[str]) -> str:
        """Words that do not change, each list once."""
        key = tuple(words)
        if key not in self.ranges:
            self.columns += 1
            for row, word in enumerate(words, start=1):
                put_text(cell_at(self.sheet, row, self.columns), word)
            letter = get_column_letter(self.columns)
            self.ranges[key] = f"'{LISTS}'!${letter}$1:${letter}${len(words)}"
        return self.ranges[key]

    def _edges_and_seams(self) -> tuple[str, str]:
        """The edges of the pieces, and these with the seams: formulas that leave no gaps.

        The first column names an edge or is empty, the second counts the names so far, and the
        third has the names one below the other.
        """
        formulas = [
            f'=IF({name}="","",{name}&": {side}")'
            for name in self._cells(("piece",), ("name",))
            for side in SIDES
        ]
        named = zip(
            self._cells(("piece", "edges"), ("piece",)),
            self._cells(("piece", "edges"), ("",)),
            strict=True,
        )
        formulas += [f'=IF({edge}="","",{piece}&": "&{edge})' for piece, edge in named]
        edges = len(formulas)
        formulas += [f'=IF({name}="","",{name})' for name in self._cells(("seam",), ("name",))]
        a, b, c = (get_column_letter(self.columns + number) for number in (1, 2, 3))
        for row, formula in enumerate(formulas, start=1):
            above = f"{b}{row - 1}+" if row > 1 else ""
            self.sheet[f"{a}{row}"] = formula
            self.sheet[f"{b}{row}"] = f'={above}IF({a}{row}="",0,1)'
            match = f"MATCH({row},${b}$1:${b}${len(formulas)},0)"
            self.sheet[f"{c}{row}"] = f'=IFERROR(INDEX(${a}$1:${a}${len(formulas)},{match}),"")'
        self.columns += 3

        def upto(row: int) -> str:
            count = f"MAX(1,'{LISTS}'!${b}${max(1, row)})"
            return f"OFFSET('{LISTS}'!${c}$1,0,0,{count},1)"

        return upto(edges), upto(len(formulas))

    def _cells(self, keys: tuple[str, ...], path: KeyPath) -> list[str]:
        filled = self.filled.get(keys)
        if filled is None:
            return []
        first, last = filled.rows
        return [filled.cell(path, row) for row in range(first, last + 1)]


def validation_of(column: Column, formula: str, *, closed: bool) -> DataValidation:
    """What a cell of a column takes, and what it says of itself when it is chosen."""
    words = column.words
    if formula:
        made = DataValidation(type="list", formula1=formula, allow_blank=True)
        made.showErrorMessage = closed
        made.error = "Choose one of the list, or leave the cell empty."
    elif column.kind is Written.COUNT:
        made = DataValidation(type="whole", operator="greaterThanOrEqual", formula1="0")
        made.error = "Write a whole number."
        made.showErrorMessage = True
    else:
        made = DataValidation(allow_blank=True)
    example = f"For example: {column.example}" if column.example else ""
    said = "\n".join(filter(None, (words.meaning, example)))
    made.promptTitle, made.prompt = words.heading[:32], said[:250]
    made.showInputMessage = bool(said)
    return made
