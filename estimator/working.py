"""The working of a figure, as a person would do it on paper: typed steps, printed by the reports.

A Reckoning carries a length together with the steps that made it, so that the arithmetic and its
working cannot disagree.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from math import ceil

from estimator.measure import Length, whole_ticks


class Operation(Enum):
    """What a step of the working does with the figure before it."""

    START = "start with"
    ADD = "+"
    TAKE = "−"
    TIMES = "×"
    DIVIDE = "÷"
    UP_TO = "up to whole"
    DOWN_TO = "down to whole"
    AT_LEAST = "at least"
    SOLD_BY = "up to the selling step of"
    MARK = "up to the mark"
    IN_ALL = "in all"
    FITTED = "fitted on put-ups of"


Figure = Length | Fraction | int


@dataclass(frozen=True, slots=True)
class Step:
    """One line of working: ``operation`` with ``operand`` gives ``result``; ``label`` says why."""

    label: str
    operation: Operation
    operand: Figure
    result: Figure


@dataclass(frozen=True, slots=True)
class Source:
    """Where a need comes from: garment, wearer, the piece or trim, and its place in the file."""

    garment: str
    name: str
    place: str = ""
    wearer: str = ""

    @property
    def owner(self) -> str:
        """The garment, and the wearer for whom it is made."""
        return f"{self.garment} ({self.wearer})" if self.wearer else self.garment

    @property
    def where(self) -> str:
        """The place and the name, as complaints tell them."""
        return f"{self.place} ('{self.name}')" if self.place else str(self)

    def __str__(self) -> str:
        return f"{self.owner}: {self.name}"


SHRINKS = "what is left after shrinking"
"""The label under which shrinkage is divided out, of fabrics and of trims."""


@dataclass(frozen=True, slots=True)
class Reckoning:
    """A length and the steps that made it. Every method returns a new reckoning.

    ``exact`` is in ticks and keeps its fraction, so that a figure that comes out even is not raised
    by the roundings on its way; ``value`` is up to the next whole tick.
    """

    exact: Fraction
    steps: tuple[Step, ...]

    @classmethod
    def start(cls, label: str, value: Length) -> Reckoning:
        """Begin with a length as it was measured or stated."""
        return cls(Fraction(value.ticks), (Step(label, Operation.START, value, value),))

    @property
    def value(self) -> Length:
        """The length, up to the next whole tick."""
        return whole_ticks(self.exact)

    def _then(
        self, label: str, operation: Operation, operand: Figure, exact: Fraction
    ) -> Reckoning:
        step = Step(label, operation, operand, whole_ticks(exact))
        return Reckoning(exact, (*self.steps, step))

    def named(self, label: str) -> Reckoning:
        """The same working, its first step under another label."""
        first, *others = self.steps
        return Reckoning(self.exact, (replace(first, label=label), *others))

    def plus(self, label: str, amount: Length) -> Reckoning:
        """Add a length; adding nothing leaves no line."""
        if not amount:
            return self
        return self._then(label, Operation.ADD, amount, self.exact + amount.ticks)

    def minus(self, label: str, amount: Length | Fraction) -> Reckoning:
        """Take a length away, or ticks and parts of one; taking nothing leaves no line."""
        if not amount:
            return self
        ticks = amount.ticks if isinstance(amount, Length) else amount
        return self._then(label, Operation.TAKE, whole_ticks(Fraction(ticks)), self.exact - ticks)

    def times(self, label: str, factor: Fraction | int) -> Reckoning:
        """Multiply; multiplying by one leaves no line."""
        if factor == 1:
            return self
        return self._then(label, Operation.TIMES, factor, self.exact * factor)

    def divided_by(self, label: str, divisor: Fraction | int) -> Reckoning:
        """Divide; dividing by one leaves no line."""
        if divisor == 1:
            return self
        return self._then(label, Operation.DIVIDE, divisor, self.exact / divisor)

    def up_to(self, label: str, step: Length) -> Reckoning:
        """Up to the next whole ``step``; an exact hit is shown and stays."""
        return self._then(label, Operation.UP_TO, step, self._raised(step))

    def eased_down_to(self, label: str, step: Length) -> Reckoning:
        """Down to a whole ``step``: what is over is eased in, and not bought."""
        lowered = Fraction(int(self.exact // step.ticks) * step.ticks)
        return self._then(label, Operation.DOWN_TO, step, lowered)

    def to_mark(self, label: str, mark: Length) -> Reckoning:
        """Up to a mark that the tape carries; a length already on a mark leaves no line."""
        raised = self._raised(mark)
        return self if raised == self.exact else self._then(label, Operation.MARK, mark, raised)

    def sold_by(self, label: str, step: Length) -> Reckoning:
        """Up to the shop's selling step; an exact hit is shown and stays."""
        return self._then(label, Operation.SOLD_BY, step, self._raised(step))

    def at_least(self, label: str, least: Length) -> Reckoning:
        """Up to a minimum; a length above it leaves no line."""
        if self.exact >= least.ticks:
            return self
        return self._then(label, Operation.AT_LEAST, least, Fraction(least.ticks))

    def _raised(self, step: Length) -> Fraction:
        return Fraction(ceil(self.exact / step.ticks) * step.ticks)


def in_all(label: str, parts: Sequence[Reckoning]) -> Reckoning:
    """The workings of several lengths one after the other, and their sum; one alone stays."""
    if len(parts) == 1:
        return parts[0]
    exact = sum((part.exact for part in parts), Fraction(0))
    step = Step(label, Operation.IN_ALL, len(parts), whole_ticks(exact))
    return Reckoning(exact, (*(step for part in parts for step in part.steps), step))
