"""How lengths are written back into a stash: in the unit of their row, never more than it is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import Length, Unit
from estimator.reports.booked_rows import booked
from estimator.stash import InHand
from estimator.stash_after import Change
from estimator.written import length, read_length


def written_back(before: str, left: Length) -> str:
    """The length that a row of the stash has once so much of it is left."""
    table = [["item", "length", "count"], ["thread", before, "1"]]
    ((_, text, count),) = booked(table, [Change(2, 0, (left,))], [])[1:]
    assert count == "1"
    return str(text)


@pytest.mark.parametrize(
    ("before", "left", "after"),
    [
        # a very long one in whole metres or yards, a long one in whole centimetres or inches
        ("900 m", "37775.4 cm", "377 m"),
        ("150 yd", "2806 13/16 in", "77 yd 34 in"),
        ("1000 yards", "900 yd 7 in", "900 yd"),
        ("25 m", "1396.8 cm", "13.96 m"),
        ("10 yd", "144 1/2 in", "4 yd"),
        # a short one by the tape
        ("2 m", "110.3 cm", "1.103 m"),
        ("1 yd", "14 1/16 in", "14 1/16 in"),
        ("6 ft", "40 in", "40 in"),
        ("500 cm", "411.4 cm", "411.4 cm"),
        ("900 mm", "411 mm", "411 mm"),
        ('180"', "150 1/2 in", "150 1/2 in"),
        ("1 yd 4 in", "30 in", "30 in"),
    ],
)
def test_what_is_left_is_written_in_the_unit_of_its_row(before: str, left: str, after: str) -> None:
    assert written_back(before, length(left)) == after


@pytest.mark.parametrize(
    ("left", "text"),
    [("17280 in", "480 yd"), ("110 cm", "110 cm"), ("30 in", "30 in"), ("456.5 m", "456 m")],
)
def test_a_new_row_is_written_as_its_left_over_would_be_named(left: str, text: str) -> None:
    row = InHand.model_construct(item="thread", length=length(left))
    (_, added) = booked([["item", "length"]], [], [row])
    assert added[:2] == ["thread", text]


UNITS = [Unit.MM, Unit.CM, Unit.M, Unit.IN, Unit.FT, Unit.YD]


@given(st.sampled_from(UNITS), st.integers(8_000 * 250, 8_000_000 * 900))
def test_no_row_says_more_than_there_is_nor_a_hundredth_less(unit: Unit, ticks: int) -> None:
    back = read_length(written_back(f"1 {unit.symbol}", Length(ticks)), None)
    assert back <= Length(ticks)
    assert (Length(ticks) - back).ticks * 100 <= ticks
