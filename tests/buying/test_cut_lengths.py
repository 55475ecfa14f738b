"""What a shop cuts from the roll: the order of arithmetic, exact hits, minimum and price breaks."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import Estimate, estimate
from estimator.buying.cut_lengths import as_sold
from estimator.catalog import Offer
from estimator.measure import Length, Unit
from estimator.working import Operation, Reckoning
from estimator.written import length
from tests.plans import bought, catalog, needed, plan

BARE = """
[garment]
name = "apron"
currency = "USD"
seam_allowance = 0
straightening = 0
[[fabric]]
name = "print"
widths = ["45 in"]
"""
"""A fabric of which exactly as much is needed as its pieces are long."""


def cloth(long: str, fabric: str = "", heading: str = BARE) -> Estimate:
    piece = f'[[piece]]\nname = "panel"\ncut = "print"\nwidth = "30"\nlength = "{long}"\n'
    return estimate(plan(f"{heading}{fabric}\n{piece}"))


def test_shrinkage_divides() -> None:
    # To have 60 in after washing at 5 %, 60 / 0.95 = 63.157... in are needed, not 63 in.
    assert needed(cloth("60", 'shrinkage = "5 %"'), "print") == Length(-(-60 * 203_200 * 20 // 19))


def test_fabric_is_straightened_shrunk_wasted_and_raised_in_this_order() -> None:
    # (33 1/4 + 2 x 1) / 0.94 x 1.10 = 41 1/4 in; up to 1 1/4 yd = 45 in.
    found = cloth("33 1/4", 'straightening = "1"\nshrinkage = "6 %"\nwaste = "10 %"')
    assert needed(found, "print") == length("41.25 in")
    assert bought(found, "print").buy.bought == length("1 1/4 yd")
    assert [(step.label, step.operation) for step in bought(found, "print").buy.steps] == [
        ("length of the cutting layout", Operation.START),
        ("straightening, two cut ends", Operation.ADD),
        ("what is left after shrinking", Operation.DIVIDE),
        ("waste allowance", Operation.TIMES),
        ("as the shop sells it", Operation.SOLD_BY),
    ]


def test_the_house_straightens_an_inch_at_each_cut_end() -> None:
    assert needed(cloth("33 1/4", heading=BARE.replace("straightening = 0\n", "")), "print") == (
        length("35 1/4")
    )


@pytest.mark.parametrize(
    ("long", "sold"),
    [("36", "1 yd"), ("36 1/16", "1 1/8 yd"), ("40 1/2", "1 1/8 yd"), ("40 9/16", "1 1/4 yd")],
)
def test_a_need_on_the_shops_step_stays_and_a_hair_above_goes_up(long: str, sold: str) -> None:
    assert bought(cloth(long), "print").buy.bought == length(sold)


def test_an_exact_hit_through_shrinkage_and_waste_stays() -> None:
    # 34 1/5 in / 0.95 = 36 in.
    exact = BARE.replace('currency = "USD"', 'currency = "USD"\nmark = "1/5"')
    found = cloth("34 1/5", 'shrinkage = "5 %"', exact)
    assert bought(found, "print").buy.bought == length("1 yd")


def test_a_tick_above_the_step_buys_the_next() -> None:
    offer = Offer(item="print", width=length("45"))
    for ticks, sold in ((0, "1 yd"), (1, "1 1/8 yd")):
        needed = Reckoning.start("needed", Unit.YD.length + Length(ticks))
        assert as_sold(needed, offer).value == length(sold)


def test_a_shop_cuts_no_less_than_its_minimum() -> None:
    # The minimum is raised to the step as well: 20 in, 5/8 yd.
    assert bought(cloth("10", 'minimum = "1/2 yd"'), "print").buy.bought == length("1/2 yd")
    assert bought(cloth("10", 'minimum = "20 in"'), "print").buy.bought == length("5/8 yd")
    assert bought(cloth("24", 'minimum = "1/2 yd"'), "print").buy.bought == length("3/4 yd")


def test_the_buyer_is_told_of_a_minimum_only_where_it_makes_the_cut_longer() -> None:
    # 10 in and 2 in of straightening are 12 in, 3/8 yd; 24 in and 2 in are 26 in, 3/4 yd
    short = bought(cloth("10", 'minimum = "1/2 yd"'), "print").buy
    assert short.note == "this shop cuts no less than 1/2 yd"
    assert not bought(cloth("24", 'minimum = "1/2 yd"'), "print").buy.note
    assert not bought(cloth("10", 'minimum = "12 1/2 in"'), "print").buy.note


def test_metres_are_sold_by_the_tenth() -> None:
    metric = BARE.replace('"apron"', '"apron"\nunit = "cm"').replace("45 in", "114 cm")
    assert bought(cloth("131", heading=metric), "print").buy.bought == length("1.4 m")
    assert bought(cloth("130", heading=metric), "print").buy.bought == length("1.3 m")
    assert bought(cloth("130", 'step = "1 m"', metric), "print").buy.bought == length("2 m")


def lawn(*offers: dict[str, str], **item: str) -> Estimate:
    """40 in of lawn, one panel of 30 in, on these offers."""
    shop = catalog(
        [{"item": "lawn", "kind": "fabric", **item}],
        [
            {"item": "lawn", "width": "45 in", "per": "yd", "currency": "USD", **one}
            for one in offers
        ],
    )
    text = BARE.replace('widths = ["45 in"]', 'buy = "lawn"') + (
        '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "30"\nlength = "40"\n'
    )
    return estimate(plan(text), shop)


def test_a_price_break_is_taken_where_buying_more_costs_less() -> None:
    # 1 1/8 yd at 9 is 10.13; 2 yd, from which it costs 5, is 10.00.
    found = lawn({"price": "9"}, {"price": "5", "from_quantity": "2 yd"}).purchases[0].buy
    assert (found.bought, found.cost) == (length("2 yd"), Decimal("10.00"))


def test_a_price_break_is_left_where_it_costs_more() -> None:
    found = lawn({"price": "8"}, {"price": "5", "from_quantity": "2 yd"}).purchases[0].buy
    assert (found.bought, found.cost) == (length("1 1/8 yd"), Decimal("9.00"))


def test_a_price_break_below_the_need_costs_nothing_more() -> None:
    found = lawn({"price": "8"}, {"price": "5", "from_quantity": "1 yd"}).purchases[0].buy
    assert (found.bought, found.cost) == (length("1 1/8 yd"), Decimal("5.63"))  # 5.625


def test_a_price_break_off_the_step_is_still_sold_by_the_step() -> None:
    # From 45 3/4 in, on a step of 1/8 yd = 4 1/2 in: 49 1/2 in.
    found = lawn({"price": "1", "from_quantity": "45 3/4 in"}).purchases[0].buy
    assert found.bought == length("49 1/2 in")


def test_a_price_may_be_for_another_length_than_the_shop_sells_by() -> None:
    # 0.25 an inch is 9.00 a yard.
    found = lawn({"price": "0.25", "per": "in"}).purchases[0].buy
    assert (found.offer.sold_by.symbol, found.cost) == ("yd", Decimal("10.13"))


@given(
    long=st.integers(1, 1600), shrinkage=st.integers(0, 40), waste=st.integers(0, 30),
    step=st.integers(1, 16), minimum=st.integers(1, 80),
)  # fmt: skip
def test_what_is_bought_leaves_enough_after_shrinking_and_waste(
    long: int, shrinkage: int, waste: int, step: int, minimum: int
) -> None:
    terms = (
        f'shrinkage = "{shrinkage} %"\nwaste = "{waste} %"\nstep = "{step}/16 yd"\n'
        f'minimum = "{minimum}/16 yd"'
    )
    buy = cloth(f"{long}/16", terms).purchases[0].buy
    assert isinstance(buy.bought, Length)
    # Exact in whole numbers: bought x (100 - s) >= long x (100 + w).
    wanted = length(f"{long}/16").ticks * (100 + waste)
    assert buy.bought.ticks * (100 - shrinkage) >= wanted
    fewer = buy.bought.ticks - length(f"{step}/16 yd").ticks
    assert fewer * (100 - shrinkage) < wanted or fewer < length(f"{minimum}/16 yd").ticks
    assert buy.bought.ticks % length(f"{step}/16 yd").ticks == 0
    assert buy.bought >= length(f"{minimum}/16 yd")
