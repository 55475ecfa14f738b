"""What is in hand after a show: what was there, and what was bought, less what was used."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Estimate, GarmentOrder, Job, estimate
from estimator.measure import ZERO, Length, total
from estimator.stash import InHand, Stash
from estimator.stash_after import LEAST_KEPT, MARKS, changes, left_overs
from estimator.written import length
from tests.plans import bought, plan

HEADING = '[garment]\nname = "Apron"\nunit = "in"\ncurrency = "USD"\n'
CLOTH = """
[[fabric]]
name = "check"
widths = ["45 in"]
price = "6 per yd"
step = "1/2 yd"
bolt = "2 yd"
[[piece]]
name = "panel"
quantity = {count}
cut = "check"
sizes = "cut"
width = "40"
length = "20"
"""
THREAD = """
[[piece]]
name = "strip"
quantity = {count}
cut = "check"
width = "2"
length = "100"
[[fabric]]
name = "check"
widths = ["45 in"]
price = "6 per yd"
[[thread]]
name = "thread"
sold = [{{ put_up = "spool of 100 yd", price = "2 each" }}]
"""


def made(text: str, *rows: dict[str, str]) -> Estimate:
    in_hand = Stash({n: InHand.model_validate(row) for n, row in enumerate(rows, start=2)})
    return estimate(Job((GarmentOrder(plan(HEADING + text)),), stash=in_hand))


def left(found: Estimate, item: str) -> list[tuple[int, Length | None]]:
    return [(row.count, row.length) for row in left_overs(found) if row.item == item]


def test_each_of_several_cuts_leaves_its_own_end() -> None:
    # a bolt of 72 in takes three panels of 20 in and two ends of 1 in: 62 in, sold as 2 yd;
    # the fourth and fifth take 42 in, sold as 1 1/2 yd
    found = made(CLOTH.format(count=5))
    assert bought(found, "check").buy.sold_units == pytest.approx(3.5)
    assert left(found, "check") == [(1, length("10 in")), (1, length("12 in"))]


def test_each_of_several_cards_leaves_what_is_cut_from_none_of_its_runs() -> None:
    # 50 in from each of two cards of 72 in, and 30 in from a third
    text = """
[[trim]]
name = "braid"
length = "{}"
quantity = {}
ends = "raw"
waste = "0 %"
sold = [{{ put_up = "card of 2 yd", price = "1.50 each" }}]
"""
    found = made(text.format(50, 3))
    assert left(found, "braid") == [(3, length("22 in"))]
    assert left(made(text.format(70, 2)), "braid") == []  # ends of 2 in are not worth a row


def test_ribbon_by_the_length_leaves_what_was_bought_beyond_run_and_waste() -> None:
    # 50 in and 10 % waste are 55 in; the shop cuts 2 yd at least
    text = """
[[trim]]
name = "ribbon"
length = "50"
ends = "raw"
waste = "10 %"
price = "0.60 per yd"
minimum = "2 yd"
"""
    assert left(made(text), "ribbon") == [(1, length("17 in"))]


def test_buttons_over_from_packs_of_two_sizes_are_all_booked_in() -> None:
    text = """
