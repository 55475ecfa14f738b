"""The shopping list as a typed table, grouped as a shop is walked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.buying.types import Purchase
from estimator.estimate import Estimate
from estimator.measure import Length, Unit, natural_text
from estimator.needs.types import Group
from estimator.reports.tables import Sold

THREAD = "Thread is not estimated: only the spools that a plan names are listed."


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the list, as every paper shows it."""

    key: str
    item: str
    note: str
    width: str
    needed: Sold
    buy: Sold
    unit_price: Decimal | None
    cost: Decimal | None
    shop: str


@dataclass(frozen=True, slots=True)
class Section:
    """The lines of one part of the shop."""

    title: str
    lines: tuple[Line, ...]


def tape_unit(estimate: Estimate) -> Unit:
    """Inches or centimetres: what the first garment is written in."""
    garments = estimate.job.garments
    return garments[0].plan.garment.unit.tape if garments else Unit.IN


def title_of(estimate: Estimate) -> str:
    """The garments of the job, with their numbers."""
    names = []
    for order in estimate.job.garments:
        copies = f" × {order.copies}" if order.copies > 1 else ""
        wearer = f" for {order.wearer}" if order.wearer else ""
        names.append(f"{order.plan.garment.name}{copies}{wearer}")
    return ", ".join(names)


def sections(estimate: Estimate) -> tuple[Section, ...]:
    """The list in the order of the shop; parts with nothing to buy are left out."""
    unit = tape_unit(estimate)
    found = []
    for group in Group:
        lines = tuple(_line(one, unit) for one in estimate.purchases if one.group is group)
        if lines:
            found.append(Section(group.value, lines))
    return tuple(found)


def _line(purchase: Purchase, unit: Unit) -> Line:
    buy = purchase.buy
    return Line(
        key=purchase.key,
        item=purchase.title,
        note="; ".join(_notes(purchase)),
        width=natural_text(purchase.width, _width_unit(purchase, unit)) if purchase.width else "",
        needed=_needed(purchase),
        buy=Sold(buy.sold_units, buy.unit),
        unit_price=buy.offer.price_per_sold_unit,
        cost=buy.cost,
        shop=buy.offer.shop,
    )


def _width_unit(purchase: Purchase, unit: Unit) -> Unit:
    """A width reads as the shop names it: metric where the cloth is sold by the metre."""
    if isinstance(purchase.buy.bought, Length):
        return purchase.buy.offer.sold_by.tape
    return unit


def _notes(purchase: Purchase) -> Iterator[str]:
    if purchase.colour:
        yield purchase.colour
    uses = ", ".join(name for name in purchase.names if name != purchase.title)
    if uses:
        yield f"for {uses}"
    yield from purchase.notes


def _needed(purchase: Purchase) -> Sold:
    """What is needed, in the unit that is bought where that is a length, else in its own."""
    needed, buy = purchase.needed, purchase.buy
    if isinstance(needed, int):
        return Sold(Fraction(needed), "")
    if isinstance(buy.bought, Length):
        return Sold(needed / buy.offer.sold_by.length, buy.unit)
    unit = Unit.M if buy.offer.put_up.metric else Unit.YD
    return Sold(needed / unit.length, unit.symbol)


def totals(estimate: Estimate) -> tuple[str, ...]:
    """The sum of the list in words, and how much of it has no price."""
    count, unpriced = len(estimate.purchases), estimate.unpriced
    if unpriced == count:
        return (f"None of the {count} items has a price.",)
    said = f"Total {estimate.cost:.2f} {estimate.currency}"
    if unpriced:
        return (f"{said}, without {unpriced} of {count} items that are not priced.",)
    return (f"{said} for {count} items.",)
