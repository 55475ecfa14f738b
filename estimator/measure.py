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
    """The one place where parts of a tick are made whole: upwards. Roots come whole before it."""
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
        """What a tape is read in where this unit is used: inches, centimetres or millimetres."""
        if self is Unit.MM:
            return Unit.MM
        return Unit.CM if self.metric else Unit.IN

    def of(self, amount: Fraction | int) -> Length:
        """``amount`` of this unit, up to the next whole tick."""
        return whole_ticks(amount * Fraction(self.length.ticks))


class Units(Enum):
    """The tongue of measure in which papers are asked for, whatever the plans are written in."""

    METRIC = "metric"
    IMPERIAL = "imperial"

    def tape_beside(self, unit: Unit) -> Unit:
        """What a tape is read in: that of ``unit`` where it is of this tongue."""
        if (self is Units.METRIC) is unit.metric:
            return unit.tape
        return Unit.CM if self is Units.METRIC else Unit.IN


ZERO = Length(0)
INCH = Unit.IN.length
MILLIMETRE = Unit.MM.length
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


def two_decimals_up(amount: Fraction) -> str:
    """A number with two decimals, up to the next hundredth: ``1.20``, ``1.95`` for 1.944."""
    hundredths = ceil(amount * 100)
    return f"{hundredths // 100}.{hundredths % 100:02d}"


def tape_text(length: Length, unit: Unit, parts: int = 16) -> str:
    """A length as a tape reads it, to the nearest ``1/parts`` in or the nearest millimetre."""
    if unit is Unit.MM:
        return f"{decimal_text(length / MILLIMETRE, 0)} mm"
    if unit.metric:
        return f"{decimal_text(length / Unit.CM.length, 1)} cm"
    nearest = Fraction((2 * length.ticks * parts + INCH.ticks) // (2 * INCH.ticks), parts)
    sign = "-" if nearest < 0 else ""
    return f"{sign}{fraction_text(abs(nearest))} in"


def about_text(length: Length, unit: Unit) -> str:
    """A length as a tape reads it, with ``about`` before one that lies between its marks.

    Where the working goes on with the exact figure, its reader must not wonder at the next one.
    """
    parts, size = (1, MILLIMETRE) if unit.metric else (16, INCH)
    exact = length.ticks * parts % size.ticks == 0
    return tape_text(length, unit) if exact else f"about {tape_text(length, unit)}"


def usable_text(width: Length, unit: Unit) -> str:
    """A width that can be cut from, down to 1/16 in or 1 mm: nobody is promised more than it is."""
    mark = MILLIMETRE if unit.metric else INCH.times(Fraction(1, 16))
    return tape_text(mark * mark.times_into(width), unit)


def natural_text(length: Length, unit: Unit) -> str:
    """A size as the trade names it: in ``unit``'s system if it is whole there, else in the other.

    A 12 mm ribbon stays 1.2 cm on a list in inches, and a 44 in cloth 44 in on a metric one. What
    is whole in both (60 in are 152.4 cm) is named where it is a whole number.
    """
    metric, inches = _metric_tape(unit), Unit.IN
    if length.ticks * 16 % INCH.ticks != 0:
        whole_metric = length.ticks % MILLIMETRE.ticks == 0
        return tape_text(length, metric if whole_metric else unit)
    if length.ticks % MILLIMETRE.ticks != 0:
        return tape_text(length, inches)
    number_of_cm = length.ticks % Unit.CM.length.ticks == 0
    number_of_inches = length.ticks % INCH.ticks == 0
    if number_of_cm == number_of_inches:
        return tape_text(length, unit)
    return tape_text(length, metric if number_of_cm else inches)


def put_up_text(length: Length, unit: Unit) -> str:
    """What a card or spool holds, as its shop names it: whole yards or metres, else by the tape."""
    for shop in (unit.shop, Unit.YD, Unit.M):
        if length.ticks % shop.length.ticks == 0:
            return f"{length.ticks // shop.length.ticks} {shop.symbol}"
    return natural_text(length, unit)


def _metric_tape(unit: Unit) -> Unit:
    return unit.tape if unit.metric else Unit.CM


def shop_text(length: Length, unit: Unit) -> str:
    """A length as shops sell it: yards as fractions (``2 3/8 yd``), metres with two decimals.

    A length that is no whole number of sixteenths of a yard is printed with two decimals, upwards.
    """
    return f"{sold_text(length / unit.length, unit)} {unit.symbol}"


MANY = 100
"""Yards or metres, as of thread on spools, beyond which nobody reads a fraction."""


def sold_text(amount: Fraction, unit: Unit) -> str:
    """So many yards or metres without their unit: ``2 3/8``, ``0.81``, ``1.20``, ``149``."""
    if unit is Unit.YD and read_in_sixteenths(amount):
        return fraction_text(amount)
    if amount >= MANY and amount.denominator == 1:
        return str(amount)
    return two_decimals_up(amount)


def read_in_sixteenths(amount: Fraction) -> bool:
    """Whether a number of yards is printed as a fraction: a whole number of sixteenths."""
    return (amount * 16).denominator == 1
