"""How pieces lie on remnants from the stash, written out so that they can be chalked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.one_width import WidthOption
from estimator.estimated import Estimate
from estimator.measure import usable_text
from estimator.reports.layout_papers import layout_rows, places_columns, row_sketches
from estimator.reports.stash_papers import amount_text, in_hand_text, where_text
from estimator.reports.tables import Table
from estimator.reports.units import tape_unit
from estimator.reports.uses import fabric_title


def remnant_layouts(
    choice: FabricChoice, estimate: Estimate
) -> Iterator[tuple[Table, tuple[str, ...]]]:
    """For each remnant that a fabric is cut from, its layout and its rows as lines of text."""
    for number, one in enumerate(choice.chosen.stash):
        yield _of_remnant(number, choice, estimate), row_sketches(one.laid, one.laid.cuts[0])


_TRIMMED = (
    "Then trim it to the place of the repeat at which the other cloth of this fabric begins, and "
    "measure from there."
)


def laid_on_remnant(choice: FabricChoice, number: int) -> WidthOption:
    """One of the remnants that a fabric is cut from, as if it were all of the fabric."""
    one = choice.chosen.stash[number]
    return replace(choice.chosen, pieces=one.pieces, laid=one.laid, breadth=one.breadth)


def remnant_title(choice: FabricChoice, number: int, estimate: Estimate) -> str:
    """The fabric, and where the remnant lies; remnants of one place are told by their numbers."""
    places = [where_text(one.taken) for one in choice.chosen.stash]
    place = places[number]
    title = f"{fabric_title(choice, estimate)}, remnant from {place}"
    if places.count(place) == 1:
        return title
    return f"{title}, {places[: number + 1].count(place)} of {places.count(place)}"


def _of_remnant(number: int, choice: FabricChoice, estimate: Estimate) -> Table:
    unit = tape_unit(estimate)
    one = choice.chosen.stash[number]
    thing, layout = one.single.thing, one.laid.cuts[0]
    style = layout.style.value
    shrinks = choice.need.terms.shrinkage and not thing.washed
    washed = ", after it has been washed and has shrunk" if shrinks else ""
    left = amount_text(one.taken.left, unit) if one.taken.left else "nothing"
    return Table(
        title=remnant_title(choice, number, estimate),
        columns=places_columns(one.breadth),
        rows=tuple(layout_rows(laid_on_remnant(choice, number), layout, unit)),
        unit=unit,
        notes=(
            f"The remnant is {in_hand_text(thing, unit)}. {style.capitalize()}, laid out open, one "
            f"layer{washed}; usable width {usable_text(one.breadth.usable, unit)}. Straighten the "
            "cut end first.",
            *([_TRIMMED] if one.trimmed else []),
            f"Cut {amount_text(one.taken.amount, unit)} off it; {left} is left.",
        ),
    )
