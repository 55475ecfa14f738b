"""Whether a piece goes on the fabric at all: refused before anything is laid out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, Unit, natural_text, tape_text, usable_text
from estimator.needs.selvedges import Breadth, breadth_of
from estimator.needs.terms import usable_width
from estimator.needs.types import CutPiece, FabricTerms
from estimator.written import quoted


def narrowest(piece: CutPiece) -> Length:
    """The least width between two selvedges that takes a piece."""
    return least_width(piece, ZERO)


def on_cloth(piece: CutPiece, selvedge: Length) -> Length:
    """What a piece takes of the usable width: nothing of it lies where it uses the selvedge."""
    return max(piece.width.value - selvedge * len(piece.selvedges), Length(1))


def least_width(piece: CutPiece, selvedge: Length, *, folded: bool = False) -> Length:
    """The least usable width of fabric that takes a piece, open or folded lengthwise.

    Folded, a piece whose halves are mirror images lies with one half on the fold; of any other the
    fabric has to take two beside each other.
    """
    width = on_cloth(piece, selvedge)
    if piece.may_turn:
        width = min(width, piece.length.value)
    return width * 2 if folded and not piece.folds else width


def least_length(piece: CutPiece, breadth: Breadth) -> Length:
    """The least length along the fabric that a piece takes, turned where that is allowed."""
    if piece.may_turn and piece.length.value <= breadth.of_a_layer:
        return min(piece.width.value, piece.length.value)
    return piece.length.value


def goes_on(pieces: Iterable[CutPiece], breadth: Breadth) -> bool:
    """Whether the fabric is wide enough for each of the pieces."""
    needed = (least_width(one, breadth.selvedge, folded=breadth.folded) for one in pieces)
    return max(needed) <= breadth.usable


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
    breadth = breadth_of(terms, widest)
    wide = least_width(piece, breadth.selvedge, folded=terms.folded)
    if wide <= breadth.usable:
        return
    assert widest.width is not None, "an offer of a fabric has a width"
    lies = "lies on the bias" if piece.on_bias else "is cut"
    cut, has, remedy = wide, " has", _remedy(piece, breadth.usable, terms)
    if terms.folded and not piece.folds:
        cut, has = Length(wide.ticks // 2), ", folded, has"
        if least_width(piece, breadth.selvedge) <= breadth.usable:
            remedy = 'lay the fabric open (laid = "open")'
    usable = Length(breadth.usable.ticks * cut.ticks // wide.ticks)
    raise Wrong(
        f"{quoted(piece.name)} {lies} {tape_text(cut, unit)} wide, and the widest {quoted(title)} "
        f"on offer ({natural_text(widest.width, unit)}){has} {usable_text(usable, unit)} to use",
        f"take a fabric with at least {tape_text(wide, unit)} to use, or {remedy}",
    )


def refuse_between_selvedges(
    piece: CutPiece, breadth: Breadth, nominal: Length, title: str, unit: Unit
) -> None:
    """Raises Wrong for a piece with both sides on the selvedges of a wider fabric."""
    if len(piece.selvedges) < BOTH or on_cloth(piece, breadth.selvedge) >= breadth.usable:
        return
    raise Wrong(
        f"{quoted(piece.name)} has both its sides on the selvedge and is cut "
        f"{tape_text(piece.width.value, unit)} wide; {quoted(title)} "
        f"{natural_text(nominal, unit)} wide is {usable_text(breadth.of_panel(BOTH), unit)} "
        "from edge to edge",
        "give one of its sides a seam, or make it as wide as the fabric "
        '(made = "joined strip", widths = 1)',
    )


BOTH = 2
