"""Trims, elastics and notions: from needs to the cheapest way to buy each.

A purchase is on one offer; a need that is met from several put-ups is several purchases.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import lcm

from estimator.buying.as_lines import as_lines
from estimator.buying.cut_from import off_the_roll, runs_in_turn
from estimator.buying.cut_lengths import break_note, cut_from_roll, with_waste
from estimator.buying.fillings import Holder
from estimator.buying.packs import least_packs
from estimator.buying.put_ups import ways_on_put_ups
from estimator.buying.ready_cut import length_notes, length_steps, of_the_right_length
from estimator.buying.run_sums import longest_run, runs_in_one
from estimator.buying.types import Buy, Part, Purchase, Way, least_way
from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import Length, Unit, tape_text
from estimator.needs.types import CountNeed, LengthNeed
from estimator.working import Operation, Step


def lines_for(need: LengthNeed | CountNeed, unit: Unit) -> tuple[Purchase, ...]:
    """The lines on which a trim or notion is bought. Raises Wrong where it cannot be had."""
    return buy_length(need, unit) if isinstance(need, LengthNeed) else buy_count(need, unit)


def buy_length(need: LengthNeed, unit: Unit) -> tuple[Purchase, ...]:
    """The cheapest way to buy a trim: cut from the roll, on put-ups of whole runs, or on both.

    ``unit`` is that in which complaints are worded. Raises Wrong for a run that no put-up holds.
    """
    runs = runs_in_one(need)
    needed = with_waste(runs, need.terms)
    ways: list[Way] = []
    for offer in need.terms.offers:
        if offer.put_up.cut_to_length:
            buy = off_the_roll(cut_from_roll([needed], offer), runs_in_turn(need.runs))
            ways.append((Part(buy, needed.value),))
        elif not isinstance(offer.put_up.holds, Length):
            raise Wrong(
                f"'{offer.item}' is sold {offer.put_up.sold_text}, "
                "which says nothing of its length",
                "state its length beside it, or offer it by the length or as card of 3 yd",
            )
    ways += ways_on_put_ups(need, unit)
    if not ways:
        holds = max(offer.put_up.holds for offer in need.terms.offers
                    if isinstance(offer.put_up.holds, Length))  # fmt: skip
        raise Wrong(
            f"one run takes {tape_text(longest_run(need), unit)} in one piece, and the longest "
            f"put-up of '{need.title}' holds {tape_text(holds, unit)}",
            "plan shorter runs, allow joins, or offer it by the length or in a longer put-up",
        )
    best = least_way(ways)
    others = [way for way in ways if way is not best]
    of_runs = tuple(dict.fromkeys(note for run in need.runs for note in run.notes))
    return as_lines(need, best, others, alike=need.terms, told=lambda _: of_runs)


def buy_count(need: CountNeed, unit: Unit) -> tuple[Purchase, ...]:
    """The cheapest way to buy a notion: singly and in packs; a zip or bone in the right length.

    Raises Wrong for a zip or bone that is not sold in a length that would do.
    """
    offers = need.terms.offers
    if need.opening is not None and any(offer.length for offer in offers):
        offers = of_the_right_length(need, need.opening, unit)
    ways = _in_packs(need, offers)
    best = least_way(ways)
    ways += [_packed(need, [offer]) for offer in offers]
    others = [way for way in ways if way is not best]
    return as_lines(
        need,
        tuple(replace(part, buy=_of_its_length(need, part.buy)) for part in best),
        others,
        alike=(need.terms, need.opening, need.shorter),
        told=lambda buy: length_notes(need, buy, unit),
    )


def _of_its_length(need: CountNeed, buy: Buy) -> Buy:
    """The same, its working beginning with the length that is sold."""
    return replace(buy, steps=(*length_steps(need, buy), *buy.steps))


def _in_packs(need: CountNeed, offers: tuple[Offer, ...]) -> list[Way]:
    """Packs of several sizes and single ones together; things of several lengths do not mix."""
    for offer in offers:
        if offer.put_up.cut_to_length:
            raise Wrong(
                f"'{offer.item}' is sold {offer.put_up.sold_text}, and the plan counts it",
                "offer it each, or as pack of 6",
            )
    lengths = dict.fromkeys(offer.length for offer in offers)
    return [
        _packed(need, [offer for offer in offers if offer.length == length]) for length in lengths
    ]


def _packed(need: CountNeed, offers: list[Offer]) -> Way:
    """The cheapest mix, the largest packs first."""
    prices = [Fraction(offer.price or 0) for offer in offers]
    priced = all(offer.price is not None for offer in offers)
    coin = lcm(*(price.denominator for price in prices))
    packs = [
        Holder(_holds(offer), int(price * coin) if priced else 0, _least(offer))
        for offer, price in zip(offers, prices, strict=True)
    ]
    counts = least_packs(need.count, packs)
    bought = [(offer, count) for offer, count in zip(offers, counts, strict=True) if count]
    bought.sort(key=lambda one: -_holds(one[0]))
    return tuple(_part(need, bought, place) for place in range(len(bought)))


def _holds(offer: Offer) -> int:
    return offer.put_up.holds if isinstance(offer.put_up.holds, int) else 1


def _least(offer: Offer) -> int:
    return max(1, offer.from_quantity) if isinstance(offer.from_quantity, int) else 1


def _packs_text(offer: Offer, count: int) -> str:
    return f"{count} singly" if _holds(offer) == 1 else f"{count} × {offer.put_up.text}"


def _part(need: CountNeed, bought: list[tuple[Offer, int]], place: int) -> Part:
    """The packs of one size: what those before them leave, and in the last all that is over."""
    offer, packs = bought[place]
    holds, steps = _holds(offer), list(need.steps)
    before = sum(_holds(other) * count for other, count in bought[:place])
    left = need.count - before
    if before:
        steps.append(Step("in the larger packs", Operation.TAKE, before, left))
    here = left
    if place < len(bought) - 1 and left > packs * holds:
        here = packs * holds
        later = left - here
        steps.append(Step("in the smaller packs", Operation.TAKE, later, here))
    count = -(-here // holds)
    if holds > 1:
        steps.append(Step(f"up to whole {offer.put_up.text}", Operation.DIVIDE, holds, count))
    notes = []
    if packs > count:
        label = "the quantity from which this price holds"
        steps.append(Step(label, Operation.AT_LEAST, packs, packs))
        notes.append(break_note(f"{packs}"))
    others = [_packs_text(one, count) for one, count in bought if one is not offer]
    notes += [f"together with {' and '.join(others)}"] if others else []
    spare = packs * holds - here
    notes += [f"{spare} to spare"] if spare else []
    return Part(Buy(offer, packs, tuple(steps), "; ".join(notes)), here)
