"""The least total: together, with a stash, and with a shop more, never more than without.

Shops with price breaks, least cuts, bolts that end, cards, packs and delivery charges, drawn at
random; whatever they offer, the other answer is always there to be taken.
"""

from __future__ import annotations

import os
from dataclasses import replace
from decimal import Decimal

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator import Catalog, Estimate, GarmentOrder, Job, estimate
from estimator.shops import Shops
from estimator.stash import InHand, Stash
from estimator.together import each_apart, settled_together
from tests.plans import catalog, plan

ITEMS = [
    {"item": "cloth", "kind": "fabric", "selvedge": "0.5 in"},
    {"item": "braid", "kind": "trim"},
    {"item": "bone", "kind": "notion"},
    {"item": "yarn", "kind": "thread"},
]
EXAMPLES = int(os.environ.get("EXAMPLES", "12"))
SHOPS = ("Quay", "Weir", "Mill")
prices = st.integers(20, 900).map(lambda cents: f"{cents / 100:.2f}")
lengths = st.sampled_from(["10 in", "20 in", "1 yd", "2 yd", "3 1/2 yd"])
Row = dict[str, str]
TERMS: list[Row] = [
    {}, {}, {"minimum": "1 yd"}, {"step": "1/2 yd"}, {"bolt": "4 yd"},
    {"minimum": "2 yd", "step": "1 yd"},
]  # fmt: skip


@st.composite
def of_cloth(draw: st.DrawFn, shop: str) -> list[Row]:
    """One or two widths, some with a least cut, a bolt that ends, a lower price from a length."""
    found = []
    for width in draw(st.lists(st.sampled_from(["36 in", "45 in", "150 cm"]), min_size=1,
                               max_size=2, unique=True)):  # fmt: skip
        row = {"item": "cloth", "width": width, "price": draw(prices), "per": "yd"}
        row |= draw(st.sampled_from(TERMS))
        found.append(row)
        if draw(st.booleans()):
            lower = f"{Decimal(row['price']) * draw(st.integers(30, 99)) / 100:.2f}"
            found.append({**row, "price": lower, "from_quantity": draw(lengths)})
    return [{**row, "shop": shop, "currency": "USD"} for row in found]


@st.composite
def of_small_things(draw: st.DrawFn, shop: str) -> list[Row]:
    """Braid off the roll and on cards, buttons in packs, thread on spools; some from a quantity."""
    ways = {
        "braid": ["by the length", "card of 2 yd", "card of 5 yd", "spool of 10 m"],
        "bone": ["each", "pack of 4", "pack of 10"],
        "yarn": ["spool of 100 yd", "spool of 500 m"],
    }
    found = []
    for item, put_ups in ways.items():
        for put_up in draw(st.lists(st.sampled_from(put_ups), min_size=1, max_size=2, unique=True)):
            row = {"item": item, "put_up": put_up, "price": draw(prices)}
            by_length = put_up == "by the length"
            row |= {"per": "yd"} if by_length else {}
            found.append(row)
            if draw(st.booleans()):
                lower = f"{Decimal(row['price']) * draw(st.integers(30, 99)) / 100:.2f}"
                least = draw(lengths) if by_length else str(draw(st.integers(2, 6)))
                found.append({**row, "price": lower, "from_quantity": least})
    return [{**row, "shop": shop, "currency": "USD"} for row in found]


@st.composite
def at_shops(draw: st.DrawFn) -> dict[str, list[Row]]:
    """What each shop offers; the first has everything, the others what they happen to have."""
    found = {}
    for shop in SHOPS[: draw(st.integers(1, 3))]:
        rows = [*draw(of_cloth(shop)), *draw(of_small_things(shop))]
        kept = draw(st.sets(st.sampled_from(["cloth", "braid", "bone", "yarn"]), min_size=1))
        found[shop] = rows if not found else [row for row in rows if row["item"] in kept]
    return found


