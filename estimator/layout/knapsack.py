"""The best selection of pieces beside each other in one line, each kind as often as it is wanted.

A bounded knapsack: the best value for its size first, all selections side by side, and of those
that use as much of the line only the most valuable one. A selection that could not catch up with
the best, even if the rest of the line were filled at the best ratio still to come, is dropped.
Values may be floats (to look for a good bound) or whole numbers (to prove it).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice
from math import gcd
from operator import itemgetter
from typing import TypeAlias

LARGEST_LINE = 20_000
"""Most steps of room that a line may have; finer questions are not answered."""
MOST_IN_A_LINE = 300
"""Most pieces that may lie in one line; with more, selections are too many to be gone through."""
MANY_COPIES = 24
"""Of more copies than this, bundles of 1, 2, 4 and so on are taken and not one after another."""
SLACK = 1e-9
"""Selections this close to hopeless, as a share of the best value, are not dropped."""

Number: TypeAlias = float | int
_Pieces: TypeAlias = "tuple[int, int, int, _Pieces] | None"
_State: TypeAlias = tuple[int, Number, _Pieces]
_Offer: TypeAlias = tuple[float, int, list[tuple[int, int, Number]]]
_used = itemgetter(0)


@dataclass(frozen=True, slots=True)
class Item:
    """A kind of piece: up to `count` of it, each taking one of `sizes` of the room."""

    count: int
    sizes: tuple[int, ...]


class Line:
    """A line of cloth `room` long, and the items that may share it; `work` counts selections."""

    def __init__(self, room: int, items: Sequence[Item]) -> None:
        step = gcd(*(size for item in items for size in item.sizes)) if items else 1
        self.room = room // step
        self.items = [
            Item(item.count, tuple(size // step for size in item.sizes)) for item in items
        ]
        self.copies = [
            min(item.count, self.room // min(item.sizes)) if item.sizes else 0
            for item in self.items
        ]

        self.work = 0

    @property
    def too_fine(self) -> bool:
        """Whether the line has more steps, or takes more pieces, than is worth its while."""
        return self.room > LARGEST_LINE or sum(self.copies) > MOST_IN_A_LINE

    def best(self, values: Sequence[Sequence[Number]]) -> tuple[Number, list[tuple[int, int]]]:
        """The greatest value in the line, and its pieces as (item, which of its sizes).

        `values[i][s]` is the value, zero or more, of item i when it takes its size s.
        """
        offers = self._offers(values)
        best, chosen = self._greedy(offers)
        states: list[_State] = [(0, 0, None)]
        for place, (ratio, index, takes) in enumerate(offers):
            following = offers[place + 1][0] if place + 1 < len(offers) else 0.0
            for times in self._bundles(index, len(takes)):
                more: list[_State] = []
                least = best * (1 - SLACK)
                for which, size, worth in takes:
                    last, gain = self.room - size * times, worth * times
                    end = bisect_right(states, last, key=_used)
                    with_it: list[_State] = [
                        (used + size * times, value + gain, (index, which, times, pieces))
                        for used, value, pieces in islice(states, end)
                        if value + gain + ratio * (last - used) >= least
                    ]
                    if with_it and with_it[-1][1] > best:
                        _, best, chosen = with_it[-1]  # what uses more of the line is worth more
                    more += with_it
                if not more:
                    break
                self.work += len(more) + len(states)
                states = _undominated(states + more)
            least = best * (1 - SLACK)
            states = [
                state for state in states if state[1] + following * (self.room - state[0]) >= least
            ]
        return best, _listed(chosen)

    def _bundles(self, index: int, ways: int) -> list[int]:
        """Copies of an item, in bundles of which each number up to all of them can be made up.

        One by one where each may lie in several ways, for those of a bundle lie alike.
        """
        left = self.copies[index]
        if ways > 1 or left <= MANY_COPIES:
            return [1] * left
        bundles: list[int] = []
        while left:
            bundles.append(min(left, 1 << len(bundles)))
            left -= bundles[-1]
        return sorted(bundles)

    def _offers(self, values: Sequence[Sequence[Number]]) -> list[_Offer]:
        """Items worth taking, the best value for its size first."""
        offers: list[_Offer] = []
        for index, item in enumerate(self.items):
            takes = [
                (which, size, value)
                for which, (size, value) in enumerate(zip(item.sizes, values[index], strict=True))
                if value > 0 and size <= self.room
            ]
            if takes:
                offers.append((max(value / size for _, size, value in takes), index, takes))
        return sorted(offers, key=lambda offer: (-offer[0], offer[1]))

    def _greedy(self, offers: list[_Offer]) -> tuple[Number, _Pieces]:
        total: Number = 0
        used = 0
        pieces: _Pieces = None
        for _, index, takes in offers:
            which, size, value = max(takes, key=lambda take: take[2] / take[1])
            times = min(self.items[index].count, (self.room - used) // size)
            if times:
                total, used = total + value * times, used + size * times
                pieces = (index, which, times, pieces)
        return total, pieces


def _undominated(states: list[_State]) -> list[_State]:
    """States of which no other uses less of the line and is worth as much, by what they use."""
    states.sort(key=_used)
    kept: list[_State] = []
    most: Number = -1
    before = -1
    for state in states:
        used, value, _ = state
        if value > most:
            if used == before:
                kept[-1] = state
            else:
                kept.append(state)
            most, before = value, used
    return kept


def _listed(pieces: _Pieces) -> list[tuple[int, int]]:
    out = []
    while pieces is not None:
        index, which, times, pieces = pieces
        out += [(index, which)] * times
    return out
