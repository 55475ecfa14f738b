"""Where each thing is bought: the least total with what visits cost, or the fewest shops."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from itertools import combinations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from estimator import Catalog, Estimate, GarmentOrder, Job, estimate
from estimator.shops import Shops
from estimator.stash import InHand, Stash
from estimator.together import each_apart, settled_together
from tests.plans import catalog, plan

HEADING = '[garment]\nname = "Apron"\nunit = "in"\n'
CLOTH = """
[[fabric]]
name = "check"
buy = "check"
[[piece]]
name = "panel"
quantity = 3
cut = "check"
width = "30"
length = "{long}"
"""
BUTTON = '[[notion]]\nname = "{item}"\nbuy = "{item}"\nquantity = {count}\n'

Price = tuple[str, str, str]
"""Item, shop, and the price of a yard or of one; without one nothing."""


def shops_catalog(*prices: Price, width: str = "45 in") -> Catalog:
    names = sorted({item for item, _, _ in prices})
    items = [{"item": one, "kind": "fabric" if one == "check" else "notion"} for one in names]
    offers = []
    for item, shop, price in prices:
        row = {"item": item, "shop": shop}
        row |= {"price": price, "currency": "USD"} if price else {}
        row |= {"width": width, "per": "yd"} if item == "check" else {"put_up": "each"}
        offers.append(row)
    return catalog(items, offers)


def bought_at(text: str, shop: Catalog, *, fewest: bool = False, **charges: str) -> Estimate:
    own = Shops({name: Decimal(money) for name, money in charges.items()}, fewest)
    return estimate(Job((GarmentOrder(plan(HEADING + text)),), shop, shops=own))


def where(found: Estimate) -> list[str]:
    return sorted(one.shop for one in found.visits)


BUTTONS = BUTTON.format(item="bone", count=10) + BUTTON.format(item="brass", count=10)
TWO_SHOPS = shops_catalog(
    ("bone", "Quay", "1.00"),
    ("bone", "Weir", "0.90"),
    ("brass", "Quay", "1.00"),
    ("brass", "Weir", "1.20"),
)


def test_a_second_shop_is_not_worth_a_visit_that_costs_more_than_it_saves() -> None:
    # apart 9 + 10 = 19; at Quay alone 20, at Weir alone 21
    assert bought_at(BUTTONS, TWO_SHOPS, Quay="0.50", Weir="0.50").total == Decimal("20.00")
    dear = bought_at(BUTTONS, TWO_SHOPS, Quay="2", Weir="2")
    assert (dear.cost, dear.charges, where(dear)) == (Decimal(20), Decimal(2), ["Quay"])
    cheap = bought_at(BUTTONS, TWO_SHOPS, Quay="5", Weir="1")
    assert (cheap.total, where(cheap)) == (Decimal(22), ["Weir"])


def test_without_charges_each_thing_is_bought_where_it_is_cheapest() -> None:
    assert bought_at(BUTTONS, TWO_SHOPS).cost == Decimal("19.00")


def test_the_fewest_shops_are_gone_to_at_the_least_that_they_ask() -> None:
    found = bought_at(BUTTONS, TWO_SHOPS, fewest=True)
    assert (found.cost, where(found)) == (Decimal("20.00"), ["Quay"])


@pytest.mark.parametrize("fewest", [False, True])
def test_a_shop_that_states_no_price_is_not_taken_for_a_cheap_one(fewest: bool) -> None:
    shop = shops_catalog(("bone", "Quay", ""), ("bone", "Weir", "0.90"), ("brass", "Quay", "1.00"))
    bone = bought_at(BUTTON.format(item="bone", count=10), shop, fewest=fewest, Weir="3")
    assert (bone.total, bone.unpriced, where(bone)) == (Decimal(12), 0, ["Weir"])
    # and not where it is gone to for something else
    both = bought_at(BUTTONS, shop, fewest=fewest, Weir="3")
    assert (both.total, both.unpriced, where(both)) == (Decimal(22), 0, ["Quay", "Weir"])


def test_what_has_a_price_nowhere_is_bought_where_a_visit_takes_least() -> None:
    shop = shops_catalog(("bone", "Quay", ""), ("bone", "Weir", ""))
    found = bought_at(BUTTON.format(item="bone", count=10), shop, Quay="2", Weir="1")
    assert (found.total, found.unpriced, where(found)) == (Decimal(1), 1, ["Weir"])


def test_a_fabric_takes_the_width_that_the_shop_visited_sells() -> None:
    items = [{"item": "check", "kind": "fabric"}, {"item": "bone", "kind": "notion"}]
    cloth = {"item": "check", "per": "yd", "currency": "USD"}
    offers = [
        {**cloth, "shop": "Quay", "width": "45 in", "price": "6"},
        {**cloth, "shop": "Weir", "width": "60 in", "price": "9"},
        {"item": "bone", "shop": "Weir", "put_up": "each", "price": "1", "currency": "USD"},
    ]
    text = CLOTH.format(long="30") + BUTTON.format(item="bone", count=4)
    free = bought_at(text, catalog(items, offers))
    charged = bought_at(text, catalog(items, offers), Quay="20", Weir="1")
    assert [choice.chosen.width for choice in free.fabrics] != [
        choice.chosen.width for choice in charged.fabrics
    ]
    assert where(charged) == ["Weir"]
    assert "shops that are visited" in charged.fabrics[0].reason


SHOPS = ("Quay", "Weir", "Lock", "Mill")
prices = st.integers(50, 200).map(lambda cents: f"{cents / 100:.2f}")
offered = st.dictionaries(
    st.tuples(st.sampled_from(["bone", "brass", "check"]), st.sampled_from(SHOPS)),
    prices,
    min_size=1,
)
charges = st.dictionaries(st.sampled_from(SHOPS), st.sampled_from(["0", "1.50", "4", "9"]))


def needs_of(rows: dict[tuple[str, str], str]) -> str:
    items = {item for item, _ in rows}
    return "".join(
        CLOTH.format(long="20") if item == "check" else BUTTON.format(item=item, count=7)
        for item in sorted(items)
    )


@settings(max_examples=60, deadline=None)
@given(offered, charges, st.sampled_from(["bone", "brass", "check"]), prices, st.booleans())
def test_one_shop_more_on_offer_never_costs_more(
    rows: dict[tuple[str, str], str],
    charged: dict[str, str],
    item: str,
    price: str,
    other_width: bool,
) -> None:
    prices_asked = [(name, shop, price) for (name, shop), price in rows.items()]
    text = needs_of(rows)
    before = bought_at(text, shops_catalog(*prices_asked), **charged)
    own = shops_catalog(*prices_asked)
    more = shops_catalog((item, "Bridge", price), width="54 in" if other_width else "45 in")
    assume(item in own.items)
    offers = {**own.offers, item: (*own.offers[item], *more.offers[item])}
    after = bought_at(text, Catalog(own.items, offers, "USD"), **charged, Bridge="2")
    assert after.total <= before.total


@settings(max_examples=60, deadline=None)
@given(offered, charges)
def test_no_other_set_of_shops_is_cheaper_and_none_is_smaller(
    rows: dict[tuple[str, str], str], charged: dict[str, str]
) -> None:
    buttons = {key: price for key, price in rows.items() if key[0] != "check"}
    assume(buttons)
    shop = shops_catalog(*((item, name, price) for (item, name), price in buttons.items()))
    items = {item for item, _ in buttons}
    bills = {}
    for count in range(1, len(SHOPS) + 1):
        for some in combinations(SHOPS, count):
            asked = [
                [Decimal(price) * 7 for (one, name), price in buttons.items()
                 if one == item and name in some]
                for item in items
            ]  # fmt: skip
            if all(asked):
                visits = sum(Decimal(charged.get(name, "0")) for name in some)
                bills[some] = sum(map(min, asked)) + visits
    least = bought_at(needs_of(buttons), shop, **charged)
    fewest = bought_at(needs_of(buttons), shop, fewest=True, **charged)
    assert least.total == min(bills.values())
    size = min(map(len, bills))
    assert len(fewest.visits) == size
    assert fewest.total == min(total for some, total in bills.items() if len(some) == size)


def test_a_spool_in_hand_does_not_send_for_the_next_one_to_a_shop_that_charges_more() -> None:
    # two spools are needed and one is in hand; the other is 2.50 at Mill, where the bones are, and
    # 2.00 at Quay, whose visit takes 9.00
    items = [{"item": "yarn", "kind": "thread"}, {"item": "bone", "kind": "notion"}]
    offers = [
        {"item": "yarn", "shop": "Quay", "put_up": "spool of 100 yd", "price": "2.00"},
        {"item": "yarn", "shop": "Mill", "put_up": "spool of 100 yd", "price": "2.50"},
        {"item": "bone", "shop": "Mill", "put_up": "each", "price": "1.00"},
    ]
    shop = catalog(items, [{**row, "currency": "USD"} for row in offers])
    text = BUTTON.format(item="bone", count=1) + (
        '[[fabric]]\nname = "check"\nwidths = ["45 in"]\nprice = "1 per yd"\n'
        '[[piece]]\nname = "strip"\nquantity = 18\ncut = "check"\nwidth = "2"\nlength = "100"\n'
        '[[thread]]\nname = "yarn"\nbuy = "yarn"\n'
    )
    own = Stash({2: InHand.model_validate({"item": "yarn", "count": "1"})})
    job = Job((GarmentOrder(plan(HEADING + text)),), shop, shops=Shops({"Quay": Decimal(9)}))
    new, found = estimate(job), estimate(replace(job, stash=own))
    assert where(new) == where(found) == ["Mill"]
    assert new.total - found.total == Decimal("2.50")


@pytest.mark.parametrize("count", [9, 12])
def test_more_shops_than_are_tried_in_all_sets_still_give_an_answer(count: int) -> None:
    rows = [("bone", f"Shop {number}", f"1.{number:02}") for number in range(count)]
    found = bought_at(BUTTON.format(item="bone", count=3), shops_catalog(*rows), fewest=True)
    assert [one.shop for one in found.visits] == ["Shop 0"]
    assert any("More than 8 shops sell" in remark for remark in found.remarks)


def test_up_to_eight_shops_nothing_has_to_be_said_of_how_they_are_weighed() -> None:
    rows = [("bone", f"Shop {number}", f"1.{number:02}") for number in range(8)]
    found = bought_at(BUTTON.format(item="bone", count=3), shops_catalog(*rows), fewest=True)
    assert not found.remarks


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.tuples(st.integers(5, 40), st.integers(10, 50)), min_size=2, max_size=3),
    charges,
)
def test_together_never_costs_more_than_each_garment_on_its_own_trip(
    asked: list[tuple[int, int]], charged: dict[str, str]
) -> None:
    shop = shops_catalog(
        ("check", "Quay", "6.00"), ("check", "Weir", "5.50"), ("bone", "Quay", "1.00")
    )
    orders = tuple(
        GarmentOrder(
            plan(
                HEADING.replace("Apron", f"Apron {number}")
                + CLOTH.format(long=long).replace('"30"', f'"{width}"')
                + BUTTON.format(item="bone", count=3)
            )
        )
        for number, (width, long) in enumerate(asked)
    )
    own = Shops({name: Decimal(money) for name, money in charged.items()})
    job = Job(orders, shop, shops=own)
    new = job.bought_new
    whole, apart = estimate(new), [estimate(one) for one in each_apart(new)]
    alone = [estimate(one) for one in each_apart(job)]
    found = settled_together(job, whole, apart)
    assert found.total <= sum((one.total for one in alone), Decimal(0))
