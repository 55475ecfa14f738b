"""The invented shops, the garments of the Millrace Players, and the starter plans.

Figures are worked by hand beside each check from the finished sizes in the plans: an allowance on
both sides, a tube twice its width and two allowances, a waist's radius at waist / (2 pi x share),
whole scallops and one overlapped (all common practice).
"""

from __future__ import annotations

from math import pi, sqrt

import pytest

from estimator import Catalog, Estimate, Length, estimate, read_catalog
from estimator.catalog import Kind
from estimator.edges import Finish
from estimator.measure import Unit
from estimator.plan import Made, Role, Shape, TakeUpKind, Wearer
from estimator.written import length
from tests.shipped_plans import (
    ALL,
    DEMOS,
    SHOPS,
    SHOWS,
    by,
    cut,
    line,
    plan_of,
    sound,
    stem,
)


@pytest.fixture(scope="module")
def shops() -> Catalog:
    return read_catalog(SHOPS)


@pytest.fixture(scope="module")
def dress(shops: Catalog) -> Estimate:
    return estimate(sound(SHOPS / "market_dress.toml"), shops)


@pytest.fixture(scope="module")
def tabard(shops: Catalog) -> Estimate:
    return estimate(sound(SHOPS / "herald_tabard.toml"), shops)


@pytest.fixture(scope="module")
def cloak(shops: Catalog) -> Estimate:
    return estimate(sound(SHOPS / "night_cloak.toml"), shops)


# ---- The shops ----


def test_the_catalog_has_things_of_every_kind_to_sell(shops):
    assert len(shops.items) >= 32
    assert {item.kind for item in shops.items.values()} == set(Kind)


def test_every_item_is_offered_by_a_shop_for_money_in_dollars(shops):
    assert set(shops.offers) == set(shops.items)
    assert shops.currency == "USD"
    assert all(one.shop and one.price for offers in shops.offers.values() for one in offers)


def test_some_items_can_be_had_in_either_of_two_shops(shops):
    in_both = [
        item for item, offers in shops.offers.items() if len({one.shop for one in offers}) > 1
    ]
    assert len(in_both) >= 8
    assert len({one.shop for offers in shops.offers.values() for one in offers}) == 2


def test_cotton_shrinks_both_ways_and_polyester_satin_does_not(shops):
    poplin, satin = shops.items["cotton-poplin"], shops.items["satin"]
    assert poplin.shrinkage_length > poplin.shrinkage_width > 0
    assert satin.shrinkage_length == satin.shrinkage_width == 0


def test_the_shops_sell_by_the_yard_and_metre_on_cards_and_in_packs_with_minimums_and_breaks(shops):
    offers = [one for rows in shops.offers.values() for one in rows]
    assert {one.sold_by for one in offers if one.put_up.cut_to_length} == {Unit.YD, Unit.M}
    assert {"card", "spool", "hank", "pack", "each"} <= {one.put_up.word for one in offers}
    assert any(one.minimum for one in offers)
    assert any(one.usable for one in offers)
    assert {type(one.from_quantity) for one in offers if one.from_quantity} == {Length, int}


def test_closed_end_and_separating_zips_are_sold_in_several_lengths(shops):
    for zip_sold in ("dress-zip", "jacket-zip"):
        assert len({one.length for one in shops.offers[zip_sold]}) >= 3


# ---- Every plan ----


@pytest.mark.parametrize("path", DEMOS, ids=stem)
def test_a_demo_garment_is_bought_whole_and_priced_to_the_last_line(path, shops):
    found = estimate(sound(path), shops)
    assert found.unpriced == 0
    assert found.currency == "USD"
    assert 50 < found.cost < 150
    assert found.remarks == ()


def test_the_demo_is_four_garments_and_a_show_of_three_of_them():
    assert sorted(DEMOS + SHOWS) == sorted(SHOPS.glob("*.toml"))


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_a_plan_names_its_garment_in_its_first_line_in_words(path):
    first = path.read_text(encoding="utf-8").splitlines()[0]
    assert first.startswith("# ")
    assert first.endswith(".")
    assert len(first) <= 100


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_a_plan_buys_no_sliver_to_end_a_strip_with(path, shops):
    """A last width of less than 4 in is one that nobody would sew on."""
    for choice in estimate(sound(path), shops).fabrics:
        for option in choice.options:
            last = [one for one in option.pieces if one.name.endswith("last width")]
            assert all(one.width.value >= length("4 in") for one in last)


# ---- The market dress ----


