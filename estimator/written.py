"""Amounts as people write them: lengths, shares (percentages), prices, counts.

Our own reader splits number from unit and keeps every fraction exact; pint is asked only for units
that are not on a tape measure (a furlong, a decimetre) and to say what a wrong unit measures.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from functools import cache, lru_cache
from typing import Any

from estimator.fraction_dates import refuse_date
from estimator.measure import LONGEST, Length, Unit, whole_ticks
from estimator.quoting import NotReadable, quoted, text_of

_SPELLINGS = {
    Unit.MM: "mm millimetre millimetres millimeter millimeters",
    Unit.CM: "cm cms centimetre centimetres centimeter centimeters",
    Unit.M: "m metre metres meter meters",
    Unit.IN: "in ins inch inches \" ″ ” ''",
    Unit.FT: "ft foot feet ' ′ ’",
    Unit.YD: "yd yds yard yards",
    Unit.LIGNE: "ligne lignes line lines",
}
_UNITS = {word: unit for unit, words in _SPELLINGS.items() for word in words.split()}

_VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_SPACES = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " ", "⁄": "/", "−": "-"})

_NUMBER = r"(?:(?P<whole>\d+)(?:\s+|-))?(?P<top>\d+)/(?P<bottom>\d+)|(?P<decimal>\d*[.,]?\d+)"
_TERM = re.compile(
    rf"\s*(?:{_NUMBER})\s*(?P<unit>[^\W\d_]+\.?|''|[\"'″”′’])?\s*", re.ASCII | re.IGNORECASE
)
_EXPONENT = re.compile(r"\d[eE][-+]?\d")
_NUMBERS_AND_UNITS = 'a length is written like 17 1/2, 17-1/2 in, 17½", 1 yd 4 in, 44.5 cm or 1.2 m'


def read_length(written: object, unit: Unit | None) -> Length:
    """The exact length somebody wrote; a bare number is in ``unit``, or refused where that is None.

    Accepts text, whole numbers and decimals, and an already read Length. Raises NotReadable for a
    negative length, for what is not a number, for a date, and for a unit that is not a length.
    Zero is read; callers refuse it where it makes no sense.
    """
    if isinstance(written, Length):
        return written
    amount = number_from(written)
    if amount is not None:
        return _within_reason(whole_ticks(amount * _bare(unit, written).ticks), written)
    if not isinstance(written, str):
        raise NotReadable(f"{quoted(written)} is not a length", _NUMBERS_AND_UNITS)
    text = written.translate(_SPACES).strip()
    refuse_date(text)
    if not text:
        raise NotReadable("the length is empty", _NUMBERS_AND_UNITS)
    if len(text) > 60:
        raise NotReadable(f"{quoted(text)} is too long for a length", _NUMBERS_AND_UNITS)
    if _EXPONENT.search(text):
        raise NotReadable(f"{quoted(written)} has an exponent, as no tape has", _NUMBERS_AND_UNITS)
    for sign, fraction in _VULGAR.items():
        text = text.replace(f"-{sign}", f" {fraction}").replace(sign, f" {fraction}")
    text = text.strip()
    if text.startswith("-"):
        raise NotReadable(f"{quoted(written)} is negative", "a length is zero or more")
    return _within_reason(_sum_of_terms(text, unit, written), written)


def _bare(unit: Unit | None, written: object) -> Length:
    if unit is None:
        raise NotReadable(f"{quoted(written)} has no unit", "write the unit, as in 3 yd or 25 mm")
    return unit.length


def _sum_of_terms(text: str, unit: Unit | None, written: str) -> Length:
    ticks = Fraction(0)
    last_size: Length | None = None
    position = 0
    while position < len(text):
        term = _TERM.match(text, position)
        if not term:
            raise NotReadable(f"{quoted(written)} is not a length", _NUMBERS_AND_UNITS)
        word = term["unit"]
        rest = text[term.end() :]
        if word is None and rest and not any(map(str.isdigit, rest)):
            raise NotReadable(f"{quoted(written)} is not a length", _NUMBERS_AND_UNITS)
        if word is None and (position or rest):
            raise _several_numbers(text, written)
        size = _bare(unit, written) if word is None else _size_of(word, written)
        if last_size is not None and size >= last_size:
            raise NotReadable(
                f"{quoted(written)} does not go from larger units to smaller ones",
                "write yards before inches, as in 1 yd 4 in",
            )
        if last_size is not None and _metric(size) is not _metric(last_size):
            raise NotReadable(
                f"{quoted(written)} mixes metric units with others", "write it in one system"
            )
        ticks += _number_in(term, written) * size.ticks
        last_size, position = size, term.end()
    return whole_ticks(ticks)


def _several_numbers(text: str, written: str) -> NotReadable:
    """Why numbers beside each other are not read: of some nothing says what they measure."""
    if re.search(r"[^\W\d_]|[\"'″”′’]", text):
        return NotReadable(
            f"{quoted(written)} has a number without a unit beside one with a unit",
            "give each number its unit, as in 1 yd 4 in",
        )
    two = re.fullmatch(r"([\d.,/ ]*\d)\s*[-–—]\s*(\d[\d.,/ ]*)", text)
    if two:
        return NotReadable(
            f"{quoted(written)} is two numbers",
            f"write the one that is meant, {two[1]} or {two[2]}",
        )
    wrong = "has _ between its numbers" if "_" in text else "is more than one number"
    return NotReadable(f"{quoted(written)} {wrong}", "write one number, as in 17 1/2 or 17-1/2")


def _metric(size: Length) -> bool:
    """Units of the other system are no whole number of millimetres."""
    return size.ticks % Unit.MM.length.ticks == 0


def _number_in(term: re.Match[str], written: str) -> Fraction:
    if term["decimal"] is not None:
        return _decimal(term["decimal"], written)
    top, bottom = int(term["top"]), int(term["bottom"])
    if bottom == 0:
        raise NotReadable(f"{quoted(written)} divides by zero", _NUMBERS_AND_UNITS)
    if term["whole"] is None:
        return Fraction(top, bottom)
    if top >= bottom:
        raise NotReadable(
            f"{quoted(written)} has {top}/{bottom} after a whole number",
            "the fraction of a mixed number is less than one, as in 17 1/2",
        )
    return int(term["whole"]) + Fraction(top, bottom)


def _decimal(text: str, written: object) -> Fraction:
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", text):
        thousands, decimals = text.replace(",", ""), text.replace(",", ".")
        raise NotReadable(
            f"{quoted(written)} may mean {thousands} or {decimals}",
            f"write {thousands} or {decimals}, whichever it is",
        )
    return Fraction(text.replace(",", "."))


def _size_of(word: str, written: str) -> Length:
    known = _UNITS.get(word.lower().rstrip("."))
    return known.length if known else _size_by_pint(word, written)


def _size_by_pint(word: str, written: str) -> Length:
    right = "use in, ft, yd, mm, cm, m or ligne"
    if not word.isascii() or len(word) > 20:
        raise NotReadable(f"{quoted(word)} in {quoted(written)} is not a unit of length", right)
    found = _asked_of_pint(word)
    if isinstance(found, str):
        raise NotReadable(f"{quoted(word)} in {quoted(written)} {found}", right)
    return found


@lru_cache(maxsize=1000)
def _asked_of_pint(word: str) -> Length | str:
    """The length of a unit, or why it is none; the same slip often stands in many lines."""
    units = _table_of_units()
    names = units.parse_unit_name(word) or units.parse_unit_name(word.lower())
    if not names:
        return "is not a unit"
    prefix, name, _ = names[0]
    one = units.Quantity(Fraction(1), prefix + name)
    if not one.check("[length]"):
        return f"measures {_kind_of(one.dimensionality)}, not a length"
    size = whole_ticks(Fraction(one.to("millimeter").magnitude) * Unit.MM.length.ticks)
    if (prefix and name != "meter") or not Unit.MM.length <= size <= LONGEST:
        return "is no unit for cloth"
    return size


@cache
def _table_of_units() -> Any:
    """Made late and once: it takes longer than reading a whole plan."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


