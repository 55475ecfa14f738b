"""Cards and spools filled with whole runs: a run is never joined, so this is bin packing.

Neither the sum of the lengths nor longest-first tells the number of cards. First-fit decreasing
gives an answer, and a search with a counted limit looks for a smaller one.
"""

from __future__ import annotations

from collections.abc import Sequence

MOST_RUNS_SEARCHED = 40
MOST_STEPS = 200_000


def fewest_bins(runs: Sequence[int], capacity: int) -> tuple[tuple[int, ...], ...]:
    """Groups runs so that each group is at most ``capacity``; as few groups as can be found.

    Exact up to 40 runs as far as a counted search goes, first-fit decreasing beyond. Every run
    must be at most ``capacity``.
    """
    ordered = sorted(runs, reverse=True)
    best = _first_fit(ordered, capacity)
    if len(ordered) > MOST_RUNS_SEARCHED:
        return best
    for count in range(_least_bins(ordered, capacity), len(best)):
        found = _Search(ordered, capacity, count).run()
        if found is not None:
            return found
    return best


def _first_fit(ordered: Sequence[int], capacity: int) -> tuple[tuple[int, ...], ...]:
    bins: list[list[int]] = []
    room: list[int] = []
    for run in ordered:
        home = next((number for number, left in enumerate(room) if run <= left), None)
        if home is None:
            bins.append([run])
            room.append(capacity - run)
        else:
            bins[home].append(run)
            room[home] -= run
    return tuple(tuple(one) for one in bins)


def _least_bins(ordered: Sequence[int], capacity: int) -> int:
    """No fewer bins do: by the sum, and by the runs of which no two share a bin."""
    by_sum = -(-sum(ordered) // capacity)
    return max(1, by_sum, sum(1 for run in ordered if 2 * run > capacity))


class _Search:
    """Depth-first: the longest run left goes into each bin that is not like one already tried."""

    def __init__(self, ordered: Sequence[int], capacity: int, count: int) -> None:
        self.ordered, self.capacity = ordered, capacity
        self.bins: list[list[int]] = [[] for _ in range(count)]
        self.room = [capacity] * count
        self.steps = 0

    def run(self) -> tuple[tuple[int, ...], ...] | None:
        return tuple(tuple(one) for one in self.bins) if self._place(0) else None

    def _place(self, index: int) -> bool:
        if index == len(self.ordered):
            return True
        self.steps += 1
        if self.steps > MOST_STEPS:
            return False
        run, tried = self.ordered[index], set()
        for number, room in enumerate(self.room):
            if run > room or room in tried:
                continue
            tried.add(room)
            self.bins[number].append(run)
            self.room[number] -= run
            if self._place(index + 1):
                return True
            self.bins[number].pop()
            self.room[number] += run
        return False
