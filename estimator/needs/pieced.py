"""Interfacing wider than its fabric: cut in parts beside each other, overlapped where they meet."""

from __future__ import annotations

from dataclasses import replace

from estimator.faults import Wrong
from estimator.measure import Length, tape_text
from estimator.needs.cut_piece import CutPiece
from estimator.needs.fits import narrowest
from estimator.needs.types import ToCut
from estimator.plan import Grain, Made, Piece, Shape

MOST_PARTS = 50


def refuse_not_flat(piece: Piece) -> None:
    """Raises Wrong for a piece that is joined or seamed by rules of its own, or on the bias."""
    joined = piece.made in (Made.JOINED_STRIP, Made.BIAS_STRIP) or piece.shape is Shape.SECTOR
    if joined or piece.grain is Grain.BIAS:
        raise Wrong(
            "strips, circles and pieces on the bias are not pieced", "leave pieced out", ("pieced",)
        )


def in_parts(piece: CutPiece, to_cut: ToCut, width: Length) -> CutPiece:
    """The piece whole where this width of fabric takes it, else as the fewest equal parts.

    n parts of a width w with n - 1 overlaps o: n w - (n - 1) o reaches across the piece. A slanted
    piece is covered as its box. Raises Wrong where the parts would be mere strips.
    """
    overlap, mark = to_cut.cut.pieced, to_cut.order.mark
    if overlap is None or narrowest(piece) <= width:
        return piece
    across, label = piece.width, "overlaps where the parts meet"
    for parts in range(2, MOST_PARTS + 1):
        part = across.plus(label, overlap * (parts - 1)).divided_by(
            "parts beside each other", parts
        )
        part = part.to_mark("up to the mark of the tape", mark)
        if part.value <= width:
            unit = to_cut.order.tape
            note = f"{parts} parts beside each other, overlapped by {tape_text(overlap, unit)}"
            return replace(
                piece,
                quantity=piece.quantity * parts,
                width=part,
                narrow=None,
                square="",
                note="; ".join(filter(None, (note, piece.note))),
            )
    raise Wrong(
        f"it would take more than {MOST_PARTS} parts beside each other",
        "take a wider fabric, or a smaller overlap",
        ("pieced",),
    )
