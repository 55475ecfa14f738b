"""What a card holds at best: the runs that together are worth most and fit on it (a knapsack)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

MOST_STEPS = 20_000


@dataclass(frozen=True, slots=True)
class Load:
    """The best load found: ``counts`` of each length; no load is worth more than ``at_most``."""

    value: int
    counts: tuple[int, ...]
    at_most: int


def best_load(
    values: Sequence[int], lengths: Sequence[int], counts: Sequence[int], room: int
) -> Load:
    """The runs worth most in ``room``: at most ``counts[i]`` of ``lengths[i]``, ``values[i]`` each.

    Exact as far as a counted branch and bound goes, with the linear relaxation as its bound.
    """
    order = sorted(
        (i for i in range(len(lengths)) if values[i] > 0 and counts[i] and lengths[i] <= room),
        key=lambda i: (-values[i] / lengths[i], i),
    )
    search = _Search([(values[i], lengths[i], counts[i]) for i in order])
    search.run(0, 0, room)
    found = [0] * len(lengths)
    for place, count in zip(order, search.best, strict=False):
        found[place] = count
    return Load(search.value, tuple(found), max(search.value, search.unseen))


class _Search:
    """Depth-first, the densest length first and as many of it as fit."""

    def __init__(self, items: list[tuple[int, int, int]]) -> None:
        self.items = items
        self.taken = [0] * len(items)
        self.best: list[int] = []
        self.value = self.unseen = self.steps = 0

    def run(self, place: int, value: int, room: int) -> None:
        if value > self.value:
            self.value, self.best = value, self.taken[:place]
        if place == len(self.items):
            return
        worth, length, count = self.items[place]
        bound = value + -(-worth * room // length)
        if bound <= self.value:
            return
        self.steps += 1
        if self.steps > MOST_STEPS:
            self.unseen = max(self.unseen, bound)
            return
        for take in range(min(count, room // length), -1, -1):
            self.taken[place] = take
            self.run(place + 1, value + take * worth, room - take * length)
        self.taken[place] = 0
