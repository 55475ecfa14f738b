"""The list set against what the show may cost, and what would save most."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.budget import Account, account_of
from estimator.estimate import Estimate
from estimator.measure import decimal_text
from estimator.reports.tables import Column, Format, Table, Value
from estimator.reports.units import tape_unit
from estimator.would_save import would_save

NONE_SAVES = (
    "Nothing that was looked at would save money: another width where one is fixed, a close layout "
    "where rows are asked for, more shops where the fewest are gone to."
)


def account(estimate: Estimate) -> Account | None:
    """The list with tax and contingency; None where the show states no budget."""
    budget = estimate.job.budget
    return account_of(budget, estimate.cost, estimate.charges) if budget else None


def budget_table(estimate: Estimate) -> Table | None:
    """What the list comes to in all, and what is left of the ceiling; None without a budget."""
    figures, budget = account(estimate), estimate.job.budget
    if figures is None or budget is None:
        return None
    notes = []
    if estimate.unpriced:
        lack = "1 item has" if estimate.unpriced == 1 else f"{estimate.unpriced} items have"
        notes.append(f"{lack} no price and will come on top.")
    if figures.left is not None and figures.left < 0:
        notes.append(f"It is {-figures.left:.2f} {estimate.currency} over the ceiling.")
    return Table(
        title="The budget",
        columns=(
            Column("", wide=40),
            Column(f"Money ({estimate.currency})" if estimate.currency else "Money", Format.MONEY),
        ),
        rows=tuple(_rows(figures, budget.tax, budget.contingency)),
        unit=tape_unit(estimate),
        notes=tuple(notes),
    )


def _rows(figures: Account, tax: Fraction, contingency: Fraction) -> Iterator[tuple[Value, ...]]:
    yield "Goods on the list", figures.goods
    if figures.charges:
        yield "Going to the shops", figures.charges
    if tax:
        yield f"Tax, {_percent(tax)} of the goods", figures.tax
    if contingency:
        yield f"Contingency, {_percent(contingency)} of all that", figures.contingency
    yield "Still to spend", figures.to_spend
    if figures.spent:
        yield "Spent already", figures.spent
        yield "In all", figures.in_all
    if figures.ceiling is not None and figures.left is not None:
        yield "Ceiling", figures.ceiling
        yield ("Left" if figures.left >= 0 else "Over"), abs(figures.left)


def _percent(share: Fraction) -> str:
    return f"{decimal_text(share * 100, 2)} %"


def savings_table(estimate: Estimate) -> Table | None:
    """What would save most; None without a budget."""
    if estimate.job.budget is None:
        return None
    rows: tuple[tuple[str, Decimal], ...] = tuple(
        (one.change, one.money) for one in would_save(estimate)
    )
    return Table(
        title="What would save most",
        columns=(Column("Change", wide=40), Column("Saves", Format.MONEY)),
        rows=rows,
        unit=tape_unit(estimate),
        notes=("Each by itself, bought new.",) if rows else (NONE_SAVES,),
    )
