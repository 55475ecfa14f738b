"""The starter plans: what a newcomer copies, fills in and takes to the shop."""

from __future__ import annotations

from math import pi

import pytest

from estimator import Length, estimate
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
        "petticoat", "circle_cape", "gored_skirt", "mob_cap", "tabard", "laced_bodice",
        "child_pinafore",
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


def results(name: str, thing: str) -> list[Length]:
    """What each step of a working comes to, for a thing bought for a starter plan."""
    found = estimate(sound(ROOT / "templates" / f"{name}.toml"))
    return [step.result for step in line(found, thing).buy.steps]


@pytest.mark.parametrize(
    ("name", "thing", "figures"),
    [
        ("apron", "pocket edging", ["7 in", "7 1/2 in"]),  # 7 across, two ends of 1/4
        ("elastic_trousers", "waist elastic, 1 in", ["30 in", "27 in", "28 in"]),  # less 10 %, + 1
        ("tunic", "neck braid", ["30 cm", "60 cm", "61.2 cm"]),  # front and back, overlapped 1.2
        ("gored_skirt", "hem tape", ["15 in", "90 in", "90 1/2 in"]),  # six gores of 15
        ("mob_cap", "frill lace", ["66 in", "66 1/2 in"]),  # 21 across x 22/7
        # 2 x (36 + 20 + 36) in, overlapped 1/2
        ("tabard", "edge braid", ["184 in", "184 1/2 in"]),
        # 20 + 2 x 5/8 = 21 1/4 wide: both lie beside each other on 43, in one row of 37 1/4;
        # two cut ends of 1 in, and up to eighths of a yard
        ("tabard", "tabard fabric", ["37 1/4 in", "39 1/4 in", "40 1/2 in"]),
        # the circle across and two rolled hems of 1/4: 21 1/2, 2 in of ends, 23 1/2 / 0.96 is under
        # 27 in, which are 3/4 yd
        ("mob_cap", "cap fabric", ["21 1/2 in", "23 1/2 in", "27 in"]),
        # 16 round the neck, and two allowances of 5/8
        ("laced_bodice", "neck cord", ["16 in", "17 1/4 in"]),
        # up 13 and along 7 1/2, a mitre of 2 x 1/2, two allowances; and the other back
        ("laced_bodice", "back braid", ["20 1/2 in", "21 1/2 in", "22 3/4 in", "45 1/2 in"]),
        # channels of 12 1/2, each turned under by 1/4 twice; eight
        ("laced_bodice", "bone casing", ["12 1/2 in", "13 in", "104 in"]),
        # 12 1/2 less 1/4 twice, and the next shorter that is sold
        ("laced_bodice", "bones", ["12 in", "11 1/2 in"]),
        # 18 lignes are 0.45, 1/8 thick: 2 x 0.575, and two allowances; two loops
        ("laced_bodice", "button loops", ["1.15 in", "2.4 in", "4.8 in"]),
        # 54 round: 43.2 scallops of 1 1/4, 1/4 over is eased in: 43, and one overlapped
        ("child_pinafore", "hem lace", ["54 in", "53 3/4 in", "55 in"]),
        # 54 repeats of 1, and one; the ribbon 54 x 1.03 and 1/2
        ("child_pinafore", "beading lace", ["54 in", "55 in"]),
        ("child_pinafore", "ribbon", ["55.62 in", "56.12 in"]),
        # 5 1/2 + 5 + 5 1/2, two mitres of 2 x 1/2, ends folded back 1/2 and turned under 1/4
        ("child_pinafore", "pocket braid", ["16 in", "18 in", "19 1/2 in"]),
        ("child_pinafore", "shoulder loops", ["1.45 in", "2.7 in", "5.4 in"]),
    ],
)
def test_a_starter_plan_comes_to_what_a_person_reckons_by_hand(
    name: str, thing: str, figures: list[str]
) -> None:
    found = results(name, thing)
    assert [length(one) for one in figures if length(one) not in found] == []


@pytest.mark.parametrize(
    ("name", "thing", "inches"),
    [
        # half a circle: the hem is longer than the waist by pi times the length, 28 + 24 pi
        ("circle_skirt", "hem braid", 28 + 24 * pi),
        # a whole circle: by 2 pi times the length, 18 + 40 pi
        ("circle_cape", "hem braid", 18 + 40 * pi),
    ],
)
def test_a_circles_hem_is_as_long_as_geometry_says(name: str, thing: str, inches: float) -> None:
    hems = [one for one in results(name, thing) if one >= length(f"{inches:.4f} in")]
    assert min(hems) <= length(f"{inches + 0.001:.4f} in")


def test_the_apron_ruffle_is_one_and_three_quarters_times_the_skirt() -> None:
    # 30 x 1 3/4 = 52 1/2
    found = estimate(sound(ROOT / "templates" / "apron.toml"))
    (ruffle,) = (
        one for one in found.fabrics[0].chosen.pieces if one.name.split(",")[0] == "ruffle"
    )
    assert ruffle.finished[0] == length("52 1/2")


def test_the_lace_of_the_laced_bodice_crosses_a_gap_of_three_inches() -> None:
    # 13 - 1 = 12 spaces of 1, 13 pairs: 3 across, 24 x sqrt(3 x 3 + 1), and 2 x 12 to tie: 102.89
    found = results("laced_bodice", "lace")[-3] / length("1 in")
    assert found == pytest.approx(3 + 24 * 10**0.5 + 24, abs=1e-3)


def test_braid_inside_the_neck_of_the_pinafore_is_longer_by_the_necks_curve() -> None:
    # half a neck turns by half a circle: 8 + pi x 1/2, and 8 + pi x 1 1/4; front and back, and two
    # ends of 1/4 to each row: 32 + 3.5 pi + 1 = 43.996
    found = results("child_pinafore", "neck braid")[-3] / length("1 in")
    assert found == pytest.approx(33 + 3.5 * pi, abs=1e-3)


def test_the_bindings_of_the_pinafore_are_cut_four_times_as_wide_as_they_finish() -> None:
    # 4 x 3/8 = 1 1/2. Each arm: 6 + 6 and 1/2 overlapped, and a join of 2 x 1/4 x sqrt 2 = 0.707:
    # 13.207, twice: 26.414, by 1 1/2 is 39.62: a square of 6.29, cut 7
    found = estimate(sound(ROOT / "templates" / "child_pinafore.toml"))
    (cotton,) = (one for one in found.fabrics if "binding cotton" in one.need.names)
    sizes = {one.name: (one.width.value, one.length.value) for one in cotton.chosen.pieces}
    assert sizes["armhole binding"] == (length("7"), length("7"))
    assert any("small parts" in line for line in found.cautions)


def test_the_skirt_lining_of_the_pinafore_is_an_inch_shorter_and_hemmed() -> None:
    # 18 - 1 = 17; 5/8 of seam, and a hem of 3/4 and 1/4
    found = estimate(sound(ROOT / "templates" / "child_pinafore.toml"))
    (lining,) = (one for one in found.fabrics if "lining" in one.need.names)
    panel = next(one for one in lining.chosen.pieces if one.name == "skirt panel")
    assert panel.length.value == length("18 5/8")
