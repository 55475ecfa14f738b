"""The shopping list as a typed table, grouped as a shop is walked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil

from estimator.bill import NO_FUNDS, Funds, bill_of
from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import MANY, Length, Unit, Units, shop_text
from estimator.needs.types import Group
from estimator.prices import money_text
from estimator.reports.bolt_widths import narrowest_text
from estimator.reports.instead import instead_of
from estimator.reports.left_over import left_over
from estimator.reports.stash_papers import stash_note
from estimator.reports.tables import Sold
from estimator.reports.units import tape_unit, units_asked, width_text
from estimator.reports.uses import use_of

NOTHING = "There is nothing to buy."


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the list, as every paper shows it.

    ``instead`` is what else may be bought; ``shop`` names the shelf as well.
    """

    key: str
    group: Group
    item: str
    colour: str
    note: str
    instead: tuple[str, ...]
    width: str
    needed: Sold
    buy: Sold
    unit_price: Decimal | None
    cost: Decimal | None
    shop: str

    def shelf_in(self, part: str) -> str:
        """Where it lies, without the shop's name below that name as the title of a part."""
        return self.shop.removeprefix(part).removeprefix(", ")


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
    return (f"Thread is not estimated for {names}: the plan names no thread.",)


def notes_of(estimate: Estimate) -> tuple[str, ...]:
    """What shows say of themselves and plans of their garments; each of several names its own."""
    garments = [order.plan.garment for order in estimate.job.garments]
    alone = len(garments) == 1
    notes = [one.note if alone else f"{one.name}: {one.note}" for one in garments if one.note]
    return tuple(dict.fromkeys([*estimate.job.notes, *notes]))


FROM_STASH = "From the stash"
NO_SHOP = "Where you like"
"""What is bought of offers that name no shop."""


def sections(estimate: Estimate) -> tuple[Section, ...]:
    """The list in the order of the shop; parts with nothing to buy are left out.

    Where several shops are gone to, it is a list for each of them.
    """
    shops = {one.buy.offer.shop for one in estimate.purchases if one.buy.bought}
    if len(shops) > 1:
        return tuple(_by_shop(estimate))
    found = []
    for group in Group:
        lines = tuple(_line(one, estimate) for one in estimate.purchases if one.group is group)
        if lines:
            found.append(Section(group.value, lines))
    return tuple(found)


def _by_shop(estimate: Estimate) -> Iterator[Section]:
    """A section for each shop, in the order of their names; what costs nothing comes last."""
    lines: dict[str, list[Line]] = {}
    for one in estimate.purchases:
        shop = (one.buy.offer.shop or NO_SHOP) if one.buy.bought else FROM_STASH
        lines.setdefault(shop, []).append(_line(one, estimate))
    last = (NO_SHOP, FROM_STASH)
    for shop in sorted(lines, key=lambda name: (name in last, name == FROM_STASH, name)):
        yield Section(shop, tuple(lines[shop]))


def _line(purchase: Purchase, estimate: Estimate) -> Line:
    buy = purchase.buy
    return Line(
        key=purchase.key,
        group=purchase.group,
        item=purchase.title,
        colour=purchase.colour,
        note="; ".join(_notes(purchase, estimate)),
        width=_width(purchase, estimate),
        instead=instead_of(purchase, estimate),
        needed=_needed(purchase, units_asked(estimate)),
        buy=Sold(buy.sold_units, buy.unit),
        unit_price=buy.offer.price_per_sold_unit,
        cost=buy.cost,
        shop=", ".join(filter(None, (buy.offer.shop, buy.offer.shelf))),
    )


def _width(purchase: Purchase, estimate: Estimate) -> str:
    """A width reads as the shop names it: metric where the cloth is sold by the metre."""
    if purchase.width is None:
        return ""
    cut = isinstance(purchase.buy.bought, Length)
    sold_by = purchase.buy.offer.sold_by if cut else tape_unit(estimate).shop
    return width_text(purchase.width, sold_by, estimate)


