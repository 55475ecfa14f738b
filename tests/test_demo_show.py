"""The demo's show: its garments together, with a stash and two shops."""

from __future__ import annotations

from itertools import groupby, pairwise

import pytest

from estimator import estimate_files
from estimator.reports.where_it_goes import where_table
from tests.shipped_plans import SHOWS


@pytest.fixture(scope="module")
def fair(demo_memory):
    """The demo's show, with its stash and its shops."""
    (show,) = SHOWS
    return estimate_files([show], memory=demo_memory / "layouts.sqlite")


def test_the_demos_show_spends_less_with_its_stash(fair):
    assert fair.bought_new is not None
    assert fair.cost < fair.bought_new.cost
    assert any(one.taken and not one.buy.bought for one in fair.purchases)


def test_the_demos_show_is_bought_together_for_less_than_garment_by_garment(fair):
    found = fair
    assert found.job.title == "Harvest Fair"
    assert len(found.job.garments) == 7
    assert sum(one.money or 0 for one in found.saved) > 20


def test_where_a_line_of_the_show_goes_is_told_garment_by_garment(fair):
    # cloth comes from remnants and from the bolt, and each garment is told of once all the same
    told = [(row[0], row[1]) for row in where_table(fair).rows]
    lines = [number for number, (item, _) in enumerate(told) if item] + [len(told)]
    for start, end in pairwise(lines):
        garments = [garment for _, garment in told[start:end]]
        assert len([one for one, _ in groupby(garments)]) == len(set(garments))
