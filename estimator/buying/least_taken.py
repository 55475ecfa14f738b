"""Which of the things in hand are used: those with which less is bought, and no more of them.

The smallest are filled first, so that no long remnant is cut for what a small one serves; then each
is left whole again, the largest first, where as little is bought without it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from estimator.buying.types import Buy, costs_less

T = TypeVar("T")


def least_taken(
    taken: Sequence[T],
    bought: Callable[[tuple[T, ...]], Sequence[Buy]],
    saves_for_sure: Callable[[T], bool] = lambda _one: False,
) -> tuple[T, ...]:
    """Those of the things without which more would be bought; none where they save nothing.

    They come with the smallest first; ``bought`` says what is bought beside some of them. Of what
    ``saves_for_sure`` nothing is asked.
    """
    kept = tuple(taken)
    best = bought(kept)
    if not costs_less(best, bought(())):
        return ()
    for one in reversed(taken):
        if saves_for_sure(one):
            continue
        without_it = tuple(other for other in kept if other is not one)
        if not costs_less(best, now := bought(without_it)):
            kept, best = without_it, now
    return kept
