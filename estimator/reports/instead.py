"""What may be bought instead, in words: other widths, shops and put-ups, each with its quantity."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.buying.types import Buy, Purchase
from estimator.estimated import Estimate
from estimator.measure import Length
from estimator.put_up import PutUp
from estimator.reports.tables import Sold
from estimator.reports.units import width_text

MOST_TOLD = 4
Counter = tuple[str, Length | None, PutUp]
"""Where in which shop a thing is had: the shop, its width and its put-up."""
Way = tuple[Buy, ...]


def instead_of(purchase: Purchase, estimate: Estimate) -> tuple[str, ...]:
    """The other ways to buy a line, the cheapest first: ``58 in: 3 1/4 yd, 36.56, Weir Lane``.

    One way for each shop, width and put-up; what is bought itself is none of them.
    """
    best: dict[tuple[Counter, ...], Way] = {}
    for way in sorted(purchase.others, key=_cheapest_first):
        best.setdefault(tuple(map(_counter, way)), way)
    best.pop((_counter(purchase.buy),), None)
    told = [_told(way, purchase, estimate) for way in best.values()]
    return tuple(dict.fromkeys(told))[:MOST_TOLD]


def _counter(buy: Buy) -> Counter:
    return buy.offer.shop, buy.offer.width, buy.offer.put_up


def _cost(way: Way) -> Decimal | None:
    costs = [buy.cost for buy in way if buy.cost is not None]
    return sum(costs, Decimal(0)) if len(costs) == len(way) else None


def _cheapest_first(way: Way) -> tuple[bool, Decimal, Fraction]:
    cost = _cost(way)
    return (cost is None, cost or Decimal(0), sum((buy.amount for buy in way), Fraction(0)))


def _told(way: Way, purchase: Purchase, estimate: Estimate) -> str:
    quantities = " and ".join(_quantity(buy, purchase, estimate) for buy in way)
    cost = _cost(way)
    shops = dict.fromkeys(buy.offer.shop for buy in way if buy.offer.shop)
    return ", ".join(filter(None, (quantities, "" if cost is None else f"{cost:f}", *shops)))


def _quantity(buy: Buy, purchase: Purchase, estimate: Estimate) -> str:
    offer = buy.offer
    count = Sold(buy.sold_units, buy.unit).text
    packed = not offer.put_up.cut_to_length
    quantity = f"{count} × {buy.unit}" if packed else f"{count} {buy.unit}"
    if buy.unit == "each":
        quantity = f"{count} singly"
    if offer.width is not None and offer.width != purchase.buy.offer.width:
        return f"{width_text(offer.width, offer.sold_by, estimate)}: {quantity}"
    return quantity
