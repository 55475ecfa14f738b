"""Conservative scales: sizes changed so that no more fits beside each other than before.

Give each piece a value for lying across a line, so that no selection of pieces that fits into the
line is worth more than the line. Then the pieces' values, times their lengths, add up to no more
than the line is worth times the length of the layout, for every line across it keeps the rule.

The best values are found as a linear programme over all selections, by adding one selection at a
time (P. C. Gilmore and R. E. Gomory, A linear programming approach to the cutting-stock problem,
Operations Research 9, 1961). Its arithmetic is in floats, but nothing rests on it: whatever values
come out are rounded to whole numbers, and what a line is worth is then worked out exactly.
For both directions at once: S. P. Fekete and J. Schepers, A general framework for bounds for
higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research 60,
2004.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from estimator.layout.knapsack import Line

WHOLE = 1_000_000
"""The largest value a piece is given; values are whole numbers up to it."""
CLOSE_ENOUGH = 1e-9
ENTRIES_A_STATE = 4
"""Entries of the simplex method's table that take as long as one state of a knapsack."""

Weights = Sequence[Sequence[int]]


@dataclass(frozen=True, slots=True)
class Scale:
    """`values[i][s]` of item i lying with its size s; no line holds pieces worth more than `worth`.

    `total` is the least that all pieces come to, each value times its weight.
    """

    values: tuple[tuple[int, ...], ...]
    worth: int
    total: int

    @property
    def length(self) -> int:
        """How long all lines together must be, in the unit of the weights."""
        return -(-self.total // self.worth)


def best_scale(
    line: Line, weights: Weights, most_rounds: int, wanted: int | None = None
) -> Scale | None:
    """The scale that makes the pieces most, when each value counts times its weight.

    `weights[i][s]` is how far item i reaches along when it takes its size s of the line. Where only
    a scale of more than `wanted` length is of use, the work ends as soon as one is found. None
    where the line is too fine for a table or no item has any weight.
    """
    active = [i for i, own in enumerate(weights) if own and min(own) > 0]
    if not active or line.too_fine:
        return None
    duals = _duals(line, weights, active, most_rounds, wanted)
    return _rounded(line, weights, active, duals)


def _duals(
    line: Line, weights: Weights, active: list[int], most_rounds: int, wanted: int | None
) -> list[float]:
    """The value of a unit of weight of each active item, by the revised simplex method."""
    size = len(active)
    row_of = {item: row for row, item in enumerate(active)}
    inverse = [[0.0] * size for _ in active]
    levels = []
    for row, item in enumerate(active):
        cover = max(
            min(line.items[item].count, line.room // length) / weight
            for length, weight in zip(line.items[item].sizes, weights[item], strict=True)
        )
        inverse[row][row] = 1 / cover
        levels.append(line.items[item].count / cover)
    best, best_total = [inverse[row][row] for row in range(size)], 0.0
    values: list[list[float]] = [[0.0] * len(own) for own in weights]
    for _ in range(most_rounds):
        duals = [max(0.0, sum(column)) for column in zip(*inverse, strict=True)]
        for row, item in enumerate(active):
            values[item] = [duals[row] / weight for weight in weights[item]]
        worth, pieces = line.best(values)
        total = sum(dual * line.items[item].count for dual, item in zip(duals, active, strict=True))
        if total > best_total * worth:
            best, best_total = duals, total / worth
        if worth <= 1 + CLOSE_ENOUGH:
            break
        if wanted is not None and best_total > wanted * (1 + CLOSE_ENOUGH):
            break
        covers = [0.0] * size
        for item, which in pieces:
            covers[row_of[item]] += 1 / weights[item][which]
        line.work += size * size // ENTRIES_A_STATE
        if not _pivot(inverse, levels, covers):
            break
    return best


def _pivot(inverse: list[list[float]], levels: list[float], covers: list[float]) -> bool:
    """Take a selection that covers `covers` into the basis; False where none can leave it."""
    used = [(row, cover) for row, cover in enumerate(covers) if cover]
    column = [sum(line[row] * cover for row, cover in used) for line in inverse]
    leaving, least = -1, 0.0
    for row, step in enumerate(column):
        if step > CLOSE_ENOUGH and (leaving < 0 or levels[row] / step < least):
            leaving, least = row, levels[row] / step
    if leaving < 0:
        return False
    step = column[leaving]
    pivot = inverse[leaving] = [entry / step for entry in inverse[leaving]]
    levels[leaving] = least
    for row, share in enumerate(column):
        if row != leaving and share:
            inverse[row] = [
                entry - share * other for entry, other in zip(inverse[row], pivot, strict=True)
            ]
            levels[row] -= share * least
    return True


def _rounded(line: Line, weights: Weights, active: list[int], duals: list[float]) -> Scale | None:
    """Whole values in proportion to the duals, and exactly what a line of them is worth."""
    values: list[list[int]] = [[0] * len(own) for own in weights]
    largest = max(dual / min(weights[item]) for dual, item in zip(duals, active, strict=True))
    if largest <= 0:
        return None
    for dual, item in zip(duals, active, strict=True):
        values[item] = [int(dual / weight / largest * WHOLE) for weight in weights[item]]
    worth, _ = line.best(values)
    total = sum(
        line.items[item].count
        * min(value * weight for value, weight in zip(values[item], weights[item], strict=True))
        for item in active
    )
    return Scale(tuple(map(tuple, values)), int(worth), total) if worth else None
