"""The papers behind the shopping list in its spreadsheet, read back cell by cell."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from openpyxl import Workbook, load_workbook

from estimator import Estimate, estimate
from estimator.reports.workbook import workbook_of
from tests.plans import plan
from tests.reports.harbour_dress import DRESS

ALIKE = re.compile(r", (\d+) side by side$")


def read_back(found: Estimate) -> Workbook:
    held = BytesIO()
    workbook_of(found).save(held)
    return load_workbook(BytesIO(held.getvalue()))


@pytest.fixture(scope="module")
def dress() -> Estimate:
    return estimate(plan(DRESS))


@pytest.fixture(scope="module")
def book(dress: Estimate) -> Workbook:
    return read_back(dress)


@pytest.mark.parametrize(
    ("hem", "shown"),
    [("26 5/16", "# ?/??"), ("26 13/16", "# ??/??"), ("26 1/8", "# ?/?"), ("26", "0")],
)
def test_a_fraction_has_room_for_its_own_digits_alone(hem: str, shown: str) -> None:
    text = DRESS.replace('length = "31"', f'length = "{hem}"')
    sheet = read_back(estimate(plan(text)))["Cut list"]
    row = next(row for row in sheet.iter_rows() if row[2].value == "panel")
    assert row[7].number_format == shown


def test_headings_are_repeated_only_where_they_head_all_that_follows(book: Workbook) -> None:
    # Two fabrics make two tables on the sheets of layouts and widths.
    assert book["Cut list"].print_title_rows == "$3:$3"
    assert book["Layout"].print_title_rows is None
    assert book["Widths"].print_title_rows is None


def test_a_plan_in_millimetres_is_cut_in_millimetres() -> None:
    text = """
[garment]
name = "cape"
unit = "mm"
[[fabric]]
name = "wool"
widths = ["1500"]
[[piece]]
name = "panel"
cut = ["wool"]
width = "415"
length = "700"
"""
    book = read_back(estimate(plan(text)))
    # 415 + 2 x 15 and 700 + 2 x 15
    head, row = list(book["Cut list"].iter_rows(values_only=True))[2:4]
    assert head[4:6] == ("Cut width (mm)", "Cut length (mm)")
    assert row[4:6] == (445, 730)


def test_the_other_papers_are_sheets_of_their_own(book: Workbook) -> None:
    assert book.sheetnames[1:] == [
        "Where it goes", "Cut list", "Layout", "Widths", "Measure sheet", "Working", "Assumptions",
        "As written",
    ]  # fmt: skip


def test_the_cut_list_bears_every_piece_with_its_cut_size_in_inches(book: Workbook) -> None:
    rows = [[cell.value for cell in row] for row in book["Cut list"].iter_rows()]
    # panel: 19 1/4 + 2 x 5/8 = 20 1/2 by 31 + 2 x 5/8 = 32 1/4
    assert ["lawn", "harbour dress", "panel", 3, 20.5, 32.25, 19.25, 31, None] in rows


def test_the_layout_sheet_places_each_piece_once(dress: Estimate, book: Workbook) -> None:
    said = [str(row[2].value) for row in book["Layout"].iter_rows() if row[2].value]
    pieces = [text for text in said if text.startswith(("panel", "band"))]
    placed = sum(int(found[1]) if (found := ALIKE.search(text)) else 1 for text in pieces)
    assert (
        placed == sum(len(choice.chosen.laid.cuts[0].placements) for choice in dress.fabrics) == 5
    )


def test_a_page_is_wide_enough_for_the_sentences_even_where_digits_are_wide(
    book: Workbook,
) -> None:
    # Upright letter paper has 8 1/2 in less 2 x 0.4; a digit of a wide font of 11 points measures
    # 0.64 of its size (DejaVu Sans, from its own tables), with which programs measure columns.
    wide = book["Assumptions"].column_dimensions["A"].width
    assert book["Assumptions"].page_setup.orientation == "portrait"
    assert wide * 0.64 * 11 / 72 <= 8.5 - 2 * 0.4
