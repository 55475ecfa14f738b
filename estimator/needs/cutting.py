"""Finished size to cut size: allowances by edge, made-up pieces, pleats, tapers and circles.

Every size is exact until it is raised to a mark of the tape. Widths run across the fabric and
lengths along it, as they stand in the plan; grain and turning are the layout's business.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from estimator.edges import SIDES, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, tape_text
from estimator.needs.allowances import allowances_of, finish_of, refuse_deep_edges
from estimator.needs.circles import WHOLE, cut_radii, share_of, size_sector
from estimator.needs.cut_piece import CutPiece
from estimator.needs.linings import length_note, other_length, refuse_trimmed_strip, trimmed
from estimator.needs.on_bias import box_on_bias
from estimator.needs.outlines import (
    Allowances,
    Sized,
    edge_word,
    fold_note,
    size_taper,
    stated,
)
from estimator.needs.selvedges import on_selvedges
from estimator.needs.types import ToCut
from estimator.plan import Cut, Grain, Made, Piece, Shape, TakeUpKind
from estimator.working import Reckoning

_FOLDS_PER_DEPTH = {
    TakeUpKind.KNIFE_PLEAT: 2,
    TakeUpKind.BOX_PLEAT: 4,
    TakeUpKind.TUCK: 2,
    TakeUpKind.DART: 1,
}


def with_own_sizes(piece: Piece, cut: Cut) -> Piece:
    """The piece as it is for one of its fabrics, whose entry may state sizes of its own."""
    own = {
        key: value
        for key in ("quantity", "width", "length", "top", "bottom", "waist", "fullness", "grain")
        if (value := getattr(cut, key)) is not None
    }
    if cut.edges is not None:
        own["edges"] = {**piece.edges, **cut.edges}
    for key in ("width", "length", "top", "bottom", "waist", "fullness"):
        if key in own and getattr(piece, key) is None:
            raise Wrong(f"{key} is not a size of this piece", "state the sizes that the piece has")
    own |= other_length(piece, cut)
    return piece.model_copy(update=own) if own else piece


def cut_piece(to_cut: ToCut) -> CutPiece:
    """A piece that states its sizes, as it is cut for the whole job.

    Raises Wrong for a hem deeper than its piece, and for sizes that leave nothing.
    """
    piece = to_cut.piece
    sized = size_piece(to_cut)
    width, length, finished = sized.width, sized.length, sized.finished
    chalked = _narrow_end(sized, to_cut) or _radii(sized, to_cut)
    notes = [sized.note, chalked, length_note(to_cut), piece.note]
    on_bias, arc = None, sized.arc
    finishes = {side: finish_of(piece, side) for side in SIDES}
    selvedges, grain = on_selvedges(piece, finishes, piece.grain)
    if to_cut.cut.cut_to == "finished size":
        selvedges = ()  # it ends within the piece, and has no edge of its own
    if grain is Grain.CROSSWISE:
        width, length = length, width
        if arc is None:
            finished = (finished[1], finished[0])
        else:
            arc = arc.turned  # its finished sizes are no box, and lie no way
        notes.append("crosswise: its length lies across the fabric")
    if piece.grain is Grain.BIAS:
        order = to_cut.order
        on_bias = (width.value, length.value)
        own = " by ".join(tape_text(size, order.tape) for size in on_bias)
        notes.append(f"on the bias: cut {own}, and laid at 45°")
        width, length = box_on_bias(sized, order.mark)
    if selvedges:
        edge = "its edge" if len(selvedges) == 1 else "both its sides"
        notes.append(f"{edge} on the selvedge")
    opens = ("top", "bottom") if grain is Grain.CROSSWISE else ("left", "right")
    return CutPiece(
        source=to_cut.source,
        name=piece.name,
        quantity=piece.quantity * to_cut.order.copies,
        finished=finished,
        width=width,
        length=length,
        may_turn=grain is Grain.EITHER and not to_cut.nap,
        boxed=sized.boxed or on_bias is not None,
        narrow=sized.narrow if grain in (Grain.LENGTHWISE, Grain.BIAS) else None,
        square=sized.square,
        on_its_head=sized.on_its_head,
        arc=arc,
        on_bias=on_bias,
        selvedges=selvedges,
        on_fold=any(finishes[side].finish is Finish.FOLD for side in opens),
        else_cut=_else_cut(grain, to_cut),
        note="; ".join(filter(None, notes)),
    )


def _else_cut(grain: Grain, to_cut: ToCut) -> str:
    """How a piece may be cut that is too wide, where it is not simply let lie either way."""
    if grain is Grain.BIAS:
        return "cut it on the straight grain, or in parts with a seam"
    if grain is Grain.CROSSWISE and to_cut.nap:
        return 'lay it along the fabric (grain = "lengthwise"), or cut it in parts with a seam'
    return ""


def _narrow_end(sized: Sized, to_cut: ToCut) -> str:
    """A taper's other cut width, without which it cannot be chalked."""
    if sized.narrow is None:
        return ""
    return f"cut {tape_text(sized.narrow, to_cut.order.tape)} at its narrow end"