def test_the_dress_has_elastic_ruffle_cut_to_size_interfacing_facing_and_drawstring(dress):
    plan = plan_of(dress)
    made = {piece.made for piece in plan.piece}
    assert plan.elastic
    assert {Made.FACING, Made.FOLDED_BAND, Made.JOINED_STRIP, Made.TUBE} <= made
    assert any(piece.fullness and piece.made is Made.JOINED_STRIP for piece in plan.piece)
    (stiff,) = (fabric.name for fabric in plan.fabric if fabric.role is Role.INTERFACING)
    of_stiff = [one for piece in plan.piece for one in piece.cut if one.fabric == stiff]
    assert of_stiff
    assert {one.cut_to for one in of_stiff} == {"finished size"}
    assert any(trim.name.endswith("drawstring") for trim in plan.trim)
    assert any(edge.finish.finish is Finish.CASING for p in plan.piece for edge in p.edges.values())
    assert all(seam.gathered for seam in plan.seam)


def test_the_waistband_is_cut_twice_its_width_and_its_interfacing_as_it_finishes(dress):
    # 1 1/2 x 30: 2 x 1 1/2 + 2 x 5/8 = 4 1/4 by 30 + 2 x 5/8 = 31 1/4
    assert cut(dress, "plain", "waistband") == by("4 1/4", "31 1/4")
    assert cut(dress, "interfacing", "waistband") == by("1 1/2", "30")


def test_a_bodice_front_on_the_fold_is_opened_out_and_longer_by_its_dart(dress):
    # 2 x (9 1/2 + 5/8) = 20 1/4; 15 + 2 x 5/8 + 1 = 17 1/4
    assert cut(dress, "print", "bodice front") == by("20 1/4", "17 1/4")


def test_two_tucks_take_four_times_their_depth_of_the_skirt_panel(dress):
    # 19 3/4 + 2 x 5/8 = 21; 27 + 2 x 5/8 + 2 tucks x 2 x 1/2 = 30 1/4
    assert cut(dress, "print", "skirt panel") == by("21", "30 1/4")


def test_a_neck_facing_is_as_long_as_the_neckline_and_turned_under_outside(dress):
    # 2 + 5/8 + 1/4 = 2 7/8; 4 + 7 + 4 = 15, and 2 x 5/8 = 16 1/4
    assert cut(dress, "plain", "front neck facing") == by("2 7/8", "16 1/4")


def test_the_hem_lace_has_95_scallops_round_a_ruffle_twice_the_skirt(dress):
    # 4 x 19 3/4 = 79, twice is 158; before it shrinks by 3 % the lace is 162.89 in long there:
    # 94 scallops of 1 3/4 reach 164 1/2, one overlapped makes 166 1/4, which is more than one card
    # of 4 yd and fits on one of 5
    (run,) = (step for step in line(dress, "hem lace").buy.steps if "overlapped" in step.label)
    assert run.result == length("166 1/4")
    assert line(dress, "hem lace").buy.unit == "card of 5 yd"
    assert line(dress, "hem lace").buy.bought == 1


def test_the_back_zip_is_the_next_longer_one_and_shortened(dress):
    assert line(dress, "back zip").notes[-2:] == ("22 in long", "shorten to 20 1/2 in")


def test_the_sleeve_elastic_is_two_arms_less_a_tenth_and_an_inch_of_overlap(dress):
    # 2 x (11 x 0.9 + 1) = 21.8; / 0.98 x 1.05 = 23.36, and 3/4 yd is 27
    assert line(dress, "sleeve elastic").buy.bought == length("3/4 yd")


# ---- The heralds' tabards ----


def test_four_tabards_in_centimetres_are_lined_and_braided_for_children(tabard):
    garment = plan_of(tabard).garment
    assert garment.unit is Unit.CM
    assert garment.copies == 4
    assert garment.wearer is Wearer.CHILD
    assert any(fabric.role is Role.LINING for fabric in plan_of(tabard).fabric)
    assert any("strangle" in caution for caution in tabard.cautions)


def test_the_tabard_front_is_cut_alike_from_drill_and_from_lining(tabard):
    # 42 + 2 x 1.5 = 45; 66 + 2 x 1.5 = 69
    assert cut(tabard, "drill", "front") == cut(tabard, "lining", "front") == by("45 cm", "69 cm")


def test_three_tabard_bodies_lie_across_the_drill_so_eight_take_three_rows(tabard):
    # 147 cm less 2 % is 144, which holds 3 x 45; 3 x 69 = 207, + 2 x 2.5, / 0.97, x 1.03 = 225.1
    assert line(tabard, "drill").buy.bought == length("2.3 m")


