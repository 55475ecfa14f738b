"""How long the search for a better layout may go on, counted in work and never in seconds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Effort:
    """`work` is the number of places the search may try for a piece, over the whole layout.

    That is for many kinds of pieces. Of few kinds, up to `EVERYDAY.work` of it counts several
    times: see `times_for`.
    """

    work: int


STATES_A_PLACE = 10
"""Steps of the knapsack that take as long as trying one place for a piece."""

EVERYDAY = Effort(13_000)
THOROUGH = Effort(320_000)


MANY_KINDS = 30
MOST_TIMES = 8


def times_for(kinds: int) -> int:
    """How many times the everyday limit is allowed for so many kinds of pieces.

    With few kinds a layout is often one place short of the least, and more work finds it: as a
    garment has about ten kinds, it may have eight times the work of a plan with thirty.
    """
    return max(1, min(MOST_TIMES, MANY_KINDS**2 // kinds**2))


@dataclass(slots=True)
class Budget:
    """Work that may still be done; one unit is one place tried for one piece."""

    work: int

    @property
    def spent(self) -> bool:
        return self.work <= 0
