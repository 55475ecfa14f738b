"""What a person wrote into an earlier list: found by what the program did not write."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from copy import copy
from dataclasses import dataclass, field

from openpyxl import Workbook
from openpyxl.cell.cell import Cell
from openpyxl.styles import PatternFill
from openpyxl.worksheet.worksheet import Worksheet

from estimator.faults import Wrong
from estimator.reports.buyers_list.as_written import (
    RECORD_SHEET,
    CellValue,
    Formula,
    Line,
    Record,
    is_formula,
    text_said,
)
from estimator.reports.buyers_list.columns import CARRIED, COLUMNS, LIST_SHEET, SUM_MARK
from estimator.reports.cells import BAND, TO_FILL_IN

_SUM_OF_NUMBERS = re.compile(r"=[-+*/().,%\s\d]+")
Written = Mapping[str, CellValue]
"""What stands in one line by its headings."""


@dataclass(frozen=True)
class EarlierList:
    """An earlier list: what it said as it was written, and what people wrote into it since.

    ``filled_in`` is by the key of the line and the heading; ``asides`` are remarks on a line that
    have no cell of their own, ``own`` the lines that people added, ``elsewhere`` what they wrote
    beside the list, and ``sheets`` those that they added. ``highlights`` are the colours in which
    they marked cells, by the key of the line, or ``own_key`` of one of theirs, and the heading.
    """

    lines: Mapping[str, Line] = field(default_factory=dict)
    filled_in: Mapping[str, Written] = field(default_factory=dict)
    asides: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    own: tuple[Written, ...] = ()
    elsewhere: tuple[str, ...] = ()
    sheets: tuple[Worksheet, ...] = ()
    highlights: Mapping[str, Mapping[str, PatternFill]] = field(default_factory=dict)

    @property
    def has_writing(self) -> bool:
        """Whether a person wrote anything into it, or marked anything."""
        written = self.filled_in or self.asides or self.own or self.elsewhere
        return bool(written or self.sheets or self.highlights)


def own_key(number: int) -> str:
    """What stands for the key of a line that a person added."""
    return f"own  {number}"


NO_EARLIER_LIST = EarlierList()


def earlier_list(book: Workbook, reckoned: Workbook, record: Record) -> EarlierList:
    """Reads an earlier list; ``reckoned`` is the same workbook with the results of its formulas.

    Raises Wrong where its sheet or its headings are no longer there to tell its lines by.
    """
    if LIST_SHEET not in book.sheetnames:
        wrong = f"has no sheet '{LIST_SHEET}' any more"
        raise Wrong(wrong, "give it its name back, or choose another name with --out")
    reader = _Reader(record, book, reckoned)
    for sheet in book.worksheets:
        if sheet.title == LIST_SHEET:
            reader.shopping_list(sheet)
        elif sheet.title in record.others:
            reader.other_sheet(sheet)
    foreign = (
        one
        for one in book.worksheets
        if one.title not in record.others and one.title != RECORD_SHEET
    )
    return EarlierList(
        lines=record.lines,
        filled_in=reader.filled_in,
        asides={key: tuple(texts) for key, texts in reader.asides.items()},
        own=tuple(reader.own),
        elsewhere=tuple(reader.elsewhere),
        sheets=tuple(foreign),
        highlights=reader.highlights,
    )


class _Reader:
    """Takes the program's own texts away from what each sheet holds; the rest is a person's."""

    def __init__(self, record: Record, book: Workbook, reckoned: Workbook) -> None:
        self.record, self.book, self.reckoned = record, book, reckoned
        self.filled_in: dict[str, dict[str, CellValue]] = {}
        self.asides: dict[str, list[str]] = {}
        self.own: list[Written] = []
        self.elsewhere: list[str] = []
        self.highlights: dict[str, dict[str, PatternFill]] = {}

    def shopping_list(self, sheet: Worksheet) -> None:
        """Lines with a key of ours, lines that people added, and what stands above and below."""
        left = Counter(self.record.others[LIST_SHEET])
        headings, head = _headings(sheet)
        key_column = next(number for number, one in headings.items() if one == "Key")
        seen: set[str] = set()
        below = carried = False
        for row in sheet.iter_rows():
            cells = [cell for cell in row if isinstance(cell, Cell)]
            key = _key_in(cells, key_column) if cells and cells[0].row > head else ""
            below = below or key.startswith(SUM_MARK)
            if key in self.record.lines and key not in seen:
                seen.add(key)
                self._line(cells, headings, key)
                continue
            if cells and cells[0].row > head and not below:
                self._own_line(cells, headings)
            else:
                carried = carried or any(cell.value == CARRIED for cell in cells)
                self._elsewhere(sheet, list(self._not_ours(cells, left)), verbatim=carried)

    def _line(self, cells: list[Cell], headings: Mapping[int, str], key: str) -> None:
        """One line of the list: each cell that differs from what was written is a person's."""
        written = self.record.lines[key]
        self._colours(key, cells, headings)
        for cell in cells:
            heading = headings.get(cell.column, "")
            self._remark(key, heading or cell.coordinate, cell)
            before = written.get(heading, "")
            ours = is_formula(before) and cell.data_type == "f"
            if cell.value in (None, "") or ours or text_said(cell.value) == before:
                continue
            value = self._value(cell)
            if heading in _KNOWN:
                self.filled_in.setdefault(key, {})[heading] = value
            else:
                title = _title_of(cell, headings)
                self.asides.setdefault(key, []).append(f"{title}: {text_said(value)}")

    def _remark(self, key: str, heading: str, cell: Cell) -> None:
        if cell.comment is not None:
            text = text_said(cell.comment.text)
            self.asides.setdefault(key, []).append(f"remark on {heading}: {text}")

    def _own_line(self, found: list[Cell], headings: Mapping[int, str]) -> None:
        """A line that a person added; formulas that stood ready in it are not theirs."""
        line: dict[str, CellValue] = {}
        for cell in found:
            heading = headings.get(cell.column, "")
            if heading == "Key" or (cell.data_type == "f" and heading in _RECKONED):
                continue
            if cell.value not in (None, "") and heading in _KNOWN:
                line[heading] = self._value(cell)
            elif cell.value not in (None, ""):
                beside = f"{_title_of(cell, headings)}: {text_said(self._value(cell))}"
                _add_note(line, beside)
            if cell.comment is not None:
                _add_note(line, f"remark: {text_said(cell.comment.text)}")
        if line:
            self._colours(own_key(len(self.own)), found, headings)
            self.own.append(line)

    def _colours(self, key: str, cells: list[Cell], headings: Mapping[int, str]) -> None:
        for cell in cells:
            heading = headings.get(cell.column, "")
            if heading in _KNOWN and _is_highlighted(cell):
                fill = PatternFill("solid", fgColor=copy(cell.fill.fgColor))
                self.highlights.setdefault(key, {})[heading] = fill

    def other_sheet(self, sheet: Worksheet) -> None:
        """What a person wrote on a sheet of ours that is written anew."""
        left = Counter(self.record.others[sheet.title])
        for row in sheet.iter_rows():
            cells = [cell for cell in row if isinstance(cell, Cell)]
            self._elsewhere(sheet, list(self._not_ours(cells, left)))

    def _not_ours(self, cells: list[Cell], left: Counter[str]) -> Iterator[Cell]:
        """The cells whose text the program did not write as often as it stands on the sheet."""
        for cell in cells:
            said = text_said(cell.value)
            if said and left[said] > 0:
                left[said] -= 1
                if cell.comment is None:
                    continue
                cell.value = None
            if cell.value not in (None, "") or cell.comment is not None:
                yield cell

    def _elsewhere(self, sheet: Worksheet, found: list[Cell], *, verbatim: bool = False) -> None:
        for cell in found:
            place = "" if verbatim else f"{sheet.title}, {cell.coordinate}: "
            if cell.value not in (None, "", CARRIED):
                self.elsewhere.append(f"{place}{text_said(self._value(cell))}")
            if cell.comment is not None:
                self.elsewhere.append(f"{place}remark: {text_said(cell.comment.text)}")

    def _value(self, cell: Cell) -> CellValue:
        """What a person wrote; of a formula that points to other cells, what it came to."""
        value = cell.value
        if cell.data_type == "f":
            text = str(getattr(value, "text", value))
            if _SUM_OF_NUMBERS.fullmatch(text):
                return Formula(text)
            assert cell.parent is not None, "a cell that was read stands on a sheet"
            value = self.reckoned[cell.parent.title][cell.coordinate].value
            return text.lstrip("=") if value is None else value
        return value if isinstance(value, CellValue) else str(value)


