"""Spools of several sizes for several needles, against an exact general-purpose solver."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ortools.sat.python import cp_model

from estimator.buying.fillings import Holder
from estimator.buying.given_out import fullest_to_neediest
from estimator.buying.spools import Spools, least_spools


def optimum(demands: list[int], holders: list[Holder], in_hand: list[int]) -> int:
    """The least cost of spools for every demand, from a general-purpose constraint solver."""
    model = cp_model.CpModel()
    most = sum(-(-one // min(holder.holds for holder in holders)) for one in demands)
    wound = [[model.new_int_var(0, most, "") for _ in holders] for _ in demands]
    given = [[model.new_bool_var("") for _ in in_hand] for _ in demands]
    for number, one in enumerate(demands):
        on_new = sum(n * holder.holds for n, holder in zip(wound[number], holders, strict=True))
        model.add(on_new + sum(n * h for n, h in zip(given[number], in_hand, strict=True)) >= one)
    for place in range(len(in_hand)):
        model.add_at_most_one(row[place] for row in given)
    costs: list[cp_model.LinearExpr] = []
    for kind, holder in enumerate(holders):
        bought = model.new_int_var(0, most + holder.least, "")
        taken = model.new_bool_var("")
        model.add(holder.pieces * bought >= sum(row[kind] for row in wound))
        model.add(bought == 0).only_enforce_if(taken.negated())
        model.add(bought >= holder.least).only_enforce_if(taken)
        costs.append(bought * holder.cost)
    model.minimize(sum(costs))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 7
    assert solver.solve(model) == cp_model.OPTIMAL
    return round(solver.objective_value)


def all_hold(demands: list[int], holders: list[Holder], in_hand: list[int], found: Spools) -> bool:
    """Whether each demand has enough of its own, and no more is wound off than is bought."""
    bought: dict[int, int] = {}
    for holder, count in zip(holders, found.bought, strict=True):
        bought[holder.holds] = bought.get(holder.holds, 0) + count * holder.pieces
    for demand, wound, hand in zip(demands, found.wound, found.in_hand, strict=True):
        there = sum(holds * count for holds, count in wound.items())
        if there + sum(in_hand[number] for number in hand) < demand:
            return False
    used = {holds: sum(wound.get(holds, 0) for wound in found.wound) for holds in bought}
    handed = [number for hand in found.in_hand for number in hand]
    return all(used[one] <= bought[one] for one in used) and len(handed) == len(set(handed))


def drawn(seed: int) -> tuple[list[int], list[Holder]]:
    dice = random.Random(seed)
    demands = [dice.randint(20, 900) for _ in range(dice.randint(1, 4))]
    holders = []
    for _ in range(dice.randint(1, 3)):
        holds = dice.choice([100, 100, 140, 250, 275, 500])
        pieces = dice.choice([1, 1, 1, 2, 5])
        price = dice.randint(holds // 2, holds) * pieces
        holders.append(Holder(holds, price, dice.choice([1, 1, 3]), pieces))
    return demands, holders


@pytest.mark.parametrize("seed", range(100))
def test_spools_for_every_needle_cost_as_little_as_can_be(seed: int) -> None:
    demands, holders = drawn(seed)
    found = least_spools(demands, holders, mix=True)
    assert all_hold(demands, holders, [], found)
    assert found.cost == optimum(demands, holders, [])


def test_a_great_deal_of_thread_is_wound_off_the_cheapest_spools_and_none_is_short() -> None:
    # 100,000 on spools of 250 for 2.00 and of 100 for 1.00: 400 of 250.
    holders = [Holder(100, 100), Holder(250, 200)]
    assert least_spools([100_000], holders, mix=True).bought == (0, 400)
    # 100,050: the last 50 are on one of 100.
    assert least_spools([100_050], holders, mix=True).bought == (1, 400)


def test_a_cone_of_one_looper_is_no_good_to_the_other() -> None:
    # Two loopers of 60 each: one cone of 120 would hold it all, but each takes its own.
    found = least_spools([60, 60], [Holder(120, 10), Holder(60, 6)], mix=True)
    assert (found.bought, found.cost) == ((0, 2), 12)


@given(
    st.lists(st.integers(1, 900), min_size=1, max_size=4),
    st.lists(st.integers(1, 500), max_size=4),
    st.integers(0, 500),
)
def test_what_is_in_hand_never_makes_thread_short(
    demands: list[int], in_hand: list[int], seed: int
) -> None:
    _, holders = drawn(seed)
    found = least_spools(demands, holders, in_hand, mix=True)
    assert all_hold(demands, holders, in_hand, found)
    assert found.cost <= least_spools(demands, holders, mix=True).cost


def lacks_of(demands: list[int], in_hand: list[int]) -> Iterator[list[int]]:
    """What each demand lacks, for every way to give each spool in hand to one of them."""
    for places in product(range(len(demands)), repeat=len(in_hand)):
        left = list(demands)
        for place, holds in zip(places, in_hand, strict=True):
            left[place] -= holds
        yield [max(one, 0) for one in left]


@given(
    st.lists(st.integers(1, 900), min_size=1, max_size=4),
    st.lists(st.integers(1, 900), max_size=4),
    st.integers(0, 500),
    st.booleans(),
)
def test_no_way_to_give_out_what_is_in_hand_leaves_less_to_buy(
    demands: list[int], in_hand: list[int], seed: int, mix: bool
) -> None:
    _, holders = drawn(seed)
    found = least_spools(demands, holders, in_hand, mix=mix)
    assert all_hold(demands, holders, in_hand, found)
    every = {tuple(sorted(left)) for left in lacks_of(demands, in_hand)}
    assert found.cost == min(least_spools(left, holders, mix=mix).cost for left in every)
    assert found.proved


@pytest.mark.parametrize("seed", range(40))
def test_spools_beside_those_in_hand_cost_as_little_as_can_be(seed: int) -> None:
    demands, holders = drawn(seed)
    dice = random.Random(seed + 1000)
    in_hand = [dice.randint(10, 600) for _ in range(dice.randint(1, 5))]
    found = least_spools(demands, holders, in_hand, mix=True)
    assert all_hold(demands, holders, in_hand, found)
    assert found.cost == optimum(demands, holders, in_hand)


def test_a_part_cone_goes_to_the_needle_that_it_fills() -> None:
    # Needle 72, loopers 144 each: what is left on 100 fills the needle, and no looper.
    found = least_spools([72, 144, 144], [Holder(1000, 300)], [100], mix=True)
    assert (found.in_hand, found.bought, found.cost) == (((0,), (), ()), (2,), 600)
    # With 150 beside it, that fills a looper, and one cone is bought for the other.
    found = least_spools([72, 144, 144], [Holder(1000, 300)], [100, 150], mix=True)
    assert (found.in_hand, found.cost) == (((0,), (1,), ()), 300)
    # Two that fill a looper together serve it; with the shorter used up first.
    found = least_spools([72, 144, 144], [Holder(1000, 300)], [100, 70, 60, 80], mix=True)
    assert found.cost == 300


def test_what_is_in_hand_stays_with_whoever_needs_most_where_nothing_is_saved() -> None:
    found = least_spools([72, 144, 144], [Holder(1000, 300)], [60], mix=True)
    assert (found.in_hand, found.cost) == (((), (0,), ()), 900)


@given(st.lists(st.integers(1, 900), min_size=2, max_size=6), st.integers(0, 500))
def test_of_many_spools_in_hand_some_ways_are_followed_and_none_is_dearer_than_the_rule(
    demands: list[int], seed: int
) -> None:
    _, holders = drawn(seed)
    dice = random.Random(seed)
    in_hand = [dice.randint(1, 60) for _ in range(40)]
    found = least_spools(demands, holders, in_hand, mix=True)
    assert all_hold(demands, holders, in_hand, found)
    ruled = least_spools(list(fullest_to_neediest(demands, in_hand).left), holders, mix=True)
    assert found.cost <= ruled.cost


def test_ways_that_were_not_followed_are_owned_up_to(monkeypatch: pytest.MonkeyPatch) -> None:
    # 41 and 40 fill a looper of 80, 42 and 43 the other, 72 the needle: nothing is bought.
    demands, holders, in_hand = [72, 80, 85], [Holder(1000, 300)], [72, 43, 42, 41, 40]
    found = least_spools(demands, holders, in_hand, mix=True)
    assert (found.cost, found.proved) == (0, True)
    monkeypatch.setattr("estimator.buying.given_out.MOST_GIVEN", 0)
    found = least_spools(demands, holders, in_hand, mix=True)
    assert all_hold(demands, holders, in_hand, found)
    assert (found.cost, found.proved) == (300, False)
