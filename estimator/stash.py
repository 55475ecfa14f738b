"""What a shop has in hand: remnants, part spools, lengths of trim, and notions by count."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from pydantic import model_validator

from estimator.catalog import Catalog, YesOrNo
from estimator.fields import Count, Entry, Name, Note, Size, refusal
from estimator.measure import Length, Unit


class InHand(Entry):
    """A row of the stash: ``count`` things alike.

    ``item`` is that of the catalog, or the name that a plan gives to what is in none. ``length`` is
    that of one: of a remnant, of what is on a part spool, of a zip. ``usable`` overrides the width
    between two selvedges, and has to be stated of a remnant that has lost one. ``washed`` cloth
    does not shrink again. ``place`` is where it lies.
    """

    item: Name
    colour: Note = ""
    width: Size | None = None
    usable: Size | None = None
    length: Size | None = None
    count: Count = 1
    washed: YesOrNo = False
    place: Note = ""
    note: Note = ""

    @model_validator(mode="after")
    def _hangs_together(self) -> InHand:
        if self.usable and self.width and self.usable > self.width:
            raise refusal("the usable width is more than the width", "write the smaller as usable")
        return self


MARKS = {True: Unit.MM.of(1), False: Length(Unit.IN.length.ticks // 16)}
"""To which marks of a tape lengths in hand are noted, in metric or not: never more than there is.
"""


def is_metric(length: Length) -> bool:
    """Whether a length lies on a mark of a metric tape, and on none of an inch tape."""
    return length.ticks % MARKS[False].ticks != 0 and length.ticks % MARKS[True].ticks == 0


@dataclass(frozen=True, slots=True)
class Single:
    """One thing in hand: the ``nth`` of those of a row of the file, as a spreadsheet numbers it.

    Things that are counted are not told apart: ``nth`` is 0 for all of the row together.
    """

    row: int
    nth: int
    thing: InHand


@dataclass(frozen=True)
class Stash:
    """The rows of a stash file by their numbers, in its order. ``mark`` tells its text from others.

    ``own_colours`` are those of the catalog's items: a row without a colour is of its item's own.
    """

    rows: Mapping[int, InHand] = field(default_factory=dict)
    file: str = ""
    mark: str = ""
    own_colours: Mapping[str, str] = field(default_factory=dict)

    def of(self, item: str, colour: str) -> tuple[Single, ...]:
        """The things of an item and a colour, in capitals or not, each length by itself."""
        return tuple(
            Single(row, nth, thing)
            for row, thing in self.rows.items()
            if thing.item.casefold() == item.casefold()
            and self.colour_of(thing).casefold() == colour.casefold()
            for nth in (range(1, thing.count + 1) if thing.length else (0,))
        )

    def colour_of(self, thing: InHand) -> str:
        """As its row says, else that in which its item comes; nothing where neither is known."""
        return thing.colour or self.own_colours.get(thing.item.casefold(), "")


NO_STASH = Stash()


def own_colours(catalog: Catalog) -> dict[str, str]:
    """The colour of each item that comes in one, by the item's name in small letters."""
    return {name.casefold(): item.colour for name, item in catalog.items.items()}


@dataclass(frozen=True, slots=True)
class Taken:
    """What is taken of one thing in hand, and what is ``left`` of it: lengths, or counts."""

    single: Single
    amount: Length | int
    left: Length | int
