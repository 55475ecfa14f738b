"""The garment table of a plan: name, units, and what holds for all of its parts."""

from __future__ import annotations

from enum import Enum
from typing import Annotated, Literal

from pydantic import BeforeValidator, WithJsonSchema

from estimator.catalog import Currency
from estimator.fields import Allowance, Count, Entry, Name, Note, Share, Shrinkage, Size, refusal
from estimator.measure import Unit
from estimator.quoting import quoted
from estimator.rules import Rules, house_rules

GARMENT_UNITS = {"in": Unit.IN, "cm": Unit.CM, "mm": Unit.MM}


def _unit(written: object) -> Unit:
    if isinstance(written, Unit):
        return written
    if not isinstance(written, str) or written not in GARMENT_UNITS:
        raise refusal(f"{quoted(written)} is not a unit for a plan", "write in, cm or mm")
    return GARMENT_UNITS[written]


class Wearer(Enum):
    """Who wears the garment, for the cautions on the list."""

    ADULT = "adult"
    CHILD = "child"
    UNDER_THREE = "under three"
    NOT_SAID = "not said"


class Garment(Entry):
    """The garment's name, its units, and what holds for all of its parts."""

    name: Name
    unit: Annotated[Unit, BeforeValidator(_unit), WithJsonSchema({"enum": list(GARMENT_UNITS)})] = (
        Unit.IN
    )
    mark: Size | None = None
    copies: Count = 1
    wearer: Wearer = Wearer.NOT_SAID
    use: Literal["everyday", "sleepwear", "stage", "not said"] = "not said"
    currency: Currency = ""
    seam_allowance: Allowance | None = None
    turn_under: Allowance | None = None
    rolled_hem: Allowance | None = None
    serged: Allowance | None = None
    overlap: Allowance | None = None
    elastic_overlap: Allowance | None = None
    elastic_stretch: Shrinkage | None = None
    tie: Allowance | None = None
    bone_clear: Allowance | None = None
    straightening: Allowance | None = None
    selvedge: Allowance | None = None
    layout: Literal["straight rows", "least fabric"] = "least fabric"
    laid: Literal["open", "folded"] = "open"
    fabric_waste: Share | None = None
    trim_waste: Share | None = None
    thread_waste: Share | None = None
    gathering_rows: Count = 2
    note: Note = ""

    @property
    def rules(self) -> Rules:
        """The allowances in force: what the plan states, else the house defaults for its unit."""
        rules = house_rules(self.unit)
        stated = {
            name: getattr(self, name)
            for name in Rules.__slots__
            if getattr(self, name, None) is not None
        }
        return Rules(**{name: stated.get(name, getattr(rules, name)) for name in Rules.__slots__})
