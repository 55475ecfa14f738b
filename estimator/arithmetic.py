"""Plain arithmetic on named measures: ``waist / 4 + 1 in``. No code is ever run.

    sum     = product { ("+" | "-") product }
    product = value { ("*" | "/") value }
    value   = "(" sum ")" | ("min" | "max") "(" sum { "," sum } ")" | measure | length | number

Lengths and numbers are kept apart: a length times a number is a length, a length by a length is a
number, and a length and a number are never added.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from estimator.faults import nearest
from estimator.measure import Length, Unit, whole_ticks
from estimator.quoting import NotReadable, quoted
from estimator.written import read_length

LONGEST = 200
DEEPEST = 20
_RIGHT = "write it like waist / 4 + 1 in, or max(waist, hip) * 1.1"
_LENGTH = re.compile(r"(?:\d{1,9}(?:\s+|-)\d{1,9}/\d{1,9}|\d{1,9}/\d{1,9}|\d{0,9}[.,]?\d{1,9})"
                     r"\s*(?:[a-z]{1,10}\b|[\"″])", re.IGNORECASE)  # fmt: skip
_NUMBER = re.compile(r"\d{0,9}[.]?\d{1,9}")
_CHOICES = {"min": min, "max": max}


@dataclass(frozen=True, slots=True)
class _Value:
    """A number, or a length in ticks."""

    amount: Fraction
    is_length: bool


def length_from(text: str, measures: Mapping[str, Length], unit: Unit | None) -> Length:
    """The length that an arithmetic on measures comes to, up to the next whole tick.

    A number with a unit is a length, one without is a plain number. Raises NotReadable for what is
    no such arithmetic, for an unknown measure, for a sum of a length and a number, and for a result
    that is no length or less than zero.
    """
    if len(text) > LONGEST:
        raise NotReadable(f"{quoted(text)} is longer than {LONGEST} characters", _RIGHT)
    value = _Reader(text, measures, unit).whole()
    if not value.is_length:
        raise NotReadable(f"{quoted(text)} comes to a number, not a length", _RIGHT)
    if value.amount < 0:
        raise NotReadable(f"{quoted(text)} comes to less than nothing", "check the measures")
    return whole_ticks(value.amount)


class _Reader:
    """Reads one arithmetic from left to right."""

    def __init__(self, text: str, measures: Mapping[str, Length], unit: Unit | None) -> None:
        self.text, self.measures, self.unit = text, measures, unit
        self.names = sorted(measures, key=len, reverse=True)
        self.at = self.depth = 0

    def whole(self) -> _Value:
        value = self._sum()
        if self._rest():
            raise self._stuck()
        return value

    def _rest(self) -> str:
        while self.at < len(self.text) and self.text[self.at].isspace():
            self.at += 1
        return self.text[self.at :]

    def _take(self, signs: str) -> str:
        rest = self._rest()
        if rest and rest[0] in signs:
            self.at += 1
            return rest[0]
        return ""

    def _stuck(self) -> NotReadable:
        rest = self._rest()
        word = re.match(r"[^\W\d][\w ]*\w|\w+", rest)
        if word and not word[0][0].isdigit():
            return NotReadable(
                f"there is no measure {quoted(word[0])}", nearest(word[0], self.measures)
            )
        seen = f"at {quoted(rest[:12])}" if rest else "at its end"
        return NotReadable(f"{quoted(self.text)} cannot be reckoned {seen}", _RIGHT)

    def _sum(self) -> _Value:
        value = self._product()
        while sign := self._take("+-"):
            other = self._product()
            if value.is_length is not other.is_length:
                raise NotReadable(
                    f"{quoted(self.text)} adds a length and a plain number",
                    "give the number its unit, as in waist + 1 in",
                )
            amount = value.amount + other.amount if sign == "+" else value.amount - other.amount
            value = _Value(amount, value.is_length)
        return value

    def _product(self) -> _Value:
        value = self._value()
        while sign := self._take("*/"):
            value = self._combined(value, sign, self._value())
        return value

    def _combined(self, value: _Value, sign: str, other: _Value) -> _Value:
        if sign == "*":
            if value.is_length and other.is_length:
                raise NotReadable(f"{quoted(self.text)} multiplies two lengths", _RIGHT)
            return _Value(value.amount * other.amount, value.is_length or other.is_length)
        if other.amount == 0:
            raise NotReadable(f"{quoted(self.text)} divides by zero", _RIGHT)
        if other.is_length and not value.is_length:
            raise NotReadable(f"{quoted(self.text)} divides a number by a length", _RIGHT)
        return _Value(value.amount / other.amount, value.is_length and not other.is_length)

    def _value(self) -> _Value:
        self.depth += 1
        if self.depth > DEEPEST:
            raise NotReadable(f"{quoted(self.text)} has too many brackets", _RIGHT)
        value = self._bracket() or self._measure() or self._length() or self._number()
        self.depth -= 1
        if value is None:
            raise self._stuck()
        return value

    def _bracket(self) -> _Value | None:
        chosen = re.match(r"(min|max)?\s*\(", self._rest())
        if not chosen:
            return None
        self.at += chosen.end()
        values = [self._sum()]
        while chosen[1] and self._take(","):
            values.append(self._sum())
        if not self._take(")"):
            raise self._stuck()
        if len({value.is_length for value in values}) > 1:
            raise NotReadable(f"{quoted(self.text)} compares lengths with numbers", _RIGHT)
        pick: Callable[[list[Fraction]], Fraction] = _CHOICES.get(chosen[1] or "", min)
        return _Value(pick([value.amount for value in values]), values[0].is_length)

    def _measure(self) -> _Value | None:
        rest = self._rest()
        for name in self.names:
            if rest.startswith(name) and not re.match(r"\w", rest[len(name) :]):
                self.at += len(name)
                return _Value(Fraction(self.measures[name].ticks), True)
        return None

    def _length(self) -> _Value | None:
        found = _LENGTH.match(self._rest())
        if not found:
            return None
        length = read_length(found[0], self.unit)
        self.at += found.end()
        return _Value(Fraction(length.ticks), True)

    def _number(self) -> _Value | None:
        found = _NUMBER.match(self._rest())
        if not found:
            return None
        self.at += found.end()
        return _Value(Fraction(found[0]), False)
