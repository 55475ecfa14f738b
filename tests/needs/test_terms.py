"""On what terms a thing may be had: the catalog's offers, or those that a plan states."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from estimator import Catalog, Refused, estimate
from estimator.measure import Length, Unit
from estimator.needs.terms import usable_width
from estimator.written import length
from tests.needs.sleeves_and_gores import SLEEVES
from tests.plans import HEADING, bought, catalog, complaints, in_print, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20 1/4"\nlength = "26"\n'
BUYS = HEADING.replace('widths = ["45 in"]\nselvedge = "0"', 'buy = "lawn"')
YARDS = {"per": "yd", "currency": "USD"}


def lawn(**more: str) -> Catalog:
    return catalog(
        [{"item": "lawn", "kind": "fabric", **more}, {"item": "zip", "kind": "zip"}],
        [
            {"item": "lawn", "width": "44 in", "price": "8", **YARDS},
            {"item": "lawn", "width": "60 in", "usable": "57 1/2 in", "price": "10", **YARDS},
        ],
    )


def usable_widths(heading: str, shop: Catalog | None = None) -> list[str]:
    found = estimate(plan(heading + PANEL), shop or lawn())
    terms = found.fabrics[0].need.terms
    return [str(usable_width(terms, offer) / Unit.IN.length) for offer in terms.offers]


def test_a_nominal_width_loses_two_selvedges_unless_its_usable_width_is_known() -> None:
    assert usable_widths(BUYS) == ["43", "115/2"]


def test_the_selvedge_of_the_item_and_then_of_the_plan_overrides_the_houses() -> None:
    shop = lawn(selvedge="3/4 in")
    assert usable_widths(BUYS, shop)[0] == "85/2"
    assert usable_widths(BUYS + 'selvedge = "1/4"\n', shop)[0] == "87/2"


def test_a_fabric_that_shrinks_across_is_narrower_to_cut_from() -> None:
    # 43 in at 4 % leave 41.28 in.
    assert usable_widths(BUYS + 'shrinkage_across = "4 %"\n')[0] == str(Fraction("41.28"))
    assert usable_widths(BUYS, lawn(shrinkage_width="4 %"))[0] == str(Fraction("41.28"))


def test_a_remnant_already_washed_does_not_shrink_again() -> None:
    washed = BUYS + "shrinkage = 0\nshrinkage_across = 0\n"
    shop = lawn(shrinkage_width="4 %", shrinkage_length="5 %")
    assert usable_widths(washed, shop)[0] == "43"
    assert estimate(plan(washed + PANEL), shop).fabrics[0].need.terms.shrinkage == 0


def test_nap_and_repeat_come_from_the_item_unless_the_plan_states_them() -> None:
    shop = lawn(nap="yes", repeat="6 1/2 in")
    terms = estimate(plan(BUYS + PANEL), shop).fabrics[0].need.terms
    assert (terms.nap, terms.repeat) == (True, length("6 1/2"))
    terms = estimate(plan(BUYS + 'nap = "no"\nrepeat = "4"\n' + PANEL), shop).fabrics[0].need.terms
    assert (terms.nap, terms.repeat) == (False, length("4"))


def refused(heading: str, shop: Catalog | None = None, more: str = "") -> str:
    with pytest.raises(Refused) as found:
        estimate(plan(heading + PANEL + more), shop or lawn())
    (fault,) = found.value.faults
    return f"{fault.wrong}; {fault.right}"


def test_an_item_that_no_shop_has_gets_the_nearest_of_its_kind() -> None:
    assert refused(BUYS.replace("lawn", "lwan")) == (
        "the catalog has no item 'lwan'; did you mean 'lawn'?"
    )


def test_a_plan_cannot_buy_a_zip_for_a_fabric() -> None:
    assert refused(BUYS.replace("lawn", "zip")) == (
        "'zip' is a zip in the catalog; buy an item of the kind fabric here"
    )


def test_an_item_that_is_not_on_offer_is_refused() -> None:
    zipped = '[[notion]]\nname = "back zip"\nbuy = "zip"\n'
    assert refused(BUYS, more=zipped) == ("no shop offers 'zip'; add a row for it to the offers")


def test_a_plan_that_buys_from_a_catalog_needs_one() -> None:
    assert complaints(BUYS + PANEL) == [
        "apron.toml, line 6 (fabric 'print'): it buys 'lawn', an item of a catalog, and no "
        "catalog is given; "
        "name the catalog's folder with --catalog"
    ]


def test_what_is_priced_in_the_catalog_is_not_priced_in_the_plan_too() -> None:
    told = refused(BUYS + 'price = "8 per yd"\n')
    assert (
        told == "it buys 'lawn' from the catalog and states price as well; leave out buy, or price"
    )


def test_a_width_that_is_not_on_offer_is_told_which_are() -> None:
    assert refused(BUYS + 'width = "54"\n') == (
        "'print' is not on offer 54 in wide; the widths are 44 in, 60 in"
    )


def test_prices_of_a_plan_and_its_catalog_are_in_one_currency() -> None:
    euros = BUYS.replace('"apron"', '"apron"\ncurrency = "EUR"')
    assert refused(euros) == (
        "the plan's prices are in EUR and the catalog's in USD; use one currency in a job"
    )


@pytest.mark.parametrize(
    ("heading", "told"),
    [
        (HEADING + 'price = "8.50 per yd"\n', "the plan states prices, and in no currency; add "),
        (HEADING.replace('"apron"', '"apron"\ncurrency = "USD"') + 'price = "8.50 each"\n',
         'what is cut to length is priced by its length; write "8.50 per yd"'),
        (HEADING + 'price = "8.50"\n', "price: '8.50' does not say what the price is for"),
        (HEADING + 'price = "8.50 per bolt"\n', "'8.50 per bolt' is a price per 'bolt'"),
        (HEADING.replace('widths = ["45 in"]\n', ""), "nothing says at which widths 'print' may"),
    ],
)  # fmt: skip
def test_terms_that_make_no_sense_are_refused(heading: str, told: str) -> None:
    (found,) = complaints(heading + PANEL)
    assert told in found


PRICED = (
    '[[trim]]\nname = "lace"\nlength = "9"\nprice = "2 per yd"\n'
    '[[trim]]\nname = "cord"\nlength = "9"\nprice = "2 %s"\n'
    '[[notion]]\nname = "buttons"\nsold = [{ put_up = "pack of 6", price = "3 each" }]\n'
    '[[thread]]\nname = "thread"\nsold = [{ put_up = "spool of 250 yd", price = "3 each" }]\n'
)


def test_one_missing_currency_is_one_complaint_for_the_garment() -> None:
    (found,) = complaints(HEADING + PANEL + PRICED % "per yd")
    assert found == (
        "apron.toml, line 2: the plan states prices, and in no currency; "
        'add currency = "USD", or another, to [garment]'
    )
    # what else is wrong with a price is told together with it
    told = complaints(HEADING + PANEL + PRICED % "each")
    assert [("no currency" in one, "priced by its length" in one) for one in told] == [
        (True, False),
        (False, True),
    ]


def test_prices_in_another_currency_than_the_catalogs_are_one_complaint(tmp_path: Path) -> None:
    (tmp_path / "items.csv").write_text("item,name,kind\nlawn,Lawn,fabric\n")
    (tmp_path / "offers.csv").write_text("item,width,price,per,currency\nlawn,44 in,8,yd,EUR\n")
    dollars = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    (found,) = complaints(dollars + PANEL + PRICED % "per yd", tmp_path)
    assert "the plan's prices are in USD and the catalog's in EUR" in found


def test_a_plan_states_its_own_widths_and_prices() -> None:
    own = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"').replace(
        '["45 in"]', '["45 in", { width = "60 in", usable = "58", price = "11 per yd" }]'
    )
    found = estimate(plan(own + 'price = "8.40 per yd"\n' + PANEL))
    offers = found.fabrics[0].need.terms.offers
    assert [(one.price, one.usable) for one in offers] == [
        (Decimal("8.40"), None), (Decimal("11"), length("58"))
    ]  # fmt: skip


def test_one_width_is_as_good_as_a_list_of_one() -> None:
    one = HEADING.replace('widths = ["45 in"]', 'width = "45 in"')
    assert bought(estimate(plan(one + PANEL)), "print").width == length("45 in")


def test_shops_sell_metric_plans_by_the_metre() -> None:
    metric = HEADING.replace('"apron"', '"apron"\nunit = "cm"')
    found = estimate(plan(metric + PANEL))
    assert found.purchases[0].buy.unit == "m"
    assert in_print(PANEL).purchases[0].buy.unit == "yd"


def test_a_ribbon_in_several_widths_needs_one_to_be_named() -> None:
    shop = catalog(
        [{"item": "ribbon", "kind": "trim"}],
        [
            {"item": "ribbon", "width": "1/4 in", "price": "1", **YARDS},
            {"item": "ribbon", "width": "5/8 in", "price": "2", **YARDS},
        ],
    )
    ties = '[[trim]]\nname = "ties"\nbuy = "ribbon"\nlength = "40"\n'
    assert refused(HEADING, shop, ties) == (
        "'ribbon' is sold in several widths; add width, one of 1/4 in, 5/8 in"
    )
    assert refused(HEADING, shop, ties + 'width = "1"\n') == (
        "'ties' is not on offer 1 in wide; the widths are 1/4 in, 5/8 in"
    )
    found = estimate(plan(HEADING + PANEL + ties + 'width = "5/8"\n'), shop)
    assert bought(found, "ties").width == length("5/8 in")


def test_rows_start_on_the_repeat_that_the_print_has_after_washing() -> None:
    text = HEADING.replace('"45 in"]', '"45 in"]\nrepeat = "10"\nshrinkage = "5 %"') + SLEEVES
    # each sleeve is 22 1/4 long and 15 3/4 wide; three side by side would need 47 1/4, so one pair
    tall = text.replace('"14 1/2"', '"29"')
    (choice,) = estimate(plan(tall)).fabrics
    starts = [row.start for row in choice.chosen.laid.cuts[0].rows]
    assert starts == [0, 3 * length("9 1/2").ticks]


def test_a_print_that_is_not_matched_has_its_repeat_written_as_zero() -> None:
    text = HEADING.replace('"45 in"]', '"45 in"]\nrepeat = "0"') + PANEL
    (choice,) = estimate(plan(text)).fabrics
    assert choice.need.terms.repeat is None
    assert isinstance(choice.chosen.needed, Length)