def _radii(sized: Sized, to_cut: ToCut) -> str:
    """The radii of a part of a circle, which its box does not tell."""
    order = to_cut.order
    return cut_radii(sized.arc, order.mark, order.tape) if sized.arc else ""


def size_piece(to_cut: ToCut) -> Sized:
    """Both cut sizes of a piece in its own directions, raised to the mark of the tape."""
    piece, edges = to_cut.piece, allowances_of(to_cut)
    if piece.sizes == "cut":
        sized = _already_cut(piece, to_cut.cut, edges)
    elif piece.made is not Made.FLAT:
        sized = _made_up(to_cut, edges)
    else:
        match piece.shape:
            case Shape.RECTANGLE | Shape.BOX:
                sized = _rectangle(_unfolded(to_cut), edges)
            case Shape.TAPER:
                sized = size_taper(piece, edges)
            case Shape.SECTOR:
                sized = size_sector(piece, edges, _slit(to_cut, edges))
    refuse_deep_edges(piece, edges, sized, to_cut.order.tape)
    mark = to_cut.order.mark
    sized = trimmed(sized, to_cut, edges)
    width = sized.width.to_mark("up to the mark of the tape", mark)
    length = sized.length.to_mark("up to the mark of the tape", mark)
    narrow = None if sized.narrow is None else sized.narrow.up_to(mark)
    return replace(sized, width=width, length=length, narrow=narrow)


def _slit(to_cut: ToCut, edges: Allowances) -> Length:
    """What the sides of a slit take in a whole circle: it has one where the plan speaks of them."""
    piece, sides = to_cut.piece, ("left", "right")
    in_seams = (ref for seam in to_cut.order.plan.seam for joined in seam.edges for ref in joined)
    spoken_of = any(side in piece.edges for side in sides) or any(
        ref.piece == piece.name and ref.edge in sides for ref in in_seams
    )
    whole = share_of(piece) == WHOLE and piece.waist
    return edges.left + edges.right if whole and spoken_of else ZERO


def cut_length(to_cut: ToCut) -> Reckoning:
    """The cut length of a joined strip's widths: their finished depth and its allowances."""
    edges = allowances_of(to_cut)
    refuse_trimmed_strip(to_cut.cut)
    length = _opened(to_cut.piece, "length", edges)
    finished = stated(to_cut.piece.length)
    refuse_deep_edges(
        to_cut.piece, edges, Sized((finished, finished), length, length), to_cut.order.tape
    )
    return length.to_mark("up to the mark of the tape", to_cut.order.mark)


def _unfolded(to_cut: ToCut) -> Piece:
    """The piece without its pleats where it is cut to its finished size, as interfacing is."""
    if to_cut.cut.cut_to == "finished size":
        return to_cut.piece.model_copy(update={"takes_up": ()})
    return to_cut.piece


