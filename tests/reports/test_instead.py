"""What may be bought instead: reckoned, and told with its quantity, price and shop."""

from __future__ import annotations

from estimator import Catalog, Estimate, estimate
from estimator.reports.instead import instead_of
from tests.plans import HEADING, bought, catalog, plan

SHOP: Catalog = catalog(
    [
        {"item": "lawn", "kind": "fabric", "selvedge": "0 in"},
        {"item": "braid", "kind": "trim"},
        {"item": "hook", "kind": "notion"},
    ],
    [
        {"item": "lawn", "shop": "Quay", "width": "40 in", "price": "6", "per": "yd",
         "currency": "USD"},
        {"item": "lawn", "shop": "Quay", "width": "40 in", "price": "5", "per": "yd",
         "currency": "USD", "from_quantity": "9 yd"},
        {"item": "lawn", "shop": "Mill", "width": "40 in", "price": "7", "per": "yd",
         "currency": "USD"},
        {"item": "lawn", "shop": "Mill", "width": "60 in", "price": "11", "per": "yd",
         "currency": "USD"},
        {"item": "braid", "shop": "Quay", "price": "1", "per": "yd", "currency": "USD"},
        {"item": "braid", "shop": "Mill", "put_up": "card of 3 yd", "price": "2.50",
         "currency": "USD"},
        {"item": "hook", "shop": "Quay", "put_up": "each", "price": "0.50", "currency": "USD"},
        {"item": "hook", "shop": "Quay", "put_up": "pack of 6", "price": "2.40",
         "currency": "USD"},
    ],
)  # fmt: skip
PLAN = """
[garment]
name = "quay apron"
straightening = "0"
seam_allowance = "0"
trim_waste = "0"
[[fabric]]
name = "main"
buy = "lawn"
[[piece]]
name = "panel"
quantity = 2
cut = "main"
width = "30"
length = "36"
[[trim]]
name = "edging"
buy = "braid"
length = "36"
ends = "raw"
[[notion]]
name = "hooks"
buy = "hook"
quantity = 2
"""
APRON = """
[[piece]]
name = "skirt"
cut = "print"
width = "31"
length = "23"
[[notion]]
name = "zip"
length = "7"
[[trim]]
name = "tape"
length = "36"
"""


def found() -> Estimate:
    return estimate(plan(PLAN), SHOP)


def test_other_widths_and_shops_are_told_cheapest_first_with_their_lengths() -> None:
    # 30 in panels lie one beside the other on 60 in only: 1 yd for 11.00. On 40 in they take 2 yd:
    # 12.00 at the Quay, 14.00 at the Mill. What is had from 9 yd on is the Quay's 40 in once more.
    one = found()
    assert bought(one, "main").buy.offer.shop == "Mill"
    assert instead_of(bought(one, "main"), one) == (
        "40 in: 2 yd, 12.00, Quay",
        "40 in: 2 yd, 14.00, Mill",
    )


def test_other_put_ups_are_told_of_trims_and_notions() -> None:
    one = found()
    assert instead_of(bought(one, "edging"), one) == ("1 × card of 3 yd, 2.50, Mill",)
    assert instead_of(bought(one, "hooks"), one) == ("1 × pack of 6, 2.40, Quay",)


def test_what_is_had_in_one_way_only_has_nothing_instead() -> None:
    one = estimate(plan(HEADING + APRON))
    assert [line.title for line in one.purchases] == ["print", "tape", "zip"]
    assert [instead_of(line, one) for line in one.purchases] == [(), (), ()]
