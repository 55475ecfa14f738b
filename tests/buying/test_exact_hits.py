"""A figure that comes out even is not raised by the roundings on its way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.cut_lengths import as_sold, fabric_needed, steps_sold
from estimator.measure import Length, Unit
from estimator.written import length
from tests.plans import bought, plan

CLOTH = """
[garment]
name = "sash"
unit = "cm"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "voile"
widths = ["100 cm"]
"""
SASH = '[[piece]]\nname = "sash"\ncut = "voile"\nwidth = "40"\nlength = "{}"\n'


@pytest.mark.parametrize(("long", "sold"), [("56", "70 cm"), ("56.1", "80 cm")])
def test_shrinkage_and_waste_that_make_an_even_length_are_bought_even(long: str, sold: str) -> None:
    # 56 / 0.92 x 1.15 = 70 exactly
    text = CLOTH + 'shrinkage = "8 %"\nwaste = "15 %"\n' + SASH.format(long)
    (line,) = estimate(plan(text)).purchases
    assert line.buy.bought == length(sold)


def test_runs_that_come_to_an_even_sum_are_bought_even() -> None:
    # 3 x 30 / 0.9 = 100 cm exactly, and so they go on one card of a metre too
    tape = """
[[trim]]
name = "tape"
length = "30"
rows = 3
ends = "raw"
shrinkage = "10 %"
waste = 0
"""
    text = CLOTH + SASH.format("50") + tape
    assert bought(estimate(plan(text)), "tape").buy.bought == length("1 m")
    on_cards = text + 'sold = [{ put_up = "card of 1 m" }]\n'
    assert bought(estimate(plan(on_cards)), "tape").buy.bought == 1


@pytest.mark.parametrize(
    ("step", "per", "stated"), [("10 cm", "yd", 100), ("25 cm", "yd", 100), ("1/4 yd", "m", 100)]
)
def test_what_is_bought_can_be_stated_in_the_unit_it_is_priced_by(
    step: str, per: str, stated: int
) -> None:
    text = CLOTH.replace('"cm"', '"cm"\ncurrency = "EUR"').replace(
        'widths = ["100 cm"]', f'widths = ["100 cm"]\nprice = "5.55 per {per}"\nstep = "{step}"'
    )
    (line,) = estimate(plan(text + SASH.format("70"))).purchases
    assert isinstance(line.buy.bought, Length)
    unit = {"yd": Unit.YD, "m": Unit.M}[per].length
    parts = line.buy.bought / unit * stated
    assert parts.denominator == 1 or (line.buy.bought / unit * 16).denominator == 1
    assert line.buy.bought >= length("70 cm").up_to(length(step))


@given(
    st.integers(0, 400_000_000),
    st.integers(0, 20),
    st.integers(0, 20),
    st.sampled_from(["1/8 yd", "10 cm", "1 m"]),
    st.sampled_from(["", 'minimum = "50 cm"\n']),
)
def test_what_the_layout_is_told_of_the_shop_is_what_is_bought(
    ticks: int, shrinks: int, waste: int, step: str, minimum: str
) -> None:
    text = CLOTH.replace('straightening = "0"', 'straightening = "1"')
    text += f'shrinkage = "{shrinks} %"\nwaste = "{waste} %"\nstep = "{step}"\n{minimum}'
    terms = estimate(plan(text + SASH.format("50"))).fabrics[0].need.terms
    (offer,) = terms.offers
    sold = as_sold(fabric_needed(Length(ticks), terms), offer).value
    told = steps_sold(terms, offer)(ticks) * offer.selling_step
    # an eighth of a yard, sold by the metre, goes up to the next hundredth
    assert told <= sold < told + length("1 cm")
    assert step == "1/8 yd" or told == sold
