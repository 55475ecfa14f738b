"""Which needle or looper each spool in hand goes to.

A spool is of use to one of them only, and what it holds beyond that one's thread stays on it: so a
short spool that fills a needle may save more than it would on a looper that it does not fill.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

MOST_GIVEN = 10_000
"""So many times a spool is given to a needle or looper, in all the ways together."""
FEW_SPOOLS = 8
"""Of more spools that is done less often, for whoever asks leaves each of them out in turn."""


@dataclass(frozen=True, slots=True)
class Given:
    """The spools in hand of each demand, in the order in which they are used up; what it lacks."""

    spools: tuple[tuple[int, ...], ...]
    left: tuple[int, ...]

    def with_one(self, spool: int, holds: int, place: int) -> Given:
        """One more spool for the demand at a place, used up before those that it has."""
        spools, left = list(self.spools), list(self.left)
        spools[place] = (spool, *spools[place])
        left[place] = max(left[place] - holds, 0)
        return Given(tuple(spools), tuple(left))


def fullest_to_neediest(demands: Sequence[int], in_hand: Sequence[int]) -> Given:
    """The fullest spool in hand to whoever needs most, and so on."""
    given = _nothing(demands)
    for spool in _fullest_first(in_hand):
        neediest = max(range(len(demands)), key=lambda one: (given.left[one], -one))
        if not given.left[neediest]:
            break
        given = given.with_one(spool, in_hand[spool], neediest)
    return given


def ways_to_give(
    demands: Sequence[int],
    in_hand: Sequence[int],
    lowest: Callable[[Sequence[int], int], int],
    below: int,
) -> tuple[list[Given], bool]:
    """The ways to give out all that is in hand, what may cost least first; whether these are all.

    ``lowest`` bounds what lacks cost of which so much may yet be met, however it is shared out: no
    way is followed that cannot come ``below``. Ways that leave the same lacks, whoever has them,
    are one. Where a limit is met, those are followed further that promise most.
    """
    ways, are_all = [(0, 0, _nothing(demands))], True
    order = _fullest_first(in_hand)
    steps = MOST_GIVEN * FEW_SPOOLS // max(len(order), FEW_SPOOLS)
    for done, spool in enumerate(order):
        found: dict[tuple[int, ...], Given] = {}
        for _, _, way in ways:
            lacking = {lack: place for place, lack in reversed(list(enumerate(way.left))) if lack}
            for place in lacking.values():
                further = way.with_one(spool, in_hand[spool], place)
                found.setdefault(tuple(sorted(further.left)), further)
            if not lacking:
                return [way], True  # nobody lacks anything: nothing costs less
            steps -= len(lacking)
        rest = order[done + 1 :]
        room = sum(in_hand[one] for one in rest)
        promised = ((lowest(way.left, room), sum(way.left), way) for way in found.values())
        ways = sorted((one for one in promised if one[0] < below), key=lambda one: one[:2])
        most = max(steps // (max(len(rest), 1) * len(demands)), 1)
        if len(ways) > most and rest:
            ways, are_all = ways[:most], False
    return [way for _, _, way in ways], are_all


def _nothing(demands: Sequence[int]) -> Given:
    return Given(((),) * len(demands), tuple(demands))


def _fullest_first(in_hand: Sequence[int]) -> list[int]:
    return sorted(range(len(in_hand)), key=lambda one: (-in_hand[one], one))
