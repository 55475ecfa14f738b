"""A list written again over one that people have filled in: nothing of theirs is lost."""

from __future__ import annotations

import io
import shutil
import zipfile
from datetime import datetime
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import PatternFill
from openpyxl.workbook.defined_name import DefinedName

from estimator import Refused
from estimator.reports.buyers_list.columns import COLUMNS, LIST_SHEET, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import (
    CLOAK,
    at,
    cloak,
    fill_in,
    free_row,
    needs_office,
    row_of,
    saved_by_office,
    sum_row,
    texts,
    the_list,
    value_at,
)

LONGER = CLOAK.replace('length = "44"', 'length = "53"')
SINCE = "Since the last list"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    found = tmp_path / "list.xlsx"
    write_list(cloak(), found)
    return found


def test_ticks_prices_quantities_and_notes_are_carried_into_a_list_of_more(path: Path) -> None:
    marks = {
        ("wool", "Actual quantity"): 4.5,
        ("wool", "Actual price"): 13.75,
        ("wool", "Your notes"): "the bottle green, at the back",
        ("clasp", "Got it"): "☑",
        ("lining", "Price"): 6.2,
    }
    fill_in(path, marks)
    at_first = value_at(path, "wool", "Buy")
    write_list(cloak(LONGER), path)
    for (item, heading), mark in marks.items():
        assert value_at(path, item, heading) == mark
    # 53 in are 9 in longer, in each of the rows
    now = value_at(path, "wool", "Buy")
    assert isinstance(now, int | float)
    assert isinstance(at_first, int | float)
    assert now > at_first


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


def test_what_changed_is_marked_as_more_less_new_and_no_longer_needed(path: Path) -> None:
    text = LONGER.replace("quantity = 2\nprice", "quantity = 1\nprice").replace("braid", "cord")
    write_list(cloak(text), path)
    # wool: before and after in yards, each cut from three panels of 44 + 1 1/4 and of 53 + 1 1/4 in
    found = {line.title: line.buy.sold_units for line in cloak(text).purchases}
    before = {line.title: line.buy.sold_units for line in cloak().purchases}
    more = found["wool"] - before["wool"]
    assert value_at(path, "wool", SINCE) in (f"{more} yd more", f"{more // 1} {more % 1} yd more")
    assert value_at(path, "clasp", SINCE) == "1 less"
    assert value_at(path, "cord", SINCE) == "new"
    assert value_at(path, "braid", SINCE) == "no longer needed"
    assert value_at(path, "braid", "Buy") == 0


def test_marks_of_change_stay_until_something_changes_again(path: Path) -> None:
    write_list(cloak(LONGER), path)
    marked = value_at(path, "wool", SINCE)
    assert str(marked).endswith("more")
    once = path.read_bytes()
    write_list(cloak(LONGER), path)
    assert path.read_bytes() == once
    write_list(cloak(), path)
    assert value_at(path, "wool", SINCE) == str(marked).replace("more", "less")


def test_a_list_written_again_unchanged_is_the_same_to_the_byte(path: Path) -> None:
    before = path.read_bytes()
    write_list(cloak(), path)
    assert path.read_bytes() == before


def test_what_was_ticked_keeps_the_quantity_and_price_at_which_it_was_bought(path: Path) -> None:
    bought = value_at(path, "wool", "Buy")
    fill_in(path, {("wool", "Got it"): "☑"})
    write_list(cloak(LONGER.replace("12.90", "13.10").replace("14.20", "14.40")), path)
    assert value_at(path, "wool", "Actual quantity") == bought
    assert value_at(path, "wool", "Actual price") in (12.9, 14.2)
    assert value_at(path, "wool", "Got it") == "☑"


def test_a_line_that_is_no_longer_needed_stays_as_long_as_somebody_wrote_on_it(path: Path) -> None:
    fill_in(path, {("braid", "Got it"): "☑"})
    spent = value_at(path, "braid", "Buy")
    bare = CLOAK.replace('[[trim]]\nname = "braid"\nalong = "panel: bottom"\n', "").replace(
        'price = "1.13 per yd"\n', ""
    )
    for length in ("44", "53", "50"):
        write_list(cloak(bare.replace('"44"', f'"{length}"')), path)
        assert value_at(path, "braid", "Got it") == "☑"
        assert value_at(path, "braid", "Actual quantity") == spent
    fill_in(path, {("braid", "Got it"): "☐", ("braid", "Actual quantity"): None})
    write_list(cloak(bare), path)
    assert "braid" not in texts(path)


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


def test_sheets_that_people_add_go_along(path: Path) -> None:
    book, _ = the_list(path)
    own = book.create_sheet("Who pays")
    own["A1"], own["B2"] = "Millrace Players", "=1+2"
    own["A3"] = datetime(2026, 5, 4)
    own["A1"].fill = PatternFill("solid", fgColor="FFCC00")
    own.conditional_formatting.add("B1:B9", CellIsRule(operator="lessThan", formula=["0"]))
    own.merge_cells("C1:D2")
    book.defined_names["purse"] = DefinedName("purse", attr_text="'Who pays'!$B$2")
    book.save(path)
    write_list(cloak(LONGER), path)
    carried = load_workbook(path)["Who pays"]
    assert (carried["A1"].value, carried["B2"].value) == ("Millrace Players", "=1+2")
    assert carried["A3"].value == datetime(2026, 5, 4)
    assert carried["A1"].fill.fgColor.rgb == "00FFCC00"
    assert [str(one.sqref) for one in carried.conditional_formatting] == ["B1:B9"]
    assert [str(span) for span in carried.merged_cells.ranges] == ["C1:D2"]
    assert load_workbook(path).defined_names["purse"].attr_text == "'Who pays'!$B$2"


