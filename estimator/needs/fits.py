"""Whether a piece goes on the fabric at all: refused before anything is laid out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, Unit, natural_text, tape_text, usable_text
from estimator.needs.selvedges import Breadth, breadth_of
from estimator.needs.terms import usable_width
from estimator.needs.types import CutPiece, FabricTerms
from estimator.written import quoted


def narrowest(piece: CutPiece) -> Length:
    """The least width between two selvedges that takes a piece."""
    return least_width(piece, Breadth(ZERO, ZERO))


def on_cloth(piece: CutPiece, selvedge: Length) -> Length:
    """What a piece takes of the usable width: nothing of it lies where it uses the selvedge."""
    return max(piece.width.value - selvedge * len(piece.selvedges), Length(1))


def least_width(piece: CutPiece, breadth: Breadth) -> Length:
    """The least usable width of fabric with such selvedges, laid so, that takes a piece.

    Folded, a piece whose halves are mirror images lies with one half on the fold; of any other the
    fabric has to take two beside each other. Where a plaid is folded, as much of it stays single as
    the fold may be off the middle; a panel from selvedge to selvedge takes that as well.
    """
    width = on_cloth(piece, breadth.selvedge)
    narrow = min(width, piece.length.value) if piece.may_turn else width
    if not breadth.folded:
        return narrow
    if piece.folds and width == breadth.usable:
        return width
    double = width if piece.folds else narrow * 2
    if not piece.on_fold:
        double = min(double, narrow * 2)
    return double + breadth.off_middle * 2


def least_length(piece: CutPiece, breadth: Breadth) -> Length:
    """The least length along the fabric that a piece takes, turned where that is allowed."""
    if piece.may_turn and piece.length.value <= breadth.of_a_layer:
        return min(piece.width.value, piece.length.value)
    return piece.length.value


def goes_on(pieces: Iterable[CutPiece], breadth: Breadth) -> bool:
    """Whether the fabric is wide enough for each of the pieces."""
    return all(
        least_width(one, breadth) <= breadth.usable and not loses_its_selvedge(one, breadth)
        for one in pieces
    )


def loses_its_selvedge(piece: CutPiece, breadth: Breadth) -> bool:
    """Whether a piece would lie on the selvedges of a folded plaid, which need not meet there."""
    one_edge = len(piece.selvedges) == 1 or (bool(piece.selvedges) and piece.on_fold)
    return breadth.folded and breadth.off_middle > ZERO and one_edge


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
    wide = least_width(piece, breadth)
    if wide <= breadth.usable:
        return
    assert widest.width is not None, "an offer of a fabric has a width"
    lies = "lies on the bias" if piece.on_bias else "is cut"
    opened = replace(breadth, folded=False)
    cut, usable, has = least_width(piece, opened), breadth.usable, " has"
    remedy = _remedy(piece, breadth.usable, terms)
    if terms.folded and (breadth.off_middle or not piece.folds):
        has = ", folded where its plaid allows, has" if breadth.off_middle else ", folded, has"
        usable = breadth.of_a_layer * (2 if piece.folds else 1)
    if terms.folded and cut <= breadth.usable:
        remedy = LAY_OPEN
    raise Wrong(
        f"{quoted(piece.name)} {lies} {tape_text(cut, unit)} wide, and the widest {quoted(title)} "
        f"on offer ({natural_text(widest.width, unit)}){has} {usable_text(usable, unit)} to use",
        f"take a fabric with at least {tape_text(wide, unit)} to use, or {remedy}",
    )


LAY_OPEN = 'lay the fabric open (laid = "open")'


def refuse_on_plaid(piece: CutPiece, breadth: Breadth, title: str) -> None:
    """Raises Wrong for a piece on the selvedges of a plaid that is folded."""
    if not loses_its_selvedge(piece, breadth):
        return
    raise Wrong(
        f"{quoted(piece.name)} has an edge on the selvedge, and {quoted(title)} is a plaid laid "
        "folded: the fold has to lie where the plaid is the same on both sides, and there the "
        "selvedges need not meet",
        f"{LAY_OPEN}, or give that edge a seam",
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
