"""The search for rows: shelves by every rule, then rows filled with ever other preferences.

What a piece is worth decides what a row is filled with. Its area is a good guess; but a row that is
full leaves awkward pieces for the rows to come, so the search draws the worths a little higher or
lower, from a fixed seed, and keeps the best rows it has seen. Each further try only adds to those
before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, cycle
from random import Random

from estimator.layout.effort import STATES_A_PLACE, Budget
from estimator.layout.filled import Lies, RowFiller
from estimator.layout.kinds import Kind
from estimator.layout.question import Cloth
from estimator.layout.rows import bought_and_rows, in_order, score
from estimator.layout.shelves import RULES, Shelf, pack

SEED = 1980
TRIES = 8
"""Fillings tried at a time."""
PATIENCE = 6
"""Rounds of tries that may bring nothing new before the search for rows ends."""


class RowSearch:
    """The best rows so far, those of plain shelves at first; `more` looks for better ones."""

    def __init__(self, cloth: Cloth, kinds: Sequence[Kind]) -> None:
        self._cloth = cloth
        self._kinds = kinds
        self._fillers = fillers(kinds, cloth)
        self.best: tuple[Shelf, ...] = ()
        self._score: tuple[int, int, int, int] | None = None
        self._fruitless = 0
        for rule in RULES:
            self._keep_if_better(pack(kinds, cloth, rule))

    def more(self, budget: Budget) -> None:
        """Try the next fillings, as many as belong together, or until the work is done."""
        if self.exhausted:
            return
        before = self._score
        for _ in range(TRIES):
            if budget.spent:
                return
            filler = next(self._fillers)
            self._keep_if_better(filler.rows())
            budget.work -= 1 + filler.work // STATES_A_PLACE
        self._fruitless = self._fruitless + 1 if self._score == before else 0

    @property
    def exhausted(self) -> bool:
        """Whether so many tries have brought nothing new that no more are made."""
        return self._fruitless >= PATIENCE

    def _keep_if_better(self, shelves: Sequence[Shelf]) -> None:
        ordered = in_order(shelves, self._cloth.repeat)
        first = bought_and_rows(ordered, self._cloth)
        if self._score is not None and first > self._score[:2]:
            return  # thousands of cuts are not counted for nothing
        its_score = score(ordered, self._cloth)
        if self._score is None or (its_score, ordered) < (self._score, self.best):
            self.best, self._score = ordered, its_score


def fillers(kinds: Sequence[Kind], cloth: Cloth) -> Iterator[RowFiller]:
    """Ways to fill rows with all the pieces, without end: by plain areas first, then as drawn."""
    for lies, worth in _preferences(kinds, cloth.width):
        yield RowFiller(kinds, lies, worth, cloth)


def _preferences(kinds: Sequence[Kind], width: int) -> Iterator[tuple[Lies, list[float]]]:
    """Ways to lie and worths of the kinds, without end: plain areas first, then drawn ones."""
    chance = Random(SEED)
    areas = [kind.width * kind.length for kind in kinds]
    largest = max(areas)
    upright = tuple(_ways(kind, width)[:1] for kind in kinds)
    turned = tuple(_ways(kind, width)[-1:] for kind in kinds)
    either = tuple(_ways(kind, width) for kind in kinds)
    for spread in chain((0.0,), cycle((0.1, 0.3, 0.6))):
        for leaning in (0.0, 0.5, 1.5):
            for lies in (either, upright, either, turned):
                yield (
                    lies,
                    [
                        area
                        * (1 + leaning * area / largest)
                        * (1 + spread * (2 * chance.random() - 1))
                        for area in areas
                    ],
                )


def _ways(kind: Kind, width: int) -> tuple[tuple[int, int], ...]:
    """The (width, length) a kind may lie in on cloth of this width, upright first."""
    upright = ((kind.width, kind.length),) if kind.width <= width else ()
    turns = kind.may_turn and kind.length <= width
    return (*upright, (kind.length, kind.width)) if turns else upright
