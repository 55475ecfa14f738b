"""Layouts longer than any bolt: parted into several cuts, with no piece across a split.

The straight rows are spread over as few cuts as they go into, the highest first, each cut then laid
out anew with the pieces that it has.

A cut begins anywhere in the repeat. Where the first one does, its pieces start; each further one is
trimmed to the same place, so that up to one repeat of it is lost, and more than what is left of it
it need not hold.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from estimator.layout.across import next_repeat
from estimator.layout.answer import Layout, Placement, Row, Style
from estimator.layout.bounds import lower_bound
from estimator.layout.box import box_for, unit_of
from estimator.layout.choose import lay_out
from estimator.layout.effort import EVERYDAY, Effort
from estimator.layout.fits import boxes_needed
from estimator.layout.kinds import kinds_of
from estimator.layout.question import (
    Blank,
    Cloth,
    DoesNotFit,
    OffTheRepeat,
    refuse_what_cannot_be_cut,
)
from estimator.layout.rows import starts, with_most_to_spare_last

FULL_SEARCHES = 2
"""So many different cuts are searched in full; more of them share the work of these."""

_Held: TypeAlias = tuple[tuple[int, int], ...]
"""How many of which blanks: (blank, count)."""


@dataclass(frozen=True, slots=True)
class Cuts:
    """The layouts of one or several cuts, whose placements name the blanks that were asked for.

    ``bound`` is a length in ticks below which no layouts of as many cuts can add up, and ``fewest``
    the number of cuts below which none hold the pieces.
    """

    layouts: tuple[Layout, ...]
    bound: int
    fewest: int = 1


def lay_out_in_cuts(
    cloth: Cloth,
    blanks: Sequence[Blank],
    longest: int | None = None,
    *,
    effort: Effort = EVERYDAY,
    rows_only: bool = False,
) -> Cuts:
    """Lay every blank on cloth of which no cut is longer than ``longest`` ticks.

    One layout where that is short enough; else the first of the cuts is the one that may be as long
    as ``longest``, and each further one is shorter by a repeat. ``cloth.buys`` is asked of a
    further one with its repeat. Raises DoesNotFit as ``lay_out`` does, and for a blank longer than
    ``longest`` in each turn allowed; OffTheRepeat for one too long for the further cuts, where the
    first is full.
    """
    refuse_what_cannot_be_cut(cloth, blanks)
    kinds = kinds_of(blanks)
    if longest is None or lower_bound(kinds, cloth) <= longest:
        whole = lay_out(cloth, blanks, effort=effort, rows_only=rows_only)
        if longest is None or whole.length <= longest:
            return Cuts((whole,), whole.bound)
    rest = longest - cloth.repeat
    lying = [_lying(index, blank, cloth, longest, rest) for index, blank in enumerate(blanks)]
    turned = {index for index, blank in enumerate(blanks) if lying[index].width != blank.width}
    in_rows = lay_out(cloth, lying, effort=effort, rows_only=True)
    parted = _into_cuts(in_rows.rows, cloth.repeat, longest)
    # many cuts hold the same pieces; on a repeat the first one is bought otherwise
    keys = [(cloth.repeat > 0 and not number, _pieces_in(own)) for number, own in enumerate(parted)]
    share = Effort(effort.work * FULL_SEARCHES // max(FULL_SEARCHES, len(set(keys))))
    laid: dict[tuple[bool, _Held], Layout] = {}
    for key, own in zip(keys, parted, strict=True):
        if key not in laid:
            of_cut, room = (cloth, longest) if key[0] else (_further(cloth), rest)
            laid[key] = told_of(best_cut(own, of_cut, lying, room, share, rows_only), turned)
    bound = lower_bound(kinds, replace(cloth, repeat=0))
    if not cloth.repeat:
        bound = max(bound, in_rows.bound)  # cuts laid one after another are one layout
    box = box_for(kinds, cloth, longest, unit_of(kinds, cloth))
    assert box is not None, "each piece by itself goes into a cut"
    return Cuts(tuple(laid[key] for key in keys), bound, boxes_needed(box))


def _further(cloth: Cloth) -> Cloth:
    """The cloth of a further cut, of which a repeat more is bought."""
    if not cloth.repeat:
        return cloth
    return replace(cloth, buys=lambda length: cloth.buys(cloth.repeat + length))


def _lying(index: int, blank: Blank, cloth: Cloth, longest: int, rest: int) -> Blank:
    """The blank, lying so that any cut takes it; else so that the first one does."""
    try:
        return short_enough(index, blank, cloth, rest)
    except DoesNotFit:
        return short_enough(index, blank, cloth, longest)


def short_enough(index: int, blank: Blank, cloth: Cloth, longest: int) -> Blank:
    """The blank, lying in such ways only as are no longer than a cut."""
    upright = blank.length <= longest and blank.width <= cloth.width
    across = blank.may_turn and blank.width <= longest and blank.length <= cloth.width
    if not upright and not across:
        shortest = min(blank.width, blank.length) if across else blank.length
        over = shortest - longest
        raise DoesNotFit(
            index,
            f"{blank.name} is {shortest} ticks long, the longest cut {longest}: {over} too long",
        )
    if upright and across:
        return blank
    width, length = blank.width, blank.length
    if across:
        width, length = length, width
    return replace(blank, width=width, length=length, may_turn=False)


@dataclass(slots=True)
class _Cut:
    """Rows that go into one cut: their heights in whole repeats, and the most that one spares."""

    rows: list[Row]
    whole: int
    spare: int


def _into_cuts(rows: Sequence[Row], repeat: int, longest: int) -> list[list[Row]]:
    """Rows in cuts, first fit by decreasing height; the one with most repeat to spare goes last.

    The first cut holds ``longest``, each further one a repeat less. Raises OffTheRepeat.
    """
    cuts: list[_Cut] = []
    first, height = 0, 0  # what has refused a row refuses the rows that are as high
    rest = longest - repeat
    for row in sorted(rows, key=lambda one: -one.height):
        first, height = first if row.height == height else 0, row.height
        whole = next_repeat(row.height, repeat)
        spare = whole - row.height
        for number in range(first, len(cuts)):
            own = cuts[number]
            if own.whole + whole - max(own.spare, spare) <= (rest if number else longest):
                own.rows.append(row)
                own.whole += whole
                own.spare = max(own.spare, spare)
                first = number
                break
        else:
            if cuts and row.height > rest:
                places = (place for column in row.columns for place in column.placements)
                tallest = max(places, key=lambda place: place.length)
                raise OffTheRepeat(
                    tallest.blank,
                    f"a piece {tallest.length} ticks long needs a further cut, of which {rest} "
                    "are sure to lie from the start of a repeat on",
                )
            first = len(cuts)
            cuts.append(_Cut([row], whole, spare))
    return [with_most_to_spare_last(own.rows, repeat) for own in cuts]


def _stacked(rows: Sequence[Row], cloth: Cloth) -> tuple[Row, ...]:
    """Rows one after another from the cut end on."""
    stacked = []
    for at, row in starts(rows, cloth.repeat):
        on = at - row.start
        stacked.append(
            replace(
                row,
                start=at,
                columns=tuple(
                    replace(
                        column,
                        placements=tuple(
                            replace(place, along=place.along + on) for place in column.placements
                        ),
                    )
                    for column in row.columns
                ),
            )
        )
    return tuple(stacked)


def _pieces_in(rows: Sequence[Row]) -> _Held:
    """How many of which blanks lie in these rows: (blank, count)."""
    places = (p.blank for row in rows for column in row.columns for p in column.placements)
    return tuple(sorted(Counter(places).items()))


def best_cut(
    rows: Sequence[Row],
    cloth: Cloth,
    blanks: Sequence[Blank],
    longest: int,
    effort: Effort,
    rows_only: bool,
) -> Layout:
    """One cut's pieces laid out anew, or as its rows stand in this order where that buys no less.

    The placements of the rows, and those of the layout, name ``blanks``.
    """
    rows = _stacked(rows, cloth)
    places = tuple(p for row in rows for column in row.columns for p in column.placements)
    numbers = sorted(Counter(place.blank for place in places).items())
    own = [replace(blanks[number], quantity=count) for number, count in numbers]
    anew = lay_out(cloth, own, effort=effort, rows_only=rows_only)
    length = rows[-1].start + rows[-1].height
    if anew.length <= longest and cloth.buys(anew.length) <= cloth.buys(length):
        names = [number for number, _ in numbers]
        return renamed(anew, names)
    in_order = tuple(sorted(places, key=lambda one: (one.along, one.across)))
    return replace(anew, length=length, placements=in_order, rows=rows, style=Style.STRAIGHT_ROWS)


def renamed(layout: Layout, numbers: Sequence[int] | Mapping[int, int]) -> Layout:
    """The layout, its placements naming the blanks of these numbers."""
    return _changed(layout, lambda place: replace(place, blank=numbers[place.blank]))


def told_of(layout: Layout, turned: set[int]) -> Layout:
    """The layout, its blanks named as turned that were turned before it was made."""
    if not turned:
        return layout
    return _changed(
        layout, lambda place: replace(place, turned=place.turned or place.blank in turned)
    )


def _changed(layout: Layout, change: Callable[[Placement], Placement]) -> Layout:
    """The layout with each of its placements changed, in its rows as well."""
    return replace(
        layout,
        placements=tuple(map(change, layout.placements)),
        rows=tuple(
            replace(
                row,
                columns=tuple(
                    replace(column, placements=tuple(map(change, column.placements)))
                    for column in row.columns
                ),
            )
            for row in layout.rows
        ),
    )
