"""A catalog as a workbook to fill in: its tables as sheets, with what belongs in each column."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

from openpyxl import Workbook
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from estimator.catalog import Item, Kind, Offer, Shop, Weight
from estimator.fibres import Wash
from estimator.fields import Entry
from estimator.form.sheets import HOW_TO
from estimator.measure import Unit
from estimator.readers.catalogs import ITEMS, OFFERS, SHOPS, written_catalog
from estimator.reports.cells import (
    BAND,
    HEAD,
    LINE,
    PLAIN,
    TITLE,
    UNIT_PRICE,
    WRAPPED,
    cell_at,
    put_across,
    put_text,
)
from estimator.reports.printing import fit_if_hardly_more, print_setup
from estimator.reports.row_heights import text_width
from estimator.reports.saving import workbook_bytes

SPARE_ROWS = 200
HELP_WIDE = 72
NARROWEST, WIDEST = 9.0, 40.0
TEXT_FORMAT = "@"


@dataclass(frozen=True, slots=True)
class Told:
    """What belongs in a column, an example, and what may be chosen; all there is if ``closed``."""

    meaning: str
    example: str = ""
    choices: tuple[str, ...] = ()
    closed: bool = True


_YES_OR_NO = ("yes", "no")
COLUMNS: Mapping[type[Entry], Mapping[str, Told]] = {
    Item: {
        "item": Told("the name by which plans buy it; each only once", "sprig-print"),
        "name": Told("what the list calls it", "Sprigged cotton print"),
        "kind": Told("what it is", "fabric", tuple(one.value for one in Kind)),
        "colour": Told("empty if the plan says which", "dusk blue"),
        "fibres": Told("what it is made of", "cotton, polyester"),
        "care": Told(
            "the gentlest that it needs, if the label says so",
            "dry clean",
            tuple(one.value for one in Wash),
        ),
        "fusible": Told("an interfacing that is ironed on", "yes", _YES_OR_NO),
        "knit": Told("knitted and not woven", "no", _YES_OR_NO),
        "weight": Told("for the needle", "medium", tuple(one.value for one in Weight)),
        "nap": Told("all pieces have to lie one way", "yes", _YES_OR_NO),
        "repeat": Told("of a print along the length, or of a scallop", "3 in"),
        "repeat_across": Told("of a plaid across the width", "4 in"),
        "selvedge": Told("what cannot be used at each side", "1/2 in"),
        "shrinkage_length": Told("in the first wash", "4 %"),
        "shrinkage_width": Told("in the first wash", "2 %"),
        "notes": Told("for the buyer; it stands on the list", "One-way: the sprigs grow upwards"),
    },
    Offer: {
        "item": Told("its name on the sheet items", "sprig-print"),
        "shop": Told("where it is sold", "Weir Lane Drapers"),
        "shelf": Told("where it lies in the shop", "bay 4"),
        "width": Told("of a fabric, from selvedge to selvedge", "44 in"),
        "usable": Told("of that width, if it is not what the selvedges leave", "43 in"),
        "bolt": Told("the longest length in one piece", "15 yd"),
        "length": Told("of a zip, of a trim sold each, or of the thread on one spool", "22 in"),
        "put_up": Told(
            "how it is sold; by the length if empty",
            "card of 3 yd",
            ("by the length", "each", "pack of 6", "card of 3 yd", "spool of 25 m"),
            closed=False,
        ),
        "step": Told("what the shop cuts to", "1/8 yd"),
        "minimum": Told("the least that the shop cuts", "1/4 yd"),
        "from_quantity": Told("this price holds from here on", "10 yd"),
        "price": Told("a number; empty if it is not known", "8.49"),
        "per": Told("of what is cut to length: the price is for one", "yd", ("yd", "m")),
        "currency": Told("three letters, one currency throughout", "USD"),
    },
    Shop: {
        "name": Told("as in the column shop of the sheet offers", "Sluice Street Market"),
        "charge": Told("what a visit or a delivery costs, a number", "7.50"),
        "note": Told("for the buyer", "closed on Mondays"),
    },
}
SHEETS: Mapping[str, type[Entry]] = {ITEMS: Item, OFFERS: Offer, SHOPS: Shop}
_AMOUNTS = ("price", "charge")


def catalog_as_workbook(catalog: Path) -> bytes:
    """A catalog as a form to fill in; raises Refused with every complaint about it."""
    tables = written_catalog(catalog)
    return workbook_bytes(catalog_form({name: one.cells for name, one in tables.items()}))


def catalog_form(tables: Mapping[str, Sequence[Sequence[str]]]) -> Workbook:
    """The form of a sound catalog from its tables as they were written, headings first."""
    book = Workbook()
    first = book.active
    assert isinstance(first, Worksheet), "a new workbook has a sheet"
    first.title = HOW_TO
    _help(first)
    for name, model in SHEETS.items():
        sheet = book.create_sheet(name)
        assert isinstance(sheet, Worksheet), "a new sheet is one for cells"
        _fill(sheet, COLUMNS[model], tables.get(name, ()))
    return book


def _help(sheet: Worksheet) -> None:
    sheet.column_dimensions["A"].width = HELP_WIDE
    put_across(sheet, 1, (1, 1), "What shops sell", TITLE)
    for row, text in enumerate(
        (
            "The sheet items has a row for each thing, whoever sells it; the sheet offers a row "
            "for each way to buy it: a width, a pack, a shop. The sheet shops is for what a visit "
            "or a delivery costs, and may stay empty.",
            "Choose a cell, and it says what belongs there, with an example; some have a list to "
            "choose from. Empty rows are passed over.",
            "Every length carries its unit: 44 in, 1/2 yd, 90 cm. The cells are text, so that 1/2 "
            "does not become a date.",
            "Plans name an item under Buy, and are estimated with: estimator show PLAN --catalog "
            "FILE.xlsx. What is wrong is told with its sheet and cell.",
        ),
        start=2,
    ):
        put_across(sheet, row, (1, 1), text, PLAIN)
    print_setup(sheet, Unit.IN, landscape=False)
    fit_if_hardly_more(sheet, 1)


def _fill(sheet: Worksheet, columns: Mapping[str, Told], cells: Sequence[Sequence[str]]) -> None:
    """Headings, the rows that there are, and room for more."""
    header = [name.strip().lower() for name in cells[0]] if cells else []
    rows = [
        {name: text.strip() for name, text in zip(header, row, strict=False)}
        for row in cells[1:]
        if any(text.strip() for text in row)
    ]
    last = len(rows) + SPARE_ROWS + 1
    for number, (name, told) in enumerate(columns.items(), start=1):
        letter = get_column_letter(number)
        head = cell_at(sheet, 1, number)
        put_text(head, name)
        head.font, head.fill, head.border = HEAD, BAND, LINE
        for row, entry in enumerate(rows, start=2):
            _put(sheet, row, number, name, entry.get(name, ""))
        for row in range(len(rows) + 2, last + 1):
            _put(sheet, row, number, name, "")
        widest = max([text_width(name) + 3, *(text_width(one.get(name, "")) for one in rows)])
        sheet.column_dimensions[letter].width = min(WIDEST, max(NARROWEST, widest + 2))
        check = _check(name, told)
        check.add(f"{letter}2:{letter}{last}")
        sheet.add_data_validation(check)
    sheet.freeze_panes = "B2"
    sheet.auto_filter.ref = f"A1:{get_column_letter(len(columns))}{last}"
    print_setup(sheet, Unit.IN, landscape=True, head=1)
    sheet.print_area = f"A1:{get_column_letter(len(columns))}{len(rows) + 2}"


def _put(sheet: Worksheet, row: int, number: int, name: str, text: str) -> None:
    """A cell: amounts of money as numbers, all else as text that no program turns into dates."""
    cell = cell_at(sheet, row, number)
    cell.font, cell.alignment = PLAIN, WRAPPED
    if name not in _AMOUNTS:
        cell.number_format = TEXT_FORMAT
    if not text:
        return
    if name in _AMOUNTS and re.fullmatch(r"\d+(\.\d+)?", text):
        cell.value, cell.number_format = Decimal(text), UNIT_PRICE
    else:
        put_text(cell, text)


def _check(name: str, told: Told) -> DataValidation:
    """What a cell says of itself when it is chosen, and what it takes."""
    if told.choices:
        listed = ",".join(told.choices)
        made = DataValidation(type="list", formula1=f'"{listed}"', allow_blank=True)
        made.showErrorMessage = told.closed
        made.error = "Choose one of the list, or leave the cell empty."
    else:
        made = DataValidation(allow_blank=True)
    made.promptTitle = name
    made.prompt = f"{told.meaning}\nFor example: {told.example}"
    made.showInputMessage = True
    return made
