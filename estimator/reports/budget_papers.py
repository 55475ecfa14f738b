"""The list set against what the show may cost, and what would save most."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.bill import NO_FUNDS, Bill, Funds, bill_of
from estimator.estimated import Estimate
from estimator.measure import decimal_text
from estimator.prices import money_text, to_the_coin
from estimator.reports.tables import Column, Format, Table
from estimator.reports.units import tape_unit
from estimator.would_save import would_save

NONE_SAVES = (
    "Nothing that was looked at would save money: another width where one is fixed, a close layout "
    "where rows are asked for, open fabric where it is folded, a join in a run of trim on cards or "
    "spools, more shops where the fewest are gone to."
)


def account(estimate: Estimate) -> Bill | None:
    """The list with tax and contingency; None where the show states nothing of its budget."""
    funds = estimate.job.funds
    if funds == NO_FUNDS:
        return None
    return bill_of(estimate.cost, funds, estimate.currency, estimate.charges)


def budget_table(estimate: Estimate) -> Table | None:
    """What the list comes to in all, and what is left of the ceiling; None without a budget."""
    bill = account(estimate)
    if bill is None:
        return None
    notes = []
    if estimate.unpriced:
        lack = "1 item has" if estimate.unpriced == 1 else f"{estimate.unpriced} items have"
        notes.append(f"{lack} no price and will come on top.")
    if bill.left is not None and bill.left < 0:
        over = money_text(-bill.left, estimate.currency)
        notes.append(f"It is {over} {estimate.currency} over the ceiling.")
    return Table(
        title="The budget",
        columns=(
            Column("", wide=40),
            _money("Money", estimate),
        ),
        rows=tuple(
            (name, to_the_coin(amount, estimate.currency))
            for name, amount in _rows(bill, estimate.job.funds)
        ),
        unit=tape_unit(estimate),
        notes=tuple(notes),
    )


def _money(heading: str, estimate: Estimate) -> Column:
    money = f"{heading} ({estimate.currency})" if estimate.currency else heading
    return Column(money, Format.MONEY)


def _rows(bill: Bill, funds: Funds) -> Iterator[tuple[str, Decimal]]:
    yield "Goods on the list", bill.goods
    if bill.charges:
        yield "Going to the shops", bill.charges
    if funds.tax:
        yield f"Tax, {_percent(funds.tax)} of the goods", bill.tax
    if funds.contingency:
        yield f"Contingency, {_percent(funds.contingency)} of all that", bill.contingency
    yield "Still to spend", bill.in_all
    if bill.spent:
        yield "Spent already", bill.spent
        yield "In all", bill.in_all + bill.spent
    if funds.budget is not None and bill.left is not None:
        yield "Ceiling", funds.budget
        yield ("Left" if bill.left >= 0 else "Over"), abs(bill.left)


def _percent(share: Fraction) -> str:
    return f"{decimal_text(share * 100, 2)} %"


def savings_table(estimate: Estimate) -> Table | None:
    """What would save most; None without a budget."""
    if estimate.job.funds == NO_FUNDS:
        return None
    rows: tuple[tuple[str, Decimal], ...] = tuple(
        (one.change, one.money) for one in would_save(estimate)
    )
    return Table(
        title="What would save most",
        columns=(Column("Change", wide=40), _money("Saves", estimate)),
        rows=rows,
        unit=tape_unit(estimate),
        notes=("Each by itself, bought new.",) if rows else (NONE_SAVES,),
    )
