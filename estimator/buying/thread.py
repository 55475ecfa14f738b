"""Thread in whole spools: lockstitch shares them, a needle or looper takes a cone of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm

from estimator.buying.as_lines import as_lines
from estimator.buying.cut_lengths import break_note
from estimator.buying.fillings import Holder
from estimator.buying.spools import Spools, Wound, least_spools
from estimator.buying.types import NOT_PROVED, Buy, Part, Purchase, Way, nothing_bought
from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, shop_text, total, whole_ticks
from estimator.needs.types import ThreadNeed
from estimator.stitches import Machine
from estimator.working import Operation, Reckoning, Step, in_all

ON_HAND = "on spools in hand"


def buy_thread(need: ThreadNeed) -> tuple[Purchase, ...]:
    """The cheapest way to buy a thread; raises Wrong for spools that say nothing of their length.

    Sizes of spools and cones are mixed, and packs of several are whole; without prices all are of
    the one size of which least is bought.
    """
    offers = need.terms.offers
    demands = tuple(_demands(need))
    way = _worded(offers, demands, _least(need, offers, demands), need.in_hand)
    ways = [
        _worded([offer], demands, _least(need, [offer], demands), need.in_hand) for offer in offers
    ]
    others = [one for one in ways if not _alike(one, way)]
    return as_lines(need, way, others, alike=need.terms)


def wound_off(need: ThreadNeed) -> tuple[Length, ...]:
    """How much of each spool in hand is used, of those for one needle the shortest first."""
    demands = tuple(_demands(need))
    found = _least(need, need.terms.offers, demands)
    used = [ZERO] * len(need.in_hand)
    for demand, numbers in zip(demands, found.in_hand, strict=True):
        left = demand.thread.value
        for number in numbers:
            used[number] = min(left, need.in_hand[number])
            left -= used[number]
    return tuple(used)


def on_one(offer: Offer) -> Length:
    """How much thread is on one spool."""
    if isinstance(offer.put_up.holds, Length):
        return offer.put_up.holds
    if offer.length is None:
        raise Wrong(
            f"'{offer.item}' is sold {offer.put_up.sold_text}, and nothing says how long one is",
            "offer it as spool of 250 yd, or fill in the length of one",
        )
    return offer.length


def _spools_in(offer: Offer) -> int:
    return offer.put_up.holds if isinstance(offer.put_up.holds, int) else offer.put_up.pieces


def _alike(one: Way, other: Way) -> bool:
    """Whether as much is bought on the same offers."""
    return [(part.buy.offer, part.buy.bought) for part in one] == [
        (part.buy.offer, part.buy.bought) for part in other
    ]


@dataclass(frozen=True, slots=True)
class _Demand:
    """What spools of their own are wound off for, and why they are its own."""

    thread: Reckoning
    label: str


def _demands(need: ThreadNeed) -> Iterator[_Demand]:
    """The lockstitch machine's, then each needle's and looper's of the others."""
    for machine in Machine:
        sewn = [(stitch, thread) for stitch, thread in need.sewn if stitch.machine is machine]
        if not sewn:
            continue
        if machine is Machine.LOCKSTITCH:
            whole = in_all("thread of the lockstitch machine", [thread for _, thread in sewn])
            yield _Demand(whole, "needle and bobbin share spools")
            continue
        worked: tuple[Step, ...] = tuple(step for _, thread in sewn for step in thread.steps)
        for name in dict.fromkeys(name for stitch, _ in sewn for name, _ in stitch.shares):
            parts = [
                Reckoning.start(f"thread in {stitch}", thread.value).times(
                    f"through the {name}", share
                )
                for stitch, thread in sewn
                for label, share in stitch.shares
                if label == name
            ]
            through = in_all(f"through the {name}", parts)
            through = Reckoning(through.exact, (*worked, *through.steps))
            yield _Demand(through, f"{machine.value}, {name}: its own")
            worked = ()


def _least(need: ThreadNeed, offers: Sequence[Offer], demands: Sequence[_Demand]) -> Spools:
    """The cheapest spools on these offers, told in whole numbers; without prices of one size."""
    priced = all(offer.price is not None for offer in need.terms.offers)
    prices = [Fraction(offer.price or 0) for offer in offers]
    coin = lcm(*(price.denominator for price in prices))
    holders = []
    for offer, price in zip(offers, prices, strict=True):
        holds, pieces = on_one(offer).ticks, _spools_in(offer)
        least = offer.from_quantity if isinstance(offer.from_quantity, int) else 1
        cost = int(price * coin) if priced else holds * pieces
        holders.append(Holder(holds, cost, max(1, least), pieces))
    wanted = [demand.thread.value.ticks for demand in demands]
    return least_spools(wanted, holders, [one.ticks for one in need.in_hand], mix=priced)


