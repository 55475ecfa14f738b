"""Sizes of units, against the agreement that defines them and an independent table of units."""

from fractions import Fraction
from typing import Any

import pint
import pytest

from estimator.measure import Length, Unit
from estimator.written import length

units: Any = pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize(
    ("unit", "metres"),
    [
        # International Yard and Pound Agreement, 1959; NIST Special Publication 811, appendix B.
        (Unit.YD, "0.9144"),
        (Unit.FT, "0.3048"),
        (Unit.IN, "0.0254"),
    ],
)
def test_yard_foot_and_inch_are_those_of_the_agreement_of_1959(unit: Unit, metres: str) -> None:
    assert unit.length / Unit.M.length == Fraction(metres)


@pytest.mark.parametrize("unit", [Unit.MM, Unit.CM, Unit.M, Unit.IN, Unit.FT, Unit.YD])
def test_every_unit_agrees_with_a_general_purpose_table_of_units(unit: Unit) -> None:
    millimetres = units.Quantity(Fraction(1), unit.symbol).to("mm").magnitude
    assert Fraction(unit.length.ticks, 8000) == Fraction(millimetres)


def test_forty_lignes_are_an_inch() -> None:
    # The ligne of button sizes: common practice.
    assert Unit.LIGNE.length * 40 == length("1 in")


@pytest.mark.parametrize(
    ("written", "number", "unit"),
    [("2 dm", 2, "decimetre"), ("3 decimetres", 3, "decimetre"), ("2 hand", 2, "hand")],
)  # fmt: skip
def test_a_unit_that_is_on_no_tape_is_read_by_the_table_of_units(
    written: str, number: Fraction, unit: str
) -> None:
    millimetres = units.Quantity(Fraction(number), unit).to("mm").magnitude
    assert length(written) == Length(int(Fraction(millimetres) * 8000))
