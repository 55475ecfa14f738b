"""What is in hand once a list has been bought and cut: less what was used, and the left-overs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from estimator.buying.cut_lengths import as_sold
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.thread import full_spool, left_on_spools, on_one, spools_for
from estimator.buying.types import Purchase
from estimator.estimated import CUT_FROM, Estimate
from estimator.measure import ZERO, Length, Unit, total
from estimator.needs.types import CountNeed, ThreadNeed
from estimator.stash import MARKS, InHand, is_metric

LEAST_KEPT = {True: Unit.CM.of(25), False: Unit.IN.of(9)}
"""A length below this is not worth a row, metric or not: 25 cm, 1/4 yd."""
LEAST_THREAD = {True: Unit.M.of(10), False: Unit.YD.of(10)}
"""The same for thread on a spool: 10 m, 10 yd."""


@dataclass(frozen=True, slots=True)
class Change:
    """What becomes of a row of the stash: how many stay as they are, and the lengths cut short."""

    row: int
    stay: int
    cut: tuple[Length, ...]


def changes(estimate: Estimate) -> tuple[Change, ...]:
    """The rows from which something was taken, in the order of the file."""
    taken = [one for line in estimate.purchases for one in line.taken]
    found = []
    for row, thing in sorted(estimate.job.stash.rows.items()):
        own = [one for one in taken if one.single.row == row]
        if not own:
            continue
        counted = sum(one.amount for one in own if isinstance(one.amount, int))
        lengths = [one for one in own if isinstance(one.amount, Length)]
        left = (_kept(one.left, thing) for one in lengths if isinstance(one.left, Length))
        cut = tuple(sorted((one for one in left if one), reverse=True))
        found.append(Change(row, thing.count - counted - len(lengths), cut))
    return tuple(found)


def _kept(left: Length, thing: InHand) -> Length:
    """What is left of a length, if it is worth keeping: in the system of the rest of its row."""
    return _worth_keeping(left, metric=is_metric(thing.length or ZERO))


def _worth_keeping(left: Length, *, metric: bool) -> Length:
    return _down_to_a_mark(left, metric=metric) if left >= LEAST_KEPT[metric] else ZERO


def _down_to_a_mark(left: Length, *, metric: bool) -> Length:
    mark = MARKS[metric]
    return mark * mark.times_into(left)


def left_overs(estimate: Estimate) -> tuple[InHand, ...]:
    """New rows for what was bought and is not used up, alike ones together.

    What is left of each cut of a fabric, of each card of a trim, and on each spool that was begun.
    """
    title = estimate.job.title or estimate.job.garments[0].plan.garment.name
    found: Counter[InHand] = Counter()
    for choice in estimate.fabrics:
        found.update(_of_fabric(choice))
    for line in estimate.purchases:
        if line.group not in CUT_FROM:
            found.update(_of_small_thing(line))
    return tuple(
        row.model_copy(update={"count": row.count * number, "note": f"left over from {title}"})
        for row, number in found.items()
    )


def _of_fabric(choice: FabricChoice) -> Iterator[InHand]:
    terms, chosen = choice.need.terms, choice.chosen
    bought, offer = chosen.buy.bought, chosen.buy.offer
    if not isinstance(bought, Length) or not bought:
        return
    row = InHand.model_construct(
        item=terms.item or offer.item,
        colour=terms.colour,
        width=chosen.width,
        usable=terms.usable or offer.usable,
    )
    cuts = chosen.laid.needed(terms)
    left = [as_sold(one, offer).value - one.value for one in cuts]
    beyond = bought - total(as_sold(one, offer).value for one in cuts)
    # what was bought beyond the cuts, for its price, comes with the only one, or by itself
    left = [left[0] + beyond] if len(left) == 1 else [*left, beyond]
    yield from _lengths(row, left, metric=offer.sold_by.metric)


def _of_small_thing(line: Purchase) -> Iterator[InHand]:
    need, bought, offer = line.need, line.buy.bought, line.buy.offer
    if need is None:
        return
    row = InHand.model_construct(item=need.terms.item or offer.item, colour=need.terms.colour)
    if isinstance(need, ThreadNeed):
        yield from _of_thread(need, line, row)
    elif isinstance(need, CountNeed):
        if isinstance(line.needed, int) and isinstance(bought, int):
            holds = offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1
            spare = bought * holds - line.needed
            if spare > 0:
                yield row.model_copy(update={"count": spare, "length": offer.length})
    elif isinstance(bought, Length):
        if isinstance(line.needed, Length):
            row = row.model_copy(update={"width": offer.width})
            yield from _lengths(row, [bought - line.needed], metric=offer.sold_by.metric)
    else:
        row = row.model_copy(update={"width": offer.width})
        left = [one.holds - total(length for _, length in one.runs) for one in line.buy.filled]
        yield from _lengths(row, left, metric=offer.put_up.metric)


def _of_thread(need: ThreadNeed, line: Purchase, row: InHand) -> Iterator[InHand]:
    """Spools that were not begun, and what is left on those that were."""
    offer, bought = line.buy.offer, line.buy.bought
    full = full_spool(need)
    own = [one for one in line.taken if one.single.thing.length or ZERO]
    parts = [one.amount for one in own if isinstance(one.amount, Length) and one.amount < full]
    in_hand = sum(one.amount if isinstance(one.amount, int) else 1 for one in line.taken)
    holds = offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1
    spools = (bought if isinstance(bought, int) else 0) * holds
    spare = spools + in_hand - len(parts) - spools_for(need, offer, parts)
    if spare > 0:
        yield row.model_copy(update={"count": spare, "length": on_one(offer)})
    for left in left_on_spools(need, offer, parts):
        metric = offer.put_up.metric if offer.put_up.label else offer.sold_by.metric
        if left >= LEAST_THREAD[metric]:
            yield row.model_copy(update={"length": _down_to_a_mark(left, metric=metric)})


def _lengths(row: InHand, lengths: Iterable[Length], *, metric: bool) -> Iterator[InHand]:
    """A row for each length that is worth keeping."""
    for length in lengths:
        kept = _worth_keeping(length, metric=metric)
        if kept:
            yield row.model_copy(update={"length": kept})
