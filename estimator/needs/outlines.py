"""What each outline of a piece has in common, and the cut sizes of slanted ones.

Widths run across the fabric and lengths along it. A taper's seams widen it by allowance / cos of
the slant.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from estimator.edges import SEWN, SIDES, EdgeFinish, Finish
from estimator.faults import Wrong
from estimator.measure import Length, whole_ticks
from estimator.needs.bias import root_up
from estimator.plan import Piece
from estimator.working import Reckoning


@dataclass(frozen=True, slots=True)
class Sized:
    """Both cut sizes of a piece with their working, and its finished size opened out."""

    finished: tuple[Length, Length]
    width: Reckoning
    length: Reckoning
    boxed: bool = False
    note: str = ""
    narrow: Length | None = None


@dataclass(frozen=True, slots=True)
class Allowances:
    """What each side of a piece takes beyond its finished edge."""

    top: Length
    bottom: Length
    left: Length
    right: Length
    finishes: Mapping[str, EdgeFinish]

    def is_fold(self, side: str) -> bool:
        """Whether a side lies on the fold of the fabric."""
        return self.finishes[side].finish is Finish.FOLD


def stated(size: Length | None) -> Length:
    """A size that the plan's own checks have made sure of."""
    assert size is not None, "the piece's table was checked for its sizes"
    return size


def edge_word(edges: Allowances, side: str) -> str:
    finish = edges.finishes[side].finish
    return f"{finish.value} allowance" if finish in SEWN else finish.value


def fold_note(edges: Allowances) -> str:
    on_fold = any(edges.is_fold(side) for side in SIDES)
    return "on the fold, laid opened out" if on_fold else ""


def size_taper(piece: Piece, edges: Allowances) -> Sized:
    """A panel with two sides of one slant: seams widen it by allowance / cos of the slant.

    A hem or a top allowance continues the taper. On the fold, half of the panel is given.
    """
    if edges.is_fold("top") or edges.is_fold("bottom"):
        raise Wrong(
            "a taper lies on the fold by a side", "put left or right on the fold", ("edges",)
        )
    folded = edges.is_fold("left") or edges.is_fold("right")
    ways = 2 if folded else 1
    top, bottom, length = (
        stated(piece.top) * ways,
        stated(piece.bottom) * ways,
        stated(piece.length),
    )
    sides = (edges.left + edges.right) * ways
    cut_length = Reckoning.start("finished length", length)
    for side in ("top", "bottom"):
        cut_length = cut_length.plus(f"{side} {edge_word(edges, side)}", getattr(edges, side))
    wide, beyond = (bottom, edges.bottom) if bottom >= top else (top, edges.top)
    spread = max(top, bottom) - min(top, bottom)
    width = Reckoning.start("finished width at its widest", wide)
    carried = Fraction(spread.ticks * beyond.ticks, length.ticks)
    both = whole_ticks(carried + _along_slant(sides, spread, length))
    width = width.plus("the taper carried through the allowance", whole_ticks(carried))
    width = width.plus("slanted side seams", both - whole_ticks(carried))
    note = "; ".join(filter(None, ("tapered", fold_note(edges))))
    beyond = edges.top if bottom >= top else edges.bottom
    narrowed = Fraction(spread.ticks * beyond.ticks, length.ticks)
    narrow = min(top, bottom).ticks - narrowed + _along_slant(sides, spread, length)
    return Sized(
        (wide, length), width, cut_length, True, note, whole_ticks(max(narrow, Fraction(0)))
    )


def _along_slant(allowances: Length, spread: Length, length: Length) -> Fraction:
    """Seam allowances measured along the horizontal, in ticks: allowance / cos(slant).

    The slant runs sideways by half the spread over the length. Ticks are made whole once, with
    what else widens the piece, so that a width that falls on a mark is not raised by rounding.
    """
    square = 4 * length.ticks**2 + spread.ticks**2
    return Fraction(allowances.ticks * root_up(square), 2 * length.ticks)


def slanted_side(piece: Piece) -> Length:
    """The finished length of a taper's side, up to a tick."""
    spread = stated(piece.bottom).ticks - stated(piece.top).ticks
    return whole_ticks(Fraction(root_up(4 * stated(piece.length).ticks ** 2 + spread**2), 2))
