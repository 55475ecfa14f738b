"""Made up for a width: joined strips become widths with joins, and bands take their edge's length.

A ring is given finished, by so many whole widths, or by fullness onto an edge. Tiers chain from
the ring as it is really sewn: whole widths less their joins, not the wished-for width.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from graphlib import CycleError, TopologicalSorter

from estimator.faults import NamesAnUnread, Wrong
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length, tape_text
from estimator.needs.allowances import allowances_of
from estimator.needs.bias import LOST_AT_A_JOIN, MOST_STRIP, cloth_for_bias, strips_joined
from estimator.needs.cut_piece import CutPiece
from estimator.needs.cutting import cut_piece, with_own_sizes
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.joined_strips import (
    joined_strip,
    joins_and_ends,
    panel_width,
    strip_along,
    widths_for,
)
from estimator.needs.outlines import stated
from estimator.needs.pieced import in_parts
from estimator.needs.seamed import ways_to_seam
from estimator.needs.selvedges import Breadth, on_selvedges
from estimator.needs.strips import length_of_strips
from estimator.needs.types import ToCut
from estimator.plan import Grain, Made, Piece, Shape
from estimator.quoting import quoted
from estimator.working import Reckoning

MOST_ALONG = 4
"""In how many lengths a strip is tried along the fabric; more joins than that are a nuisance."""


def is_hanging(to_cut: ToCut) -> bool:
    """Whether a piece's cut sizes hang on the fabric's width or on another piece's edge."""
    piece = to_cut.piece
    return piece.shape is Shape.SECTOR or takes_a_length(piece) or to_cut.cut.pieced is not None


def takes_a_length(piece: Piece) -> bool:
    """Whether a piece's finished length is known only once it is made up."""
    return piece.made in (Made.JOINED_STRIP, Made.BIAS_STRIP) or piece.onto is not None


def in_sewing_order(order: GarmentOrder) -> tuple[Piece, ...]:
    """The pieces that take a length, each after those onto which it is sewn.

    Raises Wrong for a circle, ``at`` the number of a piece in it.
    """
    hanging = {piece.name: piece for piece in order.plan.piece if takes_a_length(piece)}
    sorter = TopologicalSorter(
        {
            name: [piece.onto.piece] if piece.onto and piece.onto.piece in hanging else []
            for name, piece in hanging.items()
        }
    )
    try:
        return tuple(hanging[name] for name in sorter.static_order())
    except CycleError as problem:
        names = " onto ".join(quoted(name) for name in dict.fromkeys(problem.args[1]))
        raise Wrong(
            f"pieces take their lengths from one another in a circle: {names}",
            "give one of them a ring or a length of its own",
            (list(order.pieces).index(problem.args[1][0]), "onto"),
        ) from None


def sewn_lengths(order: GarmentOrder, widths: Mapping[str, Breadth]) -> EdgeLengths:
    """The edges of a garment as it is sewn.

    ``widths`` holds, by the fabric's name in the plan, the breadth of each fabric whose joined
    strips are given in whole widths. Raises Wrong for an edge that does not exist, ``at``
    the piece that hangs on it.
    """
    sewn: dict[str, Length] = {}
    edges = EdgeLengths(order, sewn)
    numbers = {piece.name: number for number, piece in enumerate(order.plan.piece)}
    for piece in in_sewing_order(order):
        cut = piece.cut[0]
        strip = ToCut(order, ("piece", numbers[piece.name]), with_own_sizes(piece, cut), cut)
        try:
            sewn[piece.name] = _finished(strip, edges, widths.get(cut.fabric)).value
        except Wrong as wrong:
            raise Wrong(wrong.wrong, wrong.right, (*strip.path, *wrong.at)) from None
    return edges


def ways_to_make(
    hanging: ToCut, edges: EdgeLengths, breadth: Breadth
) -> tuple[tuple[CutPiece, ...], ...]:
    """The ways to cut a hanging piece, the usual one first.

    Strips may lie across or along, and circles are seamed from parts where they do not go in one.

    Raises Wrong as ``made_up`` does.
    """
    piece = hanging.piece
    if piece.shape is Shape.SECTOR:
        return ways_to_seam(hanging, breadth)
    if hanging.cut.pieced is not None:
        (whole,) = made_up(hanging, edges, breadth)
        return ((in_parts(whole, hanging, breadth.of_a_layer),),)
    if piece.made is not Made.JOINED_STRIP:
        return (made_up(hanging, edges, breadth),)
    _, grain = on_selvedges(piece, allowances_of(hanging).finishes, piece.grain)
    if grain is Grain.LENGTHWISE:
        return (made_up(hanging, edges, breadth),)
    finished = _finished(hanging, edges, breadth)
    along = tuple(strip_along(hanging, finished, lengths) for lengths in range(1, MOST_ALONG + 1))
    across = () if grain is Grain.CROSSWISE else (made_up(hanging, edges, breadth),)
    return (*across, *along)


