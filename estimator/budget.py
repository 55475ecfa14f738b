"""What a show may cost: a ceiling, what is added to the list, and what is spent already."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

CENT = Decimal("0.01")


@dataclass(frozen=True, slots=True)
class Budget:
    """``tax`` is a share of the goods, ``contingency`` one of goods, charges and tax together."""

    ceiling: Decimal | None = None
    contingency: Fraction = Fraction(0)
    tax: Fraction = Fraction(0)
    spent: Decimal = Decimal(0)


@dataclass(frozen=True, slots=True)
class Account:
    """A list set against its budget, each figure to the cent.

    ``left`` is what remains of the ceiling, below zero where it is not enough; None without one.
    """

    goods: Decimal
    charges: Decimal
    tax: Decimal
    contingency: Decimal
    spent: Decimal
    ceiling: Decimal | None

    @property
    def to_spend(self) -> Decimal:
        """What the list asks for, with all that is added to it."""
        return self.goods + self.charges + self.tax + self.contingency

    @property
    def in_all(self) -> Decimal:
        """With what is spent already."""
        return self.to_spend + self.spent

    @property
    def left(self) -> Decimal | None:
        """The ceiling less all of it."""
        return None if self.ceiling is None else self.ceiling - self.in_all


def account_of(budget: Budget, goods: Decimal, charges: Decimal) -> Account:
    """Goods and charges with tax and contingency, which are rounded each to the cent."""
    tax = _share(goods, budget.tax)
    contingency = _share(goods + charges + tax, budget.contingency)
    return Account(goods, charges, tax, contingency, budget.spent, budget.ceiling)


def _share(money: Decimal, share: Fraction) -> Decimal:
    return (money * share.numerator / share.denominator).quantize(CENT, ROUND_HALF_UP)
