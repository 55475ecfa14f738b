"""What each run is worth at most: prices of the linear relaxation of filling put-ups.

Values such that no load of any put-up is worth more than it costs bound the cost of every filling
from below (Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", 1961,
from memory). They are found by the simplex method on loads made as they are needed, in floating
point, and then lowered in whole numbers until the bound holds exactly.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from estimator.buying.loads import best_load

SCALE = 1 << 24
"""Values are in so many parts of a unit of cost."""
MOST_PIVOTS = 300
EPSILON = 1e-9


def run_values(
    lengths: Sequence[int],
    counts: Sequence[int],
    kinds: Sequence[tuple[int, int]],
    shares: Sequence[int] | None,
) -> tuple[int, ...]:
    """The value of one run of each length, ``counts`` of each, in 1/SCALE of a unit of cost.

    ``kinds`` tells what each put-up holds and costs; ``shares`` what a run of each length costs at
    least from the roll, where there is one.
    """
    simplex = _Simplex(lengths, counts, kinds, shares)
    for _ in range(MOST_PIVOTS):
        if not simplex.improve():
            break
    return simplex.lowered()


class _Simplex:
    """A row for each length, a column for each load; ``inverse`` is that of the basis."""

    def __init__(
        self,
        lengths: Sequence[int],
        counts: Sequence[int],
        kinds: Sequence[tuple[int, int]],
        shares: Sequence[int] | None,
    ) -> None:
        self.lengths, self.counts, self.kinds, self.shares = lengths, counts, kinds, shares
        size = len(lengths)
        self.inverse = [[float(i == j) for j in range(size)] for i in range(size)]
        self.amounts = [float(count) for count in counts]
        self.costs = [float(self._alone(i)) for i in range(size)]

    def _alone(self, i: int) -> int:
        """What a run costs by itself: on the cheapest put-up that holds it, or from the roll."""
        costs = [cost for holds, cost in self.kinds if holds >= self.lengths[i]]
        return min([*costs, self.shares[i]] if self.shares else costs)

    def _values(self) -> list[float]:
        size = len(self.costs)
        return [sum(self.costs[i] * self.inverse[i][j] for i in range(size)) for j in range(size)]

    def improve(self) -> bool:
        """One pivot, on the column that gains most; False where none lowers the cost."""
        values = self._values()
        scaled = [max(0, floor(value * SCALE)) for value in values]
        size = len(values)
        best, entering, its_cost = 0.0, [0.0], 0.0
        for holds, price in self.kinds:
            load = best_load(scaled, self.lengths, self.counts, holds).counts
            gain = sum(value * count for value, count in zip(values, load, strict=True)) - price
            if gain > max(best, EPSILON * price):
                best, entering, its_cost = gain, [float(count) for count in load], float(price)
        for j, value in enumerate(values):
            share = float(self.shares[j]) if self.shares else value
            for sign, cost in ((-1.0, 0.0), (1.0, share)):
                gain = sign * value - cost
                if gain > max(best, EPSILON * max(1.0, cost)):
                    best, its_cost = gain, cost
                    entering = [sign * (i == j) for i in range(size)]
        return best > 0.0 and self._pivot(entering, its_cost)

    def _pivot(self, column: list[float], cost: float) -> bool:
        size = len(self.costs)
        moved = [sum(self.inverse[i][j] * column[j] for j in range(size)) for i in range(size)]
        rows = [i for i in range(size) if moved[i] > EPSILON]
        if not rows:
            return False
        leaving = min(rows, key=lambda i: (self.amounts[i] / moved[i], i))
        pivot = moved[leaving]
        self.inverse[leaving] = [one / pivot for one in self.inverse[leaving]]
        self.amounts[leaving] /= pivot
        self.costs[leaving] = cost
        for i in range(size):
            if i != leaving and moved[i]:
                self.inverse[i] = [
                    one - moved[i] * other
                    for one, other in zip(self.inverse[i], self.inverse[leaving], strict=True)
                ]
                self.amounts[i] -= moved[i] * self.amounts[leaving]
        return True

    def lowered(self) -> tuple[int, ...]:
        """The values in whole numbers, lowered until no load is worth more than it costs."""
        values = [max(0, floor(value * SCALE)) for value in self._values()]
        if self.shares is not None:
            values = [min(one, share * SCALE)
                      for one, share in zip(values, self.shares, strict=True)]  # fmt: skip
        for holds, cost in self.kinds:
            most = best_load(values, self.lengths, self.counts, holds).at_most
            if most > cost * SCALE:
                values = [value * cost * SCALE // most for value in values]
        return tuple(values)
