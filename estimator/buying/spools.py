"""Thread on spools and cones, their sizes mixed: what each needle and looper winds off.

Thread may end anywhere in a seam, so a needle is content with any spools that hold enough together;
but a cone that one looper draws from is no good to another. In whole numbers: lengths and money are
counted in whatever their caller counts them in.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.buying.fillings import Holder, sets_of_put_ups
from estimator.buying.given_out import fullest_to_neediest, ways_to_give
from estimator.buying.packs import least_packs
from estimator.buying.price_floor import PriceFloor

MOST_MIXED = 12
"""Of so many spools of the largest size, sizes are mixed; what is beyond is on the cheapest."""
MOST_STEPS = 20_000
MOST_BOUGHT = 50
"""So many ways to give out what is in hand are priced."""

Wound = Mapping[int, int]
"""How many spools of each size one needle or looper winds off, by what a spool holds."""


@dataclass(frozen=True, slots=True)
class Spools:
    """What is bought, and what each demand winds off.

    ``in_hand`` names for each demand those it has of what is in hand, in the order in which they
    are used up; ``bought`` counts the put-ups of each holder. Where it is not ``proved``, a limit
    on the search was met, and another mix may cost less.
    """

    wound: tuple[Wound, ...]
    bought: tuple[int, ...]
    cost: int
    in_hand: tuple[tuple[int, ...], ...] = ()
    proved: bool = True


def least_spools(
    demands: Sequence[int], holders: Sequence[Holder], in_hand: Sequence[int] = (), *, mix: bool
) -> Spools:
    """The cheapest spools that hold every demand beside those in hand; least over where money ties.

    With ``mix`` every set of sizes that costs less than spools of one size is tried, the cheapest
    first, as far as a counted search goes. A demand that lacks nothing winds off nothing. What is
    in hand goes to whom it saves most, and where money ties the fullest to whoever needs most.
    """
    given = fullest_to_neediest(demands, in_hand)
    by_rule = replace(_least_for(given.left, holders, mix=mix), in_hand=given.spools)
    if len(demands) == 1 or not in_hand:
        return by_rule
    return _given_better(by_rule, demands, holders, in_hand, mix=mix)


def _given_better(
    best: Spools, demands: Sequence[int], holders: Sequence[Holder], in_hand: Sequence[int], *,
    mix: bool,
) -> Spools:  # fmt: skip
    """The cheapest of the ways to give out what is in hand, or ``best`` where none costs less."""
    floor = PriceFloor(holders)
    least = floor.lowest(demands, sum(in_hand))
    if floor.of(best.cost) <= least:
        return best
    ways, are_all = ways_to_give(demands, in_hand, floor.lowest, floor.of(best.cost))
    proved = best.proved
    for tried, way in enumerate(ways):
        if floor.of(best.cost) <= floor.lowest(way.left):
            break  # nor do those after it cost less
        if tried == MOST_BOUGHT:
            are_all = False
            break
        found = _least_for(way.left, holders, mix=mix, below=best.cost)
        if found.cost < best.cost:
            best = replace(found, in_hand=way.spools)
        if not found.proved:
            proved = False
            break
    return replace(best, proved=(proved and are_all) or floor.of(best.cost) <= least)


def _least_for(
    left: Sequence[int], holders: Sequence[Holder], *, mix: bool, below: int | None = None
) -> Spools:
    """The cheapest spools for what each demand lacks; a mix only where it costs less than that."""
    sizes = dict.fromkeys(one.holds for one in holders)
    best = min(
        (_of_size(left, holders, holds) for holds in sizes),
        key=lambda one: (one.cost, _held(one.bought, holders)),
    )
    if mix and len(sizes) > 1:
        return _mixed(left, holders, best, best.cost if below is None else min(below, best.cost))
    return best


def _held(bought: Sequence[int], holders: Sequence[Holder]) -> int:
    return sum(n * one.holds * one.pieces for n, one in zip(bought, holders, strict=True))


def _of_size(left: Sequence[int], holders: Sequence[Holder], holds: int) -> Spools:
    kinds = [number for number, one in enumerate(holders) if one.holds == holds]
    wound = [{holds: -(-one // holds)} if one else {} for one in left]
    # counted, a pack holds as many as it has spools
    packs = [Holder(holders[n].pieces, holders[n].cost, holders[n].least) for n in kinds]
    spools = sum(sum(one.values()) for one in wound)
    counts = dict(zip(kinds, least_packs(spools, packs), strict=True)) if spools else {}
    bought = tuple(counts.get(number, 0) for number in range(len(holders)))
    cost = sum(count * one.cost for count, one in zip(bought, holders, strict=True))
    return Spools(tuple(wound), bought, cost)


def _mixed(left: Sequence[int], holders: Sequence[Holder], best: Spools, below: int) -> Spools:
    """The cheapest set of several sizes that costs less than ``below``, or ``best``."""
    bulk, many = _bulk(left, holders)
    rest = [one - n * holders[bulk].holds for one, n in zip(left, many, strict=True)]
    paid = sum(many) * holders[bulk].cost
    most = sum(-(-one // min(holder.holds for holder in holders)) for one in rest)
    search = _Search(rest, holders)
    sets = sets_of_put_ups(holders, below - paid, sum(rest), most)
    if sets is None:
        return replace(best, proved=False)
    for cost, chosen in sets:
        wound = search.wound_off(chosen)
        if wound is None:
            continue
        bought = [
            max(count, one.least) if count else 0
            for count, one in zip(chosen, holders, strict=True)
        ]
        bought[bulk] += sum(many)
        holds = holders[bulk].holds
        all_wound = [
            {**one, holds: one.get(holds, 0) + n} if n else one
            for one, n in zip(wound, many, strict=True)
        ]
        found = Spools(tuple(all_wound), tuple(bought), cost + paid)
        return replace(found, proved=not search.is_spent)
    return replace(best, proved=not search.is_spent)


def _bulk(left: Sequence[int], holders: Sequence[Holder]) -> tuple[int, list[int]]:
    """Of a great deal of thread all but the last spools, on those of least money for a length."""
    single = [n for n, one in enumerate(holders) if one.least == 1 and one.pieces == 1]
    if not single:
        return 0, [0] * len(left)
    best = min(single, key=lambda n: (Fraction(holders[n].cost, holders[n].holds), n))
    kept = MOST_MIXED * max(one.holds for one in holders)
    return best, [max(one - kept, 0) // holders[best].holds for one in left]


class _Search:
    """Which spools of a set go to which demand; the limit on steps is for all sets together."""

    def __init__(self, demands: Sequence[int], holders: Sequence[Holder]) -> None:
        self.demands, self.holders = demands, holders
        self.sizes = sorted({one.holds for one in holders}, reverse=True)
        self.steps = 0

    @property
    def is_spent(self) -> bool:
        """Whether the limit was met, so that what was not found may be there all the same."""
        return self.steps > MOST_STEPS

    def wound_off(self, chosen: Sequence[int]) -> tuple[Wound, ...] | None:
        """For each demand so many spools of each size, and none that it could do without."""
        spools = dict.fromkeys(self.sizes, 0)
        for count, one in zip(chosen, self.holders, strict=True):
            spools[one.holds] += count * one.pieces
        order = sorted(range(len(self.demands)), key=lambda one: (-self.demands[one], one))
        found = self._next(order, [spools[holds] for holds in self.sizes])
        if found is None:
            return None
        wound = dict(zip(order, found, strict=True))
        return tuple(
            {holds: n for holds, n in zip(self.sizes, wound[one], strict=True) if n}
            for one in range(len(self.demands))
        )

    def _next(self, order: Sequence[int], spools: list[int]) -> list[tuple[int, ...]] | None:
        if not order:
            return []
        for counts in self._enough(self.demands[order[0]], spools, 0):
            self.steps += 1
            if self.is_spent:
                return None
            left = [had - count for had, count in zip(spools, counts, strict=True)]
            if (rest := self._next(order[1:], left)) is not None:
                return [counts, *rest]
        return None

    def _enough(self, lacking: int, spools: Sequence[int], place: int) -> Iterator[tuple[int, ...]]:
        """Every choice of spools that holds so much, and would not without any one of them."""
        if lacking <= 0:
            yield (0,) * (len(spools) - place)
            return
        if place == len(spools):
            return
        holds = self.sizes[place]
        for count in range(min(spools[place], -(-lacking // holds)), -1, -1):
            over = count * holds - lacking
            for rest in self._enough(-over, spools, place + 1):
                smaller = zip(rest, self.sizes[place + 1 :], strict=True)
                if not count or over + sum(n * size for n, size in smaller) < holds:
                    yield (count, *rest)