def _rectangle(piece: Piece, edges: Allowances) -> Sized:
    width = _opened(piece, "width", edges)
    length = _opened(piece, "length", edges)
    finished = (_opened_finish(piece, "width", edges), _opened_finish(piece, "length", edges))
    return Sized(finished, width, length, piece.shape is Shape.BOX, fold_note(edges))


ACROSS = {"width": ("left", "right"), "length": ("top", "bottom")}
"""The two edges that bound each size."""


def _opened(piece: Piece, name: Literal["width", "length"], edges: Allowances) -> Reckoning:
    """A size with its allowances and folds; on the fold, all of them are those of the half."""
    reckoning = Reckoning.start(f"finished {name}", stated(getattr(piece, name)))
    for side in ACROSS[name]:
        reckoning = reckoning.plus(f"{side} {edge_word(edges, side)}", getattr(edges, side))
    for fold in piece.takes_up:
        if fold.across == name:
            label = f"{fold.count} {fold.kind.value}{'s' if fold.count > 1 else ''}"
            taken = fold.depth * (_FOLDS_PER_DEPTH[fold.kind] * fold.count)
            reckoning = reckoning.plus(label, taken)
    if any(map(edges.is_fold, ACROSS[name])):
        reckoning = reckoning.times("opened out from the fold", 2)
    return reckoning


def _opened_finish(piece: Piece, name: str, edges: Allowances) -> Length:
    size = stated(getattr(piece, name))
    return size * 2 if any(map(edges.is_fold, ACROSS[name])) else size


def _already_cut(piece: Piece, cut: Cut, edges: Allowances) -> Sized:
    """Allowances are in already: the finished size is what they leave."""
    if piece.shape in (Shape.TAPER, Shape.SECTOR):
        raise Wrong(
            f"a {piece.shape.value} is given finished, so that its slant can be reckoned",
            'leave sizes = "cut" out, or give its box',
            ("sizes",),
        )
    (width, finished_width), (length, finished_length) = (
        _cut_and_finished(piece, name, edges, finished_only=cut.cut_to == "finished size")
        for name in ("width", "length")
    )
    boxed = piece.shape is Shape.BOX
    return Sized((finished_width, finished_length), width, length, boxed, fold_note(edges))


def _cut_and_finished(
    piece: Piece, name: str, edges: Allowances, *, finished_only: bool
) -> tuple[Reckoning, Length]:
    """One cut size and the finished size that its allowances leave; on the fold, opened out."""
    reckoning = Reckoning.start(f"cut {name}, allowances included", stated(getattr(piece, name)))
    finished = reckoning
    for side in ACROSS[name]:
        finished = finished.minus(f"{side} {edge_word(edges, side)}", getattr(edges, side))
    if finished.exact <= 0:
        raise Wrong(
            f"its allowances leave nothing of the cut {name}", f"give a larger {name}", (name,)
        )
    taken = finished if finished_only else reckoning
    if any(map(edges.is_fold, ACROSS[name])):
        label = "opened out from the fold"
        return taken.times(label, 2), finished.value * 2
    return taken, finished.value


def _made_up(to_cut: ToCut, edges: Allowances) -> Sized:
    """One strip: a tube or a band is folded along its length, a facing is single."""
    piece, cut = to_cut.piece, to_cut.cut
    width = Reckoning.start("finished width", stated(piece.width))
    doubled = piece.made in (Made.TUBE, Made.FOLDED_BAND) and cut.cut_to == "cut size"
    if doubled:
        width = width.times("folded along its length", 2)
    for side in ("left", "right"):
        width = width.plus(f"long {edge_word(edges, side)}", getattr(edges, side))
    length = to_cut.long or Reckoning.start("finished length", stated(piece.length))
    for side in ("top", "bottom"):
        length = length.plus(f"{side} end {edge_word(edges, side)}", getattr(edges, side))
    return Sized((stated(piece.width), stated(piece.length)), width, length)
