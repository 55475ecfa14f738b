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
from estimator.reports.bolt_widths import narrowest_text
from estimator.reports.tables import Sold
from estimator.reports.units import tape_beside, tape_unit
from estimator.reports.uses import use_of

NOTHING = "There is nothing to buy."


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


def title_of(estimate: Estimate) -> str:
    """The show, or the garments of the job with their numbers."""
    if estimate.job.title:
        return estimate.job.title
    names = []
    for order in estimate.job.garments:
        copies = f" × {order.copies}" if order.copies > 1 else ""
        wearer = f" for {order.wearer}" if order.wearer else ""
        names.append(f"{order.plan.garment.name}{copies}{wearer}")
    return ", ".join(names)


def without_thread(estimate: Estimate) -> tuple[str, ...]:
    """A line for the garments whose plans have no thread table, if there are any."""
    garments = [one.plan.garment.name for one in estimate.job.garments if not one.plan.thread]
    if not garments:
        return ()
    names = ", ".join(dict.fromkeys(garments))
    return (f"Thread is not estimated for {names}: add a [[thread]] table to the plan.",)


def garment_notes(estimate: Estimate) -> tuple[str, ...]:
    """What the plans say of their garments; each names its garment where there are several."""
    garments = [order.plan.garment for order in estimate.job.garments]
    alone = len(garments) == 1
    notes = [one.note if alone else f"{one.name}: {one.note}" for one in garments if one.note]
    return tuple(dict.fromkeys(notes))


def sections(estimate: Estimate) -> tuple[Section, ...]:
    """The list in the order of the shop; parts with nothing to buy are left out."""
    found = []
    for group in Group:
        lines = tuple(_line(one, estimate) for one in estimate.purchases if one.group is group)
        if lines:
            found.append(Section(group.value, lines))
    return tuple(found)


def _line(purchase: Purchase, estimate: Estimate) -> Line:
    buy = purchase.buy
    unit = tape_unit(estimate)
    return Line(
        key=purchase.key,
        item=purchase.title,
        note="; ".join(_notes(purchase, estimate)),
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
        return tape_beside(purchase.buy.offer.sold_by, unit)
    return unit


def _notes(purchase: Purchase, estimate: Estimate) -> Iterator[str]:
    if purchase.colour:
        yield purchase.colour
    use = use_of(purchase, estimate)
    if use:
        yield f"for {use}"
    yield from purchase.notes
    for choice in estimate.fabrics:
        if choice.need.sources == purchase.sources:
            yield narrowest_text(choice, estimate)


def _needed(purchase: Purchase) -> Sold:
    """What is needed, in the unit that is bought where that is a length, else in its own.

    Yards go up to the next sixteenth, as they are bought in fractions too.
    """
    needed, buy = purchase.needed, purchase.buy
    if isinstance(needed, int):
        return Sold(Fraction(needed), "")
    if isinstance(buy.bought, Length):
        bought = Sold(buy.sold_units, buy.unit)
        exact = Sold(needed / buy.offer.sold_by.length, buy.unit)
        return exact.in_next_sixteenth if bought.in_sixteenths else exact
    unit = Unit.M if buy.offer.put_up.metric else Unit.YD
    return Sold(needed / unit.length, unit.symbol).in_next_sixteenth


def totals(estimate: Estimate) -> tuple[str, ...]:
    """The sum of the list in words, and how much of it has no price."""
    count, unpriced = len(estimate.purchases), estimate.unpriced
    if not count:
        return (NOTHING,)
    if unpriced == count:
        none = "The one item has no" if count == 1 else f"None of the {count} items has a"
        return (f"{none} price.",)
    items = f"{count} item{'s' if count > 1 else ''}"
    said = f"Total {estimate.cost:.2f} {estimate.currency} for"
    if unpriced:
        lack = "has" if unpriced == 1 else "have"
        return (f"{said} {count - unpriced} of {items}; {unpriced} {lack} no price.",)
    return (f"{said} {items}.",)
