"""Pieces on the bias: the box that one takes on the fabric when it lies at 45 degrees.

A point ``across`` and ``along`` the piece comes to (across + along) / sqrt 2 one way and to
(across - along) / sqrt 2 the other; the box reaches from the least of its corners to the greatest.
"""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction

from estimator.edges import EdgeFinish, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length
from estimator.needs.outlines import Sized
from estimator.plan import Grain, Made, Piece, Shape
from estimator.working import Reckoning

ROOT_2 = Fraction(Decimal("1.41421356237309504880168872420969807"))
"""Cut off after its 35th decimal, so that what is divided by it is never too small."""
MARK = "up to the mark of the tape"


def refuse_off_the_bias(piece: Piece, finishes: Iterable[tuple[str, EdgeFinish]]) -> None:
    """Raises Wrong where a piece is to lie on the bias and something else puts it on the grain."""
    finishes = tuple(finishes)
    for side, edge in finishes if piece.made is Made.BIAS_STRIP else ():
        if edge.finish is Finish.SELVEDGE:
            raise Wrong(
                f"a bias strip lies at 45°, and its {side} edge on the selvedge, which runs along "
                "the grain",
                "leave this edge out",
                ("edges", side),
            )
    if piece.grain is not Grain.BIAS:
        return
    if piece.made is Made.BIAS_STRIP:
        raise Wrong("a bias strip lies on the bias already", "leave grain out", ("grain",))
    if piece.made is Made.JOINED_STRIP:
        raise Wrong(
            "a joined strip is made of widths of the fabric, which do not lie on the bias",
            'write made = "bias strip" for strips cut on the bias and joined, or leave grain out',
            ("grain",),
        )
    if piece.shape is Shape.SECTOR:
        raise Wrong(
            "a part of a circle is on the bias somewhere, however it lies",
            "leave grain out",
            ("grain",),
        )
    for side, edge in finishes:
        if edge.finish in (Finish.FOLD, Finish.SELVEDGE):
            right = "give the whole piece" if edge.finish is Finish.FOLD else "write seam for it"
            raise Wrong(
                f"the piece lies on the bias, and its {side} edge on the {edge.finish.value}, "
                "which runs along the grain",
                f"{right}, or leave grain out",
                ("edges", side),
            )


def box_on_bias(sized: Sized, mark: Length) -> tuple[Reckoning, Reckoning]:
    """The width and length that a piece of these cut sizes takes at 45 degrees, up to a mark.

    (width + length) / sqrt 2 both ways for a rectangle. A taper reaches less far: with two slanted
    sides as far as a rectangle of its mean width; with one, across as far as its narrow end.
    """
    width, length = sized.width, sized.length
    narrowed = width.value - sized.narrow if sized.narrow is not None else ZERO
    on_average = Length(narrowed.ticks // 2)
    across, along = width, width
    if (less := narrowed if sized.square else on_average) < length.value:
        across = width.plus("its cut length, as it lies at 45°", length.value)
        across = across.minus("what it narrows by there", less)
    if (less := ZERO if sized.square else on_average) < length.value:
        along = length.plus("its cut width, as it lies at 45°", width.value)
        along = along.minus("what it narrows by there", less)
    return (
        across.divided_by("√2, the side of a square by its diagonal", ROOT_2).to_mark(MARK, mark),
        along.divided_by("√2, the side of a square by its diagonal", ROOT_2).to_mark(MARK, mark),
    )
