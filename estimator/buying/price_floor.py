"""What several lacks of thread cost at the least: what is looked for below that is not there."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import lcm

from estimator.buying.fillings import Holder

MOST_COUNTS = 500
"""So many counts of spools are tried for one lack; beyond, its floor is lower than it could be."""


class PriceFloor:
    """The least that lacks cost, in whole numbers of which so many go to the caller's coin.

    A spool of a pack costs its part of the pack, and a price that holds from a quantity holds for
    one: so what is really bought never costs less.
    """

    def __init__(self, holders: Sequence[Holder]) -> None:
        prices = [(one.holds, Fraction(one.cost, one.pieces)) for one in holders]
        self.to_a_coin = lcm(*(price.denominator for _, price in prices))
        sizes = sorted((int(price * self.to_a_coin), holds) for holds, price in prices)
        self.by_length = sorted(sizes, key=lambda one: Fraction(*one))
        self.one_spool = sizes[0][0]
        self.largest = max(holds for _, holds in sizes)
        self.known: dict[int, int] = {0: 0}

    def of(self, cost: int) -> int:
        """A cost, to be held against a floor."""
        return cost * self.to_a_coin

    def lowest(self, lacks: Sequence[int], met: int = 0) -> int:
        """No less than lacks cost of which so much is ``met``, however that is shared out.

        No one has more of it than all; each spool costs no less than the cheapest and holds no more
        than the largest; and any length costs no less than at the lowest price for it.
        """
        apart = sum(self._of_one(max(lack - met, 0)) for lack in lacks)
        if not met:
            return apart
        begun = sorted((lack - 1) % self.largest + 1 for lack in lacks if lack)
        spools = sum(-(-lack // self.largest) for lack in lacks)
        room = met
        for last in begun:  # what the last spool of each would hold is the least to do without it
            if last > room:
                break
            room -= last
            spools -= 1
        spools -= min(spools, room // self.largest)
        price, holds = self.by_length[0]
        return max(apart, spools * self.one_spool, -(-(sum(lacks) - met) * price // holds))

    def _of_one(self, lack: int) -> int:
        """The cheapest spools that hold so much together; where a limit is met, no more than that.

        Sizes are tried in the order of their price for a length, branch and bound.
        """
        if lack not in self.known:
            self.known[lack] = self._cheapest(lack)
        return self.known[lack]

    def _cheapest(self, lack: int) -> int:
        best = min(-(-lack // holds) * price for price, holds in self.by_length)
        steps = 0

        def further(place: int, lacking: int, paid: int) -> None:
            nonlocal best, steps
            price, holds = self.by_length[place]
            is_last = place + 1 == len(self.by_length)
            for count in range(-(-lacking // holds), -1, -1):
                steps += 1
                rest, cost = lacking - count * holds, paid + count * price
                if rest <= 0:
                    best = min(best, cost)
                    continue
                if is_last or steps > MOST_COUNTS:
                    return
                dearer, of = self.by_length[place + 1]
                if cost + -(-rest * dearer // of) >= best:
                    return  # and with fewer of these it costs no less
                further(place + 1, rest, cost)

        further(0, lack, 0)
        if steps <= MOST_COUNTS:
            return best
        price, holds = self.by_length[0]
        return max(self.one_spool, -(-lack * price // holds))
