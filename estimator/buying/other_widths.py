"""A layout as it is on wider or narrower cloth: what lies at the far edge moves with that edge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from estimator.buying.lots import Lot
from estimator.layout import Column, Held, Layout, Placement


def widened(layout: Layout, lots: Sequence[Lot], width: int) -> Layout:
    """The same layout on wider cloth, its pieces at the far edge moved out to it."""
    further = width - layout.width

    def moved(place: Placement) -> Placement:
        return replace(place, across=place.across + further)

    def in_row(column: Column) -> Column:
        if not _moves(column.placements, layout, lots):
            return column
        return replace(
            column,
            across=column.across + further,
            placements=tuple(map(moved, column.placements)),
        )

    rows = tuple(replace(row, columns=tuple(map(in_row, row.columns))) for row in layout.rows)
    placements = tuple(
        moved(one) if _moves([one], layout, lots) else one for one in layout.placements
    )
    if rows:
        in_rows = (place for row in rows for column in row.columns for place in column.placements)
        placements = tuple(sorted(in_rows, key=lambda one: (one.along, one.across)))
    return replace(layout, width=width, rows=rows, placements=placements)


def narrowest_cloth(layout: Layout, lots: Sequence[Lot]) -> int:
    """The least width of cloth in ticks on which the same layout lies.

    What lies at the far edge moves in with it as far as what it lies beside; all else stays.
    """
    blocks = list(_blocks(layout, lots))
    stay = [one for one in blocks if not one.moves]
    reach = max((one.across + one.width for one in stay), default=0)
    for far in blocks:
        if far.moves:
            beside = (one for one in stay if one.start < far.end and far.start < one.end)
            inner = max((one.across + one.width for one in beside), default=0)
            reach = max(reach, inner + far.width)
    return reach


@dataclass(frozen=True, slots=True)
class _Block:
    """What stays together: a column of a row, or one piece of a close layout."""

    across: int
    width: int
    start: int
    end: int
    moves: bool


def _blocks(layout: Layout, lots: Sequence[Lot]) -> Iterator[_Block]:
    for row in layout.rows:
        for column in row.columns:
            moves = _moves(column.placements, layout, lots)
            yield _Block(column.across, column.width, row.start, row.start + row.height, moves)
    for one in layout.placements if not layout.rows else ():
        moves = _moves([one], layout, lots)
        yield _Block(one.across, one.width, one.along, one.along + one.length, moves)


def _moves(places: Sequence[Placement], layout: Layout, lots: Sequence[Lot]) -> bool:
    """Whether one of these is held at the far edge of the cloth."""
    return any(_at_far_edge(one, layout, lots[one.blank].blank.held) for one in places)


def _at_far_edge(place: Placement, layout: Layout, held: Held) -> bool:
    reaches = place.across + place.width == layout.width
    return held is Held.FAR or (held is Held.EITHER and reaches and place.across > 0)
