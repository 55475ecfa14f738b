"""What people wrote beside the entries of a form: it is not read as part of the plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from estimator.faults import Path, Places
from estimator.form.sheets import GIVEN, HOW_TO, REMARKS, YOURS, plan_sheets
from estimator.readers.headed_rows import headings_of, text_of_cell
from estimator.readers.workbooks import CellSheet


def opening_of(sheets: Sequence[CellSheet]) -> list[str]:
    """What the first sheet says of the plan before it tells how it is filled in, in paragraphs."""
    texts: list[str] = []
    for sheet in sheets:
        if sheet.title.strip().casefold() == HOW_TO.casefold():
            for _, cells in sorted(sheet.rows.items()):
                text = text_of_cell(cells.get(1))
                if text == HOW_TO:
                    return texts
                texts += [text] if text else []
    return []


def remarks_of(sheets: Sequence[CellSheet], places: Places) -> dict[Path, str]:
    """The column Remarks of each sheet, by the paths of the entries on whose rows they stand."""
    at = _paths(places.lines)
    forms = {form.title.casefold(): form for form in plan_sheets()}
    found: dict[Path, str] = {}
    for sheet in sheets:
        form = forms.get(sheet.title.strip().casefold())
        if form is None or not sheet.cells:
            continue
        names = {name for column in form.all_columns for name in column.names}
        known = {GIVEN.casefold(), YOURS.casefold()} if form.upright else names
        head, columns = headings_of(sheet, {*known, REMARKS.casefold()})
        remarks = columns.get(REMARKS.casefold())
        for row, cells in sheet.rows.items() if remarks else ():
            own = [at[place] for number in columns.values()
                   if (place := sheet.place(row, number)) in at]  # fmt: skip
            text = text_of_cell(cells.get(remarks or 0))
            if row > head and own and text:
                found[min(own, key=len)] = text
    return found


def _paths(places: Mapping[Path, int | str]) -> dict[str, Path]:
    """The shortest path to what stands in each cell."""
    found: dict[str, Path] = {}
    for path, place in sorted(places.items(), key=lambda pair: len(pair[0])):
        found.setdefault(str(place), path)
    return found
