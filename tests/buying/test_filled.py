"""Which runs are cut from which card or length."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.types import Purchase
from estimator.measure import Length, total
from estimator.written import length
from tests.plans import bought, catalog, plan


def braid(lengths: list[int], more: str, **offer: str) -> Purchase:
    """The purchase of one braid in runs of so many inches."""
    shop = catalog(
        [{"item": "braid", "kind": "trim"}],
        [{"item": "braid", "price": "2", "currency": "USD", **offer}],
    )
    runs = "".join(
        f'[[trim]]\nname = "run {number}"\nbuy = "braid"\nlength = "{long}"\nends = "raw"\n{more}\n'
        for number, long in enumerate(lengths)
    )
    return bought(estimate(plan(f'[garment]\nname = "coat"\n{runs}'), shop), "run 0")


@given(st.lists(st.integers(1, 36), min_size=1, max_size=12))
def test_each_run_is_on_one_card_and_no_card_holds_more_than_it_is_long(inches: list[int]) -> None:
    line = braid(inches, "", put_up="card of 1 yd")
    placed = Counter((source.name, run) for one in line.buy.filled for source, run in one.runs)
    wanted = Counter((f"run {n}", length(f"{one} in")) for n, one in enumerate(inches))
    assert placed == wanted
    for one in line.buy.filled:
        assert one.holds == length("1 yd")
        assert total(run for _, run in one.runs) <= one.holds
    assert len(line.buy.filled) == line.buy.bought


def test_cards_bought_only_because_the_price_breaks_there_hold_nothing() -> None:
    line = braid([30], "", put_up="card of 1 yd", from_quantity="3")
    assert [len(one.runs) for one in line.buy.filled] == [1, 0, 0]


@pytest.mark.parametrize("waste", ["0 %", "50 %"])
def test_off_the_roll_all_runs_come_out_of_the_one_length_bought(waste: str) -> None:
    more = f'waste = "{waste}"\nquantity = 2'
    line = braid([10, 20], more, put_up="by the length", per="yd")
    (one,) = line.buy.filled
    assert one.holds == line.buy.bought
    assert [run for _, run in one.runs] == [length(f"{n} in") for n in (10, 10, 20, 20)]
    assert isinstance(line.needed, Length)
    assert total(run for _, run in one.runs) <= line.needed


def test_a_joined_run_lies_in_pieces_that_make_it_up_with_its_overlap() -> None:
    # 100 in on cards of 2 yd: 72 in and the rest, with one overlap of 1 in.
    line = braid([100], 'joins = 1\noverlap = "1"', put_up="card of 2 yd")
    pieces = [run for one in line.buy.filled for _, run in one.runs]
    assert len(pieces) == 2
    assert total(pieces) == length("101 in")
    assert all(total(run for _, run in one.runs) <= one.holds for one in line.buy.filled)


def test_each_length_of_a_pack_has_its_own_runs_and_one_may_stay_whole() -> None:
    line = braid([60, 60], "", put_up="pack of 3 x 2 yd")
    assert line.buy.bought == 1
    assert [len(one.runs) for one in line.buy.filled] == [1, 1, 0]
    assert {one.holds for one in line.buy.filled} == {length("2 yd")}
