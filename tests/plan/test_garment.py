"""The garment's own allowances, and the house's where it states none."""

from dataclasses import fields
from fractions import Fraction

import pytest

from estimator.measure import Unit
from estimator.rules import IMPERIAL, METRIC, Rules, house_rules
from estimator.written import length
from tests.plans import complaints, plan


def garment(more: str = "") -> str:
    return f'[garment]\nname = "apron"\n{more}\n'


def test_a_plan_is_in_inches_for_one_garment_unless_it_says_otherwise() -> None:
    found = plan(garment()).garment
    assert (found.unit, found.copies, found.rules) == (Unit.IN, 1, IMPERIAL)


def test_metric_plans_have_metric_house_rules() -> None:
    assert plan(garment('unit = "cm"')).garment.rules == METRIC
    assert plan(garment('unit = "mm"')).garment.rules == METRIC


def test_the_house_rules_are_those_of_common_practice() -> None:
    # Seams of 5/8 in or 1.5 cm, straightening 1 in or 2.5 cm a cut end, 5 % on trims.
    assert house_rules(Unit.IN).seam_allowance == length("5/8 in")
    assert house_rules(Unit.CM).seam_allowance == length("1.5 cm")
    assert house_rules(Unit.IN).turn_under == length("1/4 in")
    assert house_rules(Unit.CM).straightening == length("2.5 cm")
    assert house_rules(Unit.IN).trim_waste == Fraction(1, 20)
    assert house_rules(Unit.CM).fabric_waste == 0


@pytest.mark.parametrize(
    ("key", "written", "value"),
    [
        ("mark", '"1/8"', length("1/8")),
        ("seam_allowance", "0", length("0")),
        ("turn_under", '"3/8"', length("3/8")),
        ("overlap", "1", length("1")),
        ("straightening", "0", length("0")),
        ("selvedge", '"1 cm"', length("1 cm")),
        ("fabric_waste", '"3 %"', Fraction(3, 100)),
        ("trim_waste", "0", Fraction(0)),
    ],
)
def test_each_rule_can_be_set_in_the_plan_to_zero_too(
    key: str, written: str, value: object
) -> None:
    rules = plan(garment(f"{key} = {written}")).garment.rules
    assert getattr(rules, key) == value
    changed = {field.name for field in fields(Rules)
               if getattr(rules, field.name) != getattr(IMPERIAL, field.name)}  # fmt: skip
    assert changed <= {key, "elastic_overlap"} - (
        {"elastic_overlap"} if key != "overlap" else set()
    )


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ('unit = "inch"', "unit: 'inch' is not a unit for a plan; write in, cm or mm"),
        ('wearer = "kid"', "wearer cannot be 'kid'; choose from adult, child, not said, under "
         "three"),
        ('currency = "dollars"', "currency: 'dollars' is not a currency; write its ISO 4217 code, "
         "as in USD"),
        ("copies = 0", "copies: 0 is not from 1 to 100000; write how many there are"),
        ("mark = 0", "mark: the length is zero; write a length of more than zero"),
        ("trim_waste = 5", "trim_waste: '5' is not a share; write a percentage, as in \"5 %\""),
    ],
)  # fmt: skip
def test_a_setting_that_cannot_be_is_refused(more: str, told: str) -> None:
    assert complaints(garment(more)) == [f"apron.toml, line 3: {told}"]


def test_a_name_of_several_lines_or_with_hidden_signs_is_one_plain_line() -> None:
    found = plan('[garment]\nname = """\n  harbour\n\\tdress \\u202Eesrever"""\n')
    assert found.garment.name == "harbour dress esrever"
