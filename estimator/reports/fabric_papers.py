"""What belongs to the fabrics: widths compared, the cut list, and the layout row by row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from estimator.buying.fabric_widths import FabricChoice, WidthOption
from estimator.estimate import Estimate
from estimator.layout import Placement, Style
from estimator.measure import Length, Unit, natural_text, shop_text, tape_text, usable_text
from estimator.needs.types import CutPiece
from estimator.reports.bolt_widths import narrowest_text
from estimator.reports.sketch import sketch
from estimator.reports.tables import Column, Format, Sold, Table, Value
from estimator.reports.units import tape_beside, tape_unit
from estimator.reports.uses import fabric_title


def proof_text(option: WidthOption) -> str:
    """How good the layout is, against the least that any layout of the pieces has to buy."""
    bought = option.buy.bought
    assert isinstance(bought, Length), "fabric is cut to length"
    boxes = "these outlines" if option.laid.slanted else "these rectangles"
    pieces = boxes if option.boxed else "these pieces"
    if bought <= option.least:
        text = f"no layout of {pieces} buys less"
    else:
        above = shop_text(bought - option.least, option.buy.offer.sold_by)
        text = f"at most {above} above the least possible for {pieces}"
    if option.boxed:
        text += "; enough fabric, but a layout of the paper pattern may take less"
    return text


def waste_text(option: WidthOption, currency: str) -> str:
    """The cloth bought that is in no piece, as a share, a length and money."""
    bought = option.buy.bought
    assert isinstance(bought, Length), "fabric is cut to length"
    length = shop_text(_hundredths(bought, option), option.buy.offer.sold_by)
    text = f"waste {round(option.waste * 100)} %, as much as {length}"
    if option.buy.cost is not None:
        share = option.buy.cost * option.waste.numerator / option.waste.denominator
        text += f" or {share:.2f} {currency}"
    return text


def _hundredths(bought: Length, option: WidthOption) -> Length:
    """The wasted length to the next hundredth of the unit it is sold by."""
    unit = option.buy.offer.sold_by
    return unit.of(Fraction(round(bought.times(option.waste) / unit.length * 100), 100))


def widths_table(choice: FabricChoice, estimate: Estimate) -> Table:
    """A fabric at each width on offer, the cheapest first, and which is bought."""
    unit = tape_unit(estimate)
    money = f" ({estimate.currency})" if estimate.currency else ""
    rows: list[tuple[Value, ...]] = []
    for option in sorted(choice.options, key=_cheapest_first):
        rows.append(
            (
                "bought" if option is choice.chosen else "",
                natural_text(option.width, tape_beside(option.buy.offer.sold_by, unit)),
                usable_text(option.usable, tape_beside(option.buy.offer.sold_by, unit)),
                Sold(option.buy.sold_units, option.buy.unit),
                option.buy.unit,
                option.buy.cost,
                option.waste,
                "; ".join((option.layout.style.value, *_seamed(option), proof_text(option))),
            )
        )
    notes = [f"{_sentence(choice.reason)}."] if choice.reason else []
    notes += [
        f"{natural_text(one.width, unit)} cannot be used: {one.faults[0].wrong}."
        for one in choice.too_narrow
    ]
    if any(piece.quantity and "width" in piece.note for piece in choice.chosen.pieces):
        notes.append("Strips take the fabric's width, so the pieces differ from width to width.")
    return Table(
        title=fabric_title(choice, estimate),
        columns=(
            Column("", wide=8),
            Column("Width", wide=11),
            Column("Usable", wide=12),
            Column("Buy", Format.SOLD, 8),
            Column("Unit", wide=6),
            Column(f"Cost{money}", Format.MONEY, 11),
            Column("Waste", Format.SHARE, 7),
            Column("Layout", wide=50),
        ),
        rows=tuple(rows),
        unit=unit,
        notes=tuple(notes),
    )


def _seamed(option: WidthOption) -> Iterator[str]:
    """Which pieces this width takes only in parts, each once."""
    parts = {piece.source.name: piece.seamed for piece in option.pieces if piece.seamed}
    return (f"{name} seamed from {of}" for name, of in parts.items())


def _cheapest_first(option: WidthOption) -> tuple[bool, object, Fraction]:
    cost = option.buy.cost
    return (cost is None, cost or 0, option.buy.amount)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]


def cut_table(estimate: Estimate, *, with_garments: bool = True) -> Table:
    """Every piece to cut, with its cut size and its finished size, and which garment it is of."""
    unit = tape_unit(estimate)
    return Table(
        title="Cut list",
        columns=(
            Column("Fabric", wide=24),
            *([Column("Garment", wide=22)] if with_garments else []),
            Column("Piece", wide=26),
            Column("Cut", Format.COUNT, 6),
            Column("Cut width", Format.TAPE, 12),
            Column("Cut length", Format.TAPE, 12),
            Column("Finished width", Format.TAPE, 12),
            Column("Finished length", Format.TAPE, 12),
            Column("Note", wide=40),
        ),
        rows=tuple(
            _cut_row(choice, piece, with_garments)
            for choice in estimate.fabrics
            for piece in choice.chosen.pieces
        ),
        unit=unit,
        notes=("Widths lie across the fabric and lengths along it.",),
    )


def _cut_row(choice: FabricChoice, piece: CutPiece, with_garments: bool) -> tuple[Value, ...]:
    return (
        choice.need.title,
        *([piece.source.garment] if with_garments else []),
        piece.name,
        piece.quantity,
        piece.width.value,
        piece.length.value,
        *piece.finished,
        "; ".join(filter(None, (piece.note, "may be turned" if piece.may_turn else ""))),
    )


def layout_table(choice: FabricChoice, estimate: Estimate) -> Table:
    """The rows of a layout with distances from the cut end and from the near selvedge."""
    unit = tape_unit(estimate)
    chosen = choice.chosen
    placed = "laid out open, one layer"
    if choice.need.terms.shrinkage:
        placed += ", after it has been washed and has shrunk"
    width = natural_text(chosen.width, tape_beside(chosen.buy.offer.sold_by, unit))
    style = _sentence(chosen.layout.style.value)
    if chosen.layout.style is Style.CLOSE:
        style += ", pieces numbered from the cut end on"
    return Table(
        title=f"{fabric_title(choice, estimate)}, {width} wide",
        columns=(
            Column("No.", Format.COUNT, 6),
            Column("Row height", Format.TAPE, 12),
            Column("Piece", wide=36),
            Column("From the cut end", Format.TAPE, 14),
            Column("From the selvedge", Format.TAPE, 15),
            Column("Width", Format.TAPE, 12),
            Column("Length", Format.TAPE, 12),
        ),
        rows=tuple(_layout_rows(chosen, unit)),
        unit=unit,
        notes=(
            f"{style}, {placed}; usable width {usable_text(chosen.usable, unit)}. "
            "Straighten the cut end first.",
            f"{_sentence(proof_text(chosen))}.",
            f"{_sentence(waste_text(chosen, estimate.currency))}.",
            f"{_sentence(narrowest_text(choice, estimate))}.",
        ),
    )


def row_sketches(choice: FabricChoice) -> tuple[str, ...]:
    """Each row of a layout as one line of text, from the cut end on; none for a close layout."""
    layout = choice.chosen.layout
    names = tuple(lot.name for lot in choice.chosen.laid.lots)
    return tuple(
        f"row {number:3} {sketch(layout, row, names)}"
        for number, row in enumerate(layout.rows, start=1)
    )


def _layout_rows(option: WidthOption, unit: Unit) -> Iterator[tuple[Value, ...]]:
    """A line for each piece, or for equal ones side by side: its row, and where it lies.

    The pieces of a close layout lie in no rows and are numbered themselves.
    """
    if option.layout.style is Style.CLOSE:
        placed = sorted(option.layout.placements, key=lambda one: (one.along, one.across))
        for number, place in enumerate(placed, start=1):
            yield (number, None, *_place(option, [place], unit))
        return
    for number, row in enumerate(option.layout.rows, start=1):
        begins: tuple[Value, Value] = (number, Length(row.height))
        places = [place for column in row.columns for place in column.placements]
        for alike in _side_by_side(places):
            yield (*begins, *_place(option, alike, unit))
            begins = (None, None)


def _side_by_side(places: Sequence[Placement]) -> Iterator[list[Placement]]:
    """Places in groups: equal pieces that touch and start at one distance from the cut end."""
    group: list[Placement] = []
    for place in places:
        last = group[-1] if group else place
        touches = (place.along, place.across) == (last.along, last.across + last.width)
        same = (place.blank, place.turned) == (last.blank, last.turned)
        if group and not (touches and same):
            yield group
            group = []
        group.append(place)
    if group:
        yield group


def _place(option: WidthOption, alike: Sequence[Placement], unit: Unit) -> tuple[Value, ...]:
    first = alike[0]
    lot = option.laid.lots[first.blank]
    name = lot.name
    if len(lot.apart) == 1:
        name += f", each {tape_text(lot.apart[0], unit)} on from the last"
    elif lot.apart:
        by_turns = " and ".join(tape_text(apart, unit) for apart in lot.apart)
        name += f" and square sides together, by turns {by_turns} on from the last"
    if first.turned:
        name += ", turned"
    if len(alike) > 1:
        name += f", {len(alike)} side by side"
    return (
        name,
        Length(first.along),
        Length(first.across),
        Length(first.width),
        Length(first.length),
    )
