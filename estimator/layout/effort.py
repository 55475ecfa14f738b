"""How long the search for a better layout may go on, counted in work and never in seconds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Effort:
    """`work` is the number of places the search may try for a piece, over the whole layout."""

    work: int


STATES_A_PLACE = 10
"""Steps of the knapsack that take as long as trying one place for a piece."""

EVERYDAY = Effort(13_000)
THOROUGH = Effort(480_000)


@dataclass(slots=True)
class Budget:
    """Work that may still be done; one unit is one place tried for one piece."""

    work: int

    @property
    def spent(self) -> bool:
        return self.work <= 0
