"""Where each thing is bought: the shops whose prices and charges come to least, or the fewest.

Every set of shops is tried, up to eight shops; of more, the dearest to keep are left out one by
one, which is not proven to be the least, and the list says so. What has no price may cost
anything, so as few things as can be are had without one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import combinations

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.types import Purchase, total_cost
from estimator.shops import Shops, Visit

MOST_TRIED = 8
Rank = tuple[object, ...]
Set = frozenset[str]


@dataclass(frozen=True, slots=True)
class Supply:
    """One way to have a thing: the lines on which it is bought, and the choice that a fabric is."""

    lines: tuple[Purchase, ...]
    choice: FabricChoice | None = None

    @property
    def shops(self) -> Set:
        """The shops it takes, as far as they are named."""
        return frozenset(
            line.buy.offer.shop for line in self.lines if line.buy.bought and line.buy.offer.shop
        )

    @property
    def unpriced(self) -> bool:
        """Whether a price lacks."""
        return any(line.buy.cost is None for line in self.lines)

    @property
    def cost(self) -> Decimal:
        """What it costs, as far as it has a price."""
        return total_cost(self.lines)

    @property
    def amount(self) -> Fraction:
        """How much is bought, to compare ways without prices."""
        return sum((line.buy.amount for line in self.lines), Fraction(0))


@dataclass(frozen=True, slots=True)
class _Bill:
    """What is bought if only some shops are gone to, and how many things have no price there."""

    ways: tuple[Supply, ...]
    unpriced: int
    total: Decimal
    visited: Set


def at_shops(
    things: Sequence[Sequence[Supply]], shops: Shops
) -> tuple[tuple[Supply, ...], tuple[Visit, ...], bool]:
    """The way each thing is had, the shops visited by name, and whether all sets were tried.

    ``things`` holds for each thing its ways, of which one at least is there; the first goes before
    others that cost as much.
    """
    ranked = [_in_order(ways) for ways in things]
    named = sorted({shop for ways in ranked for way in ways for shop in way.shops})
    all_tried = len(named) <= MOST_TRIED
    if all_tried:
        sets = (
            frozenset(some)
            for count in range(len(named) + 1)
            for some in combinations(named, count)
        )
        bills = [bill for some in sets if (bill := _bill(ranked, some, shops))]
        best = min(bills, key=lambda bill: _rank(bill, shops))
    else:
        best = _leaving_out(ranked, named, shops)
    visits = tuple(Visit(one, _charge(one, shops)) for one in sorted(best.visited))
    return best.ways, visits, all_tried


def _in_order(ways: Sequence[Supply]) -> list[Supply]:
    """The cheapest first; after those with a price the others, what buys least first."""
    return sorted(
        ways,
        key=lambda way: (way.unpriced, Decimal(0) if way.unpriced else way.cost, way.amount),
    )


def _bill(things: Sequence[Sequence[Supply]], some: Set, shops: Shops) -> _Bill | None:
    """What is bought at some of the shops; None where a thing is not had there."""
    chosen = []
    for ways in things:
        way = next((one for one in ways if one.shops <= some), None)
        if way is None:
            return None
        chosen.append(way)
    visited = frozenset(shop for way in chosen for shop in way.shops)
    total = sum((way.cost for way in chosen), Decimal(0))
    total += sum((_charge(shop, shops) for shop in visited), Decimal(0))
    unpriced = sum(way.unpriced for way in chosen)
    return _Bill(tuple(chosen), unpriced, total, visited)


def _charge(shop: str, shops: Shops) -> Decimal:
    return shops.charges.get(shop, Decimal(0))


def _rank(bill: _Bill, shops: Shops) -> Rank:
    if shops.fewest:
        return bill.unpriced, len(bill.visited), bill.total, sorted(bill.visited)
    return bill.unpriced, bill.total, len(bill.visited), sorted(bill.visited)


def _leaving_out(things: Sequence[Sequence[Supply]], named: Sequence[str], shops: Shops) -> _Bill:
    """From all shops on, without the one that is best left out, until that saves nothing."""
    best = _bill(things, frozenset(named), shops)
    assert best is not None, "at all shops together everything is had"
    while True:
        fewer = list(_without_one(things, best.visited, shops))
        if not fewer:
            return best
        next_best = min(fewer, key=lambda bill: _rank(bill, shops))
        if _rank(next_best, shops) >= _rank(best, shops):
            return best
        best = next_best


def _without_one(things: Sequence[Sequence[Supply]], some: Set, shops: Shops) -> Iterator[_Bill]:
    for shop in sorted(some):
        bill = _bill(things, some - {shop}, shops)
        if bill is not None:
            yield bill
