"""Put-ups, prices and offers: how shops pack and price what they sell."""

from decimal import Decimal

import pytest
from pydantic import ValidationError

from estimator.catalog import Offer, read_put_up
from estimator.measure import Length, Unit
from estimator.prices import Price, read_price
from estimator.written import NotReadable, length


@pytest.mark.parametrize(
    ("written", "sold", "many"),
    [
        ("pack of 6", "as pack of 6", "packs of 6"),
        ("card of 3 yd", "as card of 3 yd", "cards of 3 yd"),
        ("box of 2 x 5 m", "as box of 2 x 5 m", "boxes of 2 x 5 m"),
    ],
)
def test_put_ups_are_spoken_of_as_one_and_as_several(written: str, sold: str, many: str) -> None:
    put_up = read_put_up(written)
    assert (put_up.sold_text, put_up.many_text) == (sold, many)


def test_what_is_sold_singly_or_by_the_length_is_so_in_words() -> None:
    assert [read_put_up(one).sold_text for one in ("each", "")] == ["each", "by the length"]


@pytest.mark.parametrize(
    ("written", "holds", "text"),
    [
        ("by the length", None, "by the length"),
        ("", None, "by the length"),
        ("Each", 1, "each"),
        ("pack of 6", 6, "pack of 6"),
        ("card of 1", 1, "card"),
        ("card of 3 yd", length("3 yd"), "card of 3 yd"),
        ("Spool  of 25 m", length("25 m"), "spool of 25 m"),
        ("card of 2 1/2 yd", length("2 1/2 yd"), "card of 2 1/2 yd"),
    ],
)
def test_a_put_up_is_read_as_a_shop_names_it(
    written: str, holds: Length | int | None, text: str
) -> None:
    put_up = read_put_up(written)
    assert (put_up.holds, put_up.text) == (holds, text)
    assert put_up.cut_to_length is (holds is None)


@pytest.mark.parametrize(
    "written", ["card", "of 6", "pack of", "pack of 0", "pack of 0 yd", "3 yd", "pack of 1234567"]
)
def test_what_is_no_put_up_is_refused_with_examples(written: str) -> None:
    with pytest.raises(NotReadable, match="write by the length, each, pack of 6, card of 3 yd or"):
        read_put_up(written)


def test_a_put_up_with_nonsense_for_its_length_is_refused() -> None:
    with pytest.raises(NotReadable, match="'kg' in '3 kg' measures mass"):
        read_put_up("card of 3 kg")


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("8.50 per yd", Price(Decimal("8.5"), Unit.YD)),
        ("9,20 per m", Price(Decimal("9.2"), Unit.M)),
        ("0.25 per in", Price(Decimal("0.25"), Unit.IN)),
        (" 2.40  each", Price(Decimal("2.4"), None)),
        ("0 each", Price(Decimal(0), None)),
    ],
)
def test_a_price_says_what_it_is_for(written: str, read: Price) -> None:
    assert read_price(written) == read


@pytest.mark.parametrize("written", ["8.50", "per yd", "8.50 yd", "8.50 per", "8.50 / yd", 8.5])
def test_a_price_for_nothing_in_particular_is_refused(written: object) -> None:
    with pytest.raises(NotReadable, match="does not say what the price is for; write it like 8"):
        read_price(written)


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
