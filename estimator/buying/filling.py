"""Put-ups filled with whole runs at the least cost: bin packing with bins of several sizes.

A run is never joined here, so neither the sum of the lengths nor longest-first tells what to buy.
Every set of put-ups that costs less than what a rule found is tried, the cheapest set first: can it
take all runs? That is searched card by card, each as full as it can be (bin completion: Korf, "A
new algorithm for optimal bin packing", 2002, from memory), and cut off by the room that may be
wasted and by what the runs are worth in the linear relaxation.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from estimator.buying.filling_rules import by_rule
from estimator.buying.fillings import (
    Filling,
    Holder,
    Load,
    Roll,
    filled,
    sets_of_put_ups,
)
from estimator.buying.run_values import SCALE, run_values

MOST_RUNS_SEARCHED = 40
MOST_STEPS, MOST_STEPS_A_SET = 200_000, 40_000


def least_filling(
    runs: Sequence[int], holders: Sequence[Holder], roll: Roll | None = None
) -> Filling | None:
    """The cheapest way to have all runs whole; None where a run is longer than every put-up.

    Exact up to 40 runs as far as a counted search goes; beyond, the best of several rules.
    """
    longest = max((holder.holds for holder in holders), default=0)
    if roll is None and max(runs, default=0) > longest:
        return None
    best = by_rule(runs, holders, roll)
    if len(runs) > MOST_RUNS_SEARCHED:
        return best
    search = _Search(runs, holders, roll, best)
    search.run()
    return replace(search.best, proved=search.finished)


@dataclass(frozen=True, slots=True)
class _Slack:
    """What may still be lost below a node: room on the cards, and value of their cost."""

    room: int
    worth: int


class _Search:
    """Sets of put-ups, the cheapest first, and for each a depth-first search over full cards.

    ``values`` are such that no load of a card is worth more than the card costs: what the cards of
    a set cost above the value of all runs may be lost, and no more.
    """

    def __init__(
        self,
        runs: Sequence[int],
        holders: Sequence[Holder],
        roll: Roll | None,
        best: Filling,
    ) -> None:
        self.lengths = sorted(set(runs), reverse=True)
        self.left = [list(runs).count(length) for length in self.lengths]
        self.holders, self.roll, self.best = holders, roll, best
        kinds = [(holder.holds, holder.a_piece) for holder in holders]
        shares = [roll.share(length) for length in self.lengths] if roll else None
        self.values = run_values(self.lengths, self.left, kinds, shares)
        self.total = sum(runs)
        self.worth = sum(v * n for v, n in zip(self.values, self.left, strict=True))
        self.loads: list[Load] = []
        self.rolled: list[int] = []
        self.steps = 0
        self.finished = True

    def run(self) -> None:
        """Lowers ``best`` as far as can be; ``finished`` says whether everything was tried."""
        room = self.total if self.roll is None else 0
        sets = sets_of_put_ups(self.holders, self.best.cost, room, sum(self.left))
        if sets is None:
            self.finished = False
            return
        for cost, chosen in sets:
            if cost >= self.best.cost:
                return
            if self.steps > MOST_STEPS:
                self.finished = False
                return
            cards = [n * h.pieces for h, n in zip(self.holders, chosen, strict=True)]
            self.cards, self.card_cost = cards, cost
            self.until = self.steps + MOST_STEPS_A_SET
            self.seen: set[tuple[object, ...]] = set()
            room = sum(h.holds * n for h, n in zip(self.holders, cards, strict=True)) - self.total
            price = sum(h.a_piece * n for h, n in zip(self.holders, cards, strict=True))
            slack = _Slack(room, price * SCALE - self.worth)
            self._next(slack)
            if self.steps > self.until:
                self.finished = False

    def _roll_room(self) -> int:
        """Up to which cost the roll may be used beside these cards."""
        return self.best.cost - 1 - self.card_cost

    def _next(self, slack: _Slack) -> bool:
        """Places the longest run left; True where all found a place and no more is to be sought."""
        if not any(self.left):
            found = filled(self.loads, self.rolled, self.holders, self.roll)
            if found.cost < self.best.cost:
                self.best = found
            return self.roll is None
        if self.steps > self.until or not self._may_do(slack):
            return False
        state = (tuple(self.left), tuple(self.cards), sum(self.rolled))
        if state in self.seen:
            return False
        self.seen.add(state)
        first = next(i for i, count in enumerate(self.left) if count)
        for _, lost, number, load in sorted(self._loads(first, slack)):
            if self._put_on(number, load, lost, slack):
                return True
        if self.roll is not None:
            length = self.lengths[first]
            self.left[first] -= 1
            self.rolled.append(length)
            self._next(_Slack(slack.room + length, slack.worth + self.values[first]))
            self.rolled.pop()
            self.left[first] += 1
        return False

    def _may_do(self, slack: _Slack) -> bool:
        """Whether the cards left, and what may be cut from the roll, can take the runs left."""
        if self.roll is None:
            return slack.room >= 0 and slack.worth >= 0
        most = self._roll_room()
        rolled = sum(self.rolled)
        if self.rolled and self.roll.cost(rolled) > most:
            return False
        if slack.room < 0 and self.roll.cost(rolled - slack.room) > most:
            return False
        spent = sum(self.roll.share(run) for run in self.rolled)
        return slack.worth >= 0 or -slack.worth <= (most - spent) * SCALE

    def _put_on(self, number: int, load: tuple[int, ...], lost: int, slack: _Slack) -> bool:
        worth = self.holders[number].a_piece * SCALE
        for i, take in enumerate(load):
            self.left[i] -= take
            worth -= take * self.values[i]
        runs = tuple(self.lengths[i] for i, take in enumerate(load) for _ in range(take))
        self.cards[number] -= 1
        self.loads.append((number, runs))
        done = self._next(_Slack(slack.room - lost, slack.worth - worth))
        self.loads.pop()
        self.cards[number] += 1
        for i, take in enumerate(load):
            self.left[i] += take
        return done

    def _loads(self, first: int, slack: _Slack) -> Iterator[tuple[int, int, int, tuple[int, ...]]]:
        """Full cards with the longest run on them: value lost, room lost, the card, its load."""
        for number, holder in enumerate(self.holders):
            room = holder.holds - self.lengths[first]
            if room < 0 or not self.cards[number]:
                continue
            load = [0] * len(self.lengths)
            load[first] = 1
            dear = holder.a_piece * SCALE - self.values[first]
            for extra, lost, counts in self._filled_up(first, room, load, dear, slack):
                yield extra, lost, number, counts

    def _filled_up(
        self, place: int, room: int, load: list[int], dear: int, slack: _Slack
    ) -> Iterator[tuple[int, int, tuple[int, ...]]]:
        self.steps += 1
        if self.steps > self.until:
            return
        left, lengths = self.left, self.lengths
        while place < len(load) and (lengths[place] > room or left[place] == load[place]):
            place += 1
        if place == len(load):
            full = all(left[i] == load[i] or lengths[i] > room for i in range(len(load)))
            if full and (self.roll is not None or (room <= slack.room and dear <= slack.worth)):
                yield dear, room, tuple(load)
            return
        if self.roll is None and not self._worth_filling(place, room, load, dear, slack):
            return
        had = load[place]
        for take in range(min(left[place] - had, room // lengths[place]), -1, -1):
            load[place] = had + take
            rest = room - take * lengths[place]
            yield from self._filled_up(
                place + 1, rest, load, dear - take * self.values[place], slack
            )
        load[place] = had

    def _worth_filling(
        self, place: int, room: int, load: list[int], dear: int, slack: _Slack
    ) -> bool:
        """Whether what still fits can bring the card's losses down to what may be lost."""
        length = value = 0
        hope = 0
        rest = room
        for i in range(place, len(load)):
            spare = self.left[i] - load[i]
            length += spare * self.lengths[i]
            value += spare * self.values[i]
            if spare and rest > 0:
                hope = max(hope, -(-self.values[i] * room // self.lengths[i]))
        return room - min(room, length) <= slack.room and dear - min(value, hope) <= slack.worth
