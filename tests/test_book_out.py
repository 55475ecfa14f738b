"""Booking out: the stash less what was used, the left-overs added, and the old file kept."""

from __future__ import annotations

import csv
from datetime import date
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.chart import BarChart, Reference
from openpyxl.styles import Font

from estimator import Estimate, Refused
from estimator.files import estimate_files
from estimator.reports.stash_file import book_out

SHOW = """
[show]
name = "Harvest Fair"
stash = "stash.csv"
[[garment]]
plan = "apron.toml"
"""
PLAN = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
[[fabric]]
name = "check"
price = "6 per yd"
widths = ["45 in"]
step = "1 yd"
[[piece]]
name = "skirt"
quantity = 2
cut = "check"
sizes = "cut"
width = "40"
length = "20"
[[notion]]
name = "button"
quantity = 8
sold = [{ put_up = "card of 6", price = "2 each" }]
[[trim]]
name = "braid"
length = "30"
ends = "raw"
sold = [{ put_up = "card of 2 yd", price = "1.50 each" }]
"""
STASH = """item,width,length,count,place,note
check,45 in,1 yd,2,chest 1,
button,,,3,tin,"mixed, ivory"
felt,,1 m,1,shelf,
"""
DAY = date(2026, 11, 26)


@pytest.fixture
def show(tmp_path: Path) -> Path:
    for name, text in (("show.toml", SHOW), ("apron.toml", PLAN), ("stash.csv", STASH)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path / "show.toml"


def estimated(show: Path) -> Estimate:
    return estimate_files([show])


def refusal(show: Path, found: Estimate, mark: str = "") -> str:
    before = {file.name: file.read_bytes() for file in show.parent.iterdir()}
    with pytest.raises(Refused) as refused:
        book_out(found, DAY, mark)
    assert {file.name: file.read_bytes() for file in show.parent.iterdir()} == before
    return str(refused.value)


def test_remnants_are_shortened_and_left_overs_added(show: Path) -> None:
    # two skirts of 20 in: one on each of the two remnants of 36 in, of which 14 in are left each;
    # 8 buttons less 2 in hand are one card; of the braid's card of 72 in 42 in are left
    book_out(estimated(show), DAY)
    assert show.with_name("stash.csv").read_text(encoding="utf-8").splitlines() == [
        "item,width,length,count,place,note",
        "check,45 in,14 in,1,chest 1,",
        "check,45 in,14 in,1,chest 1,",
        'button,,,1,tin,"mixed, ivory"',
        "felt,,1 m,1,shelf,",
        "braid,,42 in,1,,left over from Harvest Fair",
    ]


def test_the_old_stash_is_kept_as_a_dated_copy(show: Path) -> None:
    said = book_out(estimated(show), DAY)
    copy = show.with_name("stash-2026-11-26-before-harvest-fair.csv")
    assert copy.read_text(encoding="utf-8") == STASH
    assert copy.name in said[1]


def test_a_show_is_not_booked_out_twice(show: Path) -> None:
    book_out(estimated(show), DAY)
    assert "was booked out already" in refusal(show, estimated(show))


def test_a_stash_that_changed_meanwhile_is_left_alone(show: Path) -> None:
    found = estimated(show)
    show.with_name("stash.csv").write_text(STASH + "felt,,2 m,1,shelf,\n", encoding="utf-8")
    assert "has changed" in refusal(show, found)


def test_another_stash_than_that_of_the_list_is_left_alone(show: Path) -> None:
    found = estimated(show)
    assert "has changed since the list was made" in refusal(show, found, "00000000")
    book_out(found, DAY, found.job.stash.mark)


def test_cloth_left_over_from_the_bolt_comes_into_the_stash(show: Path) -> None:
    # without remnants 42 in of 2 yd are used: 30 in are left
    bare = "item,width,length,count,place,note,colour\nbutton,,,3,tin,,\n"
    show.with_name("stash.csv").write_text(bare, encoding="utf-8")
    book_out(estimated(show), DAY)
    rows = show.with_name("stash.csv").read_text(encoding="utf-8").splitlines()
    assert "check,45 in,30 in,1,,left over from Harvest Fair," in rows


def test_a_file_of_a_program_that_writes_semicolons_stays_one(show: Path) -> None:
    text = "\ufeff" + STASH.replace(",", ";").replace('"mixed; ivory"', "mixed")
    show.with_name("stash.csv").write_bytes(text.replace("\n", "\r\n").encode())
    book_out(estimated(show), DAY)
    written = show.with_name("stash.csv").read_bytes()
    start = b"\xef\xbb\xbfitem;width;length;count;place;note\r\ncheck;45 in;14 in;"
    assert written.startswith(start)


@pytest.fixture
def sheet(show: Path) -> Path:
    """The same stash on a sheet of a workbook, in which the counts are numbers."""
    book = Workbook()
    book.active.title = "Notes"
    book.active["A1"] = "=1+1"
    own = book.create_sheet("Stash")
    for row in csv.reader(STASH.splitlines()):
        own.append([int(cell) if cell.isdigit() else cell or None for cell in row])
    own["A2"].font = Font(bold=True)
    path = show.with_name("stash.xlsx")
    book.save(path)
    show.write_text(SHOW.replace("stash.csv", "stash.xlsx"), encoding="utf-8")
    return path


def test_a_stash_in_a_workbook_is_booked_out_like_one_in_a_table(show: Path, sheet: Path) -> None:
    old = sheet.read_bytes()
    said = book_out(estimated(show), DAY)
    assert sheet.with_name("stash-2026-11-26-before-harvest-fair.xlsx").read_bytes() == old
    assert said[0] == "Booked out for Harvest Fair: 2 rows changed, 1 row added."
    book = load_workbook(sheet)
    rows = [[cell.value for cell in row] for row in book["Stash"].iter_rows(min_row=2)]
    assert rows == [
        ["check", "45 in", "14 in", 1, "chest 1", None],
        ["check", "45 in", "14 in", 1, "chest 1", None],
        ["button", None, None, 1, "tin", "mixed, ivory"],
        ["felt", None, "1 m", 1, "shelf", None],
        ["braid", None, "42 in", 1, None, "left over from Harvest Fair"],
    ]
    assert book["Stash"]["A2"].font.bold
    assert book["Notes"]["A1"].value == "=1+1"


def test_a_workbook_saved_again_unchanged_has_the_same_mark(show: Path, sheet: Path) -> None:
    mark = estimated(show).job.stash.mark
    book = load_workbook(sheet)
    book.properties.creator = "somebody else"
    book.save(sheet)
    assert estimated(show).job.stash.mark == mark
    book["Stash"]["D2"] = 3
    book.save(sheet)
    assert estimated(show).job.stash.mark != mark


def test_a_workbook_with_a_picture_is_left_alone(show: Path, sheet: Path) -> None:
    book = load_workbook(sheet)
    chart = BarChart()
    chart.add_data(Reference(book["Stash"], min_col=4, min_row=1, max_row=4))
    book["Stash"].add_chart(chart, "H2")
    book.save(sheet)
    assert "pictures or charts" in refusal(show, estimated(show))


def test_a_workbook_that_is_open_elsewhere_is_left_alone(show: Path, sheet: Path) -> None:
    sheet.with_name("~$stash.xlsx").write_bytes(b"")
    assert "is open in a spreadsheet program" in refusal(show, estimated(show))


def test_without_a_stash_there_is_nothing_to_book_out_from(show: Path) -> None:
    show.write_text(SHOW.replace('stash = "stash.csv"\n', ""), encoding="utf-8")
    assert 'add stash = "stash.csv" to [show]' in refusal(show, estimated(show))
