"""Notions by count: packs, spares, and zips that are longer than their opening."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator import Catalog, Estimate, Job, Refused, estimate
from estimator.buying.types import Purchase
from estimator.written import length
from tests.plans import HEADING, bought, catalog, complaints, order, plan

PANEL = '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "26"\n'


def notion(more: str, shop: Catalog | None = None, heading: str = HEADING) -> Purchase:
    text = f'{heading}{PANEL}[[notion]]\nname = "thing"\n{more}\n'
    return bought(estimate(plan(text), shop) if shop else estimate(plan(text)), "thing")


@pytest.mark.parametrize(
    ("quantity", "packs", "note"),
    [(6, 1, ()), (7, 2, ("5 to spare",)), (12, 2, ()), (1, 1, ("5 to spare",))],
)
def test_buttons_come_in_whole_packs(quantity: int, packs: int, note: tuple[str, ...]) -> None:
    line = notion(f'quantity = {quantity}\nsold = [{{ put_up = "pack of 6" }}]')
    assert (line.needed, line.buy.bought) == (quantity, packs)
    assert line.buy.unit == "pack of 6"
    assert line.buy.note == "".join(note)


def test_a_notion_is_sold_singly_unless_the_plan_says_otherwise() -> None:
    line = notion("quantity = 5")
    assert (line.buy.bought, line.buy.unit) == (5, "each")


def test_spare_buttons_are_for_the_whole_job_and_not_for_each_copy() -> None:
    thrice = HEADING.replace('"apron"', '"apron"\ncopies = 3')
    assert notion("quantity = 5\nspare = 2", heading=thrice).needed == 17


def test_packs_or_single_buttons_whichever_costs_less() -> None:
    heading = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"')
    sold = 'sold = [{ price = "0.60 each" }, { put_up = "pack of 6", price = "2.90 each" }]\n'
    one_short = notion(f"quantity = 5\n{sold}", heading=heading).buy
    four = notion(f"quantity = 4\n{sold}", heading=heading).buy
    assert (one_short.unit, one_short.cost) == ("pack of 6", Decimal("2.90"))
    assert (four.unit, four.cost) == ("each", Decimal("2.40"))


def zips(kind: str) -> Catalog:
    offers = [
        {"item": "zip", "length": size, "put_up": "each", "price": price, "currency": "USD"}
        for size, price in (("14 in", "2"), ("16 in", "2.20"), ("18 in", "1.50"))
    ]
    return catalog([{"item": "zip", "kind": kind}], offers)


def zipped(opening: str, kind: str = "zip") -> Purchase:
    return notion(f'buy = "zip"\nlength = "{opening}"', zips(kind))


def test_an_opening_takes_the_next_longer_zip_shortened() -> None:
    # Common practice: 15 1/2 in takes the next longer closed-end zip sold. The
    # 18 in zip is cheaper, but the next longer is 16 in.
    line = zipped("15 1/2")
    assert line.buy.offer.length == length("16 in")
    assert line.notes == ("16 in long", "shorten to 15 1/2 in")


def test_a_zip_of_just_the_length_is_not_shortened() -> None:
    assert zipped("16").notes == ("16 in long",)


def test_an_opening_longer_than_every_zip_is_refused() -> None:
    with pytest.raises(Refused, match="'zip' is not sold for an opening of 18 1/2 in; the lengths"):
        zipped("18 1/2")


def test_a_separating_zip_is_bought_exact() -> None:
    assert zipped("16", "separating zip").notes == ("16 in long",)
    with pytest.raises(Refused, match="a separating zip cannot be shortened, and 'zip' is not"):
        zipped("15 1/2", "separating zip")


def test_a_zip_without_a_shop_is_noted_with_its_opening() -> None:
    assert notion('length = "15 1/2"').notes == (
        "for an opening of 15 1/2 in: take it or the next longer",
    )


def test_a_notion_cannot_be_counted_off_a_roll() -> None:
    shop = catalog(
        [{"item": "cord", "kind": "notion"}],
        [{"item": "cord", "price": "1", "per": "yd", "currency": "USD"}],
    )
    with pytest.raises(Refused, match="'cord' is sold by the length, and the plan counts it"):
        notion('buy = "cord"\nquantity = 2', shop)


def test_a_trim_in_packs_says_nothing_of_its_length() -> None:
    trim = '[[trim]]\nname = "braid"\nlength = "30"\nsold = [{ put_up = "pack of 3" }]\n'
    (found,) = complaints(HEADING + PANEL + trim)
    assert "'braid' is sold as pack of 3, which says nothing of its length" in found


BRAID = (
    '[[trim]]\nname = "braid"\nwaste = 0\nquantity = 3\nlength = "64"\nends = "raw"\nsold = [%s]\n'
)


def test_a_braid_that_is_sold_each_in_a_length_is_bought_as_whole_lengths() -> None:
    # Two runs of 64 in go on 4 yd, 144 in: three are on two lengths, 10 in all.
    usd = HEADING.replace('"apron"', '"apron"\ncurrency = "USD"') + PANEL
    each = BRAID % '{ put_up = "each", length = "4 yd", price = "5 each" }'
    line = bought(estimate(plan(usd + each)), "braid")
    assert (line.buy.bought, line.buy.unit, line.buy.cost) == (2, "length of 4 yd", Decimal(10))
    # In packs of three, 64 in long each, one pack holds all.
    pack = BRAID % '{ put_up = "pack of 3", length = "64", price = "7 each" }'
    line = bought(estimate(plan(usd + pack)), "braid")
    assert (line.buy.bought, line.buy.unit) == (1, "pack of 3 x 64 in")


def test_a_lace_of_the_catalog_is_as_long_as_its_offer_says() -> None:
    # 4 + 8 x 5 + 2 x 12 in take 68 in: the lace of 72 in, and not the shorter one.
    shop = catalog(
        [{"item": "lace", "kind": "trim"}],
        [
            {"item": "lace", "put_up": "each", "length": size, "price": cost, "currency": "USD"}
            for size, cost in (("60 in", "2"), ("72 in", "3"))
        ],
    )
    lacing = '[[lacing]]\nname = "laces"\nbuy = "lace"\nlength = "12"\napart = "3"\ngap = "4"\n'
    line = bought(estimate(plan(HEADING + PANEL + lacing), shop), "laces")
    assert (line.buy.bought, line.buy.unit) == (1, "length of 2 yd")


def buttons_for_two_garments() -> Estimate:
    shop = catalog(
        [{"item": "horn", "kind": "notion"}],
        [{"item": "horn", "put_up": "pack of 6", "price": "3", "currency": "USD"}],
    )
    text = HEADING + PANEL + '[[notion]]\nname = "thing"\nbuy = "horn"\nquantity = 3\n'
    coat = text.replace('"apron"', '"coat"').replace('"print"', '"tweed"')
    return estimate(Job((order(text), order(coat)), shop))


def test_buttons_of_two_garments_share_a_pack() -> None:
    # Three and three are one pack of six, and not two packs.
    found = buttons_for_two_garments()
    line = bought(found, "thing")
    assert (line.needed, line.buy.bought) == (6, 1)
    assert [source.garment for source in line.sources] == ["apron", "coat"]


def test_a_price_break_by_packs_is_taken_where_it_costs_less() -> None:
    shop = catalog(
        [{"item": "horn", "kind": "notion"}],
        [
            {"item": "horn", "put_up": "each", "price": "1", "currency": "USD"},
            {"item": "horn", "put_up": "each", "price": "0.50", "currency": "USD",
             "from_quantity": "10"},
        ],
    )  # fmt: skip
    assert notion('buy = "horn"\nquantity = 8', shop).buy.bought == 10
    assert notion('buy = "horn"\nquantity = 4', shop).buy.bought == 4


def test_two_zips_of_one_kind_for_two_openings_are_two_lines() -> None:
    zips = """
[[notion]]
name = "{name}"
colour = "navy"
length = "{opening}"
sold = [{{ put_up = "each", length = "7" }}, {{ put_up = "each", length = "16" }}]
"""
    text = HEADING + zips.format(name="back", opening="6 1/2")
    text += zips.format(name="side", opening="15 1/2") + PANEL
    found = estimate(plan(text))
    assert bought(found, "back").notes == ("7 in long", "shorten to 6 1/2 in")
    assert bought(found, "side").notes == ("16 in long", "shorten to 15 1/2 in")
