"""Tax, contingency and budget on top of what a list costs."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator import Refused
from estimator.bill import Funds, bill_of, read_funds


def test_tax_is_on_the_goods_and_contingency_on_both() -> None:
    # 80.00 and 8.25 % are 86.60; 10 % of that 8.66; 95.26 in all, and 4.74 are left of 100
    bill = bill_of(Decimal("80.00"), read_funds("100", "8.25 %", "10 %"), "USD")
    assert (bill.tax, bill.contingency) == (Decimal("6.60"), Decimal("8.66"))
    assert (bill.in_all, bill.left) == (Decimal("95.26"), Decimal("4.74"))


def test_a_budget_that_does_not_reach_is_left_below_zero() -> None:
    assert bill_of(Decimal("80"), Funds(budget=Decimal(75)), "USD").left == Decimal(-5)


def test_what_is_not_stated_adds_nothing() -> None:
    bill = bill_of(Decimal("79.72"), read_funds("", "", ""), "USD")
    assert (bill.in_all, bill.left) == (Decimal("79.72"), None)


@pytest.mark.parametrize(("currency", "tax"), [("JPY", "83"), ("USD", "82.50"), ("KWD", "82.500")])
def test_tax_comes_to_the_least_coin_of_the_currency_halves_up(currency: str, tax: str) -> None:
    bill = bill_of(Decimal(1000), Funds(tax=Fraction(825, 10_000)), currency)
    assert bill.tax == Decimal(tax)
    assert f"{bill.tax:f}" == tax


def test_every_amount_that_cannot_be_read_is_complained_of() -> None:
    with pytest.raises(Refused) as refused:
        read_funds("much", "8", "0,5 %")
    told = [str(fault) for fault in refused.value.faults]
    assert len(told) == 2
    assert told[0].startswith("--budget: 'much' is not an amount of money")
    assert "percentage" in told[1]
