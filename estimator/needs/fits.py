"""Whether a piece goes on the fabric at all: refused before anything is laid out."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import Length, Unit, natural_text, tape_text, usable_text
from estimator.needs.terms import usable_width
from estimator.needs.types import CutPiece, FabricTerms
from estimator.written import quoted


def narrowest(piece: CutPiece) -> Length:
    """The least width of fabric that takes a piece."""
    if piece.may_turn:
        return min(piece.width.value, piece.length.value)
    return piece.width.value


def _remedy(piece: CutPiece, usable: Length, terms: FabricTerms) -> str:
    if piece.else_cut:
        return piece.else_cut
    if not piece.may_turn and piece.length.value <= usable and not terms.nap:
        return 'let the piece lie either way (grain = "either")'
    return "cut the piece in parts with a seam"


def refuse_too_wide(
    piece: CutPiece, terms: FabricTerms, offers: Sequence[Offer], title: str, unit: Unit
) -> None:
    """Raises Wrong, worded in ``unit``, for a piece that none of these offers' widths can take."""
    widest = max(offers, key=lambda one: usable_width(terms, one))
    usable, wide = usable_width(terms, widest), narrowest(piece)
    if wide <= usable:
        return
    assert widest.width is not None, "an offer of a fabric has a width"
    remedy = _remedy(piece, usable, terms)
    lies = "lies on the bias" if piece.on_bias else "is cut"
    raise Wrong(
        f"{quoted(piece.name)} {lies} {tape_text(wide, unit)} wide, and the widest {quoted(title)} "
        f"on offer ({natural_text(widest.width, unit)}) has {usable_text(usable, unit)} to use",
        f"take a fabric with at least {tape_text(wide, unit)} to use, or {remedy}",
    )
