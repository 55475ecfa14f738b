"""Counted things in packs: sizes mixed at the least cost, against trying everything."""

from decimal import Decimal
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.fillings import Holder
from estimator.buying.packs import MOST_COUNTED, least_packs
from tests.plans import HEADING, plan

IN_DOLLARS = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'


def test_two_packs_and_two_single_buttons_cost_less_than_three_packs() -> None:
    # 14 buttons: three packs of 6 are 7.50; two packs and two singles 5.00 + 1.20 = 6.20.
    text = (
        f'{IN_DOLLARS}{PANEL}[[notion]]\nname = "button"\nquantity = 14\n'
        'sold = [{ price = "0.60 each" }, { put_up = "pack of 6", price = "2.50 each" }]\n'
    )
    packs, singles = estimate(plan(text)).purchases[1:]
    assert (packs.buy.bought, packs.buy.unit, packs.needed) == (2, "pack of 6", 12)
    assert (singles.buy.bought, singles.buy.unit, singles.needed) == (2, "each", 2)
    assert packs.buy.cost == Decimal("5.00")
    assert singles.buy.cost == Decimal("1.20")
    assert packs.notes == ("together with 2 singly",)
    assert [step.result for step in packs.buy.steps] == [14, 12, 2]
    assert [step.result for step in singles.buy.steps] == [14, 2]


def test_three_packs_are_taken_where_they_cost_less_than_single_buttons() -> None:
    # 16: two packs and four singles are 5.00 + 2.40, three packs 7.50. 17: 8.00 and 7.50.
    packs = [Holder(1, 60), Holder(6, 250)]
    assert least_packs(16, packs) == (4, 2)
    assert least_packs(17, packs) == (0, 3)


def cost_of(chosen: tuple[int, ...], packs: list[Holder]) -> int:
    return sum(
        max(count, pack.least) * pack.cost if count else 0
        for count, pack in zip(chosen, packs, strict=True)
    )


def least_by_trying(count: int, packs: list[Holder]) -> int:
    """The least cost of every set of packs that holds the count."""
    return min(
        cost_of(chosen, packs)
        for chosen in product(range(count + 1), repeat=len(packs))
        if sum(max(n, p.least) * p.holds if n else 0 for n, p in zip(chosen, packs, strict=True))
        >= count
    )


packs_on_offer = st.lists(
    st.builds(Holder, st.integers(1, 8), st.integers(1, 90), st.sampled_from([1, 1, 2, 5])),
    min_size=1, max_size=3,
)  # fmt: skip


@given(st.integers(1, 14), packs_on_offer)
def test_packs_cost_the_least_of_all_ways(count: int, packs: list[Holder]) -> None:
    chosen = least_packs(count, packs)
    held = sum(n * pack.holds for n, pack in zip(chosen, packs, strict=True))
    assert held >= count
    assert cost_of(chosen, packs) == least_by_trying(count, packs)


def test_more_things_than_are_searched_are_still_covered() -> None:
    packs = [Holder(1, 60), Holder(7, 250)]
    count = MOST_COUNTED * 3 + 5
    singles, sevens = least_packs(count, packs)
    assert count <= singles + 7 * sevens < count + 7