_KNOWN = {one.heading for one in COLUMNS} - {"Key"}
_NO_HIGHLIGHTS = {"FFFFFF", *(str(one.fgColor.rgb)[-6:] for one in (BAND, TO_FILL_IN))}
_RECKONED = {one.heading for one in COLUMNS if one.reckoned}


def _is_highlighted(cell: Cell) -> bool:
    """Whether a cell has a colour that the program did not give it; white is none."""
    fill = cell.fill
    if fill.fill_type != "solid":
        return False
    colour = fill.fgColor
    return colour.type != "rgb" or str(colour.rgb)[-6:].upper() not in _NO_HIGHLIGHTS


def _headings(sheet: Worksheet) -> tuple[dict[int, str], int]:
    """The headings of the list by their columns, wherever they have been moved, and their row."""
    for number, row in enumerate(sheet.iter_rows(), start=1):
        texts = {cell.column: text_said(cell.value) for cell in row if isinstance(cell, Cell)}
        if {"Item", "Key"} <= set(texts.values()):
            return {column: text for column, text in texts.items() if text}, number
    wrong = "has lost the headings Item and Key, by which its lines are told"
    raise Wrong(wrong, "write them back, or choose another name with --out")


def _key_in(cells: list[Cell], column: int) -> str:
    return next((str(cell.value or "") for cell in cells if cell.column == column), "")


def _title_of(cell: Cell, headings: Mapping[int, str]) -> str:
    return headings.get(cell.column) or f"beside the list, column {cell.column_letter}"


def _add_note(line: dict[str, CellValue], text: str) -> None:
    before = line.get("Your notes")
    line["Your notes"] = f"{text_said(before)}; {text}" if before else text
