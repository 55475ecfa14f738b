"""The square from which bias strips are cut and joined.

Handbooks of quilting and home furnishing take a square of side sqrt(length x width), which leaves
nothing for the joins and the corners. So the square here is the smallest whole one, and no smaller
than theirs, whose strips reach the length when they are joined.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from estimator.measure import Length, whole_ticks

ROOT_2_AT_LEAST, ROOT_2_AT_MOST = Fraction(1_414_213, 10**6), Fraction(1_414_214, 10**6)
JOIN_ALLOWANCE = Length(203_200 // 4)
"""1/4 in at each side of a join of bias strips (common practice)."""
LOST_AT_A_JOIN = whole_ticks(2 * JOIN_ALLOWANCE.ticks * ROOT_2_AT_MOST)
"""Strips with ends on the straight grain lose 2 x allowance x sqrt 2 at each diagonal join."""


MOST_STRIP = Length(8_000_000 * 1_000)
"""A kilometre of strip, which nobody joins."""


def handbook_side(length: Length, width: Length) -> Length:
    """The side of the handbooks' square: sqrt(length x width), up to the next tick."""
    return Length(root_up(length.ticks * width.ticks))


def root_up(square: int) -> int:
    """The least whole number whose square is no less."""
    root = isqrt(square)
    return root if root * root == square else root + 1


def bias_yield(across: Length, along: Length, width: Length, wanted: int) -> Length:
    """The joined length of bias strips of ``width`` from a rectangle no longer across than along.

    The two corners together give the strips of a square, on either side of its diagonal, and what
    is longer than a square gives strips from edge to edge. The longest are joined first, and no
    more of them than reach ``wanted`` ticks.
    """
    return Length(int(_joined(across, along, width, wanted)[0]))


def strips_joined(across: Length, along: Length, width: Length, wanted: Length) -> int:
    """How many bias strips of such a rectangle are joined to reach a length."""
    return _joined(across, along, width, wanted.ticks)[1]


def _joined(across: Length, along: Length, width: Length, wanted: int) -> tuple[Fraction, int]:
    diagonal = across.ticks * ROOT_2_AT_LEAST
    step = width.ticks * ROOT_2_AT_MOST
    whole = int((along - across).ticks / step)
    strips = [diagonal] * whole
    beside = diagonal - width.ticks
    while beside >= width.ticks:
        strips += [beside, beside]
        beside -= 2 * width.ticks
    total, number = Fraction(0), 0
    for strip in strips:
        total += strip - (LOST_AT_A_JOIN.ticks if number else 0)
        number += 1
        if total >= wanted:
            break
    return total, number


def cloth_for_bias(
    length: Length, width: Length, usable: Length, whole: Length
) -> tuple[Length, Length]:
    """How much cloth, across and along, the strips take: whole inches or centimetres.

    A square while the fabric is wide enough for it, then as wide as the fabric and longer.
    """
    side = handbook_side(length, width).up_to(whole)
    while side <= usable:
        if bias_yield(side, side, width, length.ticks) >= length:
            return side, side
        side += whole
    along = usable.up_to(whole)
    area = Fraction(length.ticks * width.ticks, usable.ticks)
    along = max(along, whole_ticks(area).up_to(whole))
    while bias_yield(usable, along, width, length.ticks) < length:
        along += whole
    return usable, along
