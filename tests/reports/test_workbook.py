"""The shopping list as a spreadsheet, read back cell by cell."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from io import BytesIO

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator import Estimate, estimate
from estimator.measure import Length
from estimator.reports.workbook import workbook_of
from tests.plans import plan

ALIKE = re.compile(r", (\d+) side by side$")

DRESS = """
[garment]
name = "harbour dress"
currency = "USD"
[[fabric]]
name = "lawn"
colour = "sea green"
widths = [{ width = "44 in", price = "8.49 per yd" }]
[[fabric]]
name = "fusible"
role = "interfacing"
widths = ["90 cm"]
[[piece]]
name = "panel"
quantity = 3
cut = ["lawn"]
width = "19 1/4"
length = "31"
[[piece]]
name = "band"
cut = ["lawn", { fabric = "fusible", cut_to = "finished size" }]
made = "folded band"
width = "2"
length = "29 1/2"
[[trim]]
name = "braid"
along = "panel: bottom"
price = "1.13 per yd"
[[elastic]]
name = "cuff elastic"
measure = "8"
quantity = 2
price = "0.55 per yd"
[[notion]]
name = "button"
quantity = 7
sold = [{ put_up = "pack of 3", price = "2.35 each" }]
"""


def read_back(found: Estimate) -> Workbook:
    held = BytesIO()
    workbook_of(found).save(held)
    return load_workbook(BytesIO(held.getvalue()))


def list_rows(sheet: Worksheet) -> dict[str, dict[str, object]]:
    """The lines of the list by their item, each with its cells by their headings."""
    head = next(row for row in sheet.iter_rows() if row[1].value == "Item")
    headings = [str(cell.value) for cell in head]
    return {
        str(row[1].value): dict(zip(headings, (cell.value for cell in row), strict=True))
        for row in sheet.iter_rows(min_row=head[0].row + 1)
        if row[0].value == "☐"
    }


@pytest.fixture(scope="module")
def dress() -> Estimate:
    return estimate(plan(DRESS))


@pytest.fixture(scope="module")
def book(dress: Estimate) -> Workbook:
    return read_back(dress)


def test_each_thing_to_buy_is_a_line_with_the_figures_of_the_estimate(
    dress: Estimate, book: Workbook
) -> None:
    rows = list_rows(book["Shopping list"])
    assert list(rows) == ["lawn", "fusible", "braid", "cuff elastic", "button"]
    for line in dress.purchases:
        row = rows[line.title]
        assert Fraction(str(row["Buy"])) == line.buy.sold_units
        assert row["Unit"] == line.buy.unit
        assert row["Key"] == line.key
        price = row["Unit price"]
        assert (None if price is None else Decimal(str(price))) == line.buy.offer.price


def test_needed_is_never_shown_below_what_is_needed_and_never_above_what_is_bought(
    dress: Estimate, book: Workbook
) -> None:
    rows = list_rows(book["Shopping list"])
    for line in dress.purchases:
        if isinstance(line.needed, Length):
            shown = Fraction(str(rows[line.title]["Needed"]))
            unit = line.buy.offer.sold_by.length
            assert line.needed / unit <= shown <= line.buy.sold_units


def test_the_parts_of_the_shop_stand_in_the_order_in_which_it_is_walked(book: Workbook) -> None:
    seen = [row[1].value for row in book["Shopping list"].iter_rows() if row[1].value]
    parts = ["Fabrics", "Linings and interfacings", "Trims", "Elastics", "Notions"]
    assert [value for value in seen if value in parts] == parts


def test_costs_and_totals_are_formulas_that_come_to_the_estimate(
    dress: Estimate, book: Workbook
) -> None:
    sheet = book["Shopping list"]
    rows = list_rows(sheet)
    costs = [row["Cost"] for row in rows.values()]
    assert all(str(cost).startswith("=IF(H") for cost in costs)
    reckoned = sum(
        round(Decimal(str(row["Buy"])) * Decimal(str(row["Unit price"])), 2)
        for row in rows.values()
        if row["Unit price"] is not None
    )
    assert abs(reckoned - dress.cost) <= Decimal("0.01")
    total = next(row for row in sheet.iter_rows() if str(row[1].value).startswith("Total"))
    subtotals = [
        row[8].coordinate for row in sheet.iter_rows() if str(row[1].value).endswith("together")
    ]
    assert len(subtotals) == 5
    cells = ",".join(subtotals)
    assert total[8].value == f'=IF(COUNT({cells})=0,"",SUM({cells}))'


def test_a_part_in_which_nothing_is_priced_has_an_empty_sum(book: Workbook) -> None:
    # DRESS: the fusible alone is without a price. Its sum is as empty as its cost, and fills itself
    # when the buyer writes a price.
    sheet = book["Shopping list"]
    line = next(row for row in sheet.iter_rows() if row[1].value == "fusible")
    below = next(sheet.iter_rows(min_row=line[0].row + 1))
    cost = line[8].coordinate
    assert below[8].value == f'=IF(COUNT({cost}:{cost})=0,"",SUM({cost}:{cost}))'


def test_yards_are_numbers_shown_as_fractions_and_metres_have_two_decimals(book: Workbook) -> None:
    sheet = book["Shopping list"]
    formats = {
        row[1].value: row[4].number_format for row in sheet.iter_rows() if row[0].value == "☐"
    }
    assert formats["lawn"] in ("# ?/?", "0")
    assert formats["fusible"] == "# ?/?"
    assert formats["button"] == "0"


@pytest.mark.parametrize("name", ["=1+1", "+SUM(A1)", "-2", "@now", "<b>bold</b>", "🧵 ribbon"])
def test_text_from_a_plan_is_never_a_formula(name: str) -> None:
    text = DRESS.replace('name = "braid"', f'name = "{name}"')
    sheet = read_back(estimate(plan(text)))["Shopping list"]
    cell = next(row[1] for row in sheet.iter_rows() if row[1].value == name)
    assert cell.data_type == "s"


def test_the_list_prints_on_one_page_width_with_its_headings_repeated(book: Workbook) -> None:
    sheet = book["Shopping list"]
    head = next(row[0].row for row in sheet.iter_rows() if row[1].value == "Item")
    assert sheet.page_setup.fitToWidth == 1
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert sheet.print_title_rows == f"${head}:${head}"


def test_the_key_stays_in_the_list_and_is_not_printed(book: Workbook) -> None:
    sheet = book["Shopping list"]
    head = next(row for row in sheet.iter_rows() if row[1].value == "Item")
    assert head[-1].value == "Key"
    assert sheet.print_area == f"'Shopping list'!$A$1:$J${sheet.max_row}"


@pytest.mark.parametrize(
    ("hem", "shown"),
    [("26 5/16", "# ?/??"), ("26 13/16", "# ??/??"), ("26 1/8", "# ?/?"), ("26", "0")],
)
def test_a_fraction_has_room_for_its_own_digits_alone(hem: str, shown: str) -> None:
    text = DRESS.replace('length = "31"', f'length = "{hem}"')
    sheet = read_back(estimate(plan(text)))["Cut list"]
    row = next(row for row in sheet.iter_rows() if row[2].value == "panel")
    assert row[7].number_format == shown


def test_a_price_finer_than_a_cent_is_shown_with_all_its_decimals() -> None:
    # The format shows two decimals, and up to four more where the price has them.
    text = DRESS.replace("8.49 per yd", "1.234 per yd")
    row = next(
        row
        for row in read_back(estimate(plan(text)))["Shopping list"].iter_rows()
        if row[1].value == "lawn"
    )
    assert (row[7].value, row[7].number_format) == (1.234, "#,##0.00####")


def test_headings_are_repeated_only_where_they_head_all_that_follows(book: Workbook) -> None:
    # Two fabrics make two tables on the sheets of layouts and widths.
    assert book["Cut list"].print_title_rows == "$3:$3"
    assert book["Layout"].print_title_rows is None
    assert book["Widths"].print_title_rows is None


def test_each_row_of_a_layout_is_drawn_under_its_table_in_even_letters(
    dress: Estimate, book: Workbook
) -> None:
    drawn = [row[0] for row in book["Layout"].iter_rows() if str(row[0].value).startswith("row ")]
    assert len(drawn) == sum(len(choice.chosen.laid.cuts[0].rows) for choice in dress.fabrics)
    assert {cell.font.name for cell in drawn} == {"Courier New"}


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


def test_the_note_of_a_garment_stands_under_the_title() -> None:
    text = DRESS.replace('currency = "USD"', 'currency = "USD"\nnote = "=Wash it first"')
    sheet = read_back(estimate(plan(text)))["Shopping list"]
    assert (sheet["A2"].value, sheet["A2"].data_type) == ("=Wash it first", "s")


def test_the_other_papers_are_sheets_of_their_own(book: Workbook) -> None:
    assert book.sheetnames[1:] == [
        "Cut list", "Layout", "Widths", "Measure sheet", "Working", "Assumptions",
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


def test_the_list_says_that_thread_is_not_estimated_without_its_table(book: Workbook) -> None:
    said = " ".join(str(row[1].value) for row in book["Shopping list"].iter_rows())
    assert "Thread is not estimated" in said


def test_an_estimate_with_nothing_to_buy_makes_an_empty_list_and_no_fault() -> None:
    sheet = read_back(estimate(plan('[garment]\nname = "nothing yet"')))["Shopping list"]
    assert list_rows(sheet) == {}
    assert sheet["A2"].value == "There is nothing to buy."


def test_a_page_is_wide_enough_for_the_sentences_even_where_digits_are_wide(
    book: Workbook,
) -> None:
    # Upright letter paper has 8 1/2 in less 2 x 0.4; a digit of a wide font of 11 points measures
    # 0.64 of its size (DejaVu Sans, from its own tables), with which programs measure columns.
    wide = book["Assumptions"].column_dimensions["A"].width
    assert book["Assumptions"].page_setup.orientation == "portrait"
    assert wide * 0.64 * 11 / 72 <= 8.5 - 2 * 0.4
