"""The buyer's list in the spreadsheet: read back cell by cell, and reckoned by a formula engine."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator import estimate
from estimator.reports.buyers_list.columns import COLUMNS, LETTER_OF, LIST_SHEET, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.plans import plan
from tests.reports.filled_lists import at, said, sum_row, the_list, written
from tests.reports.harbour_dress import DRESS, NOTED
from tests.reports.reckoned_lists import reckoned


def cells(sheets: Iterable[Worksheet]) -> Iterable[Any]:
    return (cell for sheet in sheets for row in sheet.iter_rows() for cell in row)


@pytest.mark.parametrize(
    "name",
    ["=1+1", "+SUM(A1)", "-2", "@now", "<b>bold</b>", "🧵 ribbon", "x" * 200, "סרט רקום",
     "'quoted", "a\\nb"],
)  # fmt: skip
def test_text_from_a_plan_is_harmless_text_on_every_sheet(name: str, tmp_path: Path) -> None:
    text = DRESS.replace('name = "braid"', f'name = "{name}"\ncolour = "{name}"')
    text = text.replace("harbour dress", name)
    path = written(text, tmp_path)
    book, sheet = the_list(path)
    plain = name.replace("\\n", " ")
    assert at(sheet, plain, "Item").data_type == "s"
    assert at(sheet, plain, "Colour, swatch").value == plain
    of_ours = {cell.coordinate for cell in cells([sheet]) if cell.data_type == "f"}
    columns = {coordinate.rstrip("0123456789") for coordinate in of_ours}
    assert columns == {LETTER_OF[name] for name in ("Cost", "Paid", "Difference")}
    others = [one for one in book.worksheets if one.title != LIST_SHEET]
    assert not [cell.coordinate for cell in cells(others) if cell.data_type == "f"]


@pytest.mark.parametrize("name", ["=1+1", "<b>bold</b>"])
def test_text_from_a_plan_is_still_harmless_text_when_the_list_is_written_again(
    name: str, tmp_path: Path
) -> None:
    text = DRESS.replace('name = "braid"', f'name = "{name}"')
    path = written(text, tmp_path)
    write_list(estimate(plan(text)), path)
    cell = at(the_list(path)[1], name, "Item")
    assert (cell.value, cell.data_type) == (name, "s")


@pytest.mark.parametrize(("unit", "paper"), [("in", 1), ("cm", 9)])
def test_the_list_prints_on_letter_or_a4_with_all_its_columns_and_headings_repeated(
    tmp_path: Path, unit: str, paper: int
) -> None:
    # 1 and 9 are letter and A4 in ECMA-376 part 1, 18.3.1.63
    sheet = the_list(written(NOTED.replace("note =", f'unit = "{unit}"\nnote ='), tmp_path))[1]
    assert sheet.page_setup.paperSize == paper
    assert sheet.page_setup.fitToWidth == 1
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert sheet.print_title_rows == "$3:$3"
    last = LETTER_OF["Since the last list"]
    assert sheet.print_area == f"'{LIST_SHEET}'!$A$1:${last}${sheet.max_row}"
    assert NUMBER_OF["Since the last list"] == len(COLUMNS) - 1


def test_what_the_buyer_must_know_stands_below_the_list(sheet: Worksheet) -> None:
    below = [
        str(said(sheet, row, 2)) for row in range(sum_row(sheet, "unpriced"), sheet.max_row + 1)
    ]
    assert "=Wash it first" in below
    assert any("Thread is not estimated" in text for text in below)


def test_an_estimate_with_nothing_to_buy_makes_an_empty_list_and_no_fault(tmp_path: Path) -> None:
    path = written('[garment]\nname = "nothing yet"', tmp_path)
    sheet = the_list(path)[1]
    assert sheet["A2"].value == "There is nothing to buy."
    assert reckoned(path)("sum total", "Cost") == 0
    assert load_workbook(path).sheetnames[0] == LIST_SHEET
