"""Put-ups, runs on them, and what that costs: the values that filling works with.

Lengths and costs are whole numbers; what they are counted in is their caller's concern.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

MOST_SETS = 100_000


@dataclass(frozen=True, slots=True)
class Holder:
    """A put-up on offer: what it holds, what it costs, and from how many this price holds.

    A pack of several lengths has that many ``pieces``, each of which holds ``holds``.
    """

    holds: int
    cost: int
    least: int = 1
    pieces: int = 1

    @property
    def a_piece(self) -> int:
        """No more than one of its lengths costs."""
        return self.cost // self.pieces


@dataclass(frozen=True, slots=True)
class Roll:
    """What is cut to length: ``cost`` of a length in all, and per run no less than ``share``."""

    cost: Callable[[int], int]
    share: Callable[[int], int]


Load = tuple[int, tuple[int, ...]]
"""One length of a put-up: the number of its holder, and the runs on it."""


@dataclass(frozen=True, slots=True)
class Filling:
    """What is bought of each holder, with the runs on each, and the runs cut from the roll.

    ``bought`` counts the put-ups of each holder, those too that a price break makes one buy.
    ``proved`` says that nothing costs less.
    """

    loads: tuple[Load, ...]
    rolled: tuple[int, ...]
    bought: tuple[int, ...]
    cost: int
    proved: bool = False


def filled(
    loads: Sequence[Load], rolled: Sequence[int], holders: Sequence[Holder], roll: Roll | None
) -> Filling:
    """A filling with what it costs; a price that holds from a quantity is paid for that many."""
    used = [0] * len(holders)
    for number, _ in loads:
        used[number] += 1
    bought = tuple(
        max(-(-count // holder.pieces), holder.least) if count else 0
        for count, holder in zip(used, holders, strict=True)
    )
    cost = sum(count * holder.cost for count, holder in zip(bought, holders, strict=True))
    cost += roll.cost(sum(rolled)) if roll and rolled else 0
    return Filling(tuple(loads), tuple(rolled), bought, cost)


def sets_of_put_ups(
    holders: Sequence[Holder], below: int, room: int, most: int
) -> list[tuple[int, tuple[int, ...]]] | None:
    """Sets of put-ups that cost less than ``below`` and hold ``room``: cost, and how many of each.

    At most ``most`` of each put-up; the cheapest first, and among those that cost the same the one
    of fewest put-ups. None where there are so many that not all were looked at.
    """
    found: list[tuple[int, tuple[int, ...]]] = []
    steps = 0

    def further(chosen: tuple[int, ...], cost: int, held: int) -> None:
        nonlocal steps
        if len(chosen) == len(holders):
            found.append((cost, chosen))
            return
        holder = holders[len(chosen)]
        held_by_one = holder.holds * holder.pieces
        last = len(chosen) == len(holders) - 1
        for count in range(max(0, -(-(room - held) // held_by_one)) if last else 0, most + 1):
            steps += 1
            paid = cost + (max(count, holder.least) if count else 0) * holder.cost
            if paid >= below or steps > MOST_SETS:
                return
            further((*chosen, count), paid, held + count * held_by_one)

    further((), 0, 0)
    if steps > MOST_SETS:
        return None
    return sorted(found, key=lambda one: (one[0], sum(one[1]), one[1]))
