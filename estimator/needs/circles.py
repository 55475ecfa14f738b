"""Cut sizes of circles and parts of circles, and the lengths of their edges.

A circle's waist has the radius waist / (2 pi x share).
"""

from __future__ import annotations

from fractions import Fraction

from estimator.faults import Wrong
from estimator.measure import ZERO, Length, Unit, tape_text, whole_ticks
from estimator.needs.arc import PI, Arc
from estimator.needs.outlines import Allowances, Sized, edge_word, stated
from estimator.plan import Piece
from estimator.rules import house_rules
from estimator.working import Reckoning

QUARTER, HALF, THREE_QUARTERS, WHOLE = (Fraction(quarters, 4) for quarters in range(1, 5))
NAMES = {
    QUARTER: "a quarter of a circle",
    HALF: "half a circle",
    THREE_QUARTERS: "three quarters of a circle",
    WHOLE: "a whole circle",
}


def share_of(piece: Piece) -> Fraction:
    """The share of a circle that a sector takes."""
    assert piece.share is not None, "the piece's table was checked for its sizes"
    return Fraction(piece.share)


def waist_radius(piece: Piece, slit: Length = ZERO) -> Length:
    """A sector's waist radius: waist / (2 pi x share), the waist with what a ``slit`` takes."""
    return whole_ticks((stated(piece.waist) + slit).ticks / (2 * PI * share_of(piece)))


def ring_of_sector(piece: Piece, below: Length) -> Length:
    """The finished length of a line round a sector, so far below its waist.

    It is the waist and 2 pi x share x distance; at the sector's whole length it is the outer edge.
    """
    return stated(piece.waist) + whole_ticks(2 * PI * share_of(piece) * below.ticks)


def size_sector(piece: Piece, edges: Allowances, slit: Length = ZERO) -> Sized:
    """A ring or part of one, by the smallest box round it on the straight grain.

    The waist is cut at its finished radius less the allowance, which the box does not feel; where
    it is zero the piece comes to a point, and there is no edge to take one. A
    quarter has one straight edge along the fabric and one across it, half a circle both across; a
    larger part has its straight edges inside the box. A whole circle has none, or those of a
    ``slit`` from its waist, whose two sides lie within it and take so much off every round.
    """
    share = share_of(piece)
    waist = waist_radius(piece, slit)
    inner = waist - edges.top if piece.waist else ZERO
    what = "(waist + what both sides of the slit take)" if slit else "waist"
    radius = Reckoning.start(f"waist radius, {what} / (2 π × share)", waist)
    if piece.waist and inner <= ZERO:
        raise Wrong(
            "the allowance at the waist is wider than its radius",
            'give a larger waist, write edges = { top = "raw" } for one without an allowance, or '
            'waist = "0" where it comes to a point',
            ("waist",),
        )
    radius = radius.plus("finished length", stated(piece.length))
    radius = radius.plus(f"bottom {edge_word(edges, 'bottom')}", edges.bottom)
    less, more = sorted(("left", "right"), key=lambda side: getattr(edges, side))

    def beyond(side: str) -> Reckoning:
        label = f"straight edge's {edge_word(edges, side)}"
        return radius.plus(label, getattr(edges, side))

    if share == QUARTER:
        width, length = beyond(less), beyond(more)
    else:
        width = length = radius.times("both ways from the middle", 2)
    if share == HALF:
        length = beyond(more)
    finished = (stated(piece.waist), stated(piece.length))
    across = getattr(edges, less) if share in (QUARTER, THREE_QUARTERS) else ZERO
    along = getattr(edges, more) if share != WHOLE else ZERO
    arc = Arc(share, inner, radius.value, across, along)
    return Sized(finished, width, length, True, NAMES[share], arc=arc)


def cut_radii(arc: Arc, mark: Length, tape: Unit) -> str:
    """The radii to chalk an arc by, from the middle of its circle, on marks of the tape.

    The inner one is down to the mark and the outer one up to it, so that the piece is never small.
    """
    printed = house_rules(tape).mark
    if mark.ticks % printed.ticks:
        mark = printed  # a mark of another tape would be printed to the nearest of this one
    inner = mark * mark.times_into(arc.inner)
    outer = tape_text(arc.outer.up_to(mark), tape)
    if not arc.inner:
        return f"cut radius {outer}"
    return f"cut radii {tape_text(inner, tape)} and {outer}"
