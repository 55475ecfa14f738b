"""Whether a piece goes on the fabric at all: refused before anything is laid out."""

from __future__ import annotations

from estimator.faults import Wrong
from estimator.measure import Length, Unit, tape_text
from estimator.needs.terms import usable_width
from estimator.needs.types import CutPiece, FabricTerms
from estimator.written import quoted


def narrowest(piece: CutPiece) -> Length:
    """The least width of fabric that takes a piece."""
    if piece.may_turn:
        return min(piece.width.value, piece.length.value)
    return piece.width.value


def refuse_too_wide(piece: CutPiece, terms: FabricTerms, title: str) -> None:
    """Raises Wrong for a piece that no width on offer can take, and says what would."""
    offers = [one for one in terms.offers if terms.fixed_width in (None, one.width)]
    widest = max(offers, key=lambda one: usable_width(terms, one))
    usable, wide = usable_width(terms, widest), narrowest(piece)
    if wide <= usable:
        return
    assert widest.width is not None, "an offer of a fabric has a width"
    unit = Unit.CM if widest.sold_by.metric else Unit.IN
    turned = not piece.may_turn and piece.length.value <= usable and not terms.nap
    remedy = (
        'let the piece lie either way (grain = "either")'
        if turned
        else "cut the piece in parts with a seam"
    )
    raise Wrong(
        f"{quoted(piece.name)} is cut {tape_text(wide, unit)} wide, and the widest {quoted(title)} "
        f"on offer ({tape_text(widest.width, unit)}) has {tape_text(usable, unit)} to use",
        f"take a fabric with at least {tape_text(wide, unit)} to use, or {remedy}",
    )