def test_a_flared_wing_is_widened_by_its_slant_and_its_seam(tabard):
    # the sides slant by 6 in 24; the flare goes on through the lower seam by 12 x 1.5 / 24
    wide = 36 + 12 * 1.5 / 24 + 2 * 1.5 * sqrt(24**2 + 6**2) / 24
    cut_wide, cut_long = cut(tabard, "satin", "shoulder wing")
    assert wide <= cut_wide / length("1 cm") < wide + 0.5
    assert cut_long == length("27 cm")


def test_the_neck_braid_goes_round_the_named_necklines_of_front_and_back(tabard):
    # each: 30 + 20 + 2 x 0.6 = 51.2; four of them 204.8
    steps = line(tabard, "neck braid").buy.steps
    assert length("51.2 cm") in [step.result for step in steps]
    assert length("204.8 cm") in [step.result for step in steps]


def test_braid_for_four_tabards_is_a_spool_as_it_costs_less_than_by_the_metre(tabard):
    # runs of 4 x 177 + 4 x 177 + 4 x 51.2 + 8 x 37.2 = 1918.4; + 5 % is 20.2 m at 1.60 = 32.32
    assert line(tabard, "front braid") == line(tabard, "wing braid")
    assert line(tabard, "front braid").buy.unit == "spool of 25 m"
    assert str(line(tabard, "front braid").buy.cost) == "32.00"


def test_snaps_are_three_for_each_tabard_and_two_spare_for_all(tabard):
    assert line(tabard, "shoulder snaps").needed == 4 * 3 + 2


def test_eight_tassels_sold_in_fours_are_two_packs(tabard):
    assert line(tabard, "tassels").buy.bought == 2


# ---- The night watch's cloak ----


def test_the_cloak_is_a_lined_circle_of_napped_cloth_with_a_boxed_hood_and_a_clasp(cloak):
    shapes = {piece.shape for piece in plan_of(cloak).piece}
    assert {Shape.SECTOR, Shape.BOX} <= shapes
    assert any(fabric.role is Role.LINING for fabric in plan_of(cloak).fabric)
    assert line(cloak, "clasp").buy.bought == 1
    (hood,) = (piece for piece in plan_of(cloak).piece if piece.name == "hood")
    assert [fold.kind for fold in hood.takes_up] == [TakeUpKind.DART]


def test_no_piece_of_velveteen_is_turned_round(cloak):
    (pile,) = (one for one in cloak.fabrics if "velveteen" in one.need.names)
    assert pile.need.terms.nap
    assert not any(placed.turned for placed in pile.chosen.laid.cuts[0].placements)


def test_a_cloak_quarter_is_cut_as_wide_as_its_radius_length_hem_and_seam(cloak):
    # neck 9 in on a quarter: 9 / (pi / 2); 34 long; a hem of 1 and 1/4; a centre back seam of 1
    side = 9 / (pi / 2) + 34 + 1.25 + 1
    for size in cut(cloak, "velveteen", "cloak quarter"):
        assert side <= size / length("1 in") < side + 1 / 16


def test_the_lining_of_the_cloak_hangs_an_inch_shorter_with_a_hem_of_its_own(cloak):
    side = 9 / (pi / 2) + 33 + 1 + 1
    for size in cut(cloak, "lining", "cloak quarter"):
        assert side <= size / length("1 in") < side + 1 / 16


def test_the_half_circle_cape_is_twice_as_wide_as_its_radius(cloak):
    # neck 18 in on a half: 18 / pi; 11 long and a 5/8 seam; a seam along the straight edge
    radius = 18 / pi + 11 + 0.625
    wide, long = cut(cloak, "velveteen", "shoulder cape")
    assert 2 * radius <= wide / length("1 in") < 2 * radius + 1 / 16
    assert radius + 0.625 <= long / length("1 in") < radius + 0.625 + 1 / 16


def test_the_braid_of_both_fronts_and_the_cape_is_bought_together(cloak):
    # 2 x (34 + 1/2) + (18 + 11 pi + 1 1/4) = 122.8; / 0.98 x 1.05 = 131.6, and 3 3/4 yd is 135
    needed = (2 * 34.5 + 18 + 11 * pi + 1.25) / 0.98 * 1.05
    assert line(cloak, "front braid").needed / length("1 in") == pytest.approx(needed, abs=1e-4)
    assert line(cloak, "cape braid").buy.bought == length("3 3/4 yd")
