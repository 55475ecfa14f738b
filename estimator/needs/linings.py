"""What is cut again from a lining or interfacing: shorter or longer than its shell, or trimmed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from estimator.edges import Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, tape_text, whole_ticks
from estimator.needs.allowances import finish_of
from estimator.needs.outlines import Allowances, Sized, size_taper, stated
from estimator.needs.types import ToCut
from estimator.plan import Cut, Made, Piece, Shape
from estimator.working import Reckoning


def other_length(piece: Piece, cut: Cut) -> dict[str, Any]:
    """The sizes that a lining has by hanging shorter than its shell, or being eased in longer.

    A taper is cut off, or goes on, along its own slant. Raises Wrong for a piece without a length
    of its own, and where nothing is left.
    """
    if cut.shorter is None and cut.longer is None:
        return {}
    key = "longer" if cut.shorter is None else "shorter"
    if piece.length is None:
        raise Wrong(f"{key} is told from the piece's length", "give the piece a length", (key,))
    more = (cut.longer or ZERO) - (cut.shorter or ZERO)
    length = piece.length + more
    if length <= ZERO:
        raise Wrong("shorter leaves nothing of the length", "write a smaller shorter", (key,))
    sizes: dict[str, Any] = {"length": length}
    if piece.made is Made.FLAT and piece.shape is Shape.TAPER and cut.bottom is None:
        top, bottom = stated(cut.top or piece.top), stated(piece.bottom)
        spread = Fraction((bottom - top).ticks * more.ticks, piece.length.ticks)
        sizes["bottom"] = whole_ticks(bottom.ticks + spread)
        if sizes["bottom"] <= ZERO:
            raise Wrong("longer takes the taper to a point", "write a smaller longer", (key,))
    return sizes


_HOW_IT_ENDS = {
    Finish.SEAM: "then its seam allowance",
    Finish.FACED: "then its seam allowance, faced",
    Finish.HEM: "then its own hem",
    Finish.ROLLED: "then its own rolled hem",
    Finish.CASING: "then its own casing",
    Finish.TURNED: "then its turn-under",
    Finish.SERGED: "then what overlocking trims",
    Finish.SELVEDGE: "where its selvedge is",
    Finish.FOLD: "where its fold is",
    Finish.RAW: "left raw there",
}


def length_note(to_cut: ToCut) -> str:
    """Says of a lining by how much it differs from its shell."""
    cut, unit = to_cut.cut, to_cut.order.tape
    notes = []
    if cut.shorter is not None:
        ends = _HOW_IT_ENDS[finish_of(to_cut.piece, "bottom").finish]
        notes.append(f"{tape_text(cut.shorter, unit)} shorter than its shell, {ends}")
    if cut.longer is not None:
        notes.append(f"{tape_text(cut.longer, unit)} longer than its shell, for an ease pleat")
    if cut.trimmed is not None:
        notes.append(f"trimmed by {tape_text(cut.trimmed, unit)} all round")
    return "; ".join(notes)


def trimmed(sized: Sized, to_cut: ToCut, edges: Allowances) -> Sized:
    """The cut sizes less what is trimmed off all round. Raises Wrong where nothing is left."""
    off = to_cut.cut.trimmed
    if off is None:
        return sized
    length = _less(sized.length, off * 2)
    if sized.narrow is not None:
        within = size_taper(to_cut.piece, edges.less(off))
        width = _less(sized.width, sized.width.value - within.width.value)
        return replace(sized, width=width, length=length, narrow=within.narrow)
    arc = None if sized.arc is None else sized.arc.less(off)
    return replace(sized, width=_less(sized.width, off * 2), length=length, arc=arc)


def _less(size: Reckoning, off: Length) -> Reckoning:
    less = size.minus("trimmed off at both sides", off)
    if less.exact <= 0:
        raise Wrong("trimming leaves nothing of the piece", "write a smaller trimmed", ("trimmed",))
    return less


def refuse_trimmed_strip(cut: Cut) -> None:
    """Raises Wrong for a strip of whole widths that is to be trimmed."""
    if cut.trimmed is not None:
        raise Wrong("a joined strip is not trimmed", "state its own sizes", ("trimmed",))
