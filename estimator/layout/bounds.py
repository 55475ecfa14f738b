"""Lower bounds: lengths that no layout of these pieces can go below, whatever its style.

All are in ticks and hold for open cloth of one layer. A piece that may turn counts as it would help
a shorter layout most.

With a repeat each piece starts on a multiple of it, so every piece takes whole repeats save at the
very end: the bound is worked out with lengths in whole repeats, and what the last piece may leave
of its repeat, at most, is taken off again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from estimator.layout.kinds import Kind
from estimator.layout.shelves import next_repeat


@dataclass(frozen=True, slots=True)
class Need:
    """`quantity` pieces, each of which lies in one of the ways `lies`: (width, length) in ticks."""

    quantity: int
    lies: tuple[tuple[int, int], ...]


def lower_bound(kinds: Sequence[Kind], cloth_width: int, repeat: int = 0) -> int:
    """The best bound on the length, in ticks."""
    needs = needs_of(kinds, cloth_width)
    plain = _best(needs, cloth_width)
    if not repeat or not needs:
        return plain
    spares = [
        max(next_repeat(length, repeat) - length for _, length in need.lies) for need in needs
    ]
    best = plain
    for spare in sorted(set(spares)):
        # A bound of some of the pieces is one of all: those that leave no more than this will do.
        whole = [
            Need(need.quantity, tuple((w, next_repeat(length, repeat)) for w, length in need.lies))
            for need, left in zip(needs, spares, strict=True)
            if left <= spare
        ]
        best = max(best, next_repeat(_best(whole, cloth_width), repeat) - spare)
    return best


def needs_of(kinds: Sequence[Kind], cloth_width: int) -> list[Need]:
    """Each kind with the ways in which it fits on the cloth."""
    needs = []
    for kind in kinds:
        lies = [(kind.width, kind.length)] if kind.width <= cloth_width else []
        if kind.may_turn and kind.length <= cloth_width:
            lies.append((kind.length, kind.width))
        needs.append(Need(kind.quantity, tuple(lies)))
    return needs


def area_bound(needs: Sequence[Need], cloth_width: int) -> int:
    """The area of all pieces over the width of the cloth, up to a whole tick."""
    area = sum(need.quantity * min(width * length for width, length in need.lies) for need in needs)
    return -(-area // cloth_width)


def tallest_bound(needs: Sequence[Need]) -> int:
    """The longest piece, turned where that is allowed and shortens it."""
    return max((min(length for _, length in need.lies) for need in needs), default=0)


def wide_bound(needs: Sequence[Need], cloth_width: int) -> int:
    """Pieces wider than half the cloth cannot lie beside each other: their lengths add up.

    Of those exactly half as wide, two lie beside each other at best.
    """
    doubled = 0
    for need in needs:
        shares = [
            (2 if 2 * width > cloth_width else 1 if 2 * width == cloth_width else 0) * length
            for width, length in need.lies
        ]
        doubled += need.quantity * min(shares)
    return -(-doubled // 2)


def _best(needs: Sequence[Need], cloth_width: int) -> int:
    return max(area_bound(needs, cloth_width), tallest_bound(needs), wide_bound(needs, cloth_width))
