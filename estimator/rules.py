"""What holds where a plan states nothing: the house defaults, imperial and metric.

Each is printed on the list, and each can be set in the plan, to zero too. All are common practice.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from estimator.measure import MILLIMETRE, Length, Unit
from estimator.written import length


@dataclass(frozen=True, slots=True)
class Rules:
    """Allowances and shares in force for one garment."""

    mark: Length
    seam_allowance: Length
    turn_under: Length
    rolled_hem: Length
    serged: Length
    overlap: Length
    elastic_overlap: Length
    tie: Length
    bone_clear: Length
    straightening: Length
    selvedge: Length
    fabric_waste: Fraction = Fraction(0)
    trim_waste: Fraction = Fraction(1, 20)
    elastic_stretch: Fraction = Fraction(1, 10)
    thread_waste: Fraction = Fraction(15, 100)


IMPERIAL = Rules(
    mark=length("1/16 in"),
    seam_allowance=length("5/8 in"),
    turn_under=length("1/4 in"),
    rolled_hem=length("1/8 in"),
    serged=length("1/4 in"),
    overlap=length("1/2 in"),
    elastic_overlap=length("1 in"),
    tie=length("12 in"),
    bone_clear=length("1/4 in"),
    straightening=length("1 in"),
    selvedge=length("1/2 in"),
)
METRIC = Rules(
    mark=MILLIMETRE,
    seam_allowance=length("1.5 cm"),
    turn_under=length("0.6 cm"),
    rolled_hem=length("0.3 cm"),
    serged=length("0.6 cm"),
    overlap=length("1.2 cm"),
    elastic_overlap=length("2.5 cm"),
    tie=length("30 cm"),
    bone_clear=length("0.6 cm"),
    straightening=length("2.5 cm"),
    selvedge=length("1.2 cm"),
)


TAIL_IMPERIAL, TAIL_METRIC = length("2 in"), length("5 cm")
"""What is left of shirring elastic at each end of a row, to knot it."""


def house_rules(unit: Unit) -> Rules:
    """The defaults for a plan written in ``unit``."""
    return METRIC if unit.metric else IMPERIAL


def selling_step(shop_unit: Unit) -> Length:
    """By what shops raise a length they cut where an offer does not say: 1/8 yd or 0.1 m."""
    return length("0.1 m") if shop_unit.metric else length("1/8 yd")
