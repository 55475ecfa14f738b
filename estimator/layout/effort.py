"""How long the search for a better layout may go on, counted in work and never in seconds."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Effort:
    """`work` is the number of places the search may try for a piece, over the whole layout."""

    work: int


EVERYDAY = Effort(100_000)
THOROUGH = Effort(2_000_000)