def test_a_date_that_somebody_notes_is_shown_year_first(path: Path) -> None:
    fill_in(path, {("wool", "Your notes"): datetime(2026, 5, 4)})
    write_list(cloak(LONGER), path)
    cell = at(the_list(path)[1], "wool", "Your notes")
    assert cell.value == datetime(2026, 5, 4)
    assert cell.number_format.startswith("yyyy-mm-dd")


def with_a_picture(content: bytes) -> bytes:
    """The same workbook with a drawing on its first sheet, as a program puts one in."""
    drawing = (
        '<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing">'
        "<xdr:twoCellAnchor ></xdr:twoCellAnchor></xdr:wsDr>"
    )
    kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/drawing"
    related = (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{kind}" Target="../drawings/drawing99.xml"/>'
        "</Relationships>"
    )
    held = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(held, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name))
        new.writestr("xl/drawings/drawing99.xml", drawing)
        new.writestr("xl/worksheets/_rels/sheet1.xml.rels", related)
    return held.getvalue()


def test_a_list_with_a_picture_that_cannot_be_carried_is_left_alone(path: Path) -> None:
    path.write_bytes(with_a_picture(path.read_bytes()))
    before = path.read_bytes()
    with pytest.raises(Refused, match=r"pictures or charts on the sheet 'Shopping list'.*--out"):
        write_list(cloak(), path)
    assert path.read_bytes() == before


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


FILLED = [one.heading for one in COLUMNS if one.by_buyer and one.heading != "Got it"]
ITEMS = ["wool", "lining", "braid", "clasp"]
WORDS = st.text(
    st.characters(codec="utf-8", exclude_categories=["C", "Z"]), min_size=1, max_size=30
)
VALUES = st.one_of(WORDS, st.integers(0, 999), st.decimals(0, 99, places=2).map(float))
OWN = st.dictionaries(
    st.sampled_from(["Item", "Buy", "Unit", "Price", "Notes", "Your notes"]), VALUES, min_size=1
)


@settings(max_examples=6)
@given(
    marks=st.dictionaries(st.tuples(st.sampled_from(ITEMS), st.sampled_from(FILLED)), VALUES),
    ticked=st.sets(st.sampled_from(ITEMS)),
    own=st.lists(OWN, max_size=6),
    beside=st.lists(WORDS.map(lambda word: f"beside {word}"), max_size=3, unique=True),
    later=st.sampled_from([CLOAK, LONGER, CLOAK.replace("braid", "cord")]),
)
def test_whatever_people_fill_in_is_there_after_the_list_was_written_again(
    marks: dict[tuple[str, str], object],
    ticked: set[str],
    own: list[dict[str, object]],
    beside: list[str],
    later: str,
) -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "list.xlsx"
        path.write_bytes(untouched())
        book, sheet = the_list(path)
        for (item, heading), value in marks.items():
            put(at(sheet, item, heading), value)
        for item in ticked:
            at(sheet, item, "Got it").value = "☑"
        for row, line in enumerate(own, start=free_row(sheet)):
            for heading, value in line.items():
                put(sheet.cell(row, NUMBER_OF[heading]), value)
        for row, text in enumerate(beside, start=sheet.max_row + 2):
            put(sheet.cell(row, 4), text)
        book.save(path)
        for text in (later, CLOAK):
            write_list(cloak(text), path)
        sheet = the_list(path)[1]
        for (item, heading), value in marks.items():
            assert at(sheet, item, heading).value == value
        assert all(at(sheet, item, "Got it").value == "☑" for item in ticked)
        rows = [[cell.value for cell in row] for row in sheet.iter_rows()]
        for line in own:
            wanted = {NUMBER_OF[heading] - 1: value for heading, value in line.items()}
            assert any(all(row[n] == value for n, value in wanted.items()) for row in rows)
        seen = texts(path)
        assert all(any(word in text for text in seen) for word in beside)


@cache
def untouched() -> bytes:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "list.xlsx"
        write_list(cloak(), path)
        return path.read_bytes()


def put(cell: object, value: object) -> None:
    """As a person types it: text that looks like a formula only because it begins so is text."""
    cell.value = value  # type: ignore[attr-defined]
    if isinstance(value, str):
        cell.data_type = "s"  # type: ignore[attr-defined]


@needs_office
def test_another_program_reckons_the_list_alike_and_saves_no_writing_but_the_persons(
    path: Path, tmp_path: Path
) -> None:
    fill_in(path, {("wool", "Actual price"): 13.75, ("braid", "Your notes"): "two\nlines"})
    saved = saved_by_office(path, tmp_path)
    reckoned = load_workbook(saved, data_only=True)[LIST_SHEET]
    for line in cloak().purchases:
        cost = at(reckoned, line.title, "Cost").value
        assert (None if cost in (None, "") else f"{cost:.2f}") == (
            None if line.buy.cost is None else str(line.buy.cost)
        )
    total = reckoned.cell(sum_row(reckoned, "total"), NUMBER_OF["Cost"]).value
    assert f"{total:.2f}" == str(cloak().cost)
    shutil.copy(saved, path)
    earlier = write_list(cloak(), path)
    assert dict(earlier.filled_in) == {
        "bottle green / wool": {"Actual price": 13.75},
        "braid": {"Your notes": "two\nlines"},
    }
    assert (earlier.asides, earlier.own, earlier.elsewhere, earlier.sheets) == ({}, (), (), ())
    assert earlier.highlights == {}
    assert value_at(path, "wool", "Actual price") == 13.75
