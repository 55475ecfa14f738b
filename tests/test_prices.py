"""Prices, and money to the least coin of its currency."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator import estimate
from estimator.measure import Unit
from estimator.prices import Price, decimals_of, money_text, read_price, to_the_coin
from estimator.quoting import NotReadable
from estimator.reports.page import page_text
from estimator.reports.terminal import estimate_text
from tests.plans import plan


@pytest.mark.parametrize(
    ("currency", "decimals"), [("USD", 2), ("EUR", 2), ("JPY", 0), ("KWD", 3), ("", 2)]
)
def test_a_currency_has_the_decimals_of_its_minor_unit(currency: str, decimals: int) -> None:
    # ISO 4217, from memory
    assert decimals_of(currency) == decimals


def test_half_a_coin_goes_up_however_the_amount_is_held() -> None:
    assert to_the_coin(Decimal("2.345"), "USD") == Decimal("2.35")
    assert to_the_coin(Fraction(5, 2), "JPY") == 3
    assert money_text(Decimal("1250"), "JPY") == "1250"
    assert money_text(Decimal("1250"), "EUR") == "1250.00"


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("8.50 per yd", Price(Decimal("8.5"), Unit.YD)),
        ("9,20 per m", Price(Decimal("9.2"), Unit.M)),
        ("0.25 per in", Price(Decimal("0.25"), Unit.IN)),
        (" 2.40  each", Price(Decimal("2.4"), None)),
        ("0 each", Price(Decimal(0), None)),
    ],
)
def test_a_price_says_what_it_is_for(written: str, read: Price) -> None:
    assert read_price(written) == read


@pytest.mark.parametrize("written", ["8.50", "per yd", "8.50 yd", "8.50 per", "8.50 / yd", 8.5])
def test_a_price_for_nothing_in_particular_is_refused(written: object) -> None:
    with pytest.raises(NotReadable, match="does not say what the price is for; write it like 8"):
        read_price(written)


def test_a_list_in_yen_has_no_decimals_anywhere() -> None:
    text = """
[garment]
name = "happi"
unit = "cm"
currency = "JPY"
[[notion]]
name = "cord end"
quantity = 3
price = "145 each"
"""
    found = estimate(plan(text))
    assert "Total 435 JPY for 1 item." in estimate_text(found)
    for paper in (estimate_text(found), page_text(found)):
        assert "435" in paper
        assert "435.0" not in paper
