"""A list against a ceiling: tax on the goods, contingency on all of it, each to the cent."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.bill import Funds, bill_of
from estimator.reports.budget_papers import budget_table, savings_table
from estimator.reports.page import page_text
from estimator.reports.tables import text_of
from estimator.shops import Shops
from estimator.would_save import would_save
from estimator.written import length
from tests.plans import catalog, plan
from tests.tiers import tier


def money(text: str) -> Decimal:
    return Decimal(text)


def test_tax_is_on_the_goods_and_contingency_on_goods_charges_and_tax() -> None:
    # 5 % of 591.24 = 29.562; 10 % of 591.24 + 7.50 + 29.56 = 62.83
    budget = Funds(money("700"), Fraction(1, 20), Fraction(1, 10), money("42.50"))
    found = bill_of(money("591.24"), budget, "USD", money("7.50"))
    assert (found.tax, found.contingency) == (money("29.56"), money("62.83"))
    assert (found.in_all, found.in_all + found.spent) == (money("691.13"), money("733.63"))
    assert found.left == money("-33.63")


def test_without_a_ceiling_nothing_is_left_or_over() -> None:
    assert bill_of(money("2"), Funds(spent=money("1")), "USD").left is None


NET = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
[[fabric]]
name = "net"
widths = [{{ width = "54 in", price = "4 per yd" }}, {{ width = "72 in", price = "4.50 per yd" }}]
selvedge = "0"
{terms}
[[piece]]
name = "panel"
quantity = 2
cut = "net"
sizes = "cut"
width = "36"
length = "34"
"""


def budgeted(terms: str, ceiling: str = "10") -> Job:
    order = GarmentOrder(plan(NET.format(terms=terms)))
    return Job((order,), funds=Funds(money(ceiling)))


def test_a_width_that_is_fixed_tells_what_another_would_save() -> None:
    # 54 in: one panel a row, 68 + 2 in = 1 yd 34 in: 2 yd at 4.00; 72 in: 34 + 2 = 1 yd at 4.50
    found = estimate(budgeted('width = "54 in"'))
    assert [(one.change, one.money) for one in would_save(found)] == [
        ("net: 72 in wide", money("3.50"))
    ]
    table = savings_table(found)
    assert table is not None
    assert table.rows == (("net: 72 in wide", money("3.50")),)


def test_what_is_as_cheap_as_can_be_has_nothing_to_save() -> None:
    assert would_save(estimate(budgeted(""))) == ()


def test_the_table_ends_in_what_is_left_or_over() -> None:
    left = budget_table(estimate(budgeted("")))
    over = budget_table(estimate(budgeted("", ceiling="4")))
    assert left is not None
    assert over is not None
    assert left.rows[-1] == ("Left", money("5.50"))
    assert [text_of(value, left.unit) for _, value in left.rows] == [
        "4.50",
        "4.50",
        "10.00",
        "5.50",
    ]
    assert over.rows[-1] == ("Over", money("0.50"))
    assert over.notes == ("It is 0.50 USD over the ceiling.",)


def test_rows_asked_for_tell_what_a_close_layout_would_save() -> None:
    # pieces of 30 x 20 and 15 x 40 beside two of 15 x 20: rows end at 60, a close layout at 40
    text = """
[garment]
name = "Apron"
unit = "in"
currency = "USD"
layout = "straight rows"
[[fabric]]
name = "check"
widths = ["45 in"]
selvedge = "0"
straightening = "0"
price = "9 per yd"
step = "1 in"
""" + "".join(
        f'[[piece]]\nname = "p{number}"\ncut = "check"\nsizes = "cut"\n'
        f'width = "{width}"\nlength = "{long}"\n'
        for number, (width, long) in enumerate([(30, 25), (15, 40), (30, 26), (15, 11)])
    )
    found = estimate(Job((GarmentOrder(plan(text)),), funds=Funds(spent=money("0"))))
    (saving,) = would_save(found)
    assert saving.change == "check: a close layout"
    free = estimate(plan(text.replace('layout = "straight rows"\n', "")))
    assert saving.money == found.cost - free.cost > 0


def changes(found: Estimate) -> list[tuple[str, str]]:
    return [(one.change, str(one.money)) for one in would_save(found)]


def test_another_width_of_a_fabric_that_sets_a_ring_counts_the_trim_round_it() -> None:
    # two widths of 60 in are joined to a ring of 120 - 4 x 5/8 in, two of 45 in to 90 - 2 1/2 in:
    # lace with an overlap of 1/2 in and 5 % waste takes 123.9 and 92.4 in, 3 1/2 and 2 5/8 yd
    text = tier(lace="9")
    free = estimate(plan(text))
    found = estimate(plan(text.replace('name = "voile"', 'name = "voile"\nwidth = "60 in"')))
    assert free.fabrics[0].chosen.width == length("45 in")
    assert changes(found) == [("voile: 45 in wide", str(found.cost - free.cost))]
    assert found.cost - free.cost == money("7.87")  # 7/8 yd of lace


def test_a_join_in_a_run_tells_how_many_cards_it_would_save() -> None:
    # three runs of 50 in lie on three cards of 78 in; one joined, their 150 1/2 in go on two
    text = """
[garment]
name = "Apron"
currency = "USD"
overlap = "1/2"
[[trim]]
name = "braid"
length = "50"
quantity = 3
ends = "raw"
waste = "0 %"
sold = [{ put_up = "card of 78 in", price = "3 each" }]
"""
    found = estimate(plan(text))
    assert found.cost == money("9")
    assert changes(found) == [("braid: a join in a run, on 2 × card of 78 in", "3.00")]


def test_going_to_the_fewest_shops_tells_which_trim_is_cheaper_by_the_spool_elsewhere() -> None:
    # 20 yd of braid: 20.00 off the roll at Quay, 8.00 on a spool at Weir, whose visit takes 1.50
    items = [{"item": "braid", "kind": "trim"}, {"item": "bone", "kind": "notion"}]
    offers = [
        {"item": "braid", "shop": "Quay", "price": "1", "per": "yd", "currency": "USD"},
        {"item": "braid", "shop": "Weir", "put_up": "spool of 25 yd", "price": "8",
         "currency": "USD"},
        {"item": "bone", "shop": "Quay", "put_up": "each", "price": "1", "currency": "USD"},
    ]  # fmt: skip
    text = (
        '[garment]\nname = "Coat"\n[[notion]]\nname = "bone"\nbuy = "bone"\n'
        '[[trim]]\nname = "braid"\nbuy = "braid"\nlength = "20 yd"\nends = "raw"\nwaste = "0 %"\n'
    )
    order = GarmentOrder(plan(text))
    shops = Shops({"Weir": money("1.50")}, fewest=True)
    found = estimate(Job((order,), catalog(items, offers), shops=shops))
    assert changes(found) == [
        ("braid: 1 × spool of 25 yd at Weir", "10.50"),
        ("going to Quay, Weir", "10.50"),
    ]


def test_the_page_shows_the_budget_without_being_scrolled_and_no_table_of_nothing() -> None:
    text = page_text(estimate(budgeted("")))
    (budget,) = re.findall(r"<section[^>]*>\s*<h2[^>]*>The budget</h2>.*?</section>", text, re.S)
    assert "Still to spend" in budget
    assert 'class="wide"' not in budget
    (saves,) = re.findall(r"<section[^>]*>\s*<h2[^>]*>What would save.*?</section>", text, re.S)
    assert "Nothing that was looked at would save money" in saves.replace("\N{NO-BREAK SPACE}", " ")
    assert "<table" not in saves
