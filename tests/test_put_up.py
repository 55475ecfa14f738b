"""How shops pack what they sell."""

import pytest

from estimator.measure import Length
from estimator.put_up import read_put_up
from estimator.quoting import NotReadable
from estimator.written import length


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
