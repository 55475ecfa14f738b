"""Trims as bars on their cards."""

from __future__ import annotations

import pytest

from estimator import Estimate, estimate
from estimator.reports.pictures.svg import svg_text
from estimator.reports.pictures.trim_pictures import trim_pictures
from tests.plans import plan
from tests.reports.pictures.drawn import box, pieces, read, written

BRAID = """
[[trim]]
name = "cuff braid"
length = "30"
quantity = 3
ends = "raw"
sold = [{ put_up = "card of 2 yd", price = "2 each" }]
"""


def in_shop(text: str) -> Estimate:
    return estimate(plan(f'[garment]\nname = "coat"\ncurrency = "USD"\n{text}'))


def picture(found: Estimate) -> tuple[list[tuple[str, float]], list[str], str]:
    """The runs with their widths, the text, and the words of the only trim's picture."""
    (one,) = trim_pictures(found)
    root = read(svg_text(one))
    boxes = [(title, box(corners)) for title, corners in pieces(root)]
    runs = [(title, right - left) for title, (left, _, right, _) in boxes]
    return runs, [line.text for line in written(root)], one.description


def test_each_run_lies_on_its_card_to_scale_and_what_is_left_is_told() -> None:
    # Cards of 72 in: two runs of 30 on one, 12 left; one on the other, 42 left. 384 units a card.
    runs, said, _ = picture(in_shop(BRAID))
    assert [title for title, _ in runs] == ["cuff braid, 30 in"] * 3
    assert [wide for _, wide in runs] == pytest.approx([384 * 30 / 72] * 3, abs=0.05)
    assert said[0] == "1 × card of 2 yd, 12 in left over"
    assert "1 × card of 2 yd, 42 in left over" in said


def test_cards_filled_alike_are_drawn_once_with_their_number() -> None:
    runs, said, _ = picture(in_shop(BRAID.replace("quantity = 3", "quantity = 8")))
    assert len(runs) == 2
    assert said[0] == "4 × card of 2 yd, 12 in left over"


def test_what_comes_off_the_roll_is_one_bar() -> None:
    text = BRAID.split("sold")[0] + 'price = "1 per yd"\n'
    runs, said, words = picture(in_shop(text))
    # 90 in and 5 % are 94 1/2 in, 2 5/8 yd; bought by the eighth 2 3/4 or less
    assert len(runs) == 3
    assert said[0].startswith("1 × 2 5/8 yd off the roll, 4 1/2 in for waste and rounding")
    assert "cuff braid, 30 in, cuff braid, 30 in, cuff braid, 30 in" in words


def test_a_run_too_short_for_its_name_bears_a_letter_that_the_legend_explains() -> None:
    text = BRAID.replace('"30"', '"4"').replace("quantity = 3", "quantity = 9")
    runs, said, _ = picture(in_shop(text))
    assert len(runs) == 9
    assert said.count("A") == 9
    assert said[-1] == "A: cuff braid, 4 in"


def test_very_many_runs_on_one_card_are_drawn_as_one() -> None:
    text = BRAID.replace('"30"', '"1/2"').replace("quantity = 3", "quantity = 100")
    runs, said, _ = picture(in_shop(text))
    assert [title for title, _ in runs] == ["100 × cuff braid, 1/2 in"]
    assert said[0] == "1 × card of 2 yd, 22 in left over"
