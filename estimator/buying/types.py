"""Purchases: what is bought, on which offer, for what money, and the working behind it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from estimator.catalog import Offer
from estimator.measure import ZERO, Length
from estimator.needs.types import CountNeed, Group, LengthNeed, ThreadNeed
from estimator.prices import to_the_coin
from estimator.stash import Taken
from estimator.working import Operation, Source, Step


@dataclass(frozen=True, slots=True)
class Filled:
    """One length of trim as it is bought, off the roll or on a card, and the runs cut from it."""

    holds: Length
    runs: tuple[tuple[Source, Length], ...]


@dataclass(frozen=True, slots=True)
class Buy:
    """One way to meet a need: so much on one offer.

    ``bought`` is a length where the shop cuts to length, else a number of put-ups. ``steps`` end
    in that figure. ``note`` is what the buyer or maker should know of this way. ``filled`` tells
    of a trim which runs come out of which length, and ``left`` what is left on each put-up of a
    trim, the longest first, and on each spool of a thread once all is sewn: on such as were begun,
    and on those to spare.
    """

    offer: Offer
    bought: Length | int
    steps: tuple[Step, ...]
    note: str = ""
    filled: tuple[Filled, ...] = ()
    left: tuple[Length, ...] = ()

    @property
    def sold_units(self) -> Fraction:
        """How many yards, metres or put-ups are bought."""
        if isinstance(self.bought, Length):
            return self.bought / self.offer.sold_by.length
        return Fraction(self.bought)

    @property
    def cost(self) -> Decimal | None:
        """The money, to the least coin of its currency.

        None without a price, as far as anything is bought.
        """
        if not self.bought:
            return to_the_coin(Decimal(0), self.offer.currency)
        price = self.offer.price_per_sold_unit
        if price is None:
            return None
        units = self.sold_units
        return to_the_coin(price * units.numerator / units.denominator, self.offer.currency)

    @property
    def amount(self) -> Fraction:
        """How much is bought in all, in ticks or in pieces, to compare ways without prices."""
        if isinstance(self.bought, Length):
            return Fraction(self.bought.ticks)
        holds = self.offer.put_up.holds
        if isinstance(holds, Length):
            return Fraction(self.bought * holds.ticks * self.offer.put_up.pieces)
        return Fraction(self.bought * (holds or 1))

    @property
    def unit(self) -> str:
        """What is counted on the list: yd, m, each, pack of 6, card of 3 yd."""
        if isinstance(self.bought, Length):
            return self.offer.sold_by.symbol
        return self.offer.put_up.text


NOT_PROVED = "the least found, by a rule: a cheaper filling may be possible"
"""What the buyer is told where a search met its limit."""


@dataclass(frozen=True, slots=True)
class Part:
    """What is bought on one offer, and how much of the need that meets."""

    buy: Buy
    needed: Length | int


Need = LengthNeed | CountNeed | ThreadNeed
"""What is bought by its length or by number: all but fabric."""
Way = tuple[Part, ...]
"""One way to meet a need: on one offer, or on several put-ups together."""


@dataclass(frozen=True, slots=True)
class Purchase:
    """One line of the shopping list. ``needed`` is before the shop's minimum, step or put-up.

    ``others`` are the other ways to buy it that were reckoned, in no order, each on one offer or on
    several together. ``takes`` says, of what is not cut from fabric, how much of it or how many
    each of its sources takes before waste. Of a need that is met on several lines both stand on the
    first.
    ``alike`` is equal for lines that would be bought as one were their garments planned together.
    ``need`` is that of a trim, notion or thread, and ``taken`` what comes from the stash instead.
    """

    key: str
    group: Group
    title: str
    names: tuple[str, ...]
    colour: str
    width: Length | None
    needed: Length | int
    buy: Buy
    notes: tuple[str, ...]
    sources: tuple[Source, ...]
    alike: object
    others: tuple[tuple[Buy, ...], ...] = ()
    takes: tuple[tuple[Source, Length | int], ...] = ()
    need: Need | None = None
    taken: tuple[Taken, ...] = ()


def least_bought(ways: Sequence[Buy]) -> Buy:
    """The way that costs least; where a price lacks, the one that buys least. Ties: the first."""
    if all(way.cost is not None for way in ways):
        return min(ways, key=lambda way: (way.cost, way.amount))
    return min(ways, key=lambda way: way.amount)


def costs_less(lines: Sequence[Buy], than: Sequence[Buy]) -> bool:
    """Whether the one costs less than the other; where a price lacks, whether less is bought."""
    if all(one.cost is not None for one in (*lines, *than)):
        return _cost(lines) < _cost(than)
    return _amount(lines) < _amount(than)


def _cost(lines: Sequence[Buy]) -> Decimal:
    return sum((one.cost or Decimal(0) for one in lines), Decimal(0))


def _amount(lines: Sequence[Buy]) -> Fraction:
    return sum((one.amount for one in lines), Fraction(0))


def nothing_bought(offer: Offer) -> Buy:
    """What need not be bought, because the stash has all of it: so it needs no shop."""
    none: Length | int = ZERO if offer.put_up.cut_to_length else 0
    step = Step("nothing to buy: all of it comes from the stash", Operation.START, none, none)
    free = {"shop": "", "price": offer.price or Decimal(0)}
    if offer.put_up.cut_to_length:
        free["per"] = offer.per or offer.sold_by
    return Buy(offer.model_copy(update=free), none, (step,))


def least_way(ways: Sequence[Way]) -> Way:
    """The way that costs least; where a price lacks, the one that buys least. Ties: the first."""

    def amount(way: Way) -> Fraction:
        return sum((part.buy.amount for part in way), Fraction(0))

    if any(part.buy.cost is None for way in ways for part in way):
        return min(ways, key=amount)
    return min(
        ways,
        key=lambda way: (sum(part.buy.cost or Decimal(0) for part in way), len(way), amount(way)),
    )


def known_cost(lines: Iterable[Purchase]) -> Decimal | None:
    """What lines cost together; None where a price lacks."""
    costs = [line.buy.cost for line in lines]
    return None if None in costs else sum((one for one in costs if one), Decimal(0))


def by_what_is_bought(lines: Iterable[Purchase]) -> dict[object, list[Purchase]]:
    """The lines that are bought as one, by what they have ``alike``, in their order."""
    found: dict[object, list[Purchase]] = {}
    for line in lines:
        found.setdefault(line.alike, []).append(line)
    return found


def with_own_keys(purchases: Sequence[Purchase]) -> tuple[Purchase, ...]:
    """Every key but once: alike ones are told apart by their garments, and then by number."""
    seen: Counter[str] = Counter()
    keys = Counter(one.key for one in purchases)
    found = []
    for one in purchases:
        key = one.key if keys[one.key] == 1 else f"{one.key} / {one.sources[0].garment}"
        seen[key] += 1
        found.append(replace(one, key=key if seen[key] == 1 else f"{key} / {seen[key]}"))
    return tuple(found)


def total_cost(purchases: Iterable[Purchase]) -> Decimal:
    """The sum of what has a price."""
    return sum((one.buy.cost or Decimal(0) for one in purchases), Decimal(0))
