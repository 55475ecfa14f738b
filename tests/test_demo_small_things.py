"""The goose girl: every kind of small thing on one garment, worked by hand beside each check."""

from __future__ import annotations

from math import sqrt

import pytest

from estimator import Catalog, Estimate, estimate, read_catalog
from estimator.plan import Wearer
from estimator.written import length
from tests.shipped_plans import SHOPS, line, plan_of, sound


@pytest.fixture(scope="module")
def shops() -> Catalog:
    return read_catalog(SHOPS)


@pytest.fixture(scope="module")
def goose_girl(shops: Catalog) -> Estimate:
    return estimate(sound(SHOPS / "goose_girl.toml"), shops)


def test_the_goose_girl_has_every_kind_of_small_thing(goose_girl):
    plan = plan_of(goose_girl)
    assert plan.garment.wearer is Wearer.CHILD
    assert plan.lacing
    assert plan.loops
    assert {one.casing_for is None for one in plan.boning} == {True, False}
    keys = {key for trim in plan.trim for key in trim.model_fields_set}
    assert keys >= {"through", "covers", "cut_from", "corners", "ease_repeats", "from_edge", "ends"}
    assert len(plan.thread) == 2
    assert any(cut.shorter for piece in plan.piece for cut in piece.cut)
    assert any("strangle" in caution for caution in goose_girl.cautions)


def results_of(found: Estimate, name: str) -> list[object]:
    return [step.result for step in line(found, name).buy.steps]


def test_the_goose_girls_hem_lace_is_eased_for_a_scallop_fewer(goose_girl):
    # 3 x 19 1/2 = 58 1/2, before it shrinks by 3 % 60.31 in of lace: 34 scallops of 1 3/4 are
    # 59 1/2, and what is over is 1.3 % of it; with one overlapped 61 1/4
    assert length("59 1/2") in results_of(goose_girl, "hem lace")
    assert length("61 1/4") in results_of(goose_girl, "hem lace")
    assert any("ease 13/16 in of the edge" in note for note in line(goose_girl, "hem lace").notes)


def test_the_ribbon_goes_round_under_its_beading_with_a_little_ease(goose_girl):
    # the beading: 60.31 in are 41 repeats of 1 1/2, 61 1/2, and one more; the ribbon 58 1/2 x 1.03
    # = 60.255, and 1/2 overlapped: 60.755
    assert length("63") in results_of(goose_girl, "beading")
    assert length("60.755 in") in results_of(goose_girl, "beading ribbon")


def test_the_pocket_braid_turns_two_mitres_and_folds_back_its_ends(goose_girl):
    # 6 + 5 + 6 = 17; two corners of 2 x 3/4; at each end 1/2 folded back and 1/4 turned under
    found = results_of(goose_girl, "pocket braid")
    assert [one in found for one in map(length, ("17", "20", "21 1/2"))] == [True] * 3


def test_a_lace_of_eight_pairs_closes_the_goose_girls_bodice(goose_girl):
    # 11 - 2 x 1/2 = 10 in at most 1 1/2 apart: 7 spaces, 8 pairs. A gap of 2 and 10 / 7 in up:
    # sqrt(4 + 2.0408) = 2.4578; 14 of them, 2 across and 2 x 10 to tie: 56.41; / 0.96 as bought
    lace = line(goose_girl, "lace").needed / length("1 in")
    assert lace == pytest.approx((2 + 14 * sqrt(4 + (10 / 7) ** 2) + 20) / 0.96 * 1.05, abs=1e-4)
    assert line(goose_girl, "eyelets").needed == 2 * 8 + 2


def test_two_loops_hold_buttons_of_24_lignes(goose_girl):
    # 24 lignes are 0.6 in, 1/8 thick: 2 x 0.725 = 1.45, and two allowances of 5/8: 2.7 in
    assert length("2.7 in") in results_of(goose_girl, "shoulder loops")


def test_bindings_and_pipings_lie_on_the_green_cotton(goose_girl):
    # a binding of 3/8 is cut 4 x 3/8 = 1 1/2 wide; a cord of 3/16: pi x 3/16 + 2 x 5/8 = 1.839,
    # up to the mark 1 7/8
    (green,) = (one for one in goose_girl.fabrics if "green" in one.need.names)
    wide = {one.trim.name: one.wide.value for one in green.need.hanging if one.trim and one.wide}
    assert wide == {"armhole binding": length("1 1/2"), "waist piping": length("1 7/8")}


def test_the_overlocker_takes_three_cones_and_the_machine_a_spool(goose_girl):
    assert line(goose_girl, "overlock thread").buy.bought == 3
    assert line(goose_girl, "thread").buy.bought == 1
