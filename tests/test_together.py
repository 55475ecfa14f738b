"""Garments planned together: never dearer than each alone, and what that saves is told."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate
from estimator.buying.types import total_cost
from estimator.job import GarmentOrder, Job
from estimator.reports.savings import savings
from estimator.stash import InHand, Stash
from estimator.together import beside_each_apart, each_apart, settled_together
from estimator.workers import estimates_of
from tests.plans import bought, catalog, plan

APRON = """
[garment]
name = "Apron {number}"
unit = "in"
currency = "USD"
[[fabric]]
name = "check"
widths = [{{ width = "45 in", price = "6 per yd" }}, {{ width = "60 in", price = "8.50 per yd" }}]
[[piece]]
name = "panel"
quantity = {quantity}
cut = "check"
width = "{width}"
length = "{long}"
[[piece]]
name = "pocket"
quantity = 2
cut = "check"
width = "7"
length = "8"
grain = "either"
[[trim]]
name = "braid"
along = "panel: bottom"
price = "1.20 per yd"
"""


def job(*panels: tuple[int, int, int]) -> Job:
    plans = [
        APRON.format(number=number, quantity=quantity, width=width, long=long)
        for number, (quantity, width, long) in enumerate(panels)
    ]
    return Job(tuple(GarmentOrder(plan(text)) for text in plans))


def together(one: Job, processes: int = 1) -> tuple[Estimate, list[Estimate]]:
    whole, *apart = estimates_of((one, *each_apart(one)), processes)
    return beside_each_apart(whole, apart), apart


panels = st.tuples(st.integers(1, 4), st.integers(5, 42), st.integers(5, 60))


@settings(max_examples=40, deadline=None)
@given(st.lists(panels, min_size=2, max_size=4))
def test_together_never_costs_more_than_apart(asked: list[tuple[int, int, int]]) -> None:
    found, apart = together(job(*asked))
    assert found.cost <= sum((one.cost for one in apart), Decimal(0))
    saved = sum((one.money or Decimal(0) for one in found.saved), Decimal(0))
    assert saved == sum((one.cost for one in apart), Decimal(0)) - found.cost


def test_what_is_saved_is_told_in_cloth_and_money() -> None:
    # each alone: a panel of 20 1/4 x 30 1/4 in and two ends; together they lie beside each other
    found, apart = together(job((1, 19, 29), (1, 19, 29)))
    (cloth,) = (one for one in found.saved if one.title == "check")
    alone = sum((one.purchases[0].buy.sold_units for one in apart), Fraction(0))
    assert cloth.units == alone - found.purchases[0].buy.sold_units > 0
    assert cloth.money == total_cost(o.purchases[0] for o in apart) - found.purchases[0].buy.cost


def test_the_same_comes_out_of_one_process_and_of_two() -> None:
    many = job(*((1, 10 + number, 20 + number) for number in range(7)))
    one, two = together(many)[0], together(many, processes=2)[0]
    assert (one.purchases, one.saved) == (two.purchases, two.saved)


def test_one_garment_saves_nothing() -> None:
    found, _ = together(job((1, 19, 29)))
    assert found.saved == ()


CUT_OUT = """
[garment]
name = "Apron {number}"
unit = "in"
currency = "USD"
[[fabric]]
name = "check"
widths = [{{ width = "45 in", price = "6 per yd" }}]
[[piece]]
name = "panel"
cut = "check"
width = "40"
length = "20"
"""
SEWN = (
    CUT_OUT
    + """\
