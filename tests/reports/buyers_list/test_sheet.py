"""The buyer's list in the spreadsheet: read back cell by cell, and reckoned by a formula engine."""

from __future__ import annotations

import warnings
from collections.abc import Callable, Iterable
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet
from pycel import ExcelCompiler

from estimator import Estimate, estimate
from estimator.bill import NO_FUNDS, Funds, bill_of
from estimator.measure import Length
from estimator.reports.buyers_list.columns import COLUMNS, LETTER_OF, LIST_SHEET, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.plans import plan
from tests.reports.filled_lists import (
    at,
    free_row,
    needs_office,
    row_of,
    said,
    saved_by_office,
    sum_row,
    the_list,
)

DRESS = """
[garment]
name = "harbour dress"
currency = "USD"
note = "=Wash it first"
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
ITEMS = ["lawn", "fusible", "braid", "cuff elastic", "button"]
FUNDS = Funds(Decimal(90), Fraction(33, 400), Fraction(1, 10))
Reckon = Callable[[str, str], Any]


@pytest.fixture(scope="module")
def dress() -> Estimate:
    return estimate(plan(DRESS))


@pytest.fixture(scope="module")
def path(dress: Estimate, tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("list") / "list.xlsx"
    write_list(dress, found, FUNDS)
    return found


@pytest.fixture
def sheet(path: Path) -> Worksheet:
    return the_list(path)[1]


def reckoned(path: Path) -> Reckon:
    """What a formula engine that shares no code with the program makes of a cell of the list."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        engine = ExcelCompiler(str(path))

    def result(item: str, heading: str) -> Any:
        return engine.evaluate(f"'{LIST_SHEET}'!{address(path, item, heading)}")

    return result


def reckoned_by_office(path: Path) -> Reckon:
    """What LibreOffice makes of a cell of the list."""
    with TemporaryDirectory() as folder:
        saved = load_workbook(saved_by_office(path, Path(folder)), data_only=True)[LIST_SHEET]

    def result(item: str, heading: str) -> Any:
        value = saved[address(path, item, heading)].value
        return "" if value is None else value

    return result


def address(path: Path, item: str, heading: str) -> str:
    sheet = the_list(path)[1]
    name = item.removeprefix("sum ")
    row = sum_row(sheet, name) if name != item else row_of(sheet, item)
    return f"{LETTER_OF[heading]}{row}"


ENGINES = pytest.mark.parametrize(
    "reckoned",
    [
        pytest.param(reckoned, id="a formula engine"),
        pytest.param(reckoned_by_office, id="a spreadsheet program", marks=needs_office),
    ],
)


def money(value: Any) -> Decimal:
    return Decimal(str(value)).quantize(Decimal("0.01"))


def written(text: str, folder: Path, funds: Funds = NO_FUNDS) -> Path:
    path = folder / "list.xlsx"
    write_list(estimate(plan(text)), path, funds)
    return path


def test_each_thing_to_buy_is_a_line_with_the_figures_of_the_estimate(
    dress: Estimate, sheet: Worksheet
) -> None:
    assert [line.title for line in dress.purchases] == ITEMS
    for line in dress.purchases:
        assert Fraction(str(at(sheet, line.title, "Buy").value)) == line.buy.sold_units
        assert at(sheet, line.title, "Unit").value == line.buy.unit
        assert at(sheet, line.title, "Key").value == line.key
        price = at(sheet, line.title, "Price").value
        assert (None if price is None else Decimal(str(price))) == line.buy.offer.price


def test_needed_is_never_shown_below_what_is_needed_and_never_above_what_is_bought(
    dress: Estimate, sheet: Worksheet
) -> None:
    for line in dress.purchases:
        if isinstance(line.needed, Length):
            shown = Fraction(str(at(sheet, line.title, "Needed").value))
            unit = line.buy.offer.sold_by.length
            assert line.needed / unit <= shown <= line.buy.sold_units


def test_lines_stand_in_the_order_in_which_a_shop_is_walked_and_sort_back_into_it(
    sheet: Worksheet,
) -> None:
    parts = [str(at(sheet, item, "Part of the shop").value) for item in ITEMS]
    assert parts == sorted(parts)
    assert parts == ["1 Fabrics", "2 Linings and interfacings", "3 Trims", "4 Elastics",
                     "5 Notions"]  # fmt: skip
    assert sheet.auto_filter.ref == f"A3:{LETTER_OF['Key']}{sum_row(sheet, '1 Fabrics') - 1}"


