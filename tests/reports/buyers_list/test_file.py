"""A list written again over one that people have filled in: nothing of theirs is lost."""

from __future__ import annotations

import shutil
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook

from estimator.reports.buyers_list.columns import COLUMNS, LIST_SHEET, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import (
    CLOAK,
    LONGER,
    at,
    cloak,
    fill_in,
    free_row,
    needs_office,
    saved_by_office,
    sum_row,
    texts,
    the_list,
    value_at,
)


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


def test_a_list_written_again_unchanged_is_the_same_to_the_byte(path: Path) -> None:
    before = path.read_bytes()
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
