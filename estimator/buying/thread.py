"""Thread in whole spools: lockstitch shares them, a needle or looper takes a cone of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.buying.types import Buy, Purchase, nothing_bought
from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import Length, shop_text, total, whole_ticks
from estimator.needs.types import Group, ThreadNeed
from estimator.stitches import Machine
from estimator.working import Operation, Reckoning, Step, in_all


def buy_thread(need: ThreadNeed, in_hand: int = 0, parts: Sequence[Length] = ()) -> Purchase:
    """The cheapest way to buy a thread; raises Wrong for spools that say nothing of their length.

    One kind of spool or cone is taken, and packs of several are whole. ``in_hand`` are full spools
    or cones that need not be bought; ``parts`` is on part spools, for a lockstitch machine.
    """
    ways = [_on_spools(need, offer, in_hand, parts) for offer in need.terms.offers]
    priced = all(way.cost is not None for way in ways)
    best = min(ways, key=lambda way: (way.cost if priced else 0, _thread_on(way)))
    return Purchase(
        key=need.key,
        group=Group.NOTIONS,
        title=need.title,
        names=need.names,
        colour=need.terms.colour,
        width=None,
        needed=whole_ticks(sum((thread.exact for _, thread in need.sewn), Fraction(0))),
        buy=best,
        notes=(*need.notes, *filter(None, (best.note,))),
        sources=need.sources,
        others=tuple((way,) for way in ways if way is not best),
        takes=need.takes,
        need=need,
    )


def _thread_on(way: Buy) -> Fraction:
    """How much thread a way buys, in spools and then in ticks."""
    return way.sold_units * _spools_in(way.offer) * on_one(way.offer).ticks


def _spools_in(offer: Offer) -> int:
    return offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1


def on_one(offer: Offer) -> Length:
    """How much thread is on one spool."""
    if isinstance(offer.put_up.holds, Length):
        return offer.put_up.holds
    if offer.length is None:
        raise Wrong(
            f"'{offer.item}' is sold {offer.put_up.text}, and nothing says how long one is",
            "offer it as spool of 250 yd, or fill in the length of one",
        )
    return offer.length


def full_spool(need: ThreadNeed) -> Length:
    """How much is on the longest spool on offer: one in hand with less is a part spool."""
    return max(on_one(offer) for offer in need.terms.offers)


def spools_for(need: ThreadNeed, offer: Offer, parts: Sequence[Length]) -> int:
    """How many spools and cones of an offer all that is sewn takes, beside part spools in hand."""
    return sum(fitted.count for fitted in _by_machine(need, on_one(offer), parts))


def left_on_spools(need: ThreadNeed, offer: Offer, parts: Sequence[Length]) -> tuple[Length, ...]:
    """What is left on spools and cones of an offer that were begun, once all is sewn.

    ``parts`` are the part spools in hand that were used up first.
    """
    holds = on_one(offer)
    found = []
    for fitted in _by_machine(need, holds, parts):
        left = Length(int(fitted.count * holds.ticks - fitted.thread))
        found += [left] if fitted.count and left else []
    return tuple(found)


def _on_spools(need: ThreadNeed, offer: Offer, in_hand: int, parts: Sequence[Length]) -> Buy:
    holds = on_one(offer)
    steps: list[Step] = []
    counts = []
    for fitted in _by_machine(need, holds, parts):
        count, worked = fitted.count, fitted.steps
        counts.append(count)
        steps += worked
    count = sum(counts)
    if len(counts) > 1:
        steps.append(Step("spools and cones", Operation.IN_ALL, len(counts), count))
    if in_hand:
        taken = min(in_hand, count)
        count -= taken
        steps.append(Step("from the stash", Operation.TAKE, taken, count))
    if not count:
        return nothing_bought(offer)
    spools = count
    if _spools_in(offer) > 1:
        count = -(-count // _spools_in(offer))
        label = f"up to whole {offer.put_up.text}"
        steps.append(Step(label, Operation.DIVIDE, _spools_in(offer), count))
    least = offer.from_quantity
    if isinstance(least, int) and least > count:
        count = least
        label = "the quantity from which this price holds"
        steps.append(Step(label, Operation.AT_LEAST, least, least))
    spare = count * _spools_in(offer) - spools
    notes = [f"{spare} to spare"] if spare else []
    if not isinstance(offer.put_up.holds, Length):
        notes.insert(0, f"{shop_text(holds, offer.sold_by)} on each")
    return Buy(offer, count, tuple(steps), "; ".join(notes))


@dataclass(frozen=True, slots=True)
class _Fitted:
    """So many spools for ``thread`` in ticks, and the working."""

    count: int
    thread: Fraction
    steps: tuple[Step, ...]


def _by_machine(need: ThreadNeed, holds: Length, parts: Sequence[Length]) -> Iterator[_Fitted]:
    """For each machine, and there for each needle and looper: so many spools, and the working."""
    for machine in Machine:
        sewn = [(stitch, thread) for stitch, thread in need.sewn if stitch.machine is machine]
        if not sewn:
            continue
        if machine is Machine.LOCKSTITCH:
            label = "thread of the lockstitch machine"
            pooled = in_all(label, [thread for _, thread in sewn])
            yield _fitted(
                _beside(pooled, parts) if parts else pooled,
                holds,
                "needle and bobbin share spools",
            )
            continue
        shares = dict.fromkeys(name for stitch, _ in sewn for name, _ in stitch.shares)
        worked: tuple[Step, ...] = tuple(step for _, thread in sewn for step in thread.steps)
        for name in shares:
            through = [
                Reckoning.start(f"thread in {stitch}", thread.value).times(
                    f"through the {name}", share
                )
                for stitch, thread in sewn
                for label, share in stitch.shares
                if label == name
            ]
            own = _fitted(
                in_all(f"through the {name}", through), holds, f"{machine.value}, {name}: its own"
            )
            yield replace(own, steps=(*worked, *own.steps))
            worked = ()


def _beside(thread: Reckoning, parts: Sequence[Length]) -> Reckoning:
    """The thread that is still wanted once the part spools are used up."""
    on_parts = min(total(parts), Length(int(thread.exact)))
    return thread.minus("on part spools from the stash", on_parts)


def _fitted(thread: Reckoning, holds: Length, label: str) -> _Fitted:
    count = -(-thread.exact.numerator // (thread.exact.denominator * holds.ticks))
    steps = (*thread.steps, Step(label, Operation.FITTED, holds, count))
    return _Fitted(count, thread.exact, steps)
