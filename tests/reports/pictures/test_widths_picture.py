"""The chart of a fabric's widths."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.reports.pictures.svg import svg_text
from estimator.reports.pictures.widths_picture import is_compared, widths_picture
from tests.plans import HEADING, plan
from tests.reports.pictures.drawn import NS, box, corners, read, written

PANEL = '[[piece]]\nname = "panel"\nquantity = 4\ncut = ["print"]\nwidth = "20"\nlength = "30"\n'


def chart(widths: str) -> tuple[list[str], list[float], str]:
    """The text, the lengths of the bars, and the words of the chart."""
    heading = HEADING.replace('name = "apron"', 'name = "apron"\ncurrency = "USD"')
    heading = heading.replace('["45 in"]', widths)
    found = estimate(plan(heading + PANEL))
    (choice,) = found.fabrics
    assert is_compared(choice)
    picture = widths_picture(choice, found)
    root = read(svg_text(picture))
    shapes = [box(corners(shape)) for shape in root.iter(f"{NS}polygon")]
    bars = [right - left for left, top, right, _ in shapes if top > 20]
    return [one.text for one in written(root)], bars, picture.description


def test_each_width_has_a_bar_for_its_length_and_one_for_its_cost() -> None:
    # Cut 21 1/4 by 31 1/4: two across 45 in, two rows; one across 36 in, four rows.
    said, bars, words = chart(
        '[{ width = "36 in", price = "4 per yd" }, { width = "45 in", price = "6 per yd" }]'
    )
    # 4 x 31 1/4 + 2 in are 127 in, 3 5/8 yd; 2 x 31 1/4 + 2 in are 64 1/2 in, 1 7/8 yd
    assert said[:2] == ["length to buy", "cost"]
    assert {"36 in", "45 in", "bought"} <= set(said)
    assert {"3 5/8 yd", "1 7/8 yd"} <= set(said)
    narrow, narrow_cost, wide, wide_cost = bars
    assert wide / narrow == pytest.approx(1.875 / 3.625, rel=0.01)
    assert wide_cost / narrow_cost == pytest.approx(11.25 / 14.5, rel=0.01)
    assert "45 in wide: 1 7/8 yd, 11.25" in words
    assert words.count("bought") == 1


def test_without_prices_there_are_no_bars_of_cost() -> None:
    said, bars, words = chart('["36 in", "45 in"]')
    assert len(bars) == 2
    assert said.count("no price") == 2
    assert "cost" not in said
    assert "45 in wide: 1 7/8 yd, no price, bought" in words


def test_a_width_that_cannot_be_used_says_so() -> None:
    said, _, words = chart('["20 in", "45 in"]')
    assert "20 in: cannot be used" in said
    assert "20 in: cannot be used" in words
