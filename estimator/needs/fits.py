"""Whether a piece goes on the fabric at all: refused before anything is laid out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from estimator.catalog import Offer
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, Unit, natural_text, tape_text, usable_text
from estimator.needs.cut_piece import CutPiece
from estimator.needs.selvedges import Breadth, breadth_of
from estimator.needs.terms import usable_width
from estimator.needs.types import FabricTerms
from estimator.quoting import quoted


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
    upright = replace(piece, may_turn=False)
    lengths = []
    if least_width(upright, breadth) <= breadth.usable:
        lengths.append(piece.length.value)
    if piece.may_turn and piece.length.value <= breadth.of_a_layer:
        lengths.append(piece.width.value)
    return min(lengths, default=piece.length.value)


def goes_on(pieces: Iterable[CutPiece], breadth: Breadth) -> bool:
    """Whether the fabric is wide enough for each of the pieces."""
    return breadth.of_a_layer > ZERO and all(
        least_width(one, breadth) <= breadth.usable and not loses_its_selvedge(one, breadth)
        for one in pieces
    )


def loses_its_selvedge(piece: CutPiece, breadth: Breadth) -> bool:
    """Whether a piece would lie on the selvedges of a folded plaid, which need not meet there."""
    one_edge = len(piece.selvedges) == 1 or (bool(piece.selvedges) and piece.on_fold)
    return breadth.folded and breadth.off_middle > ZERO and one_edge


def _remedy(piece: CutPiece, usable: Length, terms: FabricTerms) -> str:
    """What would help beside a wider fabric: only what would let the piece go on this one."""
    if piece.else_cut:
        return piece.else_cut
    if not piece.may_turn and piece.length.value <= usable and not terms.nap:
        turned = 'let the piece lie either way (grain = "either")'
        return f"write seam for what is on the selvedge and {turned}" if piece.selvedges else turned
    if piece.on_fold and piece.width.value < usable * 2:
        return "cut it in two with a seam in the place of the fold"
    return "cut the piece in parts with a seam"


def refuse_all_selvedge(terms: FabricTerms) -> None:
    """Raises Wrong for a fabric of which nothing is left between its selvedges."""
    widest = max(terms.offers, key=lambda one: usable_width(terms, one))
    if usable_width(terms, widest) > ZERO:
        return
    assert widest.width is not None, "an offer of a fabric has a width"
    unit = widest.sold_by.tape
    raise Wrong(
        f"two selvedges of {tape_text(terms.selvedge, unit)} leave nothing to use of "
        f"{natural_text(widest.width, unit)}",
        "state a smaller selvedge, or the usable width",
        ("selvedge",),
    )


def refuse_too_wide(
    piece: CutPiece, terms: FabricTerms, offers: Sequence[Offer], title: str, unit: Unit
) -> None:
    """Raises Wrong, worded in ``unit``, for a piece that none of these offers' widths can take."""
    widest = max(offers, key=lambda one: usable_width(terms, one))
    breadth = breadth_of(terms, widest)
    wide = least_width(piece, breadth)
    if wide <= breadth.usable or breadth.of_a_layer <= ZERO:
        return  # of a fabric without any width to lay on the table, that is said
    assert widest.width is not None, "an offer of a fabric has a width"
    lies = "lies on the bias" if piece.on_bias else "is cut"
    if piece.on_fold:
        lies = "is, opened out from the fold,"
    opened = replace(breadth, folded=False)
    cut, usable, has = least_width(piece, opened), breadth.usable, " has"
    remedy = _remedy(piece, breadth.usable, terms)
    if terms.folded and (breadth.off_middle or not piece.folds):
        has = ", folded where its plaid allows, has" if breadth.off_middle else ", folded, has"
        usable = breadth.of_a_layer * (2 if piece.folds else 1)
    if terms.folded and cut <= breadth.usable:
        remedy = LAY_OPEN
    at = natural_text(widest.width, unit)
    if any(usable_width(terms, one) > breadth.usable for one in terms.offers):
        fabric = f"{quoted(title)} {at} wide"
    else:
        fabric = f"the widest {quoted(title)} on offer ({at})"
    taken = _widths_that_take(piece, terms, unit)
    wider = f"take it {taken} wide" if taken else ""
    raise Wrong(
        f"{quoted(piece.name)} {lies} {tape_text(cut, unit)} wide, and {fabric}{has} "
        f"{usable_text(usable, unit)} to use",
        f"{wider or f'take a fabric with at least {tape_text(wide, unit)} to use'}, or {remedy}",
    )


def _widths_that_take(piece: CutPiece, terms: FabricTerms, unit: Unit) -> str:
    """``54 in or 60 in``: the widths of the fabric on offer that a piece goes on."""
    widths = sorted(
        {
            offer.width
            for offer in terms.offers
            if offer.width is not None and goes_on([piece], breadth_of(terms, offer))
        }
    )
    return " or ".join(natural_text(width, unit) for width in widths)


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
    has = "has both its sides on the selvedge and is cut"
    right = (
        "give one of its sides a seam, or make it as wide as the fabric "
        '(made = "joined strip", widths = 1)'
    )
    if piece.on_fold:
        has = "lies on the fold with its other side on the selvedge, and is, opened out,"
        right = "give that side a seam"
    raise Wrong(
        f"{quoted(piece.name)} {has} {tape_text(piece.width.value, unit)} wide; {quoted(title)} "
        f"{natural_text(nominal, unit)} wide is {usable_text(breadth.of_panel(BOTH), unit)} "
        "from edge to edge",
        right,
    )


BOTH = 2
