"""Joined strips: how many widths make a ring, what their joins take, and the panels to cut.

n widths have n joins in a ring, and n - 1 joins and two ends in an open strip. A panel whose sides
are selvedges is as wide as the whole fabric, and its joins still take their allowance. A last panel
narrower than that keeps one of its selvedges; where it does not fit so, it is left whole too.
"""

from __future__ import annotations

from dataclasses import replace

from estimator.edges import SEWN, SIDES, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, tape_text
from estimator.needs.allowances import allowances_of
from estimator.needs.cut_piece import CutPiece
from estimator.needs.cutting import cut_length
from estimator.needs.outlines import stated
from estimator.needs.selvedges import ALONG, Breadth, on_selvedges
from estimator.needs.types import ToCut
from estimator.plan import Grain, Joined
from estimator.working import Reckoning

MOST_WIDTHS = 10_000
SLIVER = 10
"""A last width that adds less than a tenth of the fabric's width is hardly worth its join."""


def sides_on_selvedge(strip: ToCut) -> tuple[str, ...]:
    """Which sides of a strip's widths are selvedges: left, right, both or neither."""
    finishes = allowances_of(strip).finishes
    return tuple(side for side in ALONG if finishes[side].finish is Finish.SELVEDGE)


def panel_width(strip: ToCut, breadth: Breadth) -> Length:
    """The width of a panel that takes the whole fabric, as far as its sides can use it."""
    return breadth.of_panel(len(sides_on_selvedge(strip)))


def joins_and_ends(hanging: ToCut, widths: int) -> Length:
    """What ``widths`` widths lose to joins and ends."""
    if hanging.cut.cut_to == "finished size":
        return ZERO
    if hanging.piece.joined is Joined.OPEN:
        sides = allowances_of(hanging)
        return _join(hanging) * (widths - 1) + sides.left + sides.right
    return _join(hanging) * widths


def _join(hanging: ToCut) -> Length:
    """Both allowances of one join. A selvedge at a join still takes the seam allowance."""
    usual = hanging.order.plan.garment.rules.seam_allowance
    sides = allowances_of(hanging)
    joined = hanging.piece.joined is not Joined.OPEN
    left, right = (
        getattr(sides, side) if joined and sides.finishes[side].finish in SEWN else usual
        for side in SIDES[2:]
    )
    return left + right


def widths_for(hanging: ToCut, finished: Length, width: Length) -> int:
    """The fewest widths that make a finished length: n x width >= finished + joins and ends.

    Raises Wrong where joins take all of the fabric, and for more widths than are laid out.
    """
    one_width = width - _join(hanging)
    if hanging.cut.cut_to == "finished size":
        one_width = width
    if one_width <= ZERO:
        raise Wrong("a join takes up all of the fabric's width", "use a wider fabric")
    beyond_joins = joins_and_ends(hanging, 1) - (width - one_width)
    count = max(1, -(-(finished + beyond_joins).ticks // one_width.ticks))
    if count > MOST_WIDTHS:
        raise Wrong(f"it takes {count} widths joined", f"at most {MOST_WIDTHS} are laid out")
    return count


def joined_strip(hanging: ToCut, finished: Reckoning, breadth: Breadth) -> tuple[CutPiece, ...]:
    """Whole widths, and a part of a width for the rest of a ring that was given by its length."""
    piece, width = hanging.piece, panel_width(hanging, breadth)
    sides = sides_on_selvedge(hanging)
    count = piece.widths or widths_for(hanging, finished.value, width)
    note = f"{count} widths joined" if count > 1 else "in one width"
    own = f"; {piece.note}" if piece.note else ""
    size = (finished.value, stated(piece.length))
    depth = cut_length(hanging)
    mark = hanging.order.mark

    def panel(
        name: str, number: int, across: Reckoning, selvedges: tuple[str, ...] = sides
    ) -> CutPiece:
        quantity = number * piece.quantity * hanging.order.copies
        return CutPiece(
            hanging.source,
            name,
            quantity,
            size,
            across,
            depth,
            selvedges=selvedges,
            note=note + own,
        )

    whole = Reckoning.start(f"the whole {'width' if sides else 'usable width'}", width)
    if piece.in_whole_widths:
        whole = replace(whole, steps=(*finished.steps, *whole.steps))
        return (panel(piece.name, count, whole),)
    last = finished.plus("joins and ends", joins_and_ends(hanging, count))
    last = last.minus("whole widths before it", width * (count - 1))
    if last.value.up_to(mark) <= width:
        last = last.to_mark("up to the mark of the tape", mark)
    kept = sides[:1]
    if last.value > breadth.of_panel(len(kept)):
        over = width - last.value
        last = last.plus("left whole, with both its selvedges", over)
        kept = sides
        if over:
            more = tape_text(over, hanging.order.tape)
            note += f", {'the last ' if count > 1 else ''}left whole: {more} more in the joins"
    if count == 1:
        return (panel(piece.name, 1, last, kept),)
    note += _one_width_less(hanging, count, last.value, width)
    return (
        panel(f"{piece.name}, whole width", count - 1, whole),
        panel(f"{piece.name}, last width", 1, last, kept),
    )


def strip_along(hanging: ToCut, finished: Reckoning, lengths: int) -> tuple[CutPiece, ...]:
    """A strip of equal lengths along the fabric, its depth across it."""
    selvedges, _ = on_selvedges(hanging.piece, allowances_of(hanging).finishes, Grain.CROSSWISE)
    piece, mark = hanging.piece, hanging.order.mark
    whole = finished.plus("joins and ends", joins_and_ends(hanging, lengths))
    part = whole.divided_by("lengths joined", lengths).to_mark("up to the mark of the tape", mark)
    note = f"{lengths} lengths joined, along the fabric" if lengths > 1 else "along the fabric"
    return (
        CutPiece(
            source=hanging.source,
            name=piece.name,
            quantity=lengths * piece.quantity * hanging.order.copies,
            finished=(stated(piece.length), finished.value),
            width=cut_length(hanging),
            length=part,
            selvedges=selvedges,
            note="; ".join(filter(None, (note, piece.note))),
        ),
    )


def _one_width_less(hanging: ToCut, count: int, last: Length, width: Length) -> str:
    """Says so where the last width is a sliver, and a little less would take one width fewer."""
    if (last - _join(hanging)) * SLIVER > width:
        return ""
    unit = hanging.order.tape
    fewer = width * (count - 1) - joins_and_ends(hanging, count - 1)
    if fewer <= ZERO:
        return ""
    return f"; {tape_text(fewer, unit)} finished would take one width less"
