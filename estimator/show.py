"""What a person writes about a whole show: its garments, how many, for whom, bought where."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass, replace
from typing import Any, Literal

from pydantic import Field, model_validator

from estimator.bill import Funds
from estimator.catalog import Shop
from estimator.fields import Count, Entry, Money, Name, Note, Share
from estimator.measure import Length
from estimator.quoting import quoted


class ShowHeading(Entry):
    """The show's name, the files that hold for all of its garments, and what it may cost.

    ``ceiling`` and ``spent`` are money in the catalog's currency; ``tax`` is a share of the goods,
    ``contingency`` one of all that the list asks for. ``shops`` asks for the least total or for the
    fewest shops.
    """

    name: Name
    catalog: Name | None = None
    wearers: Name | None = None
    stash: Name | None = None
    shops: Literal["least", "fewest"] = "least"
    ceiling: Money | None = None
    contingency: Share | None = None
    tax: Share | None = None
    spent: Money | None = None
    note: Note = ""

    @property
    def funds(self) -> Funds:
        """What is set against the list."""
        return Funds(self.ceiling, self.tax, self.contingency, self.spent)


class Costume(Entry):
    """A garment of the show: its plan, ``count`` of it for each of the ``wearers``.

    Without wearers it is made by the measures of its own plan. ``["all"]`` are all of the table.
    """

    plan: Name
    count: Count = 1
    wearers: tuple[Name, ...] = Field(default=())

    @model_validator(mode="before")
    @classmethod
    def _one_wearer(cls, written: Any) -> Any:
        """``wearers = "all"`` is as good as ``wearers = ["all"]``."""
        if isinstance(written, Mapping) and isinstance(written.get("wearers"), str):
            return {**written, "wearers": [written["wearers"]]}
        return written


ALL = "all"
"""What stands for every wearer of the table."""


@dataclass(frozen=True, slots=True)
class Show:
    """A show as it was read; files are named as in it, relative to its folder."""

    heading: ShowHeading
    costumes: tuple[Costume, ...]
    shops: tuple[Shop, ...] = ()


@dataclass(frozen=True, slots=True)
class Measured:
    """One wearer of the table, with the measures that were taken; ``row`` is where they stand."""

    name: str
    row: int
    measures: Mapping[str, Length]


@dataclass(frozen=True, slots=True)
class Wearers:
    """The table of wearers: its ``columns`` are measures, and a cell may be empty."""

    file: str
    columns: tuple[str, ...]
    rows: tuple[Measured, ...]

    def measured_as(self, names: Set[str]) -> Wearers:
        """The same, each column by the name that a plan has for that measure."""
        own = {as_spoken(name): name for name in sorted(names)}

        def renamed(column: str) -> str:
            return column if column in names else own.get(as_spoken(column), column)

        rows = [
            replace(one, measures={renamed(name): size for name, size in one.measures.items()})
            for one in self.rows
        ]
        return replace(self, columns=tuple(map(renamed, self.columns)), rows=tuple(rows))

    def named(self, name: str) -> Measured | None:
        """The wearer of this name, in capitals or not."""
        wanted = name.casefold()
        return next((one for one in self.rows if one.name.casefold() == wanted), None)


def as_spoken(name: str) -> str:
    """The name of a measure, in capitals or not, its words apart however they are joined."""
    return " ".join(name.replace("_", " ").replace("-", " ").split()).casefold()


def in_words(names: tuple[str, ...]) -> str:
    """A few names one after the other, for a complaint: the first, and how many more."""
    shown = ", ".join(map(quoted, names[:5]))
    return shown + (f" and {len(names) - 5} more" if len(names) > 5 else "")
