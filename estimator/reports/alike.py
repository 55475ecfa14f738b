"""What is told once of a layout of many copies: cuts that lie alike, and rows that follow alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from estimator.buying.fabric_widths import FabricChoice
from estimator.layout import Layout, Placement, Row

FEWEST_ROWS = 3
"""Fewer rows alike than this are told one by one."""


def alike_cuts(choice: FabricChoice) -> tuple[tuple[int, ...], ...]:
    """The cuts of a fabric in groups laid out alike, by their numbers from 0 on.

    The first cut of a matched print is by itself: it sets where the others are trimmed to.
    """
    groups: dict[tuple[bool, Layout], list[int]] = {}
    matched = choice.need.terms.repeat is not None
    for number, cut in enumerate(choice.chosen.laid.cuts):
        groups.setdefault((matched and not number, cut), []).append(number)
    return tuple(map(tuple, groups.values()))


def cuts_words(numbers: Sequence[int], count: int) -> str:
    """``cut 3 of 5``, or ``cuts 1 to 59 of 61, all alike``; nothing where there is one cut."""
    if count == 1:
        return ""
    first, last = numbers[0] + 1, numbers[-1] + 1
    if len(numbers) == 1:
        return f"cut {first} of {count}"
    if len(numbers) == 2:
        return f"cuts {first} and {last} of {count}, both alike"
    if last - first + 1 == len(numbers):
        return f"cuts {first} to {last} of {count}, all alike"
    told = ", ".join(str(number + 1) for number in numbers[:-1])
    return f"cuts {told} and {last} of {count}, all alike"


@dataclass(frozen=True, slots=True)
class RowsAlike:
    """A row with its number, from 1 on, and how many more follow it that are cut like it.

    Each of those starts ``apart`` ticks after the one before it.
    """

    number: int
    row: Row
    more: int
    apart: int

    @property
    def words(self) -> str:
        """Which rows they are: ``rows 4 to 40 like row 3``."""
        return f"rows {self.number + 1} to {self.number + self.more} like row {self.number}"


def rows_alike(layout: Layout) -> Iterator[RowsAlike]:
    """The rows of a layout, equal ones that follow each other evenly as one."""
    rows = layout.rows
    at = 0
    while at < len(rows):
        shape = _shape(rows[at])
        end = at + 1
        apart = rows[end].start - rows[at].start if end < len(rows) else 0
        while (
            end < len(rows)
            and rows[end].start - rows[end - 1].start == apart
            and _shape(rows[end]) == shape
        ):
            end += 1
        if end - at < FEWEST_ROWS:
            end = at + 1
        yield RowsAlike(at + 1, rows[at], end - at - 1, apart)
        at = end


def _shape(row: Row) -> tuple[int, list[list[tuple[Placement, int]]]]:
    """What tells rows apart, wherever they start."""
    return row.height, [
        [(replace(place, along=0), place.along - row.start) for place in column.placements]
        for column in row.columns
    ]
