"""One typed table feeds every paper: values stay numbers with a unit until they are rendered."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from math import ceil

from estimator.measure import (
    Length,
    Unit,
    decimal_text,
    read_in_sixteenths,
    sold_text,
    tape_text,
)
from estimator.prices import decimals_of

_SHOPS = {unit.symbol: unit for unit in (Unit.YD, Unit.M)}


class Format(Enum):
    """How a column's values read."""

    TEXT = "text"
    COUNT = "count"
    TAPE = "tape"
    SOLD = "sold"
    MONEY = "money"
    SHARE = "share"


@dataclass(frozen=True, slots=True)
class Sold:
    """A quantity in the unit it is sold by: yards or metres, or a number of put-ups."""

    amount: Fraction
    unit: str

    @property
    def shown(self) -> Fraction:
        """The amount as it is printed, so that it never reads short.

        Whole sixteenths of a yard stay; any other length goes up to the next hundredth.
        """
        if self.in_sixteenths or self.unit not in _SHOPS:
            return self.amount
        return Fraction(ceil(self.amount * 100), 100)

    @property
    def phrase(self) -> str:
        """How much in one phrase: ``4 1/2 yd``, ``3``, ``2 × card of 5 yd``."""
        if self.unit in ("", "each"):
            return self.text
        return f"{self.text} {'' if self.unit in _SHOPS else '× '}{self.unit}"

    @property
    def in_next_sixteenth(self) -> Sold:
        """A length in yards up to the next sixteenth; anything else as it is."""
        if self.unit != Unit.YD.symbol:
            return self
        return Sold(Fraction(ceil(self.amount * 16), 16), self.unit)

    @property
    def text(self) -> str:
        """The amount without its unit: ``2 3/8``, ``1.20``, ``5``."""
        shop = _SHOPS.get(self.unit)
        return str(self.amount) if shop is None else sold_text(self.amount, shop)

    @property
    def in_sixteenths(self) -> bool:
        """Whether it is printed as a fraction of a yard."""
        return self.unit == Unit.YD.symbol and read_in_sixteenths(self.amount)


Value = str | int | Length | Sold | Decimal | Fraction | None


@dataclass(frozen=True, slots=True)
class Column:
    """A heading, with the unit of its values where they have one, and how they read.

    ``wide`` is the column's width in a spreadsheet, in characters.
    """

    heading: str
    format: Format = Format.TEXT
    wide: int = 12


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of values under columns; ``unit`` is that of lengths: in, cm or mm."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Value, ...], ...]
    unit: Unit
    notes: tuple[str, ...] = ()


def price_text(price: Decimal, currency: str) -> str:
    """A price with all of its decimals, and at least those of its currency.

    1.234 a yard must multiply out, and 1290 yen have none.
    """
    whole, _, written = f"{price:f}".partition(".")
    decimals = written.rstrip("0").ljust(decimals_of(currency), "0")
    return f"{whole}.{decimals}" if decimals else whole


def text_of(value: Value, unit: Unit) -> str:
    """A value as it is printed in a terminal."""
    match value:
        case None:
            return ""
        case Length():
            return tape_text(value, unit)
        case Sold():
            return value.text
        case Decimal():
            return f"{value:f}"
        case Fraction():
            return f"{decimal_text(value * 100, 0)} %"
        case _:
            return str(value)