def _notes(purchase: Purchase, estimate: Estimate) -> Iterator[str]:
    use = use_of(purchase, estimate)
    if use:
        yield f"for {use}"
    yield from filter(None, (stash_note(purchase, tape_unit(estimate)),))
    yield from purchase.notes
    yield from left_over(purchase, estimate)
    buy, tape = purchase.buy, tape_unit(estimate)
    if (
        units_asked(estimate)
        and isinstance(buy.bought, Length)
        and buy.offer.sold_by.metric != tape.metric
    ):
        said = shop_text(buy.bought, buy.offer.sold_by)
        yield f"{said} are {shop_text(buy.bought, tape.shop)}"
    for choice in estimate.fabrics:
        if choice.need.sources == purchase.sources and purchase.buy.bought:
            yield narrowest_text(choice, estimate)


def _needed(purchase: Purchase, asked: Units | None) -> Sold:
    """What is needed, in the unit that is bought where that is a length, else in its own.

    Where papers are asked for in other units, it is in those. Yards go up to the
    next sixteenth, as they are bought in fractions too; of many on put-ups, to the next whole one.
    """
    needed, buy = purchase.needed, purchase.buy
    if isinstance(needed, int):
        return Sold(Fraction(needed), "")
    shop = buy.offer.sold_by if isinstance(buy.bought, Length) else None
    asked_shop = asked.tape_beside(shop or Unit.YD).shop if asked else None
    if isinstance(buy.bought, Length) and asked_shop in (None, shop):
        bought = Sold(buy.sold_units, buy.unit)
        exact = Sold(needed / buy.offer.sold_by.length, buy.unit)
        return exact.in_next_sixteenth if bought.in_sixteenths else exact
    unit = asked_shop or (Unit.M if buy.offer.put_up.metric else Unit.YD)
    amount = needed / unit.length
    if amount > MANY:
        return Sold(Fraction(ceil(amount)), unit.symbol)
    return Sold(amount, unit.symbol).in_next_sixteenth


def totals(estimate: Estimate, funds: Funds = NO_FUNDS) -> tuple[str, ...]:
    """The sum of the list in words, how much of it has no price, and what a budget leaves."""
    return (*_totals(estimate), *_in_all(estimate, funds))


def _in_all(estimate: Estimate, funds: Funds) -> Iterator[str]:
    """What it comes to with all that was stated beyond the prices; nothing where none was."""
    if funds == NO_FUNDS or estimate.unpriced == len(estimate.purchases):
        return
    currency = estimate.currency
    bill = bill_of(estimate.cost, funds, currency, estimate.charges)
    beyond = [
        f"{name} {money_text(amount, currency)}"
        for name, amount in (("tax", bill.tax), ("contingency", bill.contingency))
        if amount
    ]
    if beyond:
        whole = f"{money_text(bill.in_all, currency)} {currency}"
        yield f"In all {whole}, with {' and '.join(beyond)}."
    if bill.left is None:
        return
    spent = f", with {money_text(bill.spent, currency)} spent already" if bill.spent else ""
    if bill.left >= 0:
        yield f"{money_text(bill.left, currency)} {currency} of the budget are left{spent}."
    else:
        over = f"{money_text(-bill.left, currency)} {currency}"
        yield f"That is {over} more than the budget{spent}."


def _totals(estimate: Estimate) -> tuple[str, ...]:
    count, unpriced = sum(1 for one in estimate.purchases if one.buy.bought), estimate.unpriced
    if not count and estimate.purchases:
        return (f"{NOTHING[:-1]}: all of it comes from the stash.",)
    if not count:
        return (NOTHING,)
    if unpriced == count:
        none = "The one item has no" if count == 1 else f"None of the {count} items has a"
        return (f"{none} price.",)
    items = f"{count} item{'s' if count > 1 else ''}"
    currency = estimate.currency
    said = f"Total {money_text(estimate.total, currency)} {currency} for"
    if estimate.charges:
        going = " and ".join(_charging(estimate))
        items += f", {money_text(estimate.charges, currency)} of it for going to {going}"
    if unpriced:
        lack = "has" if unpriced == 1 else "have"
        return (f"{said} {count - unpriced} of {items}; {unpriced} {lack} no price.",)
    return (f"{said} {items}.",)


def _charging(estimate: Estimate) -> Iterator[str]:
    return (one.shop for one in estimate.visits if one.charge)
