"""The sums of the list, reckoned by others: they come to the bill of the estimate."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from estimator import Estimate, estimate
from estimator.bill import bill_of
from estimator.reports.buyers_list.columns import COLUMNS, NUMBER_OF
from estimator.reports.buyers_list.file import write_list
from tests.plans import plan
from tests.reports.filled_lists import at, free_row, row_of, the_list, written
from tests.reports.harbour_dress import DRESS, FUNDS
from tests.reports.reckoned_lists import ENGINES, Reckon, reckoned


def money(value: Any) -> Decimal:
    return Decimal(str(value)).quantize(Decimal("0.01"))


@ENGINES
def test_whoever_reckons_the_list_comes_to_the_sums_of_the_estimate(
    reckoned: Callable[[Path], Reckon], dress: Estimate, dress_list: Path
) -> None:
    result = reckoned(dress_list)
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
