"""Fabrics whose width sets a ring: so many whole widths, chosen with all that hangs on it."""

from __future__ import annotations

from estimator import estimate
from estimator.written import length
from tests.plans import complaints, plan
from tests.tiers import tier


def test_both_widths_are_compared_and_the_cheaper_bill_is_bought() -> None:
    (choice,) = estimate(plan(tier(lace="9"))).fabrics
    assert [option.width for option in choice.options] == [length("45 in"), length("60 in")]
    # the cloth costs the same at either width, and the lace is shorter round the narrower ring
    assert choice.chosen.width == length("45 in")
    assert choice.reason == "cheapest of 2 widths with the trims that hang on them"


def test_a_button_without_a_price_does_not_change_the_width() -> None:
    button = '[[notion]]\nname = "button"\n'
    priced, unpriced = estimate(plan(tier())), estimate(plan(tier(more=button)))
    assert priced.fabrics[0].chosen.width == unpriced.fabrics[0].chosen.width


def test_a_width_too_narrow_for_another_piece_leaves_the_other_width() -> None:
    box = '[[piece]]\nname = "back"\ncut = "voile"\nwidth = "50"\nlength = "9"\n'
    (choice,) = estimate(plan(tier(more=box))).fabrics
    assert choice.chosen.width == length("60 in")


def test_a_piece_too_wide_for_both_is_one_complaint() -> None:
    box = '[[piece]]\nname = "back"\ncut = "voile"\nwidth = "65"\nlength = "9"\n'
    (said,) = complaints(tier(more=box))
    assert "'back' is cut 66 1/4 in wide" in said


def test_a_width_that_its_joins_take_up_is_left_out() -> None:
    ring = tier('"1 in", "45 in"').replace("widths = 2", 'ring = "80"')
    (choice,) = estimate(plan(ring)).fabrics
    assert choice.chosen.width == length("45 in")
    assert [one.width for one in choice.unfit] == [length("1 in")]


def test_a_width_that_is_all_selvedge_is_left_out() -> None:
    ring = tier('"1 in", "45 in"').replace('selvedge = "0"', 'selvedge = "1/2"')
    (choice,) = estimate(plan(ring.replace("widths = 2", 'ring = "80"'))).fabrics
    assert [one.width for one in choice.unfit] == [length("1 in")]
