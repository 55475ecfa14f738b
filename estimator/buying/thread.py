"""Thread in whole spools: lockstitch shares them, a needle or looper takes a cone of its own."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.buying.types import Buy, Purchase, nothing_bought
from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import Length, shop_text, whole_ticks
from estimator.needs.types import Group, ThreadNeed
from estimator.stitches import Machine
from estimator.working import Operation, Reckoning, Step, in_all


def buy_thread(need: ThreadNeed, in_hand: int = 0) -> Purchase:
    """The cheapest way to buy a thread; raises Wrong for spools that say nothing of their length.

    One kind of spool or cone is taken, and packs of several are whole. ``in_hand`` are full spools
    or cones that need not be bought.
    """
    ways = [_on_spools(need, offer, in_hand) for offer in need.terms.offers]
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


def _on_spools(need: ThreadNeed, offer: Offer, in_hand: int) -> Buy:
    holds = on_one(offer)
    steps: list[Step] = []
    counts = []
    for count, worked in _by_machine(need, holds):
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


def _by_machine(need: ThreadNeed, holds: Length) -> Iterator[tuple[int, tuple[Step, ...]]]:
    """For each machine, and there for each needle and looper: so many spools, and the working."""
    for machine in Machine:
        sewn = [(stitch, thread) for stitch, thread in need.sewn if stitch.machine is machine]
        if not sewn:
            continue
        if machine is Machine.LOCKSTITCH:
            label = "thread of the lockstitch machine"
            yield _fitted(
                in_all(label, [thread for _, thread in sewn]),
                holds,
                "needle and bobbin share spools",
            )
            continue
        shares = dict.fromkeys(name for stitch, _ in sewn for name, _ in stitch.shares)
        worked: tuple[Step, ...] = tuple(step for _, thread in sewn for step in thread.steps)
        for name in shares:
            parts = [
                Reckoning.start(f"thread in {stitch}", thread.value).times(
                    f"through the {name}", share
                )
                for stitch, thread in sewn
                for label, share in stitch.shares
                if label == name
            ]
            count, steps = _fitted(
                in_all(f"through the {name}", parts), holds, f"{machine.value}, {name}: its own"
            )
            yield count, (*worked, *steps)
            worked = ()


def _fitted(thread: Reckoning, holds: Length, label: str) -> tuple[int, tuple[Step, ...]]:
    count = -(-thread.exact.numerator // (thread.exact.denominator * holds.ticks))
    return count, (*thread.steps, Step(label, Operation.FITTED, holds, count))
