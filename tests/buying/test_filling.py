"""Put-ups filled at the least cost, against an exact general-purpose solver."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ortools.sat.python import cp_model

from estimator.buying.filling import MOST_RUNS_SEARCHED, least_filling
from estimator.buying.fillings import Filling, Holder, Roll

Step = tuple[int, int]
"""A roll's selling step and what one costs."""


def roll_of(step: Step) -> Roll:
    size, price = step
    return Roll(lambda length: -(-length // size) * price, lambda run: run * price // size)


def optimum(runs: list[int], holders: list[Holder], step: Step | None = None) -> int:
    """The least cost, from a general-purpose constraint solver."""
    model = cp_model.CpModel()
    number = range(len(runs))
    costs: list[cp_model.LinearExpr] = []
    homes: list[list[cp_model.IntVar]] = [[] for _ in runs]
    for holder in holders:
        used = [model.new_bool_var("") for _ in number]  # one length each
        for card, is_used in enumerate(used):
            on = [model.new_bool_var("") for _ in number]
            model.add(sum(runs[run] * on[run] for run in number) <= holder.holds * is_used)
            for run in number:
                homes[run].append(on[run])
            if card:
                model.add_implication(is_used, used[card - 1])
        bought = model.new_int_var(0, len(runs) + holder.least, "")
        model.add(holder.pieces * bought >= sum(used))
        model.add(bought >= holder.least).only_enforce_if(used[0])
        costs.append(bought * holder.cost)
    if step is not None:
        rolled = [model.new_bool_var("") for _ in number]
        steps = model.new_int_var(0, sum(runs), "")
        model.add(steps * step[0] >= sum(runs[run] * rolled[run] for run in number))
        costs.append(steps * step[1])
        for run in number:
            homes[run].append(rolled[run])
    for home in homes:
        model.add_exactly_one(home)
    model.minimize(sum(costs))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 7
    assert solver.solve(model) == cp_model.OPTIMAL
    return round(solver.objective_value)


def drawn(seed: int) -> tuple[list[int], list[Holder], Step | None]:
    """Runs on put-ups of one to four sizes: price breaks, packs of lengths, some beside a roll."""
    dice = random.Random(seed)
    runs = [dice.randint(1, 60) for _ in range(dice.randint(1, 8))]
    holders = [Holder(dice.randint(60, 130), dice.randint(100, 400))]
    holders += [
        Holder(
            dice.randint(30, 200), dice.randint(60, 500), dice.choice([1, 1, 1, 2, 4]),
            dice.choice([1, 1, 1, 2, 3]),
        )
        for _ in range(dice.randint(0, 3))
    ]  # fmt: skip
    step = (dice.randint(1, 20), dice.randint(5, 60)) if dice.random() < 0.4 else None
    return runs, holders, step


def check(found: Filling, runs: list[int], holders: list[Holder]) -> None:
    """Every run is on one put-up or cut from the roll, and no put-up holds more than it can."""
    placed = [run for _, card in found.loads for run in card] + list(found.rolled)
    assert sorted(placed) == sorted(runs)
    for number, holder in enumerate(holders):
        cards = [card for kind, card in found.loads if kind == number]
        assert all(sum(card) <= holder.holds for card in cards)
        assert found.bought[number] * holder.pieces >= len(cards)
        assert not cards or found.bought[number] >= holder.least


@pytest.mark.parametrize("block", range(10))
def test_put_ups_are_filled_at_the_least_cost_that_a_solver_finds(block: int) -> None:
    for seed in range(block * 40, block * 40 + 40):
        runs, holders, step = drawn(seed)
        found = least_filling(runs, holders, roll_of(step) if step else None)
        assert found is not None
        assert found.proved
        check(found, runs, holders)
        assert found.cost == optimum(runs, holders, step), (seed, runs, holders, step)


def test_longest_first_is_not_the_fewest_cards() -> None:
    # On cards of 10 in: longest first makes 4 + 4, 3 + 3 + 3 and 3; but 4 + 3 + 3 goes twice.
    found = least_filling([4, 4, 3, 3, 3, 3], [Holder(10, 1)])
    assert found is not None
    assert found.loads == ((0, (4, 3, 3)), (0, (4, 3, 3)))


def test_forty_runs_of_a_real_shop_are_filled_and_proved() -> None:
    # Cards of 3 and 5 yd and a spool of 10 yd, in sixteenths of an inch: forty runs of five sorts.
    holders = [Holder(1728, 249), Holder(2880, 379), Holder(5760, 599)]
    runs = [437, 611, 850, 1203, 299] * 8
    found = least_filling(runs, holders)
    assert found is not None
    assert found.proved
    check(found, runs, holders)
    assert found.cost >= sum(runs) * 599 / 5760


def test_a_run_longer_than_every_put_up_goes_on_none() -> None:
    assert least_filling([5, 11], [Holder(10, 1), Holder(8, 1)]) is None


runs_of_any = st.lists(st.integers(1, 60), min_size=1, max_size=14)
put_ups = st.lists(
    st.builds(Holder, st.integers(60, 200), st.integers(50, 400), st.sampled_from([1, 1, 3])),
    min_size=1, max_size=3,
)  # fmt: skip


@given(runs_of_any, put_ups, st.builds(Holder, st.integers(60, 200), st.integers(50, 400)))
def test_one_more_put_up_on_offer_never_costs_more(
    runs: list[int], holders: list[Holder], another: Holder
) -> None:
    before, after = least_filling(runs, holders), least_filling(runs, [*holders, another])
    assert before is not None
    assert after is not None
    assert before.proved
    assert after.proved
    assert after.cost <= before.cost


@given(runs_of_any, put_ups, st.integers(1, 60))
def test_one_more_run_never_costs_less(runs: list[int], holders: list[Holder], more: int) -> None:
    before, after = least_filling(runs, holders), least_filling([*runs, more], holders)
    assert before is not None
    assert after is not None
    assert after.cost >= before.cost


@given(st.lists(st.integers(1, 200), min_size=41, max_size=90), st.integers(200, 400))
def test_more_runs_than_are_searched_still_all_find_a_place(runs: list[int], holds: int) -> None:
    assert len(runs) > MOST_RUNS_SEARCHED
    holders = [Holder(holds, 100), Holder(holds * 2, 190)]
    found = least_filling(runs, holders)
    assert found is not None
    assert not found.proved
    check(found, runs, holders)
    assert found.cost <= 2 * 100 * -(-2 * sum(runs) // holds)


@given(runs_of_any, put_ups)
def test_the_same_runs_in_another_order_cost_the_same(
    runs: list[int], holders: list[Holder]
) -> None:
    one, other = least_filling(runs, holders), least_filling(runs[::-1], holders)
    assert one is not None
    assert other is not None
    assert one.cost == other.cost
