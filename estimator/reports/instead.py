"""What may be bought instead, in words: other widths, shops and put-ups, each with its quantity."""

from __future__ import annotations

from estimator.buying.types import Buy, Purchase
from estimator.catalog import PutUp
from estimator.estimate import Estimate
from estimator.measure import Length
from estimator.reports.tables import Sold
from estimator.reports.units import width_text

MOST_TOLD = 4
Counter = tuple[str, Length | None, PutUp]
"""Where in which shop a thing is had: the shop, its width and its put-up."""


def instead_of(purchase: Purchase, estimate: Estimate) -> tuple[str, ...]:
    """The other ways to buy a line, the cheapest first: ``58 in: 3 1/4 yd, 36.56, Weir Lane``.

    One way for each shop, width and put-up; what is bought itself is none of them.
    """
    best: dict[Counter, Buy] = {}
    for way in sorted(purchase.others, key=_cheapest_first):
        best.setdefault(_counter(way), way)
    best.pop(_counter(purchase.buy), None)
    told = [_told(way, purchase, estimate) for way in best.values()]
    return tuple(dict.fromkeys(told))[:MOST_TOLD]


def _counter(way: Buy) -> Counter:
    return way.offer.shop, way.offer.width, way.offer.put_up


def _cheapest_first(way: Buy) -> tuple[bool, object, object]:
    return (way.cost is None, way.cost or 0, way.amount)


def _told(way: Buy, purchase: Purchase, estimate: Estimate) -> str:
    offer = way.offer
    packed = not offer.put_up.cut_to_length and way.unit != "each"
    quantity = f"{Sold(way.sold_units, way.unit).text} {'× ' if packed else ''}{way.unit}"
    if offer.width is not None and offer.width != purchase.buy.offer.width:
        quantity = f"{width_text(offer.width, offer.sold_by, estimate)}: {quantity}"
    cost = "" if way.cost is None else f"{way.cost:f}"
    return ", ".join(filter(None, (quantity, cost, offer.shop)))
