"""Lower bounds: lengths that no layout of these pieces can go below, whatever its style.

All are in ticks and hold for open cloth of one layer. A piece that may turn counts as it would help
a shorter layout most.

With a repeat each piece starts on a multiple of it, so every piece takes whole repeats save at the
very end: the bound is worked out with lengths in whole repeats, and what the last piece may leave
of its repeat, at most, is taken off again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from estimator.layout.across import next_repeat
from estimator.layout.kinds import Kind
from estimator.layout.question import Cloth, Held


@dataclass(frozen=True, slots=True)
class Need:
    """`quantity` pieces, each of which lies in one of the ways `lies`: (width, length) in ticks."""

    quantity: int
    lies: tuple[tuple[int, int], ...]
    held: Held = Held.FREE


def lower_bound(kinds: Sequence[Kind], cloth: Cloth) -> int:
    """The best bound on the length, in ticks."""
    best = _along_the_repeat(needs_of(kinds, cloth), cloth.width, cloth.repeat)
    if cloth.repeat_across:
        # Pieces take whole repeats of a cloth that has its last one whole. At the far edge they
        # keep to no repeat; but a bound of the others alone is one of all.
        period = cloth.repeat_across
        whole = [
            replace(need, lies=tuple((next_repeat(width, period), n) for width, n in need.lies))
            for need in needs_of(kinds, cloth)
            if need.held in (Held.FREE, Held.NEAR)
        ]
        width = next_repeat(cloth.width, period)
        best = max(best, _along_the_repeat(whole, width, cloth.repeat))
    return best


def _along_the_repeat(needs: Sequence[Need], width: int, repeat: int) -> int:
    """The best bound of these pieces, each of which starts on the lengthwise repeat."""
    best = _best(needs, width)
    if not repeat:
        return best
    spares = [
        max(next_repeat(length, repeat) - length for _, length in need.lies) for need in needs
    ]
    for spare in sorted(set(spares)):
        # a bound of some of the pieces is one of all: those that leave no more than this will do
        whole = [
            replace(need, lies=tuple((w, next_repeat(length, repeat)) for w, length in need.lies))
            for need, left in zip(needs, spares, strict=True)
            if left <= spare
        ]
        best = max(best, next_repeat(_best(whole, width), repeat) - spare)
    return best


def needs_of(kinds: Sequence[Kind], cloth: Cloth) -> list[Need]:
    """Each kind with the ways in which it fits on the cloth."""
    needs = []
    for kind in kinds:
        lies = [(kind.width, kind.length)] if kind.width <= cloth.width else []
        if kind.may_turn and kind.length <= cloth.width:
            lies.append((kind.length, kind.width))
        needs.append(Need(kind.quantity, tuple(lies), kind.held))
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


def edge_bound(needs: Sequence[Need], cloth_width: int) -> int:
    """Pieces held at one edge of the cloth lie one after another along it; two edges share.

    So do wide pieces with them that none of them, from some width on, can lie beside.
    """
    widths = {width for need in needs if need.held is not Held.FREE for width, _ in need.lies}
    best = 0
    for least in sorted({0, *widths}):
        above = 0
        lengths = dict.fromkeys(Held, 0)
        for need in needs:
            length = need.quantity * min(length for _, length in need.lies)
            narrowest = min(width for width, _ in need.lies)
            if narrowest + least > cloth_width and 2 * narrowest > cloth_width:
                above += length
            elif narrowest >= least:
                lengths[need.held] += length
        near, far, either = lengths[Held.NEAR], lengths[Held.FAR], lengths[Held.EITHER]
        best = max(best, above + max(near, far, -(-(near + far + either) // 2)))
    return best


def _best(needs: Sequence[Need], width: int) -> int:
    return max(
        area_bound(needs, width),
        tallest_bound(needs),
        wide_bound(needs, width),
        edge_bound(needs, width),
    )
