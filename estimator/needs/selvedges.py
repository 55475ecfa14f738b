"""Edges that use the selvedge: which edge of the fabric a piece lies at, and what that gives it.

A piece whose edge is the fabric's own lies on the selvedge that is otherwise lost.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.catalog import Offer
from estimator.edges import EdgeFinish, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length
from estimator.needs.circles import HALF, NAMES, QUARTER, share_of
from estimator.needs.terms import usable_width
from estimator.needs.types import FabricTerms
from estimator.plan import Grain, Piece, Shape

ALONG, ACROSS = ("left", "right"), ("top", "bottom")
"""The edges of a piece that run along its length and across it, each as they follow one another."""


@dataclass(frozen=True, slots=True)
class Breadth:
    """A fabric across: ``usable`` between its selvedges, and the ``selvedge`` on each side.

    ``folded`` tells that it is laid folded lengthwise; of a plaid, the fold may have to lie as far
    as ``off_middle`` from the middle, so that the plaid is the same on both sides of it.
    """

    usable: Length
    selvedge: Length
    folded: bool = False
    off_middle: Length = ZERO

    @property
    def of_a_layer(self) -> Length:
        """The usable width of what lies on the table; folded, as far as it is double."""
        return self.usable_from_fold if self.folded else self.usable

    @property
    def usable_from_fold(self) -> Length:
        """The usable width of the narrower half, where the fabric is folded lengthwise."""
        return Length(self.usable.ticks // 2) - self.off_middle

    def of_panel(self, selvedges: int) -> Length:
        """The width of a panel as wide as the fabric that keeps so many of its selvedges."""
        return self.usable + self.selvedge * selvedges


def breadth_of(terms: FabricTerms, offer: Offer) -> Breadth:
    """The fabric of an offer after it has been washed.

    Where a usable width is stated, no more than what that leaves on each side is selvedge.
    """
    usable = usable_width(terms, offer)
    assert offer.width is not None, "an offer of a fabric has a width"
    whole = offer.width.times_rounded_down(1 - terms.shrinkage_across)
    selvedge = terms.selvedge.times_rounded_down(1 - terms.shrinkage_across)
    left = max(Length(0), (whole - usable).times_rounded_down(Fraction(1, 2)))
    return Breadth(usable, min(selvedge, left), terms.folded, _off_middle(terms))


MIRROR_LINES = 2
"""A balanced plaid is the same both ways from its bars, and from halfway between them."""


def _off_middle(terms: FabricTerms) -> Length:
    """How far from the middle of a plaid the nearest line on which it can be folded may lie.

    Where its bars lie between the selvedges is known only in the shop. A plaid that is the same
    from either side has two such lines a repeat, half a repeat apart: so one lies within a quarter.
    """
    if terms.repeat_across is None:
        return ZERO
    apart = (1 - terms.shrinkage_across) / MIRROR_LINES
    return terms.repeat_across.times(apart / 2)


def on_selvedges(
    piece: Piece, finishes: Mapping[str, EdgeFinish], grain: Grain
) -> tuple[tuple[str, ...], Grain]:
    """The sides of a piece, as it lies, that are on a selvedge; and the grain, now settled.

    ``top`` and ``bottom`` lie on the selvedges of a piece cut crosswise, as its left and right.
    Raises Wrong for edges that meet, for one that lies across the fabric, and for one that is no
    straight side.
    """
    sides = [side for side in (*ALONG, *ACROSS) if finishes[side].finish is Finish.SELVEDGE]
    if piece.shape is Shape.SECTOR:
        return _of_sector(piece, sides, grain)
    along, across = ([side for side in sides if side in two] for two in (ALONG, ACROSS))
    if along and across:
        raise Wrong(
            f"its {along[0]} and its {across[0]} edge are both on the selvedge, and they meet",
            "keep the selvedge on one of them",
            ("edges", across[0]),
        )
    if (along and grain is Grain.CROSSWISE) or (across and grain is Grain.LENGTHWISE):
        other = "lengthwise" if along else "crosswise"
        raise Wrong(
            f"its {sides[0]} edge lies across the fabric, and a selvedge runs along it",
            f'write grain = "{other}", or seam for this edge',
            ("edges", sides[0]),
        )
    edges = ALONG if along else ACROSS
    if sides and any(finishes[side].finish is Finish.FOLD for side in edges):
        return ALONG, Grain.LENGTHWISE if along else Grain.CROSSWISE  # both halves reach one
    if across:
        return tuple(ALONG[ACROSS.index(side)] for side in across), Grain.CROSSWISE
    return tuple(along), Grain.LENGTHWISE if along else grain


def _of_sector(piece: Piece, sides: Sequence[str], grain: Grain) -> tuple[tuple[str, ...], Grain]:
    """A quarter of a circle lies on the selvedge with one straight edge, half of one with both.

    Raises Wrong for any other part, and for the waist and the hem, which are round.
    """
    if not sides:
        return (), grain
    share, side = share_of(piece), sides[0]
    for curve in ACROSS:
        if curve in sides:
            raise Wrong(
                f"its {curve} edge is round, and a selvedge is straight",
                "write another finish for this edge",
                ("edges", curve),
            )
    if share == QUARTER:
        if len(sides) == 1:
            return ("left",), Grain.LENGTHWISE
        right = "keep the selvedge on one of them"
        raise Wrong("its straight edges are both on the selvedge, and they meet", right, ("edges",))
    if share != HALF:
        raise Wrong(
            f"its {side} edge is on the selvedge, and {NAMES[share]} reaches beyond it",
            "write seam for this edge, or plan quarters, each with one edge on the selvedge",
            ("edges", side),
        )
    if len(sides) == 1:
        raise Wrong(
            f"its {side} edge is on the selvedge, and half a circle has its other straight edge in "
            "one line with that",
            "put both edges on the selvedge, or neither",
            ("edges", side),
        )
    if grain is Grain.LENGTHWISE:
        raise Wrong(
            "its straight edges lie across the fabric, and a selvedge runs along it",
            'write grain = "crosswise", or seam for these edges',
            ("edges", side),
        )
    return ("left",), Grain.CROSSWISE
