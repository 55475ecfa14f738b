"""A garment plan from a spreadsheet: the form that ``estimator new NAME plan.xlsx`` writes.

Each sheet has a row of headings, and entries below it; what stands above it is not read. The sheets
and their columns are those of ``estimator.form``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from estimator.faults import Fault, Places, Refused, Wrong, nearest
from estimator.faults import Path as PlanPath
from estimator.form.cells import value_of
from estimator.form.own_words import in_form_words
from estimator.form.sheets import GIVEN, OTHER_SHEETS, OWN_SHEETS, YOURS, Column, Sheet
from estimator.form.sheets import plan_sheets as form_sheets
from estimator.quoting import one_line, quoted
from estimator.readers.headed_rows import headings_of, rows_of, text_of_cell
from estimator.readers.plan_tables import PlanTables
from estimator.readers.workbooks import Cell, CellSheet, read_workbook


def tables_from_workbook(path: Path) -> PlanTables:
    """The tables of a plan; raises Refused where nothing can be made of the file."""
    return tables_from_sheets(read_workbook(path, "a plan"), str(path))


def tables_from_sheets(sheets: Sequence[CellSheet], file: str) -> PlanTables:
    """The tables of a plan from the sheets of its workbook; raises Refused where they are none."""
    reader = _Reader(file)
    reader.read(sheets)
    places = Places(file, reader.places, worded=in_form_words)
    return PlanTables(reader.raw, places, tuple(reader.faults), tuple(reader.wrongs))


class _Reader:
    """Takes the sheets one by one; ``raw`` is the plan as a TOML file would have it."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.raw: dict[str, Any] = {"garment": {}}
        self.places: dict[PlanPath, int | str] = {}
        self.wrongs: list[tuple[PlanPath, Wrong]] = []
        self.faults: list[Fault] = []

    def read(self, sheets: Sequence[CellSheet]) -> None:
        """Entries first, then what belongs to them."""
        found = self._by_form(sheets)
        if not any(form.keys == ("garment",) for form, _ in found):
            wrong = "is no plan: it has no sheet Garment"
            right = "begin with: estimator new NAME plan.xlsx"
            raise Refused([Fault(self.file, wrong, right)])
        for form, sheet in sorted(found, key=lambda pair: pair[0].of_entries):
            if form.upright:
                self._upright(form, sheet)
            elif form.of_entries:
                self._inner(form, sheet)
            elif form.of_measures:
                self._measures(form, sheet)
            else:
                self._entries(form, sheet)

    def _by_form(self, sheets: Sequence[CellSheet]) -> list[tuple[Sheet, CellSheet]]:
        forms = {form.title.casefold(): form for form in form_sheets()}
        found = []
        for sheet in sheets:
            title = sheet.title.strip().casefold()
            form = forms.get(title)
            if form:
                found.append((form, sheet))
            elif title not in OTHER_SHEETS and not title.startswith(OWN_SHEETS) and sheet.cells:
                wrong = f"there is no sheet {quoted(sheet.title)} in a plan"
                right = nearest(sheet.title, [form.title for form in form_sheets()])
                right += f" (the name of a sheet of your own begins with {OWN_SHEETS.capitalize()})"
                self.faults.append(Fault(self.file, wrong, right))
        return found

    def _upright(self, form: Sheet, sheet: CellSheet) -> None:
        """A table with a row for each of its keys."""
        key = form.keys[0]
        known = {name: column for column in form.columns for name in column.names}
        head, columns = headings_of(sheet, {GIVEN.casefold(), YOURS.casefold()})
        self.places[(key,)] = sheet.place(head, columns[YOURS.casefold()])
        for row, cells in sheet.rows.items():
            if row <= head:
                continue
            label = cells.get(columns[GIVEN.casefold()])
            cell = cells.get(columns[YOURS.casefold()])
            name = text_of_cell(label).casefold()
            if name in known:
                at = (key, *known[name].path)
                self.places[at] = sheet.place(row, columns[YOURS.casefold()])
                if cell:
                    self._put(self.raw.setdefault(key, {}), at, known[name], cell)
            elif name or cell:
                where = sheet.place(row, columns[GIVEN.casefold()])
                headings = [column.heading for column in form.columns]
                text = text_of_cell(label)
                wrong = f"there is no line {quoted(text)} on this sheet"
                self._complain(where, wrong, nearest(text, headings))

    def _entries(self, form: Sheet, sheet: CellSheet) -> None:
        (key,) = form.keys
        self.places[(key,)] = f"sheet {sheet.title}"
        for row, columns, cells in rows_of(form, sheet, self._complain):
            number = len(self.raw.setdefault(key, []))
            entry: dict[str, Any] = {}
            self.raw[key].append(entry)
            self._entry(sheet, row, (key, number), entry, columns, cells)

    def _measures(self, form: Sheet, sheet: CellSheet) -> None:
        (key,) = form.keys
        measures = self.raw.setdefault(key, {})
        for row, columns, cells in rows_of(form, sheet, self._complain):
            by_key = {column.path[0]: (number, column) for number, column in columns.items()}
            named = cells.get(by_key["name"][0]) if "name" in by_key else None
            name = str(named.value).strip() if named else ""
            at = (key, name)
            number, column = by_key.get("size", (1, None))
            if name in measures or not name:
                wrong = f"a second measure is named {quoted(name)}" if name else "it has no name"
                self._complain(sheet.place(row), wrong, "give each measure its own name")
                continue
            self.places[at] = sheet.place(row, number)
            cell = cells.get(number)
            measures[name] = ""
            if cell and column:
                held: dict[str, Any] = {}
                self._put(held, (key, name), column, cell)
                measures[name] = held.get("size", "")

    def _inner(self, form: Sheet, sheet: CellSheet) -> None:
        """Rows that belong to entries of other sheets, which they name."""
        field = form.keys[-1]
        lists = {
            (table, number): [one for one in entry[field] if isinstance(one, str)]
            for table in form.parents
            for number, entry in enumerate(self.raw.get(table, []))
            if isinstance(entry.get(field), list)
        }
        for row, columns, cells in rows_of(form, sheet, self._complain):
            own = {
                column.path[0]: (number, text_of_cell(cells.get(number)))
                for number, column in columns.items()
                if column in form.own
            }
            whose = self._whose(form, sheet, row, own)
            if whose is None:
                continue
            rest = {n: column for n, column in columns.items() if column not in form.own}
            entry: dict[str, Any] = {}
            parent = self.raw[whose[0]][whose[1]]
            try:
                room = _room_for(form, parent, entry, rest, cells, lists.get(whose))
                at = (*whose, field, *room)
            except Wrong as wrong:
                self._complain(sheet.place(row, min(cells)), wrong.wrong, wrong.right)
                continue
            rest = {n: column for n, column in rest.items() if column.path != ("",)}
            self._entry(sheet, row, at, entry, rest, cells)

    def _whose(
        self, form: Sheet, sheet: CellSheet, row: int, own: dict[str | int, tuple[int, str]]
    ) -> tuple[str, int] | None:
        """The entry to which a row belongs; None, and a complaint, if there is none."""
        table = form.parents[0]
        if len(form.parents) > 1:
            number, table = own.get("table", (1, ""))
            table = table.casefold()
            if table not in form.parents:
                wrong = f"{quoted(table)} is none of the sheets with packs" if table else (
                    "the row does not say of which sheet the thing is")  # fmt: skip
                self._complain(sheet.place(row, number), wrong, nearest(table, form.parents))
                return None
        number, name = own.get(table if len(form.parents) == 1 else "name", (1, ""))
        names = [one_line(str(entry.get("name", ""))) for entry in self.raw.get(table, [])]
        if name in names:
            return table, names.index(name)
        wrong = f"there is no {table} {quoted(name)}" if name else (
            f"the row does not say to which {table} it belongs")  # fmt: skip
        self._complain(sheet.place(row, number), wrong, nearest(name, filter(None, names)))
        return None

    def _entry(
        self,
        sheet: CellSheet,
        row: int,
        at: PlanPath,
        entry: dict[str, Any],
        columns: dict[int, Column],
        cells: Mapping[int, Cell],
    ) -> None:
        """Fills an entry from its row; an empty cell has its place too, for what is missing."""
        self.places[at] = sheet.place(row, min(columns, default=1))
        for number, column in columns.items():
            self.places[(*at, *column.path)] = sheet.place(row, number)
        # the one for all other edges goes before each single edge
        for number, column in sorted(columns.items(), key=lambda pair: len(pair[1].path)):
            if number in cells:
                self._put(entry, (*at, *column.path), column, cells[number])

    def _put(self, entry: dict[str, Any], at: PlanPath, column: Column, cell: Cell) -> None:
        """A cell's value to its key in an entry; ``at`` is its path in the plan."""
        if cell.wrong:
            self.wrongs.append((at, cell.wrong))
        try:
            value = value_of(cell.value, column.kind)
        except Wrong as wrong:
            self.wrongs.append((at, wrong))
            return
        if isinstance(value, list) and len(value) == 1 and not column.listed:
            value = value[0]
        first, *further = column.path
        if not further:
            entry[str(first)] = value
        elif isinstance(further[0], int):
            entry.setdefault(str(first), []).append(value)
        elif isinstance(entry.setdefault(str(first), {}), dict):
            entry[str(first)][further[0]] = value

    def _complain(self, place: str, wrong: str, right: str) -> None:
        self.faults.append(Fault(f"{self.file}, {place}", wrong, right))