edges = {{ top = "raw", left = "raw", right = "serged", bottom = "rolled hem" }}
[[thread]]
name = "red"
sews = "hems"
waste = 0
sold = [{{ put_up = "spool of 200 in", price = "0.50 each" }}]
[[thread]]
name = "blue"
sews = "overedging"
waste = 0
sold = [{{ put_up = "cone of 1000 yd", price = "2.00 each" }}]
"""
)


def two_sewn() -> Job:
    return Job(tuple(GarmentOrder(plan(SEWN.format(number=number))) for number in range(2)))


def dearer(whole: Estimate, *names: str) -> Estimate:
    """The same with other prices for some of its lines, of 1000 for each."""
    lines = []
    for line in whole.purchases:
        price = Decimal(1000) if line.title in names else line.buy.offer.price
        offer = line.buy.offer.model_copy(update={"price": price})
        lines.append(replace(line, buy=replace(line.buy, offer=offer)))
    return replace(whole, purchases=tuple(lines))


def test_each_thread_is_told_by_itself_in_what_is_saved() -> None:
    # a hem of 40 in takes 100 in, of which a spool holds two; the overlocker has three cones
    found, _ = together(two_sewn())
    threads = {one.title: (one.units, one.money) for one in found.saved if one.title != "check"}
    assert threads == {
        "red": (Fraction(1), Decimal("0.50")),
        "blue": (Fraction(3), Decimal("6.00")),
    }


def test_a_thread_that_costs_less_apart_leaves_the_others_together() -> None:
    one = two_sewn()
    whole, *apart = estimates_of((one, *each_apart(one)), 1)
    found = beside_each_apart(dearer(whole, "red"), apart)
    lines = [(line.title, line.buy.bought) for line in found.purchases if line.title != "check"]
    assert lines == [("blue", 3), ("red", 1), ("red", 1)]


def beside_stash(**row: str) -> Estimate:
    one = two_sewn()
    whole, *apart = estimates_of((one, *each_apart(one)), 1)
    in_hand = Stash({2: InHand.model_validate(row)})
    return settled_together(replace(one, stash=in_hand), whole, apart)


def test_thread_wholly_from_the_stash_is_no_saving_of_planning_together() -> None:
    found = beside_stash(item="red", count="2")
    assert not bought(found, "red").buy.bought
    assert "blue: 3 × cone of 1000 yd and 6.00 USD less." in savings(found)
    assert not any(line.startswith("red") for line in savings(found))
    assert savings(found)[0] == "6.00 USD less than garment by garment."


def test_savings_beside_a_stash_say_that_they_are_those_of_buying_all_new() -> None:
    said = "Reckoned as if all were bought new, with nothing from the stash."
    assert said in savings(beside_stash(item="red", count="2"))
    assert said not in savings(beside_stash(item="green", count="2"))


def test_two_colours_of_one_thing_are_told_apart_in_what_is_saved() -> None:
    ribbon = '[[trim]]\nname = "{0} ribbon"\nbuy = "rib"\ncolour = "{0}"\nlength = "30"\n'
    shop = catalog(
        [{"item": "rib", "name": "Ribbon", "kind": "trim"}],
        [{"item": "rib", "put_up": "spool of 5 yd", "price": "4.00", "currency": "USD"}],
    )
    text = CUT_OUT.split("[[fabric]]")[0] + ribbon.format("red") + ribbon.format("gold")
    orders = tuple(GarmentOrder(plan(text.format(number=number))) for number in range(2))
    found, _ = together(Job(orders, shop))
    assert savings(found)[1:] == (
        "Ribbon, red: 1 × spool of 5 yd and 4.00 USD less.",
        "Ribbon, gold: 1 × spool of 5 yd and 4.00 USD less.",
    )


def test_what_is_bought_apart_stands_in_the_order_of_the_list_together() -> None:
    names = [f"button {number}" for number in range(8)]
    notion = '[[notion]]\nname = "{}"\nquantity = 3\nprice = "0.20 each"\n'
    buttons = "".join(map(notion.format, names))
    orders = tuple(GarmentOrder(plan(CUT_OUT.format(number=n) + buttons)) for n in range(2))
    one = Job(orders)
    whole, *apart = estimates_of((one, *each_apart(one)), 1)
    found = beside_each_apart(dearer(whole, *names), apart)
    assert [line.title for line in found.purchases if line.title in names] == [
        name for name in names for _ in apart
    ]
