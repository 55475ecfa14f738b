"""The measure sheet: a garment's finished sizes and how each piece is made, to share with others.

It says nothing of fabric to buy. Whoever measures a garment writes beside each piece what was seen
on the original and what was guessed; what the plan notes stands there already.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from estimator.edges import SIDES, WITH_DEPTH, EdgeFinish, EdgeRef, Finish
from estimator.estimated import Estimate
from estimator.job import GarmentOrder
from estimator.measure import Length, Unit, decimal_text, fraction_text, tape_text
from estimator.plan import Made, Piece, Shape, TakeUp
from estimator.plan.trims import Bought, ByLength
from estimator.reports.made import copies_of, for_whom
from estimator.reports.tables import Column, Format, Table, Value
from estimator.reports.units import tape_unit

SEEN = "Seen, measured or guessed"
"""The heading of the column that is left to whoever measured the garment."""


def measure_tables(estimate: Estimate) -> tuple[Table, ...]:
    """Pieces, then trims and notions, of each garment; of copies for wearers of one size once."""
    unit = tape_unit(estimate)
    tables: list[Table] = []
    told: list[GarmentOrder] = []
    for order in estimate.job.garments:
        if any(order.plan == other.plan for other in told):
            continue
        told.append(order)
        alike = [one for one in estimate.job.garments if one.plan == order.plan]
        tables.append(_pieces(alike, _finished(order, estimate), unit))
        if order.plan.seam or order.plan.bought:
            tables.append(_others(order, unit))
    return tuple(tables)


def _columns(first: str, third: str, sixth: str) -> tuple[Column, ...]:
    return (
        Column(first, wide=24),
        Column("How many", Format.COUNT, 8),
        Column(third, wide=20),
        Column("Finished width", Format.TAPE, 11),
        Column("Finished length", Format.TAPE, 11),
        Column(sixth, wide=40),
        Column(SEEN, wide=28),
        Column("Remarks", wide=34),
    )


def _pieces(
    alike: Sequence[GarmentOrder], finished: Mapping[str, FinishedSize], unit: Unit
) -> Table:
    """The pieces of one garment; ``alike`` are all orders of that plan, for wearers of one size."""
    order = alike[0]
    garment = order.plan.garment
    notes = [f"Sizes are finished sizes in {_NAMES[unit]}, as on the wearer, without seams and "
             "hems. Edges that are not named are plain seams."]  # fmt: skip
    if order.plan.measures:
        measures = (f"{name} {tape_text(one, unit)}" for name, one in order.plan.measures.items())
        notes.append(f"Measures: {'; '.join(measures)}.")
    if copies_of(alike) > 1:
        said = f"{copies_of(alike)} are made"
        said = f"{said}: {for_whom(alike)}" if len(alike) > 1 else said
        notes.append(f"{said}; how many there are of each piece is for one of them.")
    notes += [garment.note] if garment.note else []
    return Table(
        title=f"Measure sheet: {_whose(order)}",
        columns=_columns("Piece", "Fabric", "How it is made"),
        rows=tuple(_piece_row(one, finished.get(one.name), unit) for one in order.plan.piece),
        unit=unit,
        notes=tuple(notes),
    )


def _whose(order: GarmentOrder) -> str:
    name = order.plan.garment.name
    return f"{name} for {order.wearer}" if order.wearer else name


_NAMES = {Unit.IN: "inches", Unit.CM: "centimetres", Unit.MM: "millimetres"}


FinishedSize = tuple[Length | None, Length | None]


def _finished(order: GarmentOrder, estimate: Estimate) -> dict[str, FinishedSize]:
    """The finished width and length of each piece as its first fabric is cut.

    Strips that are cut for a trim are no pieces of the plan.
    """
    found: dict[str, FinishedSize] = {}
    for choice in estimate.fabrics:
        for piece in choice.chosen.all_pieces:
            source = piece.source
            of_plan = order.pieces.get(source.name)
            whose = (source.garment, source.wearer)
            if of_plan is not None and whose == (order.plan.garment.name, order.wearer):
                first = of_plan.cut[0].fabric
                if source.name not in found or first in choice.need.names:
                    found[source.name] = piece.finished
    return found


def _piece_row(piece: Piece, finished: FinishedSize | None, unit: Unit) -> tuple[Value, ...]:
    width, length = _sizes(piece, finished)
    fabrics = ", ".join(dict.fromkeys(cut.fabric for cut in piece.cut))
    how = "; ".join(_how(piece, unit))
    return (piece.name, piece.quantity, fabrics, width, length, how, "", piece.note)


def _sizes(piece: Piece, finished: FinishedSize | None) -> FinishedSize:
    """Width and length as the plan states them, or as they are sewn where it does not.

    None where how the piece is made tells its sizes in full, and for the width of a bias strip,
    of which the plan tells only the width as cut.
    """
    if piece.sizes == "cut" or (piece.made is Made.FLAT and piece.shape in _TOLD):
        return None, None
    width, length = piece.width, piece.length
    if piece.made is Made.BIAS_STRIP:
        return None, length or (finished[1] if finished else None)
    if finished is not None and (width is None) is not (length is None):
        one = width or length
        other = finished[1] if finished[0] == one else finished[0]
        width, length = width or other, length or other
    return width, length


_TOLD = (Shape.TAPER, Shape.SECTOR)


def _how(piece: Piece, unit: Unit) -> Iterator[str]:
    """Shape, make-up, what it is sewn to, folds, and every edge that is no plain seam."""
    yield from _outline(piece, unit)
    if piece.onto:
        full = piece.fullness
        onto = _edge(piece.onto)
        gathered = f"gathered onto {onto}, fullness {decimal_text(full, 2)}" if full else ""
        yield gathered or f"as long as {onto}"
    elif piece.fullness:
        yield f"gathered, fullness {decimal_text(piece.fullness, 2)}"
    if piece.underlap:
        yield f"and {tape_text(piece.underlap, unit)} more to lap under"
    yield from (_take_up(one, unit) for one in piece.takes_up)
    for side in sorted(piece.edges, key=_sides_first):
        edge = piece.edges[side]
        whole = " in all" if edge.length and piece.is_on_fold else ""
        length = f"{tape_text(edge.length, unit)}{whole}, " if edge.length else ""
        length += f"curve {edge.curve}, " if edge.curve else ""
        if edge.finish.finish is Finish.FOLD:
            yield f"half of it, from the fold at the {side}"
        elif length or edge.finish != EdgeFinish(Finish.SEAM):
            yield f"{side}: {length}{finish_text(edge.finish, unit)}"


def _outline(piece: Piece, unit: Unit) -> Iterator[str]:
    def tape(one: Length | None) -> str:
        return tape_text(one, unit) if one else "?"

    if piece.sizes == "cut":
        cut = f"{tape(piece.width)} by {tape(piece.length)}"
        yield f"cut {cut} with its allowances, from a paper pattern"
    elif piece.made is not Made.FLAT:
        open_ = ", open" if piece.joined and piece.joined.value == "open" else ""
        strip = f", cut {tape(piece.width)} wide" if piece.made is Made.BIAS_STRIP else ""
        yield f"{piece.made.value}{open_}{strip}"
    elif piece.shape is Shape.TAPER:
        slant = f", {piece.slant} slanted" if piece.slant else ""
        yield (
            f"taper, {tape(piece.top)} at the top, {tape(piece.bottom)} at the bottom and "
            f"{tape(piece.length)} long{slant}"
        )
    elif piece.shape is Shape.SECTOR:
        part = "a circle" if piece.share == "1" else f"{piece.share} of a circle"
        inner = f"its inner edge {tape(piece.waist)}" if piece.waist else "without an inner edge"
        yield f"{part}, {inner}, {tape(piece.length)} deep"
    elif piece.shape is Shape.BOX:
        yield "shaped: the sizes are those of the box round it"
    else:
        yield "a rectangle"
    if piece.grain.value != "lengthwise":
        yield f"grain {piece.grain.value}"


def _take_up(one: TakeUp, unit: Unit) -> str:
    many = f"{one.count} {one.kind.value}s" if one.count > 1 else f"a {one.kind.value}"
    across = " across it" if one.across == "length" else ""
    return f"{many} of {tape_text(one.depth, unit)}{across}"


def _sides_first(name: str) -> tuple[int, str]:
    return (SIDES.index(name) if name in SIDES else len(SIDES), name)


def finish_text(edge: EdgeFinish, unit: Unit) -> str:
    """A finish as a plan writes it, with its unit: ``hem 1 1/4 in``, ``rolled hem``."""
    parts = [edge.finish.value]
    if edge.depth is not None and edge.finish in WITH_DEPTH:
        parts.append(tape_text(edge.depth, unit))
    if edge.turn is not None:
        parts.append(f"+ {tape_text(edge.turn, unit)}")
    return " ".join(parts + (["double"] if edge.double else []))


def _others(order: GarmentOrder, unit: Unit) -> Table:
    """Seams that are told, and trims, elastics and notions."""
    rows: list[tuple[Value, ...]] = []
    for seam in order.plan.seam:
        sides = " to ".join(" and ".join(map(_edge, side)) for side in seam.edges)
        told = [sides, f"{_edge(seam.gathered)} gathered" if seam.gathered else ""]
        if seam.allowance is not None:
            told.append(f"allowance {tape_text(seam.allowance, unit)}")
        how = "; ".join(filter(None, told))
        rows.append((seam.name or "seam", None, "seam", None, None, how, "", seam.note))
    rows += [_thing_row(one, unit) for one in order.plan.bought]
    return Table(
        title=f"Seams, trims and notions: {_whose(order)}",
        columns=_columns("Name", "Kind", "Where it goes"),
        rows=tuple(rows),
        unit=unit,
    )


def _edge(ref: EdgeRef | str) -> str:
    """An edge as a plan names it, with on how many it is meant; or the name of a seam."""
    count = f"{ref.count} x " if isinstance(ref, EdgeRef) and ref.count else ""
    return f"{count}{ref}"


def _thing_row(one: Bought, unit: Unit) -> tuple[Value, ...]:
    count = getattr(one, "quantity", 1)
    width = one.width if isinstance(one, ByLength) else None
    length = getattr(one, "length", None)
    kind = " ".join(filter(None, (one.colour, type(one).__name__.lower())))
    return (one.name, count, kind, width, length, "; ".join(_where(one, unit)), "", one.note)


def _where(one: Bought, unit: Unit) -> Iterator[str]:
    """Where a thing goes, of what its own table says about that."""
    along = getattr(one, "along", None)
    if along:
        yield "along " + ", ".join(map(_edge, along if isinstance(along, tuple) else (along,)))
    rows = getattr(one, "rows", 1)
    if rows > 1:
        yield f"{rows} rows"
    for key, word in (("through", "through"), ("covers", "over"), ("cut_from", "cut from")):
        named = getattr(one, key, None)
        if named:
            yield f"{word} {named}"
    for key, words in (("measure", "a measure"), ("opening", "an opening")):
        size = getattr(one, key, None)
        if size:
            yield f"for {words} of {tape_text(size, unit)}"
    joined = getattr(one, "joined", None)
    if joined:
        yield "open" if joined.value == "open" else f"joined {joined.value}"
    fullness = getattr(one, "fullness", Fraction(1))
    if fullness != 1:
        yield f"gathered, fullness {fraction_text(fullness)}"
    casing = getattr(one, "casing", None)
    if casing:
        yield f"in the casing of {_edge(casing)}"
