"""Cloth that has to match: in one length where a bolt is long enough, whatever else is cheaper."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.buying.types import Purchase
from estimator.stash import InHand, Stash
from estimator.together import each_apart, settled_together
from estimator.written import length
from tests.plans import plan

CHORUS = """
[garment]
name = "Chorus skirt"
unit = "in"
currency = "USD"
[[fabric]]
name = "crepe"
widths = [{offers}]
one_dye_lot = {match}
[[piece]]
name = "panel"
quantity = {count}
cut = "crepe"
sizes = "cut"
width = "40"
length = "34"
"""
SHORT = '{ width = "44 in", bolt = "4 yd", price = "4 per yd" }'
LONG = '{ width = "45 in", bolt = "30 yd", price = "6 per yd" }'


def skirt(*offers: str, match: bool = True, count: int = 8) -> GarmentOrder:
    text = CHORUS.format(offers=", ".join(offers), match=str(match).lower(), count=count)
    return GarmentOrder(plan(text))


def line(found: Estimate) -> Purchase:
    (only,) = found.purchases
    return only


def test_matching_cloth_is_bought_off_the_bolt_that_holds_it_all_though_dearer() -> None:
    # a bolt of 144 in takes four panels of 34 in: two lengths of 138 in; 274 in are one of 7 5/8 yd
    parted = line(estimate(Job((skirt(SHORT, LONG, match=False),))))
    whole = line(estimate(Job((skirt(SHORT, LONG),))))
    assert (parted.buy.sold_units, parted.buy.cost) == (Decimal("7.75"), Decimal("31.00"))
    assert (whole.buy.sold_units, whole.buy.cost) == (Decimal("7.625"), Decimal("45.75"))
    assert "all of it must match: have it cut in one length" in whole.notes
    assert "the fewest lengths, because all of it must match" in whole.notes


def test_where_no_bolt_holds_it_the_list_asks_for_bolts_of_one_dye_lot() -> None:
    notes = line(estimate(Job((skirt(SHORT),)))).notes
    assert (
        "all of it must match, and no bolt holds it: take the 2 lengths from bolts of one dye lot"
        in notes
    )


@pytest.mark.parametrize(
    ("remnant", "match", "used"),
    [("40 in", False, True), ("40 in", True, False), ("280 in", True, True)],
)
def test_a_remnant_serves_matching_cloth_only_where_it_holds_all_of_it(
    remnant: str, match: bool, used: bool
) -> None:
    row = InHand.model_validate({"item": "crepe", "width": "44 in", "length": remnant})
    found = estimate(Job((skirt(LONG, match=match),), stash=Stash({2: row})))
    assert bool(line(found).taken) is used
    if match and used:
        assert not line(found).buy.bought


def test_of_two_remnants_that_hold_it_all_the_smaller_is_cut() -> None:
    rows = {
        number: InHand.model_validate({"item": "crepe", "width": "45 in", "length": long})
        for number, long in ((2, "400 in"), (3, "300 in"))
    }
    (taken,) = line(estimate(Job((skirt(LONG),), stash=Stash(rows)))).taken
    assert (taken.single.row, taken.left) == (3, length("300 in") - length("274 in"))


def test_garments_whose_cloth_must_match_are_cut_from_one_length() -> None:
    # singly each skirt of two panels takes 2 yd off the short bolt at 4.00; together 16 panels
    # are 546 in off the long one
    job = Job((skirt(SHORT, LONG, count=2),) * 8)
    apart = [estimate(one) for one in each_apart(job)]
    found = settled_together(job, estimate(job), apart)
    assert sum(one.cost for one in apart) == Decimal("64.00")
    assert len(found.fabrics[0].chosen.laid.cuts) == 1
    assert line(found).buy.cost == Decimal("91.50")  # 15 1/4 yd