def _room_for(
    form: Sheet,
    parent: dict[str, Any],
    entry: dict[str, Any],
    columns: dict[int, Column],
    cells: Mapping[int, Cell],
    listed: list[str] | None,
) -> PlanPath:
    """Puts an entry where it belongs in its parent, and returns the rest of its path there.

    ``listed`` are the entries that the parent's own row names, if it names any: each row of theirs
    tells more of one of them. Raises Wrong for one that is not among them, or stated twice.
    """
    field = form.keys[-1]
    texts = {column.path: text_of_cell(cells.get(number)) for number, column in columns.items()}
    if form.by_name:
        name = texts.get(("",), "")
        edges = parent.setdefault(field, {})
        if not name or name in edges:
            wrong = f"{quoted(name)} is stated twice" if name else "the row has no name of its own"
            raise Wrong(wrong, "write each once")
        edges[name] = entry
        return (name,)
    if form.single:
        if field in parent:
            raise Wrong("a second row says the same of it", "keep one of them")
        parent[field] = entry
        return ()
    entries = parent.setdefault(field, [])
    if listed is None:
        entries.append(entry)
        return (len(entries) - 1,)
    named = texts.get((form.bare,), "")
    for number, one in enumerate(entries):
        if isinstance(one, str) and one_line(one) == named:
            entries[number] = entry
            return (number,)
    heading = next(one.heading for one in form.columns if one.path == (form.bare,))
    wrong = f"{heading} {quoted(named)} is not among those on the sheet of the {form.parents[0]}"
    raise Wrong(wrong, nearest(named, listed) if listed else "name it there first")
