"""Spools and cones: the cheapest kind, whole packs, and a cone for each needle and looper."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.types import NOT_PROVED, Purchase
from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, bought, catalog, complaints, plan

PANEL = """
[[piece]]
name = "panel"
cut = "print"
width = "40"
length = "20"
edges = { top = "raw", left = "raw", right = "raw", bottom = "%s" }
"""
THREAD = '[[thread]]\nname = "blue"\nwaste = 0\n'


def spools(more: str, bottom: str = "rolled hem") -> Purchase:
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    return bought(estimate(plan(heading + PANEL % bottom + THREAD + more)), "blue")


def test_the_cheaper_kind_of_spool_is_taken() -> None:
    # A hem of 40 in takes 100 in: two spools of 60 in for 1.00, or one of 100 in for 0.90.
    sold = (
        'sold = [{ put_up = "spool of 60 in", price = "0.50 each" },'
        ' { put_up = "spool of 100 in", price = "0.90 each" }]\n'
    )
    line = spools(sold)
    assert (line.buy.bought, line.buy.unit) == (1, "spool of 100 in")
    assert line.buy.cost == Decimal("0.90")


def test_spools_of_several_sizes_hold_a_long_thread_for_less() -> None:
    # A hem of 40 in takes 100 in: two spools of 60 in for 1.00, or one of 60 and one of 40 for
    # 0.80. What the larger holds is taken off, and 40 in are left for the smaller.
    sold = (
        'sold = [{ put_up = "spool of 60 in", price = "0.50 each" },'
        ' { put_up = "spool of 40 in", price = "0.30 each" }]\n'
    )
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    found = estimate(plan(heading + PANEL % "rolled hem" + THREAD + sold))
    larger, smaller = (line for line in found.purchases if "blue" in line.names)
    assert (larger.buy.bought, larger.buy.unit) == (1, "spool of 60 in")
    assert (smaller.buy.bought, smaller.buy.unit) == (1, "spool of 40 in")
    assert (larger.needed, smaller.needed) == (length("60 in"), length("40 in"))
    assert smaller.key == f"{larger.key} / spool of 40 in"
    assert [step.result for step in larger.buy.steps[-2:]] == [length("60"), 1]
    assert [step.result for step in smaller.buy.steps[-2:]] == [length("40"), 1]
    assert larger.notes == ("together with 1 × spool of 40 in",)


def test_what_is_left_of_several_spools_is_on_the_smallest_and_packs_leave_whole_ones() -> None:
    # 100 in on one spool of 70 and one of 40 in: 10 in stay on the smaller.
    sold = (
        'sold = [{ put_up = "spool of 70 in", price = "0.50 each" },'
        ' { put_up = "spool of 40 in", price = "0.30 each" }]\n'
    )
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    found = estimate(plan(heading + PANEL % "rolled hem" + THREAD + sold))
    larger, smaller = (line for line in found.purchases if "blue" in line.names)
    assert (larger.needed, smaller.needed) == (length("70 in"), length("30 in"))
    assert (larger.buy.left, smaller.buy.left) == ((), (length("10 in"),))
    # A pack of three of 60 in leaves 20 in on the second, and the third whole.
    pack = spools('sold = [{ put_up = "pack of 3 x 60 in", price = "1.00 each" }]\n')
    assert pack.buy.left == (length("60 in"), length("20 in"))


def test_without_prices_the_least_thread_is_bought() -> None:
    # Two of 60 in are 120 in of thread, one of 150 in is more.
    sold = 'sold = [{ put_up = "spool of 150 in" }, { put_up = "spool of 60 in" }]\n'
    assert (spools(sold).buy.bought, spools(sold).buy.unit) == (2, "spool of 60 in")


def test_a_spool_that_just_holds_the_thread_is_enough() -> None:
    assert spools('sold = [{ put_up = "spool of 100 in" }]\n').buy.bought == 1
    assert spools('sold = [{ put_up = "spool of 99.99 in" }]\n').buy.bought == 2


def test_one_four_thread_overlocker_takes_four_cones() -> None:
    # 40 in x 18 = 720 in, on cones that would hold all of it.
    more = 'stitch = "514"\nsold = [{ put_up = "cone of 1000 m" }]\n'
    line = spools(more, "serged")
    assert line.needed == length("720 in")
    assert line.buy.bought == 4


def test_overedges_of_three_and_four_threads_share_the_overlockers_cones() -> None:
    text = (
        HEADING
        + PANEL % "serged"
        + '[[piece]]\nname = "side"\nquantity = 2\ncut = "print"\nwidth = "10"\nlength = "20"\n'
        'edges = { top = "raw", bottom = "raw", right = "raw" }\n'
        '[[seam]]\nedges = ["1 x side: left", "1 x side: left"]\nstitch = "514"\n'
        + THREAD
        + 'sold = [{ put_up = "cone of 1000 m" }]\n'
    )
    assert bought(estimate(plan(text)), "blue").buy.bought == 4


def test_a_lower_price_from_a_quantity_is_taken_where_it_costs_less() -> None:
    offers = [
        {"item": "poly", "put_up": "spool of 100 in", "price": "3", "currency": "USD"},
        {
            "item": "poly",
            "put_up": "spool of 100 in",
            "from_quantity": "2",
            "price": "1",
            "currency": "USD",
        },
    ]
    shop = catalog([{"item": "poly", "kind": "thread"}], offers)
    text = HEADING + PANEL % "rolled hem" + THREAD + 'buy = "poly"\n'
    line = bought(estimate(plan(text), shop), "blue")
    assert (line.buy.bought, line.buy.cost) == (2, Decimal("2.00"))


def test_each_line_of_a_thread_states_what_is_wound_off_its_own_spools() -> None:
    # An overedge of 40 in, four threads: 720 in, on four cones, three of them in a pack.
    sold = (
        'sold = [{ put_up = "pack of 3 x 1000 m", price = "2.00 each" },'
        ' { put_up = "cone of 1000 m", price = "1.00 each" }]\n'
    )
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    text = heading + PANEL % "serged" + THREAD + 'stitch = "514"\n' + sold
    lines = [line for line in estimate(plan(text)).purchases if "blue" in line.names]
    assert [(line.buy.bought, line.buy.unit) for line in lines] == [
        (1, "pack of 3 x 1000 m"), (1, "cone of 1000 m")
    ]  # fmt: skip
    pack, cone = (line.needed for line in lines)
    assert isinstance(pack, Length)
    assert isinstance(cone, Length)
    assert pack > cone > length("0 in")
    assert length("720 in") <= pack + cone <= length("720 in") + Length(1)


@pytest.mark.parametrize(
    ("put_up", "said"), [("each", "'blue' is sold each"), ("pack of 6", "sold as pack of 6")]
)
def test_an_offer_that_says_nothing_of_its_length_is_refused(put_up: str, said: str) -> None:
    (found,) = complaints(
        HEADING + PANEL % "rolled hem" + THREAD + f'sold = [{{ put_up = "{put_up}" }}]\n'
    )
    assert f"{said}, and nothing says how long one is" in found
    assert "fill in the length of one" in found


@given(st.integers(1, 400), st.sampled_from(["rolled hem", "serged"]))
def test_what_is_bought_holds_what_is_needed(inches: int, bottom: str) -> None:
    line = spools(f'sold = [{{ put_up = "spool of {inches} in" }}]\n', bottom)
    assert isinstance(line.needed, Length)
    assert length(f"{inches} in") * int(line.buy.sold_units) >= line.needed


def test_the_buyer_is_told_where_not_every_mix_of_spools_was_looked_at(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # 100 in on a spool of 60 in and one of 40 in for 0.85; one of 100 in costs 0.90
    sold = (
        'sold = [{ put_up = "spool of 60 in", price = "0.50 each" },'
        ' { put_up = "spool of 40 in", price = "0.35 each" },'
        ' { put_up = "spool of 100 in", price = "0.90 each" }]\n'
    )
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    mixed = estimate(plan(heading + PANEL % "rolled hem" + THREAD + sold)).purchases
    assert {line.buy.unit for line in mixed} >= {"spool of 60 in", "spool of 40 in"}
    assert not any(NOT_PROVED in line.buy.note for line in mixed)
    monkeypatch.setattr("estimator.buying.spools.MOST_STEPS", 0)
    line = spools(sold)
    assert (line.buy.bought, line.buy.unit) == (1, "spool of 100 in")
    assert NOT_PROVED in line.buy.note
