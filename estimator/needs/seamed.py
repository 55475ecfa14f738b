"""Circles where the fabric is too narrow for them: the halves and quarters they are seamed from.

A part is a sector like any other, with its portion of the waist and so the same radius. Where it is
joined to the next it takes a seam allowance; the first keeps the left edge of the plan, and
the last the right one. A half lies with its straight edges along the fabric: so it is half as wide
as the circle, and no part of a circle has to be turned on a fabric with nap. On folded fabric it
lies on the fold as a quarter, its straight edges across.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from estimator.edges import EdgeFinish, Finish
from estimator.measure import Length, tape_text, whole_ticks
from estimator.needs.circles import (
    HALF,
    NAMES,
    QUARTER,
    THREE_QUARTERS,
    WHOLE,
    cut_radii,
    share_of,
)
from estimator.needs.cut_piece import CutPiece
from estimator.needs.cutting import cut_piece
from estimator.needs.fits import LAY_OPEN, goes_on, least_width
from estimator.needs.outlines import stated
from estimator.needs.selvedges import Breadth
from estimator.needs.types import ToCut
from estimator.plan import Edge, Grain

Way = tuple[CutPiece, ...]

PARTS = {
    WHOLE: ((HALF, HALF), (QUARTER,) * 4),
    THREE_QUARTERS: ((HALF, QUARTER), (QUARTER,) * 3),
    HALF: ((QUARTER, QUARTER),),
    QUARTER: (),
}
"""The ways to part each share of a circle, the fewest parts first."""
WORDS = {
    (HALF, HALF): "2 halves",
    (HALF, QUARTER): "a half and a quarter",
    (QUARTER,) * 2: "2 quarters",
    (QUARTER,) * 3: "3 quarters",
    (QUARTER,) * 4: "4 quarters",
}


def ways_to_seam(sector: ToCut, breadth: Breadth) -> tuple[Way, ...]:
    """The ways to cut a sector from fabric of this breadth, the fewest seams first.

    Only the first that goes on the fabric, unless the plan asks for the least fabric. Where none
    does, the narrowest, which is left to be refused.
    """
    seams = sector.piece.seams
    in_one = cut_piece(sector)
    why = ", which buys less"
    if not goes_on([in_one], breadth):
        why = f": {_too_narrow(in_one, breadth)}{_hint(sector, in_one, breadth)}"
    shares = PARTS[share_of(sector.piece)]
    parted = [tuple(_seamed(sector, parts, breadth, why)) for parts in shares]
    ways: list[Way] = [(replace(in_one, else_cut=_else(sector, parted, breadth)),)]
    if seams != "none":
        ways += parted
    fitting = [way for way in ways if goes_on(way, breadth)]
    if not fitting:
        return (min(ways, key=lambda way: needed_across(way, breadth)),)
    return tuple(fitting) if seams == "least fabric" else (fitting[0],)


def needed_across(way: Way, breadth: Breadth) -> Length:
    """The least width of such fabric that takes all the parts of a sector."""
    return max(least_width(part, breadth) for part in way)


GORES = 'cut it in gores (shape = "taper")'
"""What is left where the fabric is too narrow even for a quarter."""


def _else(sector: ToCut, parted: Sequence[Way], breadth: Breadth) -> str:
    if breadth.folded:
        opened = replace(breadth, folded=False)
        fits = any(goes_on(way, opened) for way in parted)
        if fits and sector.piece.seams != "none":
            return f"{LAY_OPEN}, where it is seamed"
    if sector.piece.seams != "none" or not parted:
        return GORES
    way = min(parted, key=lambda way: needed_across(way, breadth))
    needed = tape_text(needed_across(way, breadth), sector.order.tape)
    return f'leave seams = "none" out: seamed from {way[0].seamed}, it takes {needed}'


def _too_narrow(in_one: CutPiece, breadth: Breadth) -> str:
    if not breadth.folded:
        return "the fabric is too narrow for it in one"
    opened = goes_on([in_one], replace(breadth, folded=False))
    hint = '; laid = "open" would lay it in one' if opened else ""
    return f"the fabric, folded, is too narrow for it in one{hint}"


def _hint(sector: ToCut, in_one: CutPiece, breadth: Breadth) -> str:
    """Says so where half a circle would go on the fabric in one if it were turned."""
    piece = sector.piece
    straight = share_of(piece) == HALF and piece.grain is Grain.LENGTHWISE and not sector.nap
    if not straight or in_one.length.value > breadth.of_a_layer:
        return ""
    return '; grain = "crosswise" would lay it in one'


def _seamed(
    sector: ToCut, parts: tuple[Fraction, ...], breadth: Breadth, why: str
) -> Iterator[CutPiece]:
    """The parts of a sector; those that are cut alike are one piece of so many."""
    last = len(parts) - 1
    alike: dict[tuple[Fraction, Length, Length], list[tuple[CutPiece, str]]] = {}
    for number, share in enumerate(parts):
        part = _part(sector, share, breadth, own_left=number == 0, own_right=number == last)
        place = "left" if number == 0 else "right" if number == last else "inner"
        key = (share, part.width.value, part.length.value)
        alike.setdefault(key, []).append((part, place))
    shares = [share for share, _, _ in alike]
    for (share, _, _), found in alike.items():
        part = found[0][0]
        lies = (
            ", its straight edges along the fabric"
            if share == HALF and not part.may_turn and not part.folds
            else ""
        )
        assert part.arc is not None, "each part of a sector is one"
        radii = cut_radii(part.arc, sector.order.mark, sector.order.tape)
        note = f"{NAMES[share]}{lies}; {radii}; seamed from {WORDS[parts]}{why}"
        kind = "half" if share == HALF else "quarter"
        if shares.count(share) > 1:
            kind = f"{' and '.join(dict.fromkeys(place for _, place in found))} {kind}"
        yield replace(
            part,
            name=f"{part.name}, {kind}",
            quantity=part.quantity * len(found),
            note="; ".join(filter(None, (note, sector.piece.note))),
            seamed=WORDS[parts],
            else_cut=GORES,
        )


def _part(
    sector: ToCut, share: Fraction, breadth: Breadth, *, own_left: bool, own_right: bool
) -> CutPiece:
    """One part as a sector of its own, with a seam at each edge that the plan does not give."""
    piece = sector.piece
    seam = Edge(finish=EdgeFinish(Finish.SEAM, sector.order.plan.garment.rules.seam_allowance))
    joined = {side: seam for side, own in (("left", own_left), ("right", own_right)) if not own}
    grain = piece.grain
    if grain is not Grain.EITHER or sector.nap or breadth.folded:
        across = share == HALF and not breadth.folded
        grain = Grain.CROSSWISE if across else Grain.LENGTHWISE
    of_whole = share / share_of(piece)
    part = piece.model_copy(
        update={
            "share": str(share),
            "waist": whole_ticks(stated(piece.waist).ticks * of_whole),
            "edges": {**piece.edges, **joined},
            "grain": grain,
        }
    )
    return cut_piece(replace(sector, piece=part))