def _worded(
    offers: Sequence[Offer],
    demands: Sequence[_Demand],
    spools: Spools,
    in_hand: Sequence[Length],
) -> Way:
    """Each kind of spool that is bought with its working, the largest first."""
    kinds = [number for number, count in enumerate(spools.bought) if count]
    kinds.sort(key=lambda n: (-on_one(offers[n]).ticks, -_spools_in(offers[n]), n))
    if not kinds:
        return (Part(nothing_bought(offers[0]), ZERO),)
    found = []
    for place, number in enumerate(kinds):
        offer = offers[number]
        alike = [n for n in kinds[:place] if on_one(offers[n]) == on_one(offer)]
        smaller = [n for n in kinds[place + 1 :] if on_one(offers[n]) == on_one(offer)]
        others = [f"{spools.bought[n]} × {offers[n].put_up.text}" for n in kinds if n != number]
        steps, count = _on_size(on_one(offer), demands, spools, in_hand)
        in_larger = sum(spools.bought[n] * _spools_in(offers[n]) for n in alike)
        if in_larger:
            count -= in_larger
            steps.append(Step("in the larger packs", Operation.TAKE, in_larger, count))
        here = spools.bought[number] * _spools_in(offer)
        if smaller and count > here:
            steps.append(Step("in the smaller packs", Operation.TAKE, count - here, here))
            count = here
        buy = _bought(offer, spools.bought[number], count, steps, others)
        left = [on_one(offer)] * (here - count)
        if not smaller:
            left += _left_of_size(on_one(offer), demands, spools, in_hand)
        wound = _wound_on(on_one(offer), demands, spools, in_hand)[in_larger : in_larger + here]
        needed = whole_ticks(sum(wound, Fraction(0)))
        note = "; ".join(filter(None, (buy.note, "" if spools.proved else NOT_PROVED)))
        found.append(Part(replace(buy, left=tuple(left), note=note), needed))
    return tuple(found)


def _wound_on(
    holds: Length, demands: Sequence[_Demand], spools: Spools, in_hand: Sequence[Length]
) -> list[Fraction]:
    """What is wound off each spool of one size, in ticks, the most first."""
    found: list[Fraction] = []
    for place, demand in enumerate(demands):
        wound = spools.wound[place]
        count = wound.get(holds.ticks, 0)
        if not count:
            continue
        found += [Fraction(holds.ticks)] * count
        if holds.ticks == min(wound):
            there = total(in_hand[number] for number in _in_hand(spools, place))
            before = there + _beside(wound, holds) + holds * (count - 1)
            found[-1] = demand.thread.exact - before.ticks
    return sorted(found, reverse=True)


def _in_hand(spools: Spools, place: int) -> tuple[int, ...]:
    """The numbers of those in hand for one needle or looper."""
    return spools.in_hand[place] if spools.in_hand else ()


def _left_of_size(
    holds: Length, demands: Sequence[_Demand], spools: Spools, in_hand: Sequence[Length]
) -> Iterator[Length]:
    """What stays on spools that were begun; of those for one needle the smallest is the last."""
    for demand, wound, numbers in zip(demands, spools.wound, spools.in_hand, strict=True):
        if wound and min(wound) == holds.ticks:
            there = Length(sum(size * count for size, count in wound.items()))
            left = there + total(in_hand[number] for number in numbers) - demand.thread.value
            if left:
                yield left


def _on_size(
    holds: Length, demands: Sequence[_Demand], spools: Spools, in_hand: Sequence[Length]
) -> tuple[list[Step], int]:
    """How many spools of one size are wound off, needle by needle and looper by looper."""
    steps: list[Step] = []
    counts = []
    for place, demand in enumerate(demands):
        wound = spools.wound[place]
        if not wound.get(holds.ticks):
            continue
        thread = demand.thread
        here = total(in_hand[number] for number in _in_hand(spools, place))
        thread = thread.minus(ON_HAND, here)
        thread = thread.minus("on spools of other sizes", _beside(wound, holds))
        count = wound[holds.ticks]
        counts.append(count)
        steps += [*thread.steps, Step(demand.label, Operation.FITTED, holds, count)]
    if len(counts) > 1:
        steps.append(Step("spools and cones", Operation.IN_ALL, len(counts), sum(counts)))
    return steps, sum(counts)


def _beside(wound: Wound, holds: Length) -> Length:
    """What is on spools of the other sizes."""
    return Length(sum(size * count for size, count in wound.items() if size != holds.ticks))


def _bought(
    offer: Offer, bought: int, spools: int, steps: list[Step], others: Sequence[str]
) -> Buy:
    """So many put-ups of a kind, for so many spools wound off."""
    count, notes = spools, []
    if _spools_in(offer) > 1:
        count = -(-count // _spools_in(offer))
        label = f"up to whole {offer.put_up.text}"
        steps.append(Step(label, Operation.DIVIDE, _spools_in(offer), count))
    if bought > count:
        label = "the quantity from which this price holds"
        steps.append(Step(label, Operation.AT_LEAST, bought, bought))
        notes.append(break_note(f"{bought}"))
    if not isinstance(offer.put_up.holds, Length):
        notes.insert(0, f"{shop_text(on_one(offer), offer.sold_by)} on each")
    notes += [f"together with {' and '.join(others)}"] if others else []
    spare = bought * _spools_in(offer) - spools
    notes += [f"{spare} to spare"] if spare else []
    return Buy(offer, bought, tuple(steps), "; ".join(notes))
