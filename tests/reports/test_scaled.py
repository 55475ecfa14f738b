"""The list says what was scaled for each wearer, and to what each size came."""

from __future__ import annotations

from estimator import Job, estimate
from estimator.job import GarmentOrder
from estimator.reports.assumptions import assumptions
from estimator.reports.terminal import layout_text
from estimator.written import length
from tests.plans import draft

PLAN = """
[garment]
name = "Apron"
unit = "in"
[measures]
waist = "30"
[[fabric]]
name = "check"
widths = ["45 in"]
[[piece]]
name = "skirt panel"
cut = "check"
width = { from = "waist / 4 + 1 in" }
length = "20"
"""


def test_each_size_reckoned_from_a_wearers_measures_is_told_with_its_sum() -> None:
    orders = []
    for wearer, waist in (("Ada", "28 in"), ("Bo", "36 in")):
        own = draft(PLAN, {"waist": length(waist)})
        orders.append(GarmentOrder(own.plan, wearer=wearer, reckoned=own.reckoned))
    found = estimate(Job(tuple(orders)))
    said = assumptions(found)
    # 28 / 4 + 1 = 8, 36 / 4 + 1 = 10
    assert "Apron for Ada: skirt panel width: waist / 4 + 1 in = 8 in." in said
    assert "Apron for Bo: skirt panel width: waist / 4 + 1 in = 10 in." in said
    words = " ".join(layout_text(found).split())
    assert "(Ada)" in words
    assert "(Bo)" in words


def test_a_garment_made_by_its_own_plan_is_not_scaled() -> None:
    own = draft(PLAN)
    found = estimate(Job((GarmentOrder(own.plan, reckoned=own.reckoned),)))
    assert not any("waist / 4" in line for line in assumptions(found))
