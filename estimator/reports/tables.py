"""One typed table feeds every paper: values stay numbers with a unit until they are rendered."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction

from estimator.measure import Length, Unit, decimal_text, fraction_text, shop_text, tape_text

SIXTEENTH = Fraction(1, 16)


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
        """The amount as it is printed: up to 1/16 yd or 0.01 m, so that it never reads short."""
        part = SIXTEENTH if self.unit == Unit.YD.symbol else Fraction(1, 100)
        return -(-self.amount // part) * part

    @property
    def text(self) -> str:
        """The amount without its unit: ``2 3/8``, ``1.20``, ``5``."""
        if self.unit == Unit.M.symbol:
            return shop_text(Unit.M.of(self.shown), Unit.M).removesuffix(" m")
        if self.unit == Unit.YD.symbol:
            return fraction_text(self.shown) if self.eighths else decimal_text(self.amount, 2)
        return str(self.amount)

    @property
    def eighths(self) -> bool:
        """Whether the printed amount is exact in sixteenths, or in hundredths beside them."""
        return (self.amount * 16).denominator == 1 or (self.amount * 100).denominator != 1


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
    """Rows of values under columns; ``unit`` is that of lengths (inches or centimetres)."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Value, ...], ...]
    unit: Unit
    notes: tuple[str, ...] = ()


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
            return f"{value:.2f}"
        case Fraction():
            return f"{decimal_text(value * 100, 0)} %"
        case _:
            return str(value)
