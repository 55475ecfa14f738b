"""The bill of a whole list: tax, contingency, and what is left of a budget."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

from estimator.faults import Faults
from estimator.prices import to_the_coin
from estimator.written import read_money, read_share


@dataclass(frozen=True, slots=True)
class Funds:
    """What is set aside, what is spent of it already, and what comes on top of prices.

    Shares are of 1; None is not stated.
    """

    budget: Decimal | None = None
    tax: Fraction | None = None
    contingency: Fraction | None = None
    spent: Decimal | None = None

    def or_else(self, others: Funds) -> Funds:
        """These, and of the ``others`` what is not stated here."""
        return replace(
            self,
            budget=others.budget if self.budget is None else self.budget,
            tax=others.tax if self.tax is None else self.tax,
            contingency=others.contingency if self.contingency is None else self.contingency,
            spent=others.spent if self.spent is None else self.spent,
        )


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
    """Amounts to the least coin; ``in_all`` is without what is ``spent`` already.

    ``charges`` are what the shops take for a visit or a delivery. ``left`` is below zero where the
    budget does not reach.
    """

    goods: Decimal
    charges: Decimal
    tax: Decimal
    contingency: Decimal
    in_all: Decimal
    spent: Decimal
    left: Decimal | None


NO_CHARGES = Decimal(0)


def bill_of(goods: Decimal, funds: Funds, currency: str, charges: Decimal = NO_CHARGES) -> Bill:
    """Tax on the goods, contingency on all with charges and tax, and what the budget leaves."""
    tax = to_the_coin(Fraction(goods) * (funds.tax or 0), currency)
    before = goods + charges + tax
    contingency = to_the_coin(Fraction(before) * (funds.contingency or 0), currency)
    in_all, spent = before + contingency, funds.spent or Decimal(0)
    left = None if funds.budget is None else funds.budget - in_all - spent
    return Bill(goods, charges, tax, contingency, in_all, spent, left)
