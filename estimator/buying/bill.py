"""The bill of a whole list: tax, contingency, and what is left of a budget."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any

from estimator.faults import Faults
from estimator.prices import to_the_coin
from estimator.written import read_money, read_share


@dataclass(frozen=True, slots=True)
class Funds:
    """What is set aside, and what comes on top of prices; shares are of 1, None is not stated."""

    budget: Decimal | None = None
    tax: Fraction | None = None
    contingency: Fraction | None = None


NO_FUNDS = Funds()


def read_funds(budget: str, tax: str, contingency: str) -> Funds:
    """Reads amounts and shares as people write them, nothing for what is not stated.

    Raises Refused with every complaint.
    """
    faults = Faults()
    found: dict[str, Any] = {}
    for name, written, read in (
        ("budget", budget, read_money),
        ("tax", tax, read_share),
        ("contingency", contingency, read_share),
    ):
        with faults.about(f"--{name}"):
            found[name] = read(written) if written else None
    faults.refuse_if_any()
    return Funds(**found)


@dataclass(frozen=True, slots=True)
class Bill:
    """Amounts to the least coin. ``left`` is below zero where the budget does not reach."""

    goods: Decimal
    tax: Decimal
    contingency: Decimal
    in_all: Decimal
    left: Decimal | None


def bill_of(goods: Decimal, funds: Funds, currency: str) -> Bill:
    """Tax on the goods, contingency on both together, and what the budget leaves."""
    tax = to_the_coin(Fraction(goods) * (funds.tax or 0), currency)
    contingency = to_the_coin(Fraction(goods + tax) * (funds.contingency or 0), currency)
    in_all = goods + tax + contingency
    left = None if funds.budget is None else funds.budget - in_all
    return Bill(goods, tax, contingency, in_all, left)
