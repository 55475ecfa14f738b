"""Counted things in packs of several sizes: the least cost that covers a count.

An unbounded knapsack turned about: packs may be mixed with single ones, and what is over is to
spare. A price that holds from a quantity is taken up with at least that quantity.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations

from estimator.buying.fillings import Holder

MOST_COUNTED = 20_000
MOST_BREAKS = 3
"""Of so many price breaks every set is tried; of more, only each alone."""

Sum = tuple[int, int, int]
"""What a set of packs costs, how many things it holds, and of how many packs it is."""


def least_packs(count: int, packs: Sequence[Holder]) -> tuple[int, ...]:
    """How many of each pack to buy for ``count`` things: for least money, then the least over.

    Exact up to 20,000 things; beyond, the rest is in packs of the lowest price for one thing.
    """
    ways = [_with_breaks(count, packs, taken) for taken in _sets_of_breaks(packs)]
    return min((way for way in ways if way is not None), key=lambda way: (way[0], way[1]))[1]


def _sets_of_breaks(packs: Sequence[Holder]) -> Iterator[frozenset[int]]:
    breaks = [number for number, pack in enumerate(packs) if pack.least > 1]
    most = len(breaks) if len(breaks) <= MOST_BREAKS else 1
    for size in range(most + 1):
        yield from map(frozenset, combinations(breaks, size))


def _with_breaks(
    count: int, packs: Sequence[Holder], taken: frozenset[int]
) -> tuple[Sum, tuple[int, ...]] | None:
    """The best set in which each pack of ``taken`` is bought at least from its quantity."""
    usable = [number for number, pack in enumerate(packs) if pack.least == 1 or number in taken]
    if not usable:
        return None
    bought = [packs[number].least if number in taken else 0 for number in range(len(packs))]
    left = count - sum(pack.holds * number for pack, number in zip(packs, bought, strict=True))
    if left > MOST_COUNTED:
        best = min(usable, key=lambda n: (Fraction(packs[n].cost, packs[n].holds), n))
        many = (left - MOST_COUNTED) // packs[best].holds
        bought[best] += many
        left -= many * packs[best].holds
    for number in _cover(max(left, 0), usable, packs):
        bought[number] += 1
    pairs = list(zip(packs, bought, strict=True))
    total = (
        sum(pack.cost * number for pack, number in pairs),
        sum(pack.holds * number for pack, number in pairs),
        sum(bought),
    )
    return total, tuple(bought)


def _cover(count: int, usable: Sequence[int], packs: Sequence[Holder]) -> Iterator[int]:
    """Pack after pack of the best set that covers ``count``."""
    best: list[Sum] = [(0, 0, 0)]
    last = [-1]
    for covered in range(1, count + 1):
        ways = []
        for number in usable:
            cost, held, of = best[max(0, covered - packs[number].holds)]
            ways.append((cost + packs[number].cost, held + packs[number].holds, of + 1, number))
        cost, held, of, number = min(ways)
        best.append((cost, held, of))
        last.append(number)
    while count > 0:
        yield last[count]
        count -= packs[last[count]].holds
