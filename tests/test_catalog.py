"""Offers: how shops price what they sell, and by what it goes up."""

from decimal import Decimal

import pytest
from pydantic import ValidationError

from estimator.catalog import Offer
from estimator.written import length


def offer(**cells: str) -> Offer:
    return Offer.model_validate({"item": "lawn", **cells})


def test_cloth_is_sold_by_the_eighth_of_a_yard_or_the_tenth_of_a_metre() -> None:
    assert offer().selling_step == length("1/8 yd")
    assert offer(per="yd").selling_step == length("4 1/2 in")
    assert offer(per="m").selling_step == length("10 cm")
    assert offer(per="m", step="0.25 m").selling_step == length("25 cm")


@pytest.mark.parametrize(
    ("price", "per", "sold"),
    [("9", "yd", "9"), ("3", "ft", "9"), ("0.25", "in", "9"), ("9", "m", "9"), ("0.09", "cm", "9")],
)
def test_a_price_is_that_of_a_yard_or_a_metre(price: str, per: str, sold: str) -> None:
    found = offer(price=price, per=per, currency="USD").price_per_sold_unit
    assert found == Decimal(sold)


def test_a_pack_is_priced_as_a_pack() -> None:
    pack = offer(put_up="pack of 6", price="2.40", currency="USD")
    assert pack.price_per_sold_unit == Decimal("2.40")


@pytest.mark.parametrize(
    ("cells", "told"),
    [
        ({"price": "8", "currency": "USD"}, "the price says not for what length"),
        ({"put_up": "each", "price": "8", "per": "yd", "currency": "USD"}, "cut to length, not"),
        ({"put_up": "each", "minimum": "1 yd"}, "cut to length, not 'each'"),
        ({"width": "44 in", "usable": "45 in"}, "the usable width is more than the width"),
        ({"per": "yd", "from_quantity": "3"}, "from_quantity is not counted as the offer is"),
        ({"put_up": "each", "from_quantity": "3 yd"}, "from_quantity is not counted as the offer"),
        ({"price": "8", "per": "yd"}, "the price has no currency"),
        ({"width": "44"}, "'44' has no unit"),
        ({"widht": "44 in"}, "Extra inputs are not permitted"),
    ],
)
def test_an_offer_that_does_not_hang_together_is_refused(cells: dict[str, str], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        offer(**cells)


def test_a_price_break_at_more_than_any_shop_sells_is_refused() -> None:
    row = {"item": "horn-button", "put_up": "pack of 6", "from_quantity": "123456789"}
    assert Offer.model_validate(row).from_quantity == 123_456_789
    with pytest.raises(ValidationError, match="'1234567890' is more than any shop sells"):
        Offer.model_validate({**row, "from_quantity": "1234567890"})
