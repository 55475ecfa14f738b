"""The words of the form, against the demo catalog."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from estimator.form.words import words_of

CATALOG = Path(__file__).parents[2] / "catalog_demo"
KINDS = {
    "fabric": "fabric", "trim": "trim", "elastic": "elastic", "notion": "notion",
    "lacing": "trim", "boning": "trim", "loops": "trim", "thread": "thread",
}  # fmt: skip
"""What each table buys."""


@pytest.mark.parametrize("table", KINDS)
def test_the_example_under_buy_is_a_fitting_item_of_the_catalog(table: str) -> None:
    with (CATALOG / "items.csv").open(encoding="utf-8", newline="") as rows:
        kinds = {row["item"]: row["kind"] for row in csv.DictReader(rows)}
    words = words_of(table, ("buy",))
    assert words.heading == "Buy"
    assert kinds[words.example] == KINDS[table]