@ENGINES
def test_whoever_reckons_the_list_comes_to_the_sums_of_the_estimate(
    reckoned: Callable[[Path], Reckon], dress: Estimate, path: Path
) -> None:
    result = reckoned(path)
    bill = bill_of(dress.cost, FUNDS, "USD")
    for line in dress.purchases:
        cost = result(line.title, "Cost")
        assert (None if cost == "" else money(cost)) == line.buy.cost
    assert money(result("sum total", "Cost")) == bill.goods == dress.cost
    assert money(result("sum tax", "Cost")) == bill.tax
    assert money(result("sum contingency", "Cost")) == bill.contingency
    assert money(result("sum in all", "Cost")) == bill.in_all
    assert money(result("sum left", "Cost")) == bill.left
    assert result("sum unpriced", "Cost") == dress.unpriced == 1
    parts = ["1 Fabrics", "2 Linings and interfacings", "3 Trims", "4 Elastics", "5 Notions"]
    assert sum(money(result(f"sum {part}", "Cost")) for part in parts) == dress.cost
    assert money(result("sum 3 Trims", "Cost")) == dress.purchases[2].buy.cost
    assert result("sum other", "Cost") == 0


@ENGINES
def test_what_is_ticked_or_filled_in_is_paid_and_differs_from_what_was_planned(
    reckoned: Callable[[Path], Reckon], dress: Estimate, tmp_path: Path
) -> None:
    path = tmp_path / "list.xlsx"
    write_list(dress, path, FUNDS)
    book, sheet = the_list(path)
    at(sheet, "lawn", "Actual price").value = 7.99
    at(sheet, "fusible", "Actual quantity").value = 2
    at(sheet, "fusible", "Actual price").value = 3.25
    at(sheet, "button", "Got it").value = "☑"
    at(sheet, "braid", "Actual quantity").value = 5
    own = free_row(sheet)
    for heading, value in (("Item", "chalk"), ("Buy", 3), ("Price", 0.4), ("Got it", "☑")):
        sheet.cell(own, NUMBER_OF[heading]).value = value  # type: ignore[assignment]
    book.save(path)
    result = reckoned(path)
    lawn = next(line for line in dress.purchases if line.title == "lawn")
    for_lawn = money(float(lawn.buy.sold_units) * 7.99)
    assert money(result("lawn", "Paid")) == for_lawn
    assert money(result("lawn", "Difference")) == for_lawn - (lawn.buy.cost or 0)
    assert money(result("fusible", "Paid")) == Decimal("6.50")
    assert result("fusible", "Difference") == ""
    # three packs of three for seven buttons: 3 x 2.35
    assert money(result("button", "Paid")) == Decimal("7.05")
    assert money(result("button", "Difference")) == 0
    # 5 yd at 1.13, as planned
    assert money(result("braid", "Paid")) == Decimal("5.65")
    assert result("cuff elastic", "Paid") == ""
    paid = for_lawn + Decimal("6.50") + Decimal("7.05") + Decimal("5.65") + Decimal("1.20")
    assert money(result("sum total", "Paid")) == paid
    assert money(result("sum other", "Paid")) == Decimal("1.20")
    taxed = paid + money(paid * Decimal("0.0825"))
    assert money(result("sum left", "Paid")) == 90 - taxed


def test_lines_may_be_sorted_and_the_sums_stay(dress: Estimate, tmp_path: Path) -> None:
    path = tmp_path / "list.xlsx"
    write_list(dress, path)
    book, sheet = the_list(path)
    first, last = row_of(sheet, "lawn"), row_of(sheet, "button")
    reckoned_headings = {NUMBER_OF[one.heading] for one in COLUMNS if one.reckoned}
    rows = [[cell.value for cell in sheet[row]] for row in range(first, last + 1)]
    for row, values in zip(range(first, last + 1), reversed(rows), strict=True):
        for column, value in enumerate(values, start=1):
            if column not in reckoned_headings:  # a program that sorts moves these with their row
                sheet.cell(row, column).value = value
    book.save(path)
    result = reckoned(path)
    assert money(result("sum total", "Cost")) == dress.cost
    assert money(result("sum 1 Fabrics", "Cost")) == dress.purchases[0].buy.cost


def test_yards_are_numbers_shown_as_fractions_and_metres_have_two_decimals(
    sheet: Worksheet,
) -> None:
    assert at(sheet, "lawn", "Buy").number_format in ("# ?/?", "0")
    assert at(sheet, "fusible", "Buy").number_format == "# ?/?"
    assert at(sheet, "button", "Buy").number_format == "0"
    assert isinstance(at(sheet, "lawn", "Buy").value, int | float)


