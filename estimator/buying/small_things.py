"""Trims, elastics and notions: from needs to the cheapest way to buy each."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from math import lcm

from estimator.buying.cut_lengths import break_note, cut_from_roll, with_waste
from estimator.buying.put_ups import fewest_bins
from estimator.buying.types import Buy, Purchase, least_bought
from estimator.catalog import Kind, Offer
from estimator.faults import Wrong
from estimator.measure import Length, Unit, natural_text, shop_text, tape_text
from estimator.needs.types import CountNeed, LengthNeed
from estimator.working import Operation, Reckoning, Step, in_all

MOST_RUNS_ON_CARDS = 5_000


def buy_length(need: LengthNeed, unit: Unit) -> Purchase:
    """The cheapest way to buy a trim: cut from the roll, or on cards of whole runs.

    ``unit`` is that in which complaints are worded. Raises Wrong for a run that no put-up holds.
    """
    all_runs = _all_runs(need)
    needed = with_waste(all_runs, need.terms)
    ways = []
    for offer in need.terms.offers:
        if offer.put_up.cut_to_length:
            ways.append(cut_from_roll([needed], offer))
        elif isinstance(offer.put_up.holds, Length):
            ways += _on_cards(need, all_runs, offer, offer.put_up.holds, unit)
        else:
            raise Wrong(
                f"'{offer.item}' is sold as {offer.put_up.text}, which says nothing of its length",
                "offer it by the length, or as card of 3 yd",
            )
    if not ways:
        longest = max(run.length.value for run in need.runs)
        holds = max(offer.put_up.holds for offer in need.terms.offers
                    if isinstance(offer.put_up.holds, Length))  # fmt: skip
        raise Wrong(
            f"one run takes {tape_text(longest, unit)} in one piece, and the longest put-up of "
            f"'{need.title}' holds {tape_text(holds, unit)}",
            "plan shorter runs, or offer it by the length or in a longer put-up",
        )
    best = least_bought(ways)
    return Purchase(
        key=need.key,
        group=need.group,
        title=need.title,
        names=need.names,
        colour=need.terms.colour,
        width=best.offer.width,
        needed=needed.value if isinstance(best.bought, Length) else all_runs.value,
        buy=best,
        notes=(*need.notes, *filter(None, (best.note,))),
        sources=tuple(dict.fromkeys(run.source for run in need.runs)),
        alike=need.terms,
    )


def _all_runs(need: LengthNeed) -> Reckoning:
    """Every run's working, one after the other, and their sum: totalled before any rounding."""
    alike = [run.length.times("so many runs alike", run.count) for run in need.runs]
    return in_all("all runs together", alike)