@st.composite
def garments(draw: st.DrawFn) -> GarmentOrder:
    text = '[garment]\nname = "Coat"\nunit = "in"\n[[fabric]]\nname = "cloth"\nbuy = "cloth"\n'
    for number in range(draw(st.integers(1, 3))):
        text += (
            f'[[piece]]\nname = "p{number}"\ncut = "cloth"\nquantity = {draw(st.integers(1, 5))}\n'
            f'width = "{draw(st.integers(4, 33))}"\nlength = "{draw(st.integers(4, 50))}"\n'
        )
    text += (
        f'[[trim]]\nname = "braid"\nbuy = "braid"\nlength = "{draw(st.integers(4, 70))}"\n'
        f'quantity = {draw(st.integers(1, 4))}\n[[notion]]\nname = "bone"\nbuy = "bone"\n'
        f'quantity = {draw(st.integers(1, 17))}\n[[thread]]\nname = "yarn"\nbuy = "yarn"\n'
    )
    return GarmentOrder(plan(text), count=draw(st.sampled_from([1, 1, 1, 3])))


@st.composite
def stashes(draw: st.DrawFn) -> Stash:
    rows: list[Row] = []
    for _ in range(draw(st.integers(0, 4))):
        rows.append({"item": "cloth", "width": draw(st.sampled_from(["36 in", "45 in", "60 in"])),
                     "length": draw(lengths), "count": str(draw(st.integers(1, 3)))})  # fmt: skip
    for _ in range(draw(st.integers(0, 3))):
        rows.append({"item": "braid", "length": draw(lengths)})
    for _ in range(draw(st.integers(0, 2))):
        rows.append({"item": "bone", "count": str(draw(st.integers(1, 9)))})
    for _ in range(draw(st.integers(0, 2))):
        rows.append({"item": "yarn", "length": f"{draw(st.integers(1, 600))} yd"})
    return Stash({n: InHand.model_validate(row) for n, row in enumerate(rows, start=2)})


charges = st.dictionaries(
    st.sampled_from(SHOPS), st.integers(0, 1500).map(lambda cents: Decimal(cents) / 100)
)


def of(offers: dict[str, list[Row]]) -> Catalog:
    return catalog(ITEMS, [row for rows in offers.values() for row in rows])


def planned(job: Job) -> Estimate:
    """As the files of a show are estimated: together, beside each garment alone."""
    new = job.bought_new
    if len(job.garments) == 1:
        return estimate(job)
    return settled_together(job, estimate(new), [estimate(one) for one in each_apart(new)])


@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(garments(), min_size=1, max_size=2), at_shops(), stashes(), charges)
def test_a_stash_never_makes_a_list_dearer_whatever_the_shops_ask(
    orders: list[GarmentOrder],
    offers: dict[str, list[Row]],
    stash: Stash,
    asked: dict[str, Decimal],
) -> None:
    job = Job(tuple(orders), of(offers), shops=Shops(asked))
    assert planned(replace(job, stash=stash)).total <= planned(job).total


@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(garments(), min_size=1, max_size=2), at_shops(), stashes(), charges)
def test_one_shop_more_never_makes_a_list_dearer_whatever_it_asks(
    orders: list[GarmentOrder],
    offers: dict[str, list[Row]],
    stash: Stash,
    asked: dict[str, Decimal],
) -> None:
    job = Job(tuple(orders), of(offers), stash=stash, shops=Shops(asked))
    fewer = dict(list(offers.items())[:-1]) or offers
    assert planned(job).total <= planned(replace(job, catalog=of(fewer))).total


@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(garments(), min_size=2, max_size=3), at_shops(), charges)
def test_together_never_costs_more_than_apart_whatever_the_shops_ask(
    orders: list[GarmentOrder], offers: dict[str, list[Row]], asked: dict[str, Decimal]
) -> None:
    job = Job(tuple(orders), of(offers), shops=Shops(asked))
    apart = [estimate(one) for one in each_apart(job)]
    assert planned(job).total <= sum(one.total for one in apart)
