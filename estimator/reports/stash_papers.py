"""What comes from the stash: from which place, how much of it, what for, and what is left."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import ZERO, Length, Unit, decimal_text, natural_text, tape_text
from estimator.needs.types import ThreadNeed
from estimator.reports.tables import Column, Table, Value
from estimator.reports.units import tape_unit
from estimator.reports.uses import MOST_NAMED, named, several_garments, use_of
from estimator.stash import InHand, Taken, is_metric
from estimator.working import Source

LONG = 3
"""From so many yards or metres on a length is told in those, and no tape is laid along it."""
NOTHING_TO_BUY = "nothing to buy: all of it comes from the stash"


def stash_table(estimate: Estimate) -> Table | None:
    """Each thing in hand that is used; None where the stash saves nothing, or there is none."""
    unit = tape_unit(estimate)
    rows = tuple(_rows(estimate))
    if not rows:
        return None
    mark = f" Check mark of the stash file: {estimate.job.stash.mark}." if _mark(estimate) else ""
    return Table(
        title="From the stash",
        columns=(
            Column("Take", wide=18),
            Column("Of", wide=30),
            Column("In hand", wide=30),
            Column("Where", wide=20),
            Column("For", wide=40),
            Column("Left", wide=14),
        ),
        rows=rows,
        unit=unit,
        notes=(f"What is not used stays whole.{mark}",),
    )


def _mark(estimate: Estimate) -> bool:
    return bool(estimate.job.stash.mark)


def _rows(estimate: Estimate) -> Iterator[tuple[Value, ...]]:
    cut = {id(one.need): one.chosen.stash for one in estimate.fabrics}
    by_sources = {one.need.sources: cut[id(one.need)] for one in estimate.fabrics}
    for purchase in estimate.purchases:
        remnants = by_sources.get(purchase.sources, ())
        for number, taken in enumerate(purchase.taken):
            uses = use_of(purchase, estimate) or named(purchase.names)
            parts = Counter(source for source, _ in taken.runs)
            if remnants:
                for piece in remnants[number].pieces:
                    parts[piece.source] += piece.quantity
            if parts:
                uses = cut_text(parts, estimate)
            thing = taken.single.thing
            unit = own_unit(thing, tape_unit(estimate))
            nothing = "what is not sewn" if isinstance(purchase.need, ThreadNeed) else "nothing"
            yield (
                amount_text(taken.amount, unit),
                " / ".join(filter(None, (purchase.title, purchase.colour))),
                in_hand_text(thing, unit),
                thing.place or f"row {taken.single.row} of the stash",
                uses,
                amount_text(taken.left, unit) if taken.left else nothing,
            )


def cut_text(cut: Counter[Source], estimate: Estimate) -> str:
    """What is cut from one thing in hand, with its numbers; of several garments also whose it is.

    ``Porter's coat (Kit): 2 × front, 1 × back; Porter's coat (Len): 1 × back``
    """
    counted = any(count > 1 for count in cut.values())
    garments: dict[str, list[str]] = {}
    for source, count in cut.items():
        name = f"{count} × {source.name}" if counted else source.name
        garments.setdefault(source.owner if several_garments(estimate) else "", []).append(name)
    told = [": ".join(filter(None, (whose, named(names)))) for whose, names in garments.items()]
    more = len(told) - MOST_NAMED
    rest = [f"for {more} more garment{'s' if more > 1 else ''} as well"] if more > 0 else []
    return "; ".join([*told[:MOST_NAMED], *rest])


def own_unit(thing: InHand, unit: Unit) -> Unit:
    """A thing that was measured in metric is told in it, whatever the plans are in."""
    return Unit.CM if thing.length and is_metric(thing.length) else unit


def amount_text(amount: Length | int, unit: Unit) -> str:
    """A length as a tape reads it, a long one in yards or metres and the rest, or a count."""
    return _length_text(amount, unit) if isinstance(amount, Length) else str(amount)


def _length_text(length: Length, unit: Unit) -> str:
    shop = unit.shop
    if length < shop.length * LONG:
        return tape_text(length, unit)
    if shop.metric:
        return f"{decimal_text(length / shop.length, 3)} {shop.symbol}"
    whole, rest = divmod(length.ticks, shop.length.ticks)
    beyond = tape_text(Length(rest), unit)
    if beyond == tape_text(shop.length, unit):
        whole, beyond = whole + 1, tape_text(ZERO, unit)
    told = "" if beyond == tape_text(ZERO, unit) else f" {beyond}"
    return f"{whole} {shop.symbol}{told}"


def in_hand_text(thing: InHand, unit: Unit) -> str:
    """What a thing in hand is: ``45 in wide, 30 in long, washed``, or how many there are."""
    if thing.length is None:
        return f"{thing.count} in hand"
    parts = [f"{natural_text(thing.width, unit)} wide"] if thing.width else []
    parts.append(f"{_length_text(thing.length, unit)} long")
    if thing.washed:
        parts.append("washed")
    if thing.note:
        parts.append(thing.note)
    return ", ".join(parts)


def where_text(taken: Taken) -> str:
    """Where a thing in hand lies, in a few words."""
    return taken.single.thing.place or f"the stash, row {taken.single.row}"


def stash_note(purchase: Purchase, unit: Unit) -> str:
    """What a line of the list has from the stash; nothing where it has nothing."""
    if not purchase.taken:
        return ""
    parts = [
        f"{amount_text(one.amount, own_unit(one.single.thing, unit))} ({where_text(one)})"
        for one in purchase.taken
    ]
    if not purchase.buy.bought:
        return f"{NOTHING_TO_BUY}: {named(parts)}"
    return f"beside this, from the stash: {named(parts)}"