def _on_cards(
    need: LengthNeed, all_runs: Reckoning, offer: Offer, holds: Length, unit: Unit
) -> list[Buy]:
    """Whole runs on cards; none where a run is longer than a card."""
    lengths = [run.length.exact for run in need.runs for _ in range(run.count)]
    if max(lengths) > holds.ticks:
        return []
    if len(lengths) > MOST_RUNS_ON_CARDS:
        raise Wrong(
            f"there are {len(lengths)} runs to fit on {offer.put_up.text}",
            f"plan at most {MOST_RUNS_ON_CARDS}, or offer it by the length",
        )
    fineness = lcm(*(length.denominator for length in lengths))
    runs = [int(length * fineness) for length in lengths]
    capacity = holds.ticks * fineness
    cards = fewest_bins(runs, capacity)
    count = len(cards)
    by_sum = -(-sum(runs) // capacity)
    label = f"{len(runs)} whole run{'s' if len(runs) > 1 else ''}, each in one piece"
    steps = [*all_runs.steps, Step(label, Operation.FITTED, holds, count)]
    bought = _from_quantity(offer, count, steps)
    left = Counter(
        Length((capacity - sum(card)) // fineness) for card in cards if sum(card) < capacity
    )
    notes = []
    if count > by_sum:
        notes.append(f"the sum of lengths would fit on {by_sum}, but no run is joined")
    if bought > count:
        notes.append(break_note(f"{bought}"))
    if left:
        notes.append(f"left over: {_left_text(left, unit)}")
    return [Buy(offer, bought, tuple(steps), "; ".join(notes))]


def _left_text(left: Counter[Length], unit: Unit) -> str:
    """Left-overs as a person would name them, equal ones together and the longest first."""
    parts = [
        f"{number} × {_rough_text(length, unit)}" if number > 1 else _rough_text(length, unit)
        for length, number in sorted(left.items(), reverse=True)
    ]
    return ", ".join(parts[:4]) + (", ..." if len(parts) > 4 else "")


def _rough_text(length: Length, unit: Unit) -> str:
    """Long lengths in whole eighths of a yard, or tenths of a metre, downwards."""
    shop = unit.shop
    if length < shop.length * 2:
        return tape_text(length, unit)
    part = Unit.CM.length * 10 if shop.metric else Unit.YD.length.times(Fraction(1, 8))
    return shop_text(part * part.times_into(length), shop)


def _from_quantity(offer: Offer, count: int, steps: list[Step]) -> int:
    """At least the quantity from which an offer's price holds."""
    least = offer.from_quantity
    if not isinstance(least, int) or count >= least:
        return count
    steps.append(Step("the quantity from which this price holds", Operation.AT_LEAST, least, least))
    return least


def buy_count(need: CountNeed, unit: Unit) -> Purchase:
    """The cheapest way to buy a notion: singly or in packs; a zip by the length it must close.

    Raises Wrong for a zip that is not sold in that length, or in a longer one.
    """
    offers = need.terms.offers
    if need.opening is not None and any(offer.length for offer in offers):
        offers = _long_enough(need, need.opening, unit)
    ways = [_in_packs(need, offer) for offer in offers]
    best = least_bought(ways)
    notes = [best.note] if best.note else []
    length = best.offer.length
    if need.opening is not None and length is None:
        notes.append(
            f"for an opening of {tape_text(need.opening, unit)}: take it or the next longer"
        )
    elif need.opening is not None and length is not None:
        best = replace(best, steps=(*_zip_steps(need.opening, length), *best.steps))
        notes.append(f"{natural_text(length, unit)} long")
        if length > need.opening:
            notes.append(f"shorten to {natural_text(need.opening, unit)}")
    elif length is not None and need.terms.kind is not Kind.THREAD:
        notes.append(f"{natural_text(length, unit)} long")
    return Purchase(
        key=need.key,
        group=need.group,
        title=need.title,
        names=need.names,
        colour=need.terms.colour,
        width=best.offer.width,
        needed=need.count,
        buy=best,
        notes=(*need.notes, *notes),
        sources=need.sources,
        alike=(need.terms, need.opening),
    )


def _zip_steps(opening: Length, length: Length) -> tuple[Step, ...]:
    label = "sold in that length" if length == opening else "the next longer one sold"
    return (
        Step("opening to close", Operation.START, opening, opening),
        Step(label, Operation.START, length, length),
    )


def _long_enough(need: CountNeed, opening: Length, unit: Unit) -> tuple[Offer, ...]:
    """Closed-end zips in the next longer length sold; a separating zip is bought exact."""
    lengths = sorted({offer.length for offer in need.terms.offers if offer.length})
    exact = need.terms.kind is Kind.SEPARATING_ZIP
    good = [length for length in lengths if (length == opening if exact else length >= opening)]
    if not good:
        sold = ", ".join(natural_text(length, unit) for length in lengths)
        why = "a separating zip cannot be shortened, and " if exact else ""
        raise Wrong(
            f"{why}'{need.title}' is not sold for an opening of {tape_text(opening, unit)}",
            f"the lengths sold are {sold}",
        )
    return tuple(offer for offer in need.terms.offers if offer.length == good[0])


def _in_packs(need: CountNeed, offer: Offer) -> Buy:
    if offer.put_up.cut_to_length:
        raise Wrong(
            f"'{offer.item}' is sold {offer.put_up.text}, and the plan counts it",
            "offer it each, or as pack of 6",
        )
    holds = offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1
    steps = list(need.steps)
    count = -(-need.count // holds)
    if holds > 1:
        steps.append(Step(f"up to whole {offer.put_up.text}", Operation.DIVIDE, holds, count))
    bought = _from_quantity(offer, count, steps)
    spare = bought * holds - need.count
    notes = [break_note(f"{bought}")] if bought > count else []
    notes += [f"{spare} to spare"] if spare else []
    return Buy(offer, bought, tuple(steps), "; ".join(notes))
