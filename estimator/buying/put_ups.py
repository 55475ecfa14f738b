"""A trim's runs on what a shop packs it on: cards, spools and rolls, their sizes mixed.

What is searched for in ``filling`` and ``joining`` is told here with its offers, its money and its
working. Without a price for every offer the least length is bought.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import lcm

from estimator.buying.cut_from import cut_from, off_the_roll, on_put_ups
from estimator.buying.cut_lengths import break_note, cut_from_roll, steps_sold_of, with_waste
from estimator.buying.filling import least_filling
from estimator.buying.fillings import Filling, Holder, Roll, sets_of_put_ups
from estimator.buying.joining import (
    JoinableRun,
    JoinedFilling,
    joined_beside_roll,
    joined_filling,
)
from estimator.buying.run_sums import all_runs
from estimator.buying.types import NOT_PROVED, Buy, Part, Way
from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import Length, Unit, tape_text, whole_ticks
from estimator.needs.types import LengthNeed, Run
from estimator.working import Operation, Reckoning, Step

MOST_RUNS_ON_CARDS = 5_000


def ways_on_put_ups(need: LengthNeed, unit: Unit) -> list[Way]:
    """The ways to have all runs on put-ups of one size, of several, or partly from the roll.

    None where a run goes on none of them. ``unit`` is that in which notes are worded. Raises
    Wrong for more runs than are fitted.
    """
    offers = [offer for offer in need.terms.offers if isinstance(offer.put_up.holds, Length)]
    if not offers:
        return []
    count = sum(run.count for run in need.runs)
    if count > MOST_RUNS_ON_CARDS:
        raise Wrong(
            f"there are {count} runs to fit on {offers[0].put_up.many_text}",
            f"plan at most {MOST_RUNS_ON_CARDS}, or offer it by the length",
        )
    return [*_Shelf(need, offers, unit).ways(), *_after_one_another(need, offers, unit)]


def _after_one_another(need: LengthNeed, offers: list[Offer], unit: Unit) -> Iterator[Way]:
    """Alike runs from a motif, of which only the first of each card is cut from anywhere."""
    if len(need.runs) > 1 or not need.runs[0].after:
        return
    (run,) = need.runs
    further = max(run.after, key=lambda one: one.exact)
    begins = run.length.exact - further.exact
    long_enough = [
        offer for offer in offers
        if isinstance(offer.put_up.holds, Length) and offer.put_up.holds.ticks > begins
    ]  # fmt: skip
    if long_enough:
        alike = replace(need, runs=(replace(run, length=further, after=(), joins=0),))
        yield from _Shelf(alike, long_enough, unit, begins).whole_ways()


class _Shelf:
    """The put-ups on offer and the runs to go on them, in whole parts of a tick.

    ``begins`` is what is lost of each length, in ticks, before its first run can begin.
    """

    def __init__(
        self, need: LengthNeed, offers: list[Offer], unit: Unit, begins: Fraction = Fraction(0)
    ) -> None:
        self.need, self.offers, self.unit, self.begins = need, offers, unit, begins
        self.all_runs = all_runs(need)
        exact = [*(run.length.exact for run in need.runs), begins]
        self.fineness = lcm(*(one.denominator for one in exact))
        self.priced = all(offer.price is not None for offer in need.terms.offers)
        rolls = [offer for offer in need.terms.offers if offer.put_up.cut_to_length]
        self.rolls = rolls if self.priced else []
        prices = [*map(_price, offers), *map(_price_of_a_step, self.rolls)]
        self.coin = lcm(*(price.denominator for price in prices))
        self.holders = [self._holder(offer) for offer in offers]
        self.runs = [
            self._in_parts(number, run)
            for number, run in enumerate(need.runs)
            for _ in range(run.count)
        ]

    def _holder(self, offer: Offer) -> Holder:
        holds = offer.put_up.holds
        assert isinstance(holds, Length), "a put-up of a trim holds a length"
        parts, pieces = holds.ticks * self.fineness, offer.put_up.pieces
        least = offer.from_quantity if isinstance(offer.from_quantity, int) else 1
        cost = int(_price(offer) * self.coin) if self.priced else parts * pieces
        return Holder(parts - int(self.begins * self.fineness), cost, max(1, least), pieces)

    def _in_parts(self, number: int, run: Run) -> JoinableRun:
        return JoinableRun(
            int(run.length.exact * self.fineness),
            run.joins,
            run.overlap.ticks * self.fineness,
            (run.repeat.ticks if run.repeat else 1) * self.fineness,
            number,
        )

    def whole_ways(self) -> Iterator[Way]:
        """All runs on put-ups, none joined."""
        whole = least_filling([run.length for run in self.runs], self.holders)
        if whole is not None:
            yield self._way(whole)

    def ways(self) -> Iterator[Way]:
        """Whole runs, such with a roll beside them, and joined ones."""
        lengths = [run.length for run in self.runs]
        whole = least_filling(lengths, self.holders)
        if whole is not None:
            yield self._way(whole)
        costs = [whole.cost] if whole else []
        for roll in self.rolls:
            on_roll = self._roll(roll)
            costs.append(on_roll.cost(sum(lengths)))
            partly = least_filling(lengths, self.holders, on_roll)
            if partly is not None and partly.rolled and partly.loads:
                costs.append(partly.cost)
                yield self._way(partly, roll)
        if any(run.joins for run in self.runs):
            yield from self._joined_ways(costs)

    def _joined_ways(self, costs: list[int]) -> Iterator[Way]:
        """Runs joined on the put-ups, alone or beside a roll; ``costs`` are those without joins."""
        joined = joined_filling(self.runs, self.holders, min(costs, default=None))
        if joined is not None and joined.joins:
            costs = [*costs, joined.filling.cost]
            yield self._way(joined.filling, joined=joined)
        for roll in self.rolls:
            beside = joined_beside_roll(self.runs, self.holders, self._roll(roll), min(costs))
            if beside is not None and beside.joins and beside.filling.rolled:
                yield self._way(beside.filling, roll, beside)

    def _roll(self, offer: Offer) -> Roll:
        """What a length of so many parts costs from the roll, waste and the shop's step included.

        One run's share of it has no rounding in it, and is rounded down.
        """
        steps = steps_sold_of(self.need.terms, offer)
        a_step = _price_of_a_step(offer) * self.coin
        a_part = a_step / (offer.selling_step.ticks * self.fineness) * (1 + self.need.terms.waste)
        return Roll(
            cost=lambda parts: int(steps(Fraction(parts, self.fineness)) * a_step),
            share=lambda parts: int(parts * a_part),
        )

    def _way(
        self, filling: Filling, roll: Offer | None = None, joined: JoinedFilling | None = None
    ) -> Way:
        """What is bought, each put-up with its working and the runs that are cut from it."""
        everything = self.all_runs
        loads, rolled = cut_from(self.need.runs, filling, joined, self.fineness)
        joins = joined.joins if joined else 0
        if joined:
            more = whole_ticks(Fraction(joined.overlaps, self.fineness))
            everything = everything.plus(f"{joins} joins overlapped" if joins > 1
                                         else "one join overlapped", more)  # fmt: skip
        kinds = [number for number, count in enumerate(filling.bought) if count]
        names = [f"{filling.bought[n]} × {self.offers[n].put_up.text}" for n in kinds]
        by_sum = self._fewer_by_sum(filling)
        parts = []
        for number in kinds:
            part = self._part(number, filling, everything, joins)
            notes = [f"{joins} join{'s' if joins > 1 else ''} in all"] if joins else []
            notes += _together([name for n, name in zip(kinds, names, strict=True) if n != number],
                               roll)  # fmt: skip
            if number == kinds[0]:
                notes += [by_sum] if by_sum and not joins else []
                notes += [NOT_PROVED] if not filling.proved and self._might_be_less(filling) else []
            offer = self.offers[number]
            cut = [runs for (n, _), runs in zip(filling.loads, loads, strict=True) if n == number]
            buy = replace(part.buy, note=_said(notes, part.buy.note))
            parts.append(replace(part, buy=on_put_ups(buy, offer.put_up, cut)))
        if roll is not None:
            part = self._from_roll(filling, everything, roll, names)
            parts.append(replace(part, buy=off_the_roll(part.buy, rolled)))
        return tuple(parts)

    def _part(self, number: int, filling: Filling, everything: Reckoning, joins: int) -> Part:
        """The put-ups of one kind: the runs on them, taken out of all, and fitted."""
        offer, holder = self.offers[number], self.holders[number]
        cards = [card for kind, card in filling.loads if kind == number]
        here = sum(map(sum, cards))
        elsewhere = sum(map(sum, (c for k, c in filling.loads if k != number))) + sum(
            filling.rolled
        )
        rest = everything.minus("what is on the others", self._ticks(elsewhere))
        pieces = sum(map(len, cards))
        what = f"{pieces} length{'s' if pieces > 1 else ''}, joined where a run has several"
        if not joins:
            what = f"{pieces} whole runs, each in one piece" if pieces > 1 else "1 run in one piece"
        holds = offer.put_up.holds
        assert isinstance(holds, Length), "a put-up of a trim holds a length"
        if self.begins:
            kept = tape_text(whole_ticks(self.begins), self.unit)
            what += f", and {kept} of each length to begin on a motif"
        steps = [*rest.steps, Step(what, Operation.FITTED, holds, len(cards))]
        bought, packs = filling.bought[number], -(-len(cards) // holder.pieces)
        notes = []
        if holder.pieces > 1:
            label = f"up to whole {offer.put_up.text}"
            steps.append(Step(label, Operation.DIVIDE, holder.pieces, packs))
        if bought > packs:
            label = "the quantity from which this price holds"
            steps.append(Step(label, Operation.AT_LEAST, bought, bought))
            notes.append(break_note(f"{bought}"))
        left = [
            Length((holder.holds - sum(card)) // self.fineness)
            for card in cards
            if sum(card) < holder.holds
        ]
        left += [holds] * (packs * holder.pieces - len(cards))
        over = tuple(sorted(left, reverse=True))
        buy = Buy(offer, bought, tuple(steps), "; ".join(notes), left=over)
        return Part(buy, whole_ticks(self._ticks(here)))

    def _from_roll(
        self, filling: Filling, everything: Reckoning, roll: Offer, names: list[str]
    ) -> Part:
        on_cards = sum(sum(card) for _, card in filling.loads)
        rest = everything.minus("what is on the put-ups", self._ticks(on_cards))
        needed = with_waste(rest, self.need.terms)
        buy = cut_from_roll([needed], roll)
        return Part(replace(buy, note=_said(_together(names, None), buy.note)), needed.value)

    def _ticks(self, parts: int) -> Fraction:
        return Fraction(parts, self.fineness)

    def _might_be_less(self, filling: Filling) -> bool:
        """Whether the sum of lengths leaves room for less: if not, a rule has found the least."""
        if filling.rolled:
            return True
        return self._by_sum(filling) is not None

    def _by_sum(self, filling: Filling) -> tuple[int, ...] | None:
        """The cheapest put-ups that hold the sum, where they cost less than what is bought."""
        room = sum(run.length for run in self.runs)
        sets = sets_of_put_ups(self.holders, filling.cost, room, sum(filling.bought))
        return sets[0][1] if sets else None

    def _fewer_by_sum(self, filling: Filling) -> str:
        chosen = None if filling.rolled else self._by_sum(filling)
        if chosen is None:
            return ""
        kinds = [number for number, count in enumerate(chosen) if count]
        fits = " and ".join(f"{chosen[n]} × {self.offers[n].put_up.text}" for n in kinds)
        alike = [number for number, count in enumerate(filling.bought) if count] == kinds
        if len(kinds) == 1 and alike:
            fits = f"{chosen[kinds[0]]}"
        may_be = any(run.joins for run in self.runs)
        why = "not with the joins that are allowed" if may_be else "no run is joined"
        return f"the sum of lengths would fit on {fits}, but {why}"


def _price(offer: Offer) -> Fraction:
    price = offer.price_per_sold_unit
    return Fraction(price) if price is not None else Fraction(0)


def _price_of_a_step(offer: Offer) -> Fraction:
    """What the least that is cut from the roll costs, not rounded to a coin."""
    return _price(offer) * (offer.selling_step / offer.sold_by.length)


def _together(names: Sequence[str], roll: Offer | None) -> list[str]:
    """What else is bought of the same trim; bolts and cards may differ in their dye."""
    others = [*names, *(["a length from the roll"] if roll is not None else [])]
    if not others:
        return []
    return [f"together with {' and '.join(others)}: see that their colours match"]


def _said(notes: Sequence[str], more: str) -> str:
    return "; ".join(filter(None, (*notes, more)))