def made_up(hanging: ToCut, edges: EdgeLengths, breadth: Breadth) -> tuple[CutPiece, ...]:
    """The cut pieces of what takes a length or is pieced, on fabric of this breadth.

    Raises Wrong where the fabric is so narrow that joins take all of it.
    """
    if hanging.trim is not None:
        strips = length_of_strips(hanging, edges, LOST_AT_A_JOIN)
        return (_bias_square(hanging, strips, strips.value, breadth.usable),)
    if not takes_a_length(hanging.piece):
        return (cut_piece(hanging),)
    finished = _finished(hanging, edges, breadth)
    if hanging.piece.made is Made.JOINED_STRIP:
        return joined_strip(hanging, finished, breadth)
    if hanging.piece.made is Made.BIAS_STRIP:
        strips = finished.plus("a join at its ends", LOST_AT_A_JOIN)
        strips = strips.times("strips", hanging.piece.quantity * hanging.order.copies)
        return (_bias_square(hanging, strips, finished.value, breadth.usable),)
    whole = hanging.piece.model_copy(update={"length": finished.value})
    return (cut_piece(replace(hanging, piece=whole, long=finished)),)


def _finished(hanging: ToCut, edges: EdgeLengths, breadth: Breadth | None) -> Reckoning:
    """The finished long way of a hanging piece, as it is sewn."""
    piece = hanging.piece
    wished = None if piece.widths else _wished(hanging, edges)
    if wished is not None and not piece.in_whole_widths:
        return wished
    if breadth is None:  # its fabric could not be read
        raise NamesAnUnread(hanging.cut.fabric)
    width = panel_width(hanging, breadth)
    count = piece.widths or widths_for(hanging, wished.value if wished else ZERO, width)
    taken = joins_and_ends(hanging, count)
    finished = Reckoning.start("usable width", width).times("whole widths", count)
    if wished is not None:
        finished = replace(finished, steps=(*wished.steps, *finished.steps))
    if taken >= finished.value:
        raise Wrong("the joins take up all of the width", "use a wider fabric", ("widths",))
    return finished.minus("joins and ends", taken)


def _wished(hanging: ToCut, edges: EdgeLengths) -> Reckoning:
    """What the plan asks for: a ring as stated, a strip's length, or an edge times fullness."""
    piece = hanging.piece
    if piece.onto is None:
        length = Reckoning.start("finished length as stated", stated(piece.ring or piece.length))
        return length.times("fullness", piece.fullness or 1)
    try:
        shared = edges.share(piece.onto, piece.quantity)
    except Wrong as wrong:
        raise Wrong(wrong.wrong, wrong.right, ("onto",)) from None
    return shared.times("fullness", piece.fullness or 1).plus("underlap", piece.underlap or ZERO)


def _bias_square(hanging: ToCut, strips: Reckoning, finished: Length, width: Length) -> CutPiece:
    """The cloth from which all the bias strips of a piece are cut and joined.

    Raises Wrong for strips as wide as the fabric.
    """
    piece, order = hanging.piece, hanging.order
    strip = stated(piece.width)
    if strip * 2 >= width:
        raise Wrong("the strip is too wide to be cut on the bias", "make it narrower", ("width",))
    if strips.value > MOST_STRIP:
        raise Wrong("it takes more than a kilometre of bias strip", "plan less", ("width",))
    unit = order.tape
    across, along = cloth_for_bias(strips.value, strip, width, unit.length)
    joins = strips_joined(across, along, strip, strips.value) - 1
    label = "cloth whose bias strips, joined, reach that"

    def reckoned(size: Length) -> Reckoning:
        cloth = Reckoning.start(label, size)
        return replace(cloth, steps=(*strips.steps, *cloth.steps))

    reckoned_width = reckoned(across)
    if hanging.wide is not None:
        steps = (*hanging.wide.steps, *reckoned_width.steps)
        reckoned_width = replace(reckoned_width, steps=steps)
    note = f"cut into bias strips {tape_text(strip, unit)} wide"
    if joins:
        note += f", and joined {joins} time{'s' if joins > 1 else ''}"
    return CutPiece(
        source=hanging.source,
        name=piece.name,
        quantity=1,
        finished=(hanging.trim.width if hanging.trim else None, finished),
        width=reckoned_width,
        length=reckoned(along),
        note="; ".join(filter(None, (note, piece.note))),
    )
