"""Cards and spools filled with whole runs, against an exact general-purpose solver."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ortools.sat.python import cp_model

from estimator import Estimate, estimate
from estimator.buying.put_ups import MOST_RUNS_SEARCHED, fewest_bins
from estimator.written import length
from tests.plans import HEADING, bought, complaints, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'


def ribbons(runs: list[str], sold: str) -> Estimate:
    """Runs of ribbon of these lengths, with raw ends, as the item of one put-up."""
    edges = ", ".join(f'e{number} = {{ length = "{run}" }}' for number, run in enumerate(runs))
    along = ", ".join(f'"panel: e{number}"' for number in range(len(runs)))
    text = (
        f'{PANEL}edges = {{ {edges} }}\n[[trim]]\nname = "ribbon"\nalong = [{along}]\n'
        f'run = "each"\nends = "raw"\nsold = [{sold}]\n'
    )
    return estimate(plan(HEADING + text))


def test_three_cards_long_enough_in_sum_are_too_short_for_whole_runs() -> None:
    # Four runs of 60 in are 240 in, and so are three cards of 80 in: but no card holds two runs.
    line = bought(ribbons(["60", "60", "60", "60"], '{ put_up = "card of 80 in" }'), "ribbon")
    assert line.buy.bought == 4
    assert "the sum of lengths would fit on 3, but no run is joined" in line.notes[0]


def test_longest_first_is_not_the_fewest_cards() -> None:
    # On cards of 10 in: longest first makes 4 + 4, 3 + 3 + 3 and 3; but 4 + 3 + 3 goes twice.
    assert fewest_bins([4, 4, 3, 3, 3, 3], 10) == ((4, 3, 3), (4, 3, 3))


def test_a_run_longer_than_a_card_is_refused_and_not_two_cards() -> None:
    trim = '[[trim]]\nname = "tie"\nlength = "3 yd"\nsold = [{ put_up = "card of 3 yd" }]\n'
    assert complaints(HEADING + PANEL + trim) == [
        "apron.toml, line 13 ('tie'): one run takes 108 1/2 in in one piece, and the longest "
        "put-up of 'tie' holds 108 in; plan shorter runs, or offer it by the length or in a "
        "longer put-up"
    ]


def test_a_run_exactly_as_long_as_a_card_fits() -> None:
    line = bought(ribbons(["3 yd", "3 yd"], '{ put_up = "card of 3 yd" }'), "ribbon")
    assert (line.buy.bought, line.notes) == (2, ())


def test_cards_take_no_waste_but_they_shrink() -> None:
    # 100 in at 5 % is 105.26 in: a card of 105 in is too short, one of 106 in is not.
    for holds, fits in (("105 in", False), ("106 in", True)):
        trim = (
            f'[[trim]]\nname = "tie"\nlength = "100"\nends = "raw"\nshrinkage = "5 %"\n'
            f'sold = [{{ put_up = "card of {holds}" }}]\n'
        )
        assert (complaints(HEADING + PANEL + trim) == []) is fits


def test_what_is_left_over_on_each_card_is_told() -> None:
    line = bought(ribbons(["40", "30 1/2", "25"], '{ put_up = "card of 2 yd" }'), "ribbon")
    assert line.buy.bought == 2
    assert line.notes == ("left over: 47 in, 1 1/2 in",)  # 72 - 40 - 30 1/2 and 72 - 25


def test_of_two_put_ups_the_one_that_buys_less_is_taken_without_prices() -> None:
    sold = '{ put_up = "card of 5 yd" }, { put_up = "card of 2 yd" }'
    line = bought(ribbons(["40", "30"], sold), "ribbon")
    assert (line.buy.offer.put_up.text, line.buy.bought) == ("card of 2 yd", 1)


def test_by_the_length_or_on_a_card_whichever_costs_less() -> None:
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    trim = '[[trim]]\nname = "tie"\nlength = "60"\nends = "raw"\nwaste = 0\nsold = [{0}, {1}]\n'
    card = '{ put_up = "card of 2 yd", price = "2.10 each" }'
    for price, unit in (("1.20 per yd", "yd"), ("1.30 per yd", "card of 2 yd")):
        # 60 in are 1 3/4 yd: 2.10 (the first wins a tie), or 2.275.
        text = trim.replace("{0}", f'{{ price = "{price}" }}').replace("{1}", card)
        assert bought(estimate(plan(heading + PANEL + text)), "tie").buy.unit == unit


def optimum(runs: list[int], capacity: int) -> int:
    """The fewest cards, from a general-purpose constraint solver."""
    model = cp_model.CpModel()
    cards = range(len(runs))
    on = {(run, card): model.new_bool_var("") for run in cards for card in cards}
    used = [model.new_bool_var("") for _ in cards]
    for run in cards:
        model.add_exactly_one(on[run, card] for card in cards)
    for card in cards:
        model.add(sum(runs[run] * on[run, card] for run in cards) <= capacity * used[card])
    for card in cards[1:]:
        model.add_implication(used[card], used[card - 1])
    model.minimize(sum(used))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 7
    assert solver.solve(model) == cp_model.OPTIMAL
    return int(solver.objective_value)


@settings(max_examples=40)
@given(st.lists(st.integers(1, 60), min_size=1, max_size=8), st.integers(60, 100))
def test_small_cards_are_filled_as_well_as_can_be(runs: list[int], capacity: int) -> None:
    assert len(fewest_bins(runs, capacity)) == optimum(runs, capacity)


@given(st.lists(st.integers(1, 200), max_size=60), st.integers(200, 400))
def test_every_run_is_on_one_card_and_no_card_is_overfull(runs: list[int], capacity: int) -> None:
    cards = fewest_bins(runs, capacity)
    assert sorted(run for card in cards for run in card) == sorted(runs)
    assert all(0 < sum(card) <= capacity for card in cards)
    assert len(cards) >= -(-sum(runs) // capacity)


@given(st.permutations([61, 53, 47, 44, 38, 31, 29, 17, 9]))
def test_the_order_of_the_runs_makes_no_difference(runs: list[int]) -> None:
    assert fewest_bins(runs, 100) == fewest_bins(sorted(runs), 100)


@pytest.mark.parametrize("count", [MOST_RUNS_SEARCHED, 400])
def test_many_equal_runs_are_filled_at_once(count: int) -> None:
    assert len(fewest_bins([33] * count, 100)) == -(-count // 3)


def test_runs_of_a_real_plan_are_rounded_up_to_no_more_than_their_own_length() -> None:
    line = bought(ribbons(["36", "36"], '{ put_up = "card of 2 yd" }'), "ribbon")
    assert (line.buy.bought, line.needed) == (1, length("2 yd"))