[[notion]]
name = "button"
quantity = 27
sold = [{ put_up = "pack of 20", price = "5 each" }, { put_up = "pack of 4", price = "1.50 each" }]
"""
    found = made(text)
    packs = [line.buy.bought * (line.buy.offer.put_up.holds or 0) for line in found.purchases]
    assert sum(packs) == 28
    assert left(found, "button") == [(1, None)]


def test_a_spool_that_was_begun_is_a_part_spool_afterwards() -> None:
    # per strip 204 in of edge, half a seam each, 2 1/2 times in thread, and 15 % waste
    found = made(THREAD.format(count=9))
    used = bought(found, "thread").needed
    assert isinstance(used, Length)
    spools = bought(found, "thread").buy.bought
    (row,) = left(found, "thread")
    assert row[1] is not None
    assert ZERO <= length("100 yd") * spools - used - row[1] < MARKS[False]


def test_a_part_spool_saves_a_new_one_where_it_reaches() -> None:
    text = THREAD.format(count=9)
    new = bought(made(text), "thread")
    assert isinstance(new.needed, Length)
    assert isinstance(new.buy.bought, int)
    over = new.needed - length("100 yd") * (new.buy.bought - 1)  # what is on the last spool
    enough, short = over.ticks + 8000, over.ticks - 8000
    for ticks, spools in ((enough, new.buy.bought - 1), (short, new.buy.bought)):
        row = {"item": "thread", "length": f"{ticks / 8000:.3f} mm"}
        line = bought(made(text, row), "thread")
        assert line.buy.bought == spools
        in_hand = total(one.amount for one in line.taken if isinstance(one.amount, Length))
        assert line.needed == new.needed - in_hand
        assert bool(line.taken) is (spools < new.buy.bought)


@st.composite
def shops_and_stash(draw: st.DrawFn) -> tuple[str, list[dict[str, str]]]:
    """Ribbon on cards and off the roll, buttons singly and in packs, and some of both in hand."""
    runs = draw(st.lists(st.integers(5, 90), min_size=1, max_size=4))
    text = ""
    for number, run in enumerate(runs):
        text += (
            f'[[trim]]\nname = "braid {number}"\nbuy = "braid"\nlength = "{run}"\n'
            f'quantity = {draw(st.integers(1, 3))}\nends = "raw"\n'
        )
    text = text.replace('buy = "braid"\n', "")
    sold = ['{ put_up = "card of 3 yd", price = "2 each" }']
    if draw(st.booleans()):
        sold.append('{ put_up = "card of 5 yd", price = "3 each" }')
    if draw(st.booleans()):
        sold.append('{ price = "0.80 per yd" }')
    lines = []
    for line in text.splitlines():
        lines.append(line)
        if line.startswith("ends"):
            lines.append(f"sold = [{', '.join(sold)}]")
    count = draw(st.integers(1, 40))
    lines.append(
        f'[[notion]]\nname = "button"\nquantity = {count}\n'
        'sold = [{ put_up = "pack of 6", price = "3 each" }, '
        '{ put_up = "each", price = "0.7 each" }]'
    )
    rows = [
        {"item": "braid 0", "length": f"{inches} in"}
        for inches in draw(st.lists(st.integers(3, 150), max_size=4))
    ]
    rows += [
        {"item": "button", "count": str(number)}
        for number in draw(st.lists(st.integers(1, 15), max_size=3))
    ]
    return "\n".join(lines), rows


@settings(max_examples=60, deadline=None)
@given(shops_and_stash())
def test_in_hand_and_bought_less_used_is_what_is_left(
    case: tuple[str, list[dict[str, str]]],
) -> None:
    text, rows = case
    found = made(text, *rows)
    stash = dict(found.job.stash.rows)
    changed = {one.row: one for one in changes(found)}
    after = [
        (thing, changed[row].stay if row in changed else thing.count)
        for row, thing in stash.items()
    ]
    cut = [one for change in changed.values() for one in change.cut]
    new = left_overs(found)

    counted = sum(n for thing, n in after if thing.item == "button")
    counted += sum(row.count for row in new if row.item == "button")
    packs = [
        one.buy.bought * (one.buy.offer.put_up.holds or 0)
        for one in found.purchases
        if one.title == "button"
    ]
    needed = int(text.split('name = "button"\nquantity = ')[1].split("\n")[0])
    before = sum(thing.count for thing in stash.values() if thing.item == "button")
    assert counted == before + sum(packs) - needed

    lengths = total(thing.length * n for thing, n in after if thing.length)
    lengths += total(cut) + total(row.length * row.count for row in new if row.length)
    on_hand = total(thing.length * thing.count for thing in stash.values() if thing.length)
    trims = [one for one in found.purchases if one.title != "button"]
    gained = total(
        one.buy.bought
        if isinstance(one.buy.bought, Length)
        else total(piece.holds for piece in one.buy.filled)
        for one in trims
    )
    used = total(
        [one.amount for line in trims for one in line.taken if isinstance(one.amount, Length)]
    )
    for one in trims:
        if isinstance(one.buy.bought, Length):
            assert isinstance(one.needed, Length)
            used += one.needed
        else:
            used += total(run for piece in one.buy.filled for _, run in piece.runs)
    ends = sum(len(one.taken) + max(1, len(one.buy.filled)) for one in trims)
    thrown_away = on_hand + gained - used - lengths
    assert ZERO <= thrown_away <= (LEAST_KEPT[False] + MARKS[False]) * ends
