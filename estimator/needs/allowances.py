"""What each edge of a piece takes beyond its finished size, and what no edge can be.

A stated finish takes its own allowance, a plain seam that of its ``[[seam]]`` or the garment's.
"""

from __future__ import annotations

from collections.abc import Mapping

from estimator.edges import SEWN, SIDES, EdgeFinish, Finish, allowance
from estimator.faults import Wrong
from estimator.measure import INCH, ZERO, Length, Unit, natural_text
from estimator.needs.on_bias import refuse_off_the_bias
from estimator.needs.outlines import Allowances, Sized
from estimator.needs.types import ToCut
from estimator.plan import Made, Piece, Shape
from estimator.quoting import quoted
from estimator.rules import Rules


def allowances_of(to_cut: ToCut) -> Allowances:
    """The allowance of each side of a piece as it is cut from one fabric.

    Raises Wrong for two opposite folds, and for folds where a piece cannot have them.
    """
    piece, rules = to_cut.piece, to_cut.order.plan.garment.rules
    finishes = {side: finish_of(piece, side) for side in SIDES}
    folds = [side for side in SIDES if finishes[side].finish is Finish.FOLD]
    refuse_off_the_bias(piece, finishes.items())
    _refuse_named_edges_on_the_grain(piece)
    if set(folds) >= {"left", "right"} or set(folds) >= {"top", "bottom"}:
        raise Wrong("two opposite edges lie on a fold", "put one edge on the fold", ("edges",))
    if folds and (piece.made is not Made.FLAT or piece.shape is Shape.SECTOR):
        right = _without_a_fold(piece, folds[0])
        raise Wrong("this piece cannot lie on a fold", right, ("edges", folds[0]))
    if to_cut.cut.cut_to == "finished size" and piece.sizes == "finished":
        return Allowances(ZERO, ZERO, ZERO, ZERO, finishes)
    seams = to_cut.order.seam_allowances
    taken = {side: _taken(piece, side, finishes[side], rules, seams) for side in SIDES}
    return Allowances(**taken, finishes=finishes)


_DOUBLED = {"1/4": "1/2", "1/2": "1"}
"""The share of the whole of which a part of a circle is half."""


def _without_a_fold(piece: Piece, side: str) -> str:
    """How a piece is planned of which half was given, with an edge on the fold."""
    across = side in ("left", "right")
    if piece.shape is Shape.SECTOR:
        laid = "laid on the fold by itself where the fabric is folded"
        if piece.share in _DOUBLED:
            whole = f'share = "{_DOUBLED[piece.share]}" with twice the waist'
            return f"plan the whole, {whole}, without the fold: it is {laid}"
        return (
            f"leave the fold out: a whole circle is {laid}"
            if piece.share == "1"
            else ("leave the fold out: three quarters of a circle are cut in one, or seamed")
        )
    if across and piece.made in (Made.TUBE, Made.FOLDED_BAND):
        return f"leave the fold out: a {piece.made.value} is folded along its length by itself"
    if piece.made is Made.JOINED_STRIP:
        return "leave the fold out: a joined strip is cut in whole widths"
    if not across and piece.onto is not None:
        return "leave the fold out: it is cut as long as the whole edge that it is sewn to"
    return f"plan the whole, with twice the {'width' if across else 'length'}, without the fold"


def _refuse_named_edges_on_the_grain(piece: Piece) -> None:
    for name, edge in piece.edges.items():
        if name not in SIDES and edge.finish.finish in (Finish.FOLD, Finish.SELVEDGE):
            finish = edge.finish.finish.value
            raise Wrong(
                f"its edge {quoted(name)} is on the {finish}, and where it lies is not known",
                f"put the {finish} on a side ({', '.join(SIDES)}), or write another finish",
                ("edges", name),
            )


def finish_of(piece: Piece, side: str) -> EdgeFinish:
    if side in piece.edges:
        return piece.edges[side].finish
    if piece.made is Made.FACING and side == "right":
        return EdgeFinish(Finish.TURNED)
    return EdgeFinish(Finish.SEAM)


def _taken(
    piece: Piece,
    side: str,
    edge: EdgeFinish,
    rules: Rules,
    seams: Mapping[tuple[str, str], Length],
) -> Length:
    if edge.finish in SEWN and edge.depth is None and (piece.name, side) in seams:
        return seams[piece.name, side]
    return allowance(edge, rules)


WIDEST_OF_NARROW = Length(2 * INCH.ticks)
"""An allowance up to this is no slip even on a narrower piece: a strap is trimmed when sewn."""


def refuse_deep_edges(piece: Piece, edges: Allowances, sized: Sized, tape: Unit) -> None:
    """Raises Wrong for a hem or an allowance that is wider than the piece itself."""
    for index, low, high, name in ((0, "left", "right", "wide"), (1, "top", "bottom", "long")):
        finished = sized.finished[index]
        for side in (low, high):
            edge = edges.finishes[side]
            hemmed = edge.finish in (Finish.HEM, Finish.CASING)
            if hemmed and piece.shape is Shape.SECTOR and index == 0:
                continue  # the hem of a straight edge is as long as the part, whatever its waist
            if hemmed and (edge.depth or ZERO) > finished:
                raise Wrong(
                    f"the {side} {edge.finish.value} is deeper than the finished piece is {name}",
                    f"write a {edge.finish.value} shallower than the piece",
                    ("edges", side),
                )
            taken = getattr(edges, side)
            if not hemmed and taken > max(finished, WIDEST_OF_NARROW):
                raise Wrong(
                    f"its {side} edge takes {natural_text(taken, tape)} of {edge.finish.value} "
                    f"allowance, and the finished piece is {natural_text(finished, tape)} {name}",
                    "write an allowance narrower than the piece",
                    ("edges", side) if side in piece.edges else (),
                )