def _kind_of(dimensionality: Mapping[str, object]) -> str:
    """What a unit measures, where that has a name of its own: mass, time."""
    names = [name.strip("[]") for name, power in dimensionality.items() if power == 1]
    return names[0] if len(names) == len(dimensionality) == 1 else "something else"


def _within_reason(length: Length, written: object) -> Length:
    if length > LONGEST:
        raise NotReadable(
            f"{quoted(written)} is longer than 10 km", "check the number and its unit"
        )
    return length


def number_from(written: object) -> Fraction | None:
    """An exact number from a whole or decimal one; None for anything that is not a number.

    Raises NotReadable for what is not finite or is negative, for true and false, and for dates.
    """
    if isinstance(written, bool):
        raise NotReadable(f"{str(written).lower()} is not a number", "write a number")
    if isinstance(written, datetime.date | datetime.time):
        raise NotReadable(
            f"{written} is a date or a time, not a size",
            'write fractions in quotes, as in "1/2"',
        )
    if not isinstance(written, int | float | Decimal):
        return None
    try:
        amount = Fraction(written) if isinstance(written, int) else Fraction(str(written))
    except ValueError:
        raise NotReadable(f"{written} is not a number", "write a finite number") from None
    if amount < 0:
        raise NotReadable(f"{quoted(written)} is negative", "write zero or more")
    return amount


def read_share(written: object) -> Fraction:
    """A share written as a percentage (``5 %``, ``12,5%``), as an exact fraction: 1/20, 1/8.

    Zero needs no sign. Raises NotReadable for anything else: 5 and 0.05 could both mean 5 %.
    """
    if isinstance(written, Fraction):
        return written
    text = text_of(written).translate(_SPACES).strip()
    if text in ("0", "0.0"):
        return Fraction(0)
    found = re.fullmatch(r"(\d{1,6}(?:[.,]\d{1,6})?)\s*%", text, re.ASCII)
    if not found:
        raise NotReadable(f"{quoted(written)} is not a share", 'write a percentage, as in "5 %"')
    return _decimal(found[1], written) / 100


def read_money(written: object) -> Decimal:
    """An amount of money without its currency, ``8.50`` or ``8,50``; zero or more."""
    text = text_of(written).translate(_SPACES).strip()
    if isinstance(written, bool) or not re.fullmatch(r"\d{1,9}(?:[.,]\d{1,4})?", text, re.ASCII):
        raise NotReadable(f"{quoted(written)} is not an amount of money", "write it like 8.50")
    amount = _decimal(text, written)
    return Decimal(amount.numerator) / Decimal(amount.denominator)


def length(text: str) -> Length:
    """A length in code and tests, read as a person would read it: ``length("2 1/4 in")``."""
    return read_length(text, Unit.IN)
