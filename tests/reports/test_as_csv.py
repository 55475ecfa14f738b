"""The list as comma-separated values, for any program that reads tables."""

from __future__ import annotations

import csv
import io
from fractions import Fraction

import pytest

from estimator import Estimate, estimate
from estimator.reports.as_csv import HEADINGS, list_csv
from tests.plans import plan
from tests.reports.filled_lists import CLOAK, cloak


def rows(found: Estimate) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(list_csv(found), newline="")))


def test_each_thing_to_buy_is_a_row_with_its_figures_as_plain_numbers() -> None:
    found = cloak()
    listed = rows(found)
    assert [row["item"] for row in listed] == [line.title for line in found.purchases]
    for row, line in zip(listed, found.purchases, strict=True):
        assert tuple(row) == HEADINGS
        assert Fraction(row["buy"]) == line.buy.sold_units
        assert row["unit"] == line.buy.unit
        assert row["key"] == line.key
        assert row["cost"] == ("" if line.buy.cost is None else str(line.buy.cost))
        assert row["currency"] == ("" if line.buy.cost is None else "USD")


@pytest.mark.parametrize(
    "name", ["=1+1", "+x", "-2", "@now", "<b>b</b>", 'a, "b"; c', "🧵", "x" * 200, "סרט"]
)
def test_text_from_a_plan_is_harmless_text(name: str) -> None:
    text = CLOAK.replace('name = "braid"', f"name = '{name}'")
    line = next(row for row in rows(estimate(plan(text))) if row["part"] == "Trims")
    assert line["item"].removeprefix("'") == name
    assert not line["item"].startswith(("=", "+", "-", "@"))
