"""Lengths: exact units, tape fractions, reading them and printing them.

A length is a whole number of ticks. One tick is 1/8000 mm, so that 1/64 in (3175 ticks), 0.01 in,
0.1 mm, one ligne (1/40 in) and 0.01 yd are all whole: sums never drift and layouts compare
integers. 1 in = 25.4 mm and 1 yd = 0.9144 m exactly (International Yard and Pound Agreement, 1959).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import ceil

TICKS_PER_MM = 8000


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """An exact length in whole ticks of 1/8000 mm; differences may be negative."""

    ticks: int

    def __add__(self, other: Length) -> Length:
        return Length(self.ticks + other.ticks)

    def __sub__(self, other: Length) -> Length:
        return Length(self.ticks - other.ticks)

    def __mul__(self, count: int) -> Length:
        return Length(self.ticks * count)

    __rmul__ = __mul__

    def __truediv__(self, other: Length) -> Fraction:
        return Fraction(self.ticks, other.ticks)

    def __bool__(self) -> bool:
        return self.ticks != 0

    def times(self, factor: Fraction | int) -> Length:
        """This length times an exact factor, rounded up to the next whole tick."""
        return whole_ticks(self.ticks * Fraction(factor))

    def times_rounded_down(self, factor: Fraction) -> Length:
        """This length times a factor, rounded down: for widths on offer, which must not flatter."""
        return Length(int(self.ticks * factor // 1))

    def up_to(self, step: Length) -> Length:
        """Up to the next whole multiple of ``step``; an exact multiple stays as it is."""
        return Length(-(-self.ticks // step.ticks) * step.ticks)

    def times_into(self, other: Length) -> int:
        """How many whole times this length goes into ``other``."""
        return other.ticks // self.ticks


def whole_ticks(ticks: Fraction) -> Length:
    """The one place where a length that is not a whole number of ticks is made whole: upwards."""
    return Length(ceil(ticks))


def total(lengths: Iterable[Length]) -> Length:
    """The sum of lengths."""
    return Length(sum(length.ticks for length in lengths))


class Unit(Enum):
    """Units that people write; the value is the unit's ticks and its printed name."""

    MM = (8_000, "mm")
    CM = (80_000, "cm")
    M = (8_000_000, "m")
    IN = (203_200, "in")
    FT = (2_438_400, "ft")
    YD = (7_315_200, "yd")
    LIGNE = (5_080, "ligne")

    def __init__(self, ticks: int, symbol: str) -> None:
        self.length = Length(ticks)
        self.symbol = symbol

    @property
    def metric(self) -> bool:
        """Whether lengths of this unit are read on a metric tape."""
        return self in (Unit.MM, Unit.CM, Unit.M)

    @property
    def shop(self) -> Unit:
        """What a shop sells cloth by where this unit is used: yards or metres."""
        return Unit.M if self.metric else Unit.YD

    @property
    def tape(self) -> Unit:
        """What a tape measure reads in where this unit is used: inches or centimetres."""
        return Unit.CM if self.metric else Unit.IN

    def of(self, amount: Fraction | int) -> Length:
        """``amount`` of this unit, up to the next whole tick."""
        return whole_ticks(amount * Fraction(self.length.ticks))


ZERO = Length(0)
INCH = Unit.IN.length
YARD = Unit.YD.length
MILLIMETRE = Unit.MM.length
METRE = Unit.M.length
LONGEST = Unit.M.of(10_000)


def fraction_text(amount: Fraction) -> str:
    """A number as a tape reads it: ``17 1/2``, ``3/8``, ``26``."""
    whole, rest = divmod(amount, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def decimal_text(amount: Fraction, places: int) -> str:
    """A number with at most ``places`` decimals, half up, without idle zeros."""
    scaled = int(abs(amount) * 10**places + Fraction(1, 2))
    text = f"{scaled / 10**places:.{places}f}".rstrip("0").rstrip(".") if places else str(scaled)
    return f"-{text}" if amount < 0 and scaled else text


def tape_text(length: Length, unit: Unit, parts: int = 16) -> str:
    """A length as a tape reads it, to the nearest ``1/parts`` in or the nearest millimetre."""
    if unit.metric:
        return f"{decimal_text(length / Unit.CM.length, 1)} cm"
    nearest = Fraction((2 * length.ticks * parts + INCH.ticks) // (2 * INCH.ticks), parts)
    sign = "-" if nearest < 0 else ""
    return f"{sign}{fraction_text(abs(nearest))} in"


def natural_text(length: Length, unit: Unit) -> str:
    """A size as the trade names it: in ``unit``'s system if it is whole there, else in the other.

    A 12 mm ribbon stays 1.2 cm on a list in inches, and a 44 in cloth 44 in on a metric one.
    """
    whole_metric = length.ticks % MILLIMETRE.ticks == 0
    whole_inches = length.ticks * 16 % INCH.ticks == 0
    if unit.metric and whole_inches and not whole_metric:
        return tape_text(length, Unit.IN)
    if not unit.metric and whole_metric and not whole_inches:
        return tape_text(length, Unit.CM)
    return tape_text(length, unit)


def shop_text(length: Length, unit: Unit) -> str:
    """A length as shops sell it: yards with eighths (``2 3/8 yd``) or metres with two decimals.

    A length that is no whole number of eighths of a yard is printed with two decimals, upwards.
    """
    amount = length / unit.length
    if unit is Unit.YD and (amount * 8).denominator == 1:
        return f"{fraction_text(amount)} yd"
    hundredths = ceil(amount * 100)
    return f"{hundredths // 100}.{hundredths % 100:02d} {unit.symbol}"
