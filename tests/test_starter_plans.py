"""The starter plans: what a newcomer copies, fills in and takes to the shop."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.edges import Finish
from estimator.plan import Joined, Made
from estimator.written import length
from tests.shipped_plans import (
    ROOT,
    STARTERS,
    line,
    plan_of,
    sound,
    stem,
)


@pytest.mark.parametrize("path", STARTERS, ids=stem)
def test_a_starter_plan_needs_no_catalog_and_leaves_prices_to_the_buyer(path):
    found = estimate(sound(path))
    assert found.fabrics
    assert found.unpriced == len(found.purchases) > 0
    assert found.remarks == ()


def test_there_are_starter_plans_for_the_usual_garments():
    assert {path.stem for path in STARTERS} >= {
        "gathered_skirt", "tiered_skirt", "apron", "tunic", "circle_skirt", "elastic_trousers",
        "petticoat",
    }  # fmt: skip


@pytest.mark.parametrize("path", STARTERS, ids=stem)
def test_a_starter_plan_says_what_to_measure_and_what_to_change(path):
    text = path.read_text(encoding="utf-8")
    assert "\n# Measure: " in text
    assert "# CHANGE" in text


def test_three_tiers_chain_from_the_hips_to_the_hem():
    # 46, half as much again is 69, and again 103 1/2
    found = estimate(sound(ROOT / "templates" / "tiered_skirt.toml"))
    strips = [piece for piece in plan_of(found).piece if piece.made is Made.JOINED_STRIP]
    assert len(strips) == 3
    (choice,) = found.fabrics
    rings = {one.name.split(",")[0]: one.finished[0] for one in choice.chosen.pieces}
    assert rings == {
        "upper tier": length("46"), "middle tier": length("69"), "lower tier": length("103 1/2")
    }  # fmt: skip
    # a ring of edging for each of both seams, each overlapped 1/2: 46 1/2 + 69 1/2
    assert length("116") in [one.result for one in line(found, "edging over both seams").buy.steps]


def test_two_petticoat_panels_of_38_are_76_round_and_152_in_the_ruffle():
    # common practice: 152 in takes 87 scallops of 1 3/4 and one more, 154 in
    found = estimate(sound(ROOT / "templates" / "petticoat.toml"))
    results = [step.result for step in line(found, "hem lace").buy.steps]
    assert results[0] == length("152")
    assert length("154") in results


def test_the_skirt_of_a_starter_plan_follows_its_waist():
    skirt = ROOT / "templates" / "gathered_skirt.toml"
    found = estimate(sound(skirt))
    (choice,) = (one for one in found.fabrics if "skirt fabric" in one.need.names)
    strip = [one for one in choice.chosen.pieces if one.name.startswith("skirt")]
    assert {one.finished[0] for one in strip} == {length("70")}  # 28 x 2 1/2


def test_the_apron_ruffle_is_open_and_hemmed_at_both_ends():
    apron = sound(ROOT / "templates" / "apron.toml")
    (ruffle,) = (piece for piece in apron.piece if piece.name == "ruffle")
    assert ruffle.joined is Joined.OPEN
    assert {ruffle.edges[side].finish.finish for side in ("left", "right")} == {Finish.ROLLED}