def test_what_may_be_bought_instead_stands_beside_the_line(tmp_path: Path) -> None:
    text = DRESS.replace(
        'widths = [{ width = "44 in", price = "8.49 per yd" }]',
        'price = "8.49 per yd"\nwidths = ["44 in", "66 in"]',
    )
    sheet = the_list(written(text, tmp_path))[1]
    assert str(at(sheet, "lawn", "Instead").value).startswith("66 in: ")
    assert at(sheet, "lawn", "Width").value == "44 in"


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


def test_a_price_finer_than_a_cent_is_shown_with_all_its_decimals(tmp_path: Path) -> None:
    # The format shows two decimals, and up to four more where the price has them.
    cell = at(the_list(written(DRESS.replace("8.49", "1.234"), tmp_path))[1], "lawn", "Price")
    assert (cell.value, cell.number_format) == (1.234, "#,##0.00####")


@pytest.mark.parametrize(
    ("currency", "style", "digits"), [("JPY", "#,##0", 0), ("KWD", "#,##0.000", 3)]
)
def test_money_has_the_decimals_of_its_currency(
    tmp_path: Path, currency: str, style: str, digits: int
) -> None:
    text = DRESS.replace("USD", currency)
    path = written(text, tmp_path)
    assert at(the_list(path)[1], "lawn", "Cost").number_format == style
    cost = estimate(plan(text)).cost
    assert -int(cost.as_tuple().exponent) == digits
    assert Decimal(str(reckoned(path)("sum total", "Cost"))).quantize(cost) == cost


def test_only_what_people_fill_in_is_open_and_there_is_no_password(sheet: Worksheet) -> None:
    assert sheet.protection.sheet
    assert sheet.protection.password is None
    assert not sheet.protection.autoFilter  # False is: not forbidden
    assert not sheet.protection.sort
    open_ = {one.heading for one in COLUMNS if not at(sheet, "lawn", one.heading).protection.locked}
    assert open_ == {"Got it", "Actual quantity", "Actual price", "Your notes"}
    assert not at(sheet, "fusible", "Price").protection.locked
    own = {one.heading for one in COLUMNS
           if sheet.cell(free_row(sheet), NUMBER_OF[one.heading]).protection.locked}  # fmt: skip
    assert own == {"Cost", "Paid", "Difference", "Key"}


def test_every_cell_that_takes_a_number_or_a_choice_is_checked(sheet: Worksheet) -> None:
    checks = {
        str(span): (check.type, check.error)
        for check in sheet.data_validations.dataValidation
        for span in check.sqref.ranges
    }
    last = sum_row(sheet, "1 Fabrics") - 1
    for heading, kind in (
        ("Got it", "list"), ("Part of the shop", "list"), ("Actual quantity", "decimal"),
        ("Actual price", "decimal"), ("Price", "decimal"),
    ):  # fmt: skip
        found, told = checks[f"{LETTER_OF[heading]}4:{LETTER_OF[heading]}{last}"]
        assert found == kind
        assert told
    assert checks[f"{LETTER_OF['Price']}{sum_row(sheet, 'tax')}"][0] == "decimal"
    assert checks[f"{LETTER_OF['Cost']}{sum_row(sheet, 'budget')}"][0] == "decimal"


def test_a_phone_shows_what_to_buy_without_being_pushed_about(sheet: Worksheet) -> None:
    # a phone is about 390 points wide, and a digit of a spreadsheet's usual font 7
    shown = ["Got it", "Item", "Buy", "Unit", "Colour, swatch"]
    assert [one.heading for one in COLUMNS[:5]] == shown
    assert sum(sheet.column_dimensions[LETTER_OF[one]].width for one in shown) * 7 <= 390
    assert sheet.freeze_panes == f"{LETTER_OF['Buy']}4"


@pytest.mark.parametrize(("unit", "paper"), [("in", 1), ("cm", 9)])
def test_the_list_prints_on_letter_or_a4_with_all_its_columns_and_headings_repeated(
    tmp_path: Path, unit: str, paper: int
) -> None:
    # 1 and 9 are letter and A4 in ECMA-376 part 1, 18.3.1.63
    sheet = the_list(written(DRESS.replace("note =", f'unit = "{unit}"\nnote ='), tmp_path))[1]
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


def test_no_needed_length_is_too_long_for_its_column(tmp_path: Path) -> None:
    # 60 rows take 97 1/8 yd, so that 70 take more than 100
    text = DRESS.replace('name = "button"', 'name = "cone"').replace("quantity = 7", "quantity = 1")
    text = text.replace(
        'price = "1.13 per yd"', 'rows = 70\nsold = [{ put_up = "reel of 500 yd" }]'
    )
    sheet = the_list(written(text, tmp_path))[1]
    cell = at(sheet, "braid", "Needed")
    assert isinstance(cell.value, int)
    assert cell.value > 100
    assert cell.number_format == '0 "yd"'
