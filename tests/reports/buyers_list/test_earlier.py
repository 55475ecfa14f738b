"""What people wrote into an earlier list is found, whatever they did to its lines and columns."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest
from openpyxl.comments import Comment
from openpyxl.styles import PatternFill

from estimator import Refused
from estimator.reports.buyers_list.columns import COLUMNS, LIST_SHEET, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import (
    LONGER,
    at,
    cloak,
    fill_in,
    free_row,
    row_of,
    sum_row,
    texts,
    the_list,
    value_at,
)


def test_text_that_begins_like_a_formula_is_carried_as_text(path: Path) -> None:
    book, sheet = the_list(path)
    cell = at(sheet, "wool", "Your notes")
    cell.value = "=1+1"
    cell.data_type = "s"
    book.save(path)
    write_list(cloak(), path)
    carried = at(the_list(path)[1], "wool", "Your notes")
    assert (carried.value, carried.data_type) == ("=1+1", "s")


def test_a_persons_own_arithmetic_stays_one_and_a_reference_becomes_its_result(path: Path) -> None:
    fill_in(path, {("wool", "Actual price"): "=27.5/2", ("braid", "Actual price"): "=J4"})
    write_list(cloak(), path)
    sheet = the_list(path)[1]
    assert (
        at(sheet, "wool", "Actual price").value,
        at(sheet, "wool", "Actual price").data_type,
    ) == (
        "=27.5/2",
        "f",
    )
    # nobody has reckoned J4 yet, so that its words are kept
    assert at(sheet, "braid", "Actual price").value == "J4"


def test_lines_that_people_add_are_carried_whole_and_there_is_room_for_more(path: Path) -> None:
    book, sheet = the_list(path)
    row = free_row(sheet)
    line = {"Got it": "☑", "Item": "tailor's chalk", "Buy": 2, "Unit": "each", "Price": 1.5,
            "Part of the shop": "5 Notions", "Your notes": "white"}  # fmt: skip
    for heading, value in line.items():
        sheet.cell(row, NUMBER_OF[heading]).value = value
    book.save(path)
    write_list(cloak(LONGER), path)
    for heading, value in line.items():
        assert value_at(path, "tailor's chalk", heading) == value
    sheet = the_list(path)[1]
    assert free_row(sheet) == row_of(sheet, "tailor's chalk") + 1
    assert str(at(sheet, "tailor's chalk", "Cost").value).startswith("=IF(")


def test_tax_contingency_and_budget_that_people_fill_in_are_carried(path: Path) -> None:
    book, sheet = the_list(path)
    sheet.cell(sum_row(sheet, "tax"), NUMBER_OF["Price"]).value = 0.0825
    sheet.cell(sum_row(sheet, "budget"), NUMBER_OF["Cost"]).value = 150
    book.save(path)
    write_list(cloak(LONGER), path)
    sheet = the_list(path)[1]
    assert sheet.cell(sum_row(sheet, "tax"), NUMBER_OF["Price"]).value == 0.0825
    assert sheet.cell(sum_row(sheet, "budget"), NUMBER_OF["Cost"]).value == 150


def test_lines_sorted_and_columns_moved_by_people_are_still_told_by_their_keys(path: Path) -> None:
    book, sheet = the_list(path)
    fill = {"wool": 1.1, "lining": 2.2, "braid": 3.3, "clasp": 4.4}
    for item, price in fill.items():
        at(sheet, item, "Actual price").value = price
    first, last = row_of(sheet, "wool"), row_of(sheet, "clasp")
    rows = [[cell.value for cell in sheet[row]] for row in range(first, last + 1)]
    for row, values in zip(range(first, last + 1), reversed(rows), strict=True):
        for column, value in enumerate(values, start=1):
            sheet.cell(row, column).value = value
    book.save(path)
    write_list(cloak(), path)
    assert {item: value_at(path, item, "Actual price") for item in fill} == fill
    assert row_of(the_list(path)[1], "wool") == first


def test_what_people_write_beside_the_list_or_over_its_words_is_kept_in_words(path: Path) -> None:
    book, sheet = the_list(path)
    at(sheet, "wool", "Item").value = "wool melton"
    sheet.cell(row_of(sheet, "braid"), len(COLUMNS) + 2).value = "ask Nell"
    sheet.cell(sheet.max_row + 3, 2).value = "shut on Mondays"
    book["Cut list"].cell(4, 12).value = "cut twice"
    sheet.cell(row_of(sheet, "clasp"), 3).comment = Comment("take the brass ones", "Nell")
    book.save(path)
    for _ in range(3):
        write_list(cloak(LONGER), path)
    assert value_at(path, "wool", "Item") == "wool"
    assert value_at(path, "wool", "Your notes") == "Item: wool melton"
    assert "ask Nell" in str(value_at(path, "braid", "Your notes"))
    assert "take the brass ones" in str(value_at(path, "clasp", "Your notes"))
    kept = [text for text in texts(path) if "shut on Mondays" in text or "cut twice" in text]
    assert len(kept) == 2
    assert "Cut list, L4: cut twice" in kept


def test_cells_that_people_marked_in_a_colour_stay_marked(path: Path) -> None:
    book, sheet = the_list(path)
    at(sheet, "wool", "Item").fill = PatternFill("solid", fgColor="FFD54F")
    own = sheet.cell(free_row(sheet), NUMBER_OF["Item"])
    own.value, own.fill = "pins", PatternFill("solid", fgColor="80CBC4")
    book.save(path)
    for _ in range(2):
        write_list(cloak(LONGER), path)
    sheet = the_list(path)[1]
    assert at(sheet, "wool", "Item").fill.fgColor.rgb == "00FFD54F"
    assert at(sheet, "pins", "Item").fill.fgColor.rgb == "0080CBC4"
    assert at(sheet, "lining", "Item").fill.fill_type is None


def test_a_date_that_somebody_notes_is_shown_year_first(path: Path) -> None:
    fill_in(path, {("wool", "Your notes"): datetime(2026, 5, 4)})
    write_list(cloak(LONGER), path)
    cell = at(the_list(path)[1], "wool", "Your notes")
    assert cell.value == datetime(2026, 5, 4)
    assert cell.number_format.startswith("yyyy-mm-dd")


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (lambda book: book[LIST_SHEET].cell(3, 2, "Thing"), "lost the headings"),
        (lambda book: setattr(book[LIST_SHEET], "title", "Mine"), "has no sheet 'Shopping list'"),
        (lambda book: book.remove(book["As written"]), "no shopping list of ours"),
    ],
)  # fmt: skip
def test_a_list_whose_lines_can_no_longer_be_told_is_left_alone(
    path: Path, spoil: object, told: str
) -> None:
    book, _ = the_list(path)
    assert callable(spoil)
    spoil(book)
    book.save(path)
    before = path.read_bytes()
    with pytest.raises(Refused, match=told):
        write_list(cloak(), path)
    assert path.read_bytes() == before
