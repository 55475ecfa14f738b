"""Rules for filling put-ups: quick, good, and not proved; where an exact search begins or ends."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.buying.fillings import Filling, Holder, Load, Roll, filled
from estimator.buying.loads import best_load

MOST_LENGTHS_FILLED_UP = 60
"""Of more lengths than that, cards are filled longest first only."""


def by_rule(runs: Sequence[int], holders: Sequence[Holder], roll: Roll | None) -> Filling:
    """The cheapest of: each put-up first, its cards filled longest first or as full as can be."""
    found = []
    if roll is not None:
        found.append(filled((), sorted(runs, reverse=True), holders, roll))
    for first, holder in enumerate(holders):
        fits = [run for run in runs if run <= holder.holds]
        longer = sorted((run for run in runs if run > holder.holds), reverse=True)
        ways = [longest_first(fits, holder.holds)]
        if len(set(fits)) <= MOST_LENGTHS_FILLED_UP:
            ways.append(_fullest(fits, holder.holds))
        for cards in ways:
            loads: list[Load] = [(first, card) for card in cards]
            rolled: list[int] = []
            for run in longer:
                home = _cheapest_for(run, holders)
                if home is None:
                    rolled.append(run)
                else:
                    loads.append((home, (run,)))
            if rolled and roll is None:
                continue
            found.append(filled(loads, rolled, holders, roll))
            smaller = [(_no_dearer(number, card, holders), card) for number, card in loads]
            found.append(filled(smaller, rolled, holders, roll))
            if roll is not None:
                found.append(_rest_from_roll(found[-1], holders, roll))
    return min(found, key=lambda one: (one.cost, sum(one.bought)))


def _no_dearer(number: int, card: Sequence[int], holders: Sequence[Holder]) -> int:
    """The put-up on which the runs of a card may cost less than on the one where they are."""
    other = _cheapest_for(sum(card), holders)
    return number if other is None or holders[other].a_piece >= holders[number].a_piece else other


def _cheapest_for(length: int, holders: Sequence[Holder]) -> int | None:
    good = [n for n, one in enumerate(holders) if one.holds >= length and one.least == 1]
    return min(good, key=lambda n: (holders[n].a_piece, holders[n].holds, n), default=None)


def _rest_from_roll(filling: Filling, holders: Sequence[Holder], roll: Roll) -> Filling:
    """The emptiest cards' runs cut from the roll, as many of them as cost least."""
    loads = sorted(filling.loads, key=lambda load: sum(load[1]))
    ways = [
        filled(loads[number:], [*filling.rolled, *(run for _, card in loads[:number]
                                                    for run in card)], holders, roll)
        for number in range(len(loads) + 1)
    ]  # fmt: skip
    return min(ways, key=lambda one: one.cost)


def longest_first(runs: Sequence[int], holds: int) -> list[tuple[int, ...]]:
    """First-fit decreasing: each run, the longest first, on the first card with room for it."""
    cards: list[list[int]] = []
    room: list[int] = []
    for run in sorted(runs, reverse=True):
        home = next((number for number, left in enumerate(room) if run <= left), None)
        if home is None:
            cards.append([run])
            room.append(holds - run)
        else:
            cards[home].append(run)
            room[home] -= run
    return [tuple(card) for card in cards]


def _fullest(runs: Sequence[int], holds: int) -> list[tuple[int, ...]]:
    """Each card in turn as full as can be."""
    lengths = sorted(set(runs), reverse=True)
    left = [runs.count(length) for length in lengths]
    cards = []
    while any(left):
        load = best_load(lengths, lengths, left, holds)
        # the same load again while there are runs for it
        again = min(have // take for have, take in zip(left, load.counts, strict=True) if take)
        card = tuple(
            length for length, take in zip(lengths, load.counts, strict=True) for _ in range(take)
        )
        cards += [card] * again
        left = [have - take * again for have, take in zip(left, load.counts, strict=True)]
    return cards
