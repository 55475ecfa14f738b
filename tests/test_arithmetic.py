"""Sizes reckoned from measures, as plain arithmetic and nothing else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.arithmetic import length_from
from estimator.measure import Length, Unit
from estimator.quoting import NotReadable
from estimator.written import length

MEASURES = {"waist": length("28"), "hip": length("38 1/2"), "skirt length": length("26")}


@pytest.mark.parametrize(
    ("text", "comes_to"),
    [
        ("waist", "28"),
        ("waist / 4 + 1 in", "8"),
        ("waist/2+1 1/2 in", "15 1/2"),
        ("(waist + hip) / 2", "33 1/4"),
        ("max(waist, hip) * 1.5", "57 3/4"),
        ("min(waist, 20 in, hip)", "20"),
        ("skirt length - 2 cm - 3/4 in", "24.462598425196850393700787"),
        ("2 * waist * (hip / hip)", "56"),
        ("waist + 2.54 cm", "29"),
        ('waist + 1/2"', "28 1/2"),
    ],
)
def test_a_size_is_reckoned_from_measures(text: str, comes_to: str) -> None:
    found = length_from(text, MEASURES, Unit.IN)
    assert abs((found - length(comes_to)).ticks) <= 1


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("wiast / 4", "did you mean 'waist'?"),
        ("waist + 1", "adds a length and a plain number"),
        ("waist * hip", "multiplies two lengths"),
        ("2 / waist", "divides a number by a length"),
        ("waist / 0", "divides by zero"),
        ("waist / hip", "comes to a number"),
        ("waist - hip", "less than nothing"),
        ("9**9**9", "cannot be reckoned"),
        ("(waist", "at its end"),
        ("waist +", "at its end"),
        ("", "at its end"),
        ("__import__('os')", "there is no measure"),
        ("max(waist, 2)", "compares lengths with numbers"),
        ("waist waist", "there is no measure"),
        ("(" * 150 + "waist", "too many brackets"),
        ("waist + " * 40, "longer than 200"),
        ("waist + 3 kg", "kg"),
    ],
)
def test_what_is_no_arithmetic_on_measures_is_refused(text: str, told: str) -> None:
    with pytest.raises(NotReadable) as refused:
        length_from(text, MEASURES, Unit.IN)
    assert told in str(refused.value)


@given(st.text(alphabet="waisthp0123456789+-*/(). ,in", max_size=60))
def test_any_text_comes_to_a_length_or_a_complaint(text: str) -> None:
    try:
        found: Length | NotReadable = length_from(text, MEASURES, Unit.IN)
    except NotReadable as refused:
        found = refused
    assert isinstance(found, Length) or (found.wrong != "" and found.right != "")


@given(st.integers(1, 500), st.integers(1, 40))
def test_parts_of_a_measure_are_never_short_of_it(sixteenths: int, parts: int) -> None:
    waist = length("1/16 in") * sixteenths
    part = length_from(f"waist / {parts}", {"waist": waist}, None)
    assert waist <= part * parts < waist + Length(parts)
