"""Lengths at which the purchase changes: the longest length that still buys no more.

`Cloth.buys` is only known as a rising function, so its steps are found by halving.
"""

from __future__ import annotations

from estimator.layout.question import Cloth


def longest_buying_less(cloth: Cloth, length: int) -> int:
    """The longest length, in ticks, that buys less than `length` does; -1 if none does."""
    bought = cloth.buys(length)
    low, high = -1, length
    while high - low > 1:
        middle = (low + high) // 2
        if cloth.buys(middle) < bought:
            low = middle
        else:
            high = middle
    return low


def longest_buying_same(cloth: Cloth, length: int, at_most: int) -> int:
    """The longest length up to `at_most` that buys no more than `length` does."""
    bought = cloth.buys(length)
    low, high = length, at_most + 1
    while high - low > 1:
        middle = (low + high) // 2
        if cloth.buys(middle) <= bought:
            low = middle
        else:
            high = middle
    return low
