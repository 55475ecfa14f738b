"""What is in hand once a list has been bought and cut: less what was used, and the left-overs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.types import Purchase
from estimator.estimated import CUT_FROM, Estimate
from estimator.measure import ZERO, Length, Unit
from estimator.needs.types import CountNeed, LengthNeed
from estimator.stash import MARKS, InHand, is_metric

LEAST_KEPT = {True: Unit.CM.of(25), False: Unit.IN.of(9)}
"""A length below this is not worth a row, metric or not: 25 cm, 1/4 yd."""


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
    mark = MARKS[metric]
    return mark * mark.times_into(left) if left >= LEAST_KEPT[metric] else ZERO


def left_overs(estimate: Estimate) -> tuple[InHand, ...]:
    """New rows for what was bought and is not used up, alike ones together.

    Of cloth that is cut in several lengths, and of trims on several cards, it is not known in what
    lengths the rest is: it is left out.
    """
    title = estimate.job.title or estimate.job.garments[0].plan.garment.name
    found: Counter[InHand] = Counter()
    for choice in estimate.fabrics:
        found.update(_of_fabric(choice, title))
    for line in estimate.purchases:
        if line.group not in CUT_FROM:
            found.update(_of_small_thing(line, title))
    return tuple(
        row.model_copy(update={"count": row.count * number}) for row, number in found.items()
    )


def _of_fabric(choice: FabricChoice, title: str) -> Iterator[InHand]:
    terms, chosen = choice.need.terms, choice.chosen
    bought, offer = chosen.buy.bought, chosen.buy.offer
    if len(chosen.laid.cuts) != 1 or not isinstance(bought, Length):
        return
    length = _worth_keeping(bought - chosen.needed, metric=offer.sold_by.metric)
    if length:
        yield InHand.model_construct(
            item=terms.item or offer.item,
            colour=terms.colour,
            width=chosen.width,
            usable=terms.usable or offer.usable,
            length=length,
            note=_note(title),
        )


def _of_small_thing(line: Purchase, title: str) -> Iterator[InHand]:
    need, bought, offer = line.need, line.buy.bought, line.buy.offer
    if need is None or not isinstance(bought, int) or not bought:
        return
    row = InHand.model_construct(
        item=need.terms.item or offer.item, colour=need.terms.colour, note=_note(title)
    )
    if isinstance(need, CountNeed) and isinstance(line.needed, int):
        holds = offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1
        spare = bought * holds - line.needed
        if spare > 0:
            yield row.model_copy(update={"count": spare, "length": offer.length})
    elif isinstance(need, LengthNeed) and isinstance(line.needed, Length) and _is_one(line):
        holds_length = offer.put_up.holds
        assert isinstance(holds_length, Length), "a trim on a card says how much it holds"
        metric = offer.put_up.metric
        left = _worth_keeping(holds_length - line.needed, metric=metric)
        if left:
            yield row.model_copy(update={"length": left, "width": offer.width})


def _is_one(line: Purchase) -> bool:
    """Whether a line buys one length, all of whose left-over is in one piece."""
    return line.buy.bought == 1 and line.buy.offer.put_up.pieces == 1


def _note(title: str) -> str:
    return f"left over from {title}"
