"""Cut sizes of circles and parts of circles, and the lengths of their edges.

A circle's waist has the radius waist / (2 pi x share).
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.faults import Wrong
from estimator.measure import Length, whole_ticks
from estimator.needs.outlines import Allowances, Sized, edge_word, stated
from estimator.plan import Piece
from estimator.working import Reckoning

PI = Fraction(Decimal("3.14159265358979323846264338327950288"))


def share_of(piece: Piece) -> Fraction:
    """The share of a circle that a sector takes."""
    assert piece.share is not None, "the piece's table was checked for its sizes"
    return Fraction(piece.share)


def waist_radius(piece: Piece) -> Length:
    """A sector's finished waist radius: waist / (2 pi x share)."""
    return whole_ticks(stated(piece.waist).ticks / (2 * PI * share_of(piece)))


def hem_of_sector(piece: Piece) -> Length:
    """The finished length of a sector's outer edge: the waist and 2 pi x share x length."""
    return stated(piece.waist) + whole_ticks(2 * PI * share_of(piece) * stated(piece.length).ticks)


def size_sector(piece: Piece, edges: Allowances) -> Sized:
    """A ring or part of one, by the smallest box round it on the straight grain.

    The waist is cut at its finished radius less the allowance, which the box does not feel.
    """
    share = share_of(piece)
    radius = Reckoning.start("waist radius, waist / (2 π × share)", waist_radius(piece))
    if edges.top >= radius.value:
        raise Wrong(
            "the allowance at the waist is wider than its radius", "give a larger waist", ("waist",)
        )
    radius = radius.plus("finished length", stated(piece.length))
    radius = radius.plus(f"bottom {edge_word(edges, 'bottom')}", edges.bottom)
    straight = max(edges.left, edges.right)
    match share:
        case Fraction(numerator=1, denominator=4):
            width = length = radius.plus("straight edge's seam", straight)
        case Fraction(numerator=1, denominator=2):
            width = radius.times("both ways from the middle", 2)
            length = radius.plus("straight edges' seam", straight)
        case _:
            width = length = radius.times("both ways from the middle", 2)
    names = {"1": "a whole circle", "3/4": "three quarters of a circle",
             "1/2": "half a circle", "1/4": "a quarter of a circle"}  # fmt: skip
    finished = (stated(piece.waist), stated(piece.length))
    return Sized(finished, width, length, True, names[str(share)])
