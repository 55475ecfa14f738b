"""What each outline of a piece has in common, and the cut sizes of slanted ones.

Widths run across the fabric and lengths along it. A taper's seams widen it by allowance / cos of
the slant.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

from estimator.edges import SEWN, SIDES, EdgeFinish, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, whole_ticks
from estimator.needs.arc import Arc
from estimator.needs.bias import root_up
from estimator.plan import Piece
from estimator.working import Reckoning


@dataclass(frozen=True, slots=True)
class Sized:
    """Both cut sizes of a piece with their working, and its finished size opened out.

    Of a taper, ``narrow`` is the cut width at its narrow end, ``square`` the side that does not
    slant, if there is one, and ``on_its_head`` tells that the narrow end is the bottom.
    """

    finished: tuple[Length, Length]
    width: Reckoning
    length: Reckoning
    boxed: bool = False
    note: str = ""
    narrow: Length | None = None
    square: str = ""
    on_its_head: bool = False
    arc: Arc | None = None


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

    def less(self, off: Length) -> Allowances:
        """What is left of them if ``off`` is cut away all round: below zero within the piece."""
        sides = (self.top - off, self.bottom - off, self.left - off, self.right - off)
        return Allowances(*sides, self.finishes)


def stated(size: Length | None) -> Length:
    """A size that the plan's own checks have made sure of."""
    assert size is not None, "the piece's table was checked for its sizes"
    return size


def edge_word(edges: Allowances, side: str) -> str:
    finish = edges.finishes[side].finish
    return f"{finish.value} allowance" if finish in SEWN else finish.value


def point_of(piece: Piece) -> str:
    """The edge where a sector or a taper comes to a point, as a godet does; else nothing."""
    if piece.waist == ZERO or piece.top == ZERO:
        return "top"
    return "bottom" if piece.bottom == ZERO else ""


def fold_note(edges: Allowances) -> str:
    on_fold = any(edges.is_fold(side) for side in SIDES)
    return "on the fold, its cut size opened out" if on_fold else ""


def slanted_sides(piece: Piece) -> tuple[str, ...]:
    """Which sides of a taper slant; on the fold, the one that does not lie on it.

    Raises Wrong for a slanted side on a fold or a selvedge, which are straight.
    """
    stated_sides = _SLANTED[piece.slant]
    straight = {
        side: edge.finish.finish
        for side, edge in piece.edges.items()
        if edge.finish.finish in (Finish.FOLD, Finish.SELVEDGE)
    }
    folds = [side for side in ("left", "right") if straight.get(side) is Finish.FOLD]
    slanted = tuple(side for side in stated_sides if side not in folds)
    for side in stated_sides:
        if side in straight and not (side in folds and slanted):
            other = "right" if side == "left" else "left"
            raise Wrong(
                f"the {side} side slants, and a {straight[side].value} is straight",
                f'write slant = "{other} side", or another finish for the {side} edge',
                ("edges", side),
            )
    return slanted


_SLANTED = {
    None: ("left", "right"),
    "both sides": ("left", "right"),
    "left side": ("left",),
    "right side": ("right",),
}


def size_taper(piece: Piece, edges: Allowances) -> Sized:
    """A panel with two slanted sides, or with one and one square: along the grain.

    A slanted side's seam widens it by allowance / cos of the slant, a square side's by the plain
    allowance; a hem or a top allowance continues the taper. On the fold, half of the panel is given
    and the whole has two slanted sides.
    """
    if edges.is_fold("top") or edges.is_fold("bottom"):
        raise Wrong(
            "a taper lies on the fold by a side", "put left or right on the fold", ("edges",)
        )
    slanted = slanted_sides(piece)
    ways = 2 if edges.is_fold("left") or edges.is_fold("right") else 1
    top, bottom, length = (
        stated(piece.top) * ways,
        stated(piece.bottom) * ways,
        stated(piece.length),
    )
    square = "" if len(slanted) * ways == 2 else "right" if slanted == ("left",) else "left"
    slants = 1 if square else 2
    sides = Length(sum(getattr(edges, side).ticks for side in slanted)) * ways
    cut_length = Reckoning.start("finished length", length)
    for side in ("top", "bottom"):
        cut_length = cut_length.plus(f"{side} {edge_word(edges, side)}", getattr(edges, side))
    wide, beyond = (bottom, edges.bottom) if bottom >= top else (top, edges.top)
    spread = max(top, bottom) - min(top, bottom)
    width = Reckoning.start("finished width at its widest", wide)
    carried = Fraction(spread.ticks * beyond.ticks, length.ticks)
    aslant = _along_slant(sides, spread, length, slants)
    width = width.plus("the taper carried through the allowance", whole_ticks(carried))
    width = width.plus(
        "slanted side's seam" if square else "slanted side seams",
        whole_ticks(carried + aslant) - whole_ticks(carried),
    )
    plain = getattr(edges, square) if square else ZERO
    width = width.plus(f"square side's {edge_word(edges, square or 'left')}", plain)
    outline = f"tapered, its {square} side square" if square else "tapered"
    note = "; ".join(filter(None, (outline, fold_note(edges))))
    beyond = edges.top if bottom >= top else edges.bottom
    narrowed = Fraction(spread.ticks * beyond.ticks, length.ticks)
    narrow = max(min(top, bottom).ticks - narrowed + aslant + plain.ticks, Fraction(0))
    ends = whole_ticks(narrow), square, top > bottom
    return Sized((wide, length), width, cut_length, True, note, *ends)


def _along_slant(allowances: Length, spread: Length, length: Length, slants: int) -> Fraction:
    """Seam allowances measured along the horizontal, in ticks: allowance / cos(slant).

    Each of so many slants runs sideways by its part of the spread over the length. Ticks are made
    whole once, with what else widens the piece, so that a width that falls on a mark is not raised
    by rounding. Below zero they are no more than that, so that the piece is never too small.
    """
    upright = slants * length.ticks
    square = upright**2 + spread.ticks**2
    root = isqrt(square) if allowances < ZERO else root_up(square)
    return Fraction(allowances.ticks * root, upright)


def side_of_taper(piece: Piece, side: str) -> Length:
    """The finished length of a taper's left or right side, up to a tick."""
    slanted = slanted_sides(piece)
    if side not in slanted:
        return stated(piece.length)
    spread = stated(piece.bottom).ticks - stated(piece.top).ticks
    upright = len(slanted) * stated(piece.length).ticks
    return whole_ticks(Fraction(root_up(upright**2 + spread**2), len(slanted)))
