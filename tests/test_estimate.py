"""The whole job, from a plan to the shopping list."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator import Estimate, Job, Refused, estimate
from estimator.needs.types import Group
from estimator.written import length
from tests.plans import (
    HEADING,
    bought,
    by,
    catalog,
    complaints,
    cut_pieces,
    cut_sizes,
    in_print,
    needed,
    order,
    plan,
)

ORCHARD_DRESS = """
[garment]
name = "orchard dress"
currency = "USD"

[[fabric]]
name = "lawn"
widths = [{ width = "45 in", price = "6 per yd" }]
shrinkage = "5 %"

[[fabric]]
name = "batiste"
role = "lining"
widths = ["42 in"]

[[piece]]
name = "skirt panel"
quantity = 6
cut = ["lawn"]
width = "17 1/2"
length = "24 1/4"
edges = { bottom = "hem 1" }

[[piece]]
name = "lining panel"
quantity = 2
cut = ["batiste"]
width = "38"
length = "23 1/4"
edges = { bottom = "rolled hem" }

[[piece]]
name = "strap"
quantity = 2
cut = ["lawn"]
made = "tube"
width = "7/8"
length = "15 3/4"
grain = "either"

[[trim]]
name = "hem lace"
along = "skirt panel: bottom"
repeat = "1 3/4"
joined = "in the round"
waste = 0
price = "1.80 per yd"

[[elastic]]
name = "back elastic"
measure = "13"
joined = "open"
waste = 0

[[notion]]
name = "back zip"
length = "15 1/2"
sold = [{ length = "14" }, { length = "16", price = "2.25 each" }, { length = "18" }]
"""


def orchard_dress() -> Estimate:
    return estimate(plan(ORCHARD_DRESS))


def test_the_list_is_in_the_order_in_which_a_shop_is_walked() -> None:
    groups = [line.group for line in orchard_dress().purchases]
    assert groups == [
        Group.FABRICS, Group.LININGS, Group.TRIMS, Group.ELASTICS, Group.NOTIONS
    ]  # fmt: skip


def test_a_dress_of_six_panels_is_cut_and_trimmed_by_the_rules_of_common_practice() -> None:
    # Common practice: straps 3 in wide, 61 scallops or 106 3/4 in, the next longer zip.
    found = orchard_dress()
    assert cut_sizes(found) == {
        "skirt panel": by("18 3/4", "26 1/8"),  # 24 1/4 + 5/8 + 1 + 1/4
        "lining panel": by("39 1/4", "24 1/8"),  # 23 1/4 + 5/8 + 2 x 1/8
        "strap": by("3", "17"),
    }
    assert needed(found, "hem lace") == length("106 3/4")
    assert needed(found, "back elastic") == length("12.95 in")  # 13 x 0.9 + 1 1/4
    assert bought(found, "back zip").buy.offer.length == length("16 in")


def test_a_dress_of_six_panels_is_bought_as_reckoned_by_hand() -> None:
    # Two panels of 18 3/4 lie across 44 in: three rows of 26 1/8, the straps (3 x 17) beside them.
    # 78 3/8 + 2 x 1 = 80 3/8; / 0.95 = 84.6; up to 2 3/8 yd = 85 1/2 in.
    found = orchard_dress()
    assert found.fabrics[0].chosen.laid.cuts[0].length == length("78 3/8").ticks
    assert bought(found, "lawn").buy.bought == length("2 3/8 yd")
    # One lining panel across 41 in, two rows of 24 1/8 and 2 in: 50 1/4, 1 1/2 yd.
    assert bought(found, "batiste").buy.bought == length("1 1/2 yd")


def test_the_bill_adds_what_has_a_price_and_counts_what_has_none() -> None:
    # 2 3/8 yd at 6; 3 yd, for 106 3/4 in, of lace at 1.80; the 16 in zip at 2.25.
    found = orchard_dress()
    assert bought(found, "lawn").buy.cost == Decimal("14.25")
    assert bought(found, "hem lace").buy.cost == Decimal("5.40")
    assert found.cost == Decimal("14.25") + Decimal("5.40") + Decimal("2.25")
    assert found.unpriced == 2  # the lining and the elastic


def test_every_working_ends_in_the_figure_on_the_list() -> None:
    for line in orchard_dress().purchases:
        assert line.buy.steps[-1].result == line.buy.bought, line.title


def test_every_line_names_its_sources_and_has_a_key_of_its_own() -> None:
    found = estimate(Job((order(ORCHARD_DRESS, wearer="Miller"),)))
    assert all(line.sources for line in found.purchases)
    assert {source.wearer for line in found.purchases for source in line.sources} == {"Miller"}
    assert len({line.key for line in found.purchases}) == len(found.purchases)


def test_the_source_of_a_line_is_its_place_in_the_file() -> None:
    (source,) = bought(estimate(Job((order(ORCHARD_DRESS),))), "hem lace").sources
    heading = ORCHARD_DRESS[: ORCHARD_DRESS.index("[[trim]]")].count("\n") + 1
    assert source.place == f"apron.toml, line {heading}"


def test_the_same_plan_gives_the_same_estimate() -> None:
    assert orchard_dress().purchases == orchard_dress().purchases
    assert orchard_dress().fabrics == orchard_dress().fabrics


def test_one_changed_size_changes_all_that_hangs_on_it() -> None:
    # Panels of 18 1/4 in: cut 19 1/2, lace 109 1/2 is 63 scallops of 1 3/4 and one: 112 in.
    wider = estimate(plan(ORCHARD_DRESS.replace('"17 1/2"', '"18 1/4"')))
    assert cut_sizes(wider)["skirt panel"] == by("19 1/2", "26 1/8")
    assert needed(wider, "hem lace") == length("112")


def test_a_plan_needs_neither_catalog_nor_prices() -> None:
    found = in_print('[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n')
    assert (found.cost, found.unpriced, found.currency) == (Decimal(0), 1, "")


def test_a_bag_of_notions_alone_is_an_estimate() -> None:
    found = estimate(plan('[garment]\nname = "bag"\n[[notion]]\nname = "hooks"\nquantity = 7\n'))
    assert [line.needed for line in found.purchases] == [7]


def test_a_ring_of_whole_widths_takes_the_width_with_the_lower_bill() -> None:
    # Two widths joined: wider cloth makes a longer ring, and the braid round it costs more.
    text = """
