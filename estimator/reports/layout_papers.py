"""The layout of a fabric written out: row by row, or piece by piece, so that it can be chalked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import Laid
from estimator.buying.lots import Lot
from estimator.buying.one_width import WidthOption
from estimator.estimated import Estimate
from estimator.layout import Layout, Placement, Style
from estimator.measure import Length, Unit, tape_text, usable_text
from estimator.needs.selvedges import Breadth
from estimator.reports.alike import alike_cuts, cuts_words, rows_alike
from estimator.reports.bolt_widths import narrowest_text
from estimator.reports.fabric_papers import other_way_text, proof_text, sentence, waste_text
from estimator.reports.sketch import sketch
from estimator.reports.tables import Column, Format, Table, Value
from estimator.reports.units import tape_unit, width_text
from estimator.reports.uses import fabric_title


def places_columns(breadth: Breadth) -> tuple[Column, ...]:
    """The columns of a written layout; of folded fabric, distances across are from its fold."""
    return (
        Column("No.", Format.COUNT, 6),
        Column("Row height", Format.TAPE, 12),
        Column("Piece", wide=36),
        Column("From the cut end", Format.TAPE, 14),
        Column("From the fold" if breadth.folded else "From the selvedge", Format.TAPE, 15),
        Column("Width", Format.TAPE, 12),
        Column("Length", Format.TAPE, 12),
    )


def written_layouts(
    choice: FabricChoice, estimate: Estimate
) -> Iterator[tuple[Table, tuple[str, ...]]]:
    """For each group of cuts alike their layout, and each of its rows as one line of text.

    Distances are from the cut end, and from the near selvedge or the fold. A close layout has no
    rows.
    """
    laid = choice.chosen.laid
    groups = alike_cuts(choice)
    for numbers in groups:
        table = _of_cuts(numbers, choice, estimate, last=numbers is groups[-1])
        yield table, row_sketches(laid, laid.cuts[numbers[0]])


def row_sketches(laid: Laid, cut: Layout) -> tuple[str, ...]:
    """Each row of a layout as one line of text."""
    names = tuple(lot.name for lot in laid.lots)
    lines = []
    for alike in rows_alike(cut):
        lines.append(f"row {alike.number:3} {sketch(cut, alike.row, names)}")
        if alike.more:
            lines.append(f"        {alike.words}")
    return tuple(lines)


def _of_cuts(
    numbers: Sequence[int], choice: FabricChoice, estimate: Estimate, *, last: bool
) -> Table:
    unit = tape_unit(estimate)
    chosen, layout = choice.chosen, choice.chosen.laid.cuts[numbers[0]]
    width = width_text(chosen.width, chosen.buy.offer.sold_by, estimate)
    title = f"{fabric_title(choice, estimate)}, {width} wide"
    if which := cuts_words(numbers, len(chosen.laid.cuts)):
        title += f", {which}"
    trimmed = numbers[0] > 0 and choice.need.terms.repeat is not None
    return Table(
        title=title,
        columns=places_columns(chosen.breadth),
        rows=tuple(layout_rows(chosen, layout, unit)),
        unit=unit,
        notes=(
            f"{_how_it_lies(choice, layout, unit)} Straighten the cut end first.",
            *(
                ("Then trim it to the place of the repeat at which cut 1 begins.",)
                if trimmed
                else ()
            ),
            *(_of_the_whole(choice, estimate) if last else ()),
        ),
    )


def _of_the_whole(choice: FabricChoice, estimate: Estimate) -> Iterator[str]:
    chosen = choice.chosen
    yield f"{sentence(proof_text(chosen))}."
    yield f"{sentence(waste_text(chosen, estimate.currency))}."
    yield f"{sentence(narrowest_text(choice, estimate))}."
    if other := other_way_text(choice):
        yield f"{sentence(other)}."


def _how_it_lies(choice: FabricChoice, layout: Layout, unit: Unit) -> str:
    style = sentence(layout.style.value)
    if layout.style is Style.CLOSE:
        style += ", pieces numbered from the cut end on"
    breadth = choice.chosen.breadth
    placed = "laid out open, one layer"
    if breadth.folded:
        placed = "laid out folded lengthwise, the fold at the near side and the selvedges together"
    if choice.need.terms.shrinkage:
        placed += ", after it has been washed and has shrunk"
    text = f"{style}, {placed}; usable width {usable_text(breadth.usable, unit)}"
    if breadth.folded:
        text += f", {usable_text(breadth.of_a_layer, unit)} to the fold"
    on_selvedge = any(piece.selvedges for piece in choice.chosen.pieces)
    if on_selvedge and breadth.selvedge and not breadth.folded:
        text += ", measured from the inner edge of the selvedge"
    return f"{text}."


def layout_rows(option: WidthOption, layout: Layout, unit: Unit) -> Iterator[tuple[Value, ...]]:
    """A line for each piece, or for equal ones side by side: its row, and where it lies.

    Rows that follow alike are told once, with how far each lies from the one before it.
    The pieces of a close layout lie in no rows and are numbered themselves.
    """
    if layout.style is Style.CLOSE:
        placed = sorted(layout.placements, key=lambda one: (one.along, one.across))
        for number, place in enumerate(placed, start=1):
            yield (number, None, *_place(option, [place], unit))
        return
    for alike in rows_alike(layout):
        begins: tuple[Value, Value] = (alike.number, Length(alike.row.height))
        places = [place for column in alike.row.columns for place in column.placements]
        for group in _side_by_side(places):
            yield (*begins, *_place(option, group, unit))
            begins = (None, None)
        if alike.more:
            apart = tape_text(Length(alike.apart), unit)
            begin = Length(alike.row.start + alike.apart * alike.more)
            words = f"{alike.words}, each {apart} on from the last; the last of them begins"
            yield (None, None, words, begin, None, None, None)


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
    if lot.shift:
        name += f", those on their heads {tape_text(lot.shift, unit)} further from the cut end"
    name += _on_selvedge(option, lot, unit)
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


def _on_selvedge(option: WidthOption, lot: Lot, unit: Unit) -> str:
    """How much selvedge belongs to a piece, beyond the width that it takes between the two."""
    sides = option.pieces[lot.piece].selvedges
    if not sides or not option.breadth.selvedge:
        return ""
    each = tape_text(option.breadth.selvedge, unit)
    both = len(sides) > 1 and not lot.half
    return f", and {each} of {'both selvedges' if both else 'selvedge'}"
