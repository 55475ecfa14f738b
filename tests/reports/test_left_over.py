"""What is left on cards and spools, as it is told on the list."""

from __future__ import annotations

import pytest

from estimator import Estimate, Job, estimate
from estimator.job import GarmentOrder
from estimator.measure import Units
from estimator.reports.as_json import estimate_json
from estimator.reports.pictures.trim_pictures import trim_pictures
from estimator.reports.shopping_list import sections
from tests.plans import plan

RIBBON = """
[garment]
name = "sash"
unit = "{unit}"
[[trim]]
name = "ribbon"
length = "{long}"
quantity = {quantity}
ends = "raw"
sold = [{{ put_up = "{put_up}" }}]
"""


def ribbon(put_up: str, long: str, quantity: int = 1, units: Units | None = None) -> Estimate:
    unit = long.split()[-1]
    text = RIBBON.format(unit=unit, long=long, quantity=quantity, put_up=put_up)
    return estimate(Job((GarmentOrder(plan(text), units=units),)))


def note(found: Estimate) -> str:
    ((line,),) = (section.lines for section in sections(found))
    return line.note


@pytest.mark.parametrize(
    ("put_up", "long", "units", "left"),
    [
        # 5 m less 172 in, 4.3688 m, are 63.12 cm; 2 yd less 100 cm are 82.88 cm, 32 5/8 in
        ("spool of 5 m", "172 in", None, "63.1 cm"),
        ("card of 2 yd", "100 cm", None, "32 5/8 in"),
        ("card of 2 yd", "40 in", None, "32 in"),
        ("spool of 5 m", "172 in", Units.IMPERIAL, "24 7/8 in"),
    ],
)
def test_what_is_left_of_a_put_up_is_told_as_it_is_put_up(
    put_up: str, long: str, units: Units | None, left: str
) -> None:
    found = ribbon(put_up, long, units=units)
    assert note(found) == f"left over: {left}"
    (picture,) = trim_pictures(found)
    assert f"1 × {put_up}, {left} left over" in picture.description


def test_left_overs_alike_are_told_together_the_longest_first() -> None:
    # a card of 72 in holds two runs of 30 in: five leave 42 in on the third card
    assert note(ribbon("card of 2 yd", "30 in", 5)) == "left over: 42 in, 2 × 12 in"


def test_nothing_is_left_over_of_a_card_that_is_used_up() -> None:
    assert note(ribbon("card of 2 yd", "36 in", 4)) == ""


def test_another_program_reads_what_is_left_over_among_the_notes() -> None:
    (line,) = estimate_json(ribbon("card of 2 yd", "40 in"))["shopping_list"]
    assert line["notes"] == ["left over: 32 in"]