[garment]
name = "petticoat"
currency = "USD"
[[fabric]]
name = "net"
widths = [{ width = "45 in", price = "4 per yd" }, { width = "60 in", price = "4 per yd" }]
[[piece]]
name = "flounce"
cut = "net"
made = "joined strip"
widths = 2
length = "14"
[[trim]]
name = "braid"
along = "flounce: bottom"
joined = "in the round"
waste = 0
price = "3 per yd"
"""
    found = estimate(plan(text))
    assert bought(found, "net").width == length("45 in")
    # 2 x (44 - 1 1/4) + 1/2.
    assert needed(found, "braid") == length("86")


def test_a_fabric_of_two_garments_is_bought_once() -> None:
    shop = catalog(
        [{"item": "lawn", "kind": "fabric"}],
        [{"item": "lawn", "width": "45 in", "price": "6", "per": "yd", "currency": "USD"}],
    )
    text = HEADING.replace('widths = ["45 in"]', 'buy = "lawn"') + (
        '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'
    )
    other = text.replace('"apron"', '"dress"').replace('"print"', '"white"')
    found = estimate(Job((order(text), order(other)), shop))
    (line,) = found.purchases
    assert line.names == ("print", "white")
    # Two panels of 21 1/4 in lie side by side in 45 in: 27 1/4 + 2 in, 7/8 yd.
    assert line.buy.bought == length("7/8 yd")


def test_garments_priced_in_two_currencies_are_refused() -> None:
    text = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"') + (
        'price = "3 per yd"\n[[piece]]\nname = "p"\ncut = "print"\nwidth = "20"\nlength = "26"\n'
    )
    with pytest.raises(Refused, match="use one currency in a job"):
        estimate(Job((order(text), order(text.replace("USD", "EUR")))))


def test_complaints_about_fabrics_trims_and_notions_come_together() -> None:
    text = HEADING + (
        '[[piece]]\nname = "p"\ncut = "print"\nwidth = "50"\nlength = "26"\n'
        '[[notion]]\nname = "zip"\nlength = "20"\nsold = [{ length = "14" }]\n'
    )
    assert len(complaints(text)) == 2


def test_a_plan_of_thirty_pieces_at_four_widths_buys_enough_cloth_for_their_area() -> None:
    pieces = "".join(
        f'[[piece]]\nname = "p{n}"\ncut = "print"\nwidth = "{5 + n % 7} {n % 8}/8"\n'
        f'length = "{8 + n % 11} 3/8"\n'.replace(" 0/8", "")
        for n in range(30)
    )
    heading = HEADING.replace('["45 in"]', '["36 in", "45 in", "54 in", "60 in"]')
    (choice,) = estimate(plan(heading + pieces)).fabrics
    for option in choice.options:
        area = sum(piece.width.value.ticks * piece.length.value.ticks for piece in option.pieces)
        assert option.buy.amount * option.usable.ticks >= area
    assert len(choice.options) == 4


def test_what_a_plan_notes_of_a_thing_stands_beside_it() -> None:
    text = """
[[piece]]
name = "sleeve"
cut = "print"
width = "14 1/2"
length = "21"
note = "cut from the good end"
[[notion]]
name = "hook"
note = "black"
"""
    found = in_print(text)
    assert cut_pieces(found)["sleeve"].note == "cut from the good end"
    assert bought(found, "hook").notes == ("black",)
