"""Pictures as SVG."""

from __future__ import annotations

import pytest

from estimator.reports.pictures.marks import Hatch, Lettering, Outline, Picture, Stroke, rectangle
from estimator.reports.pictures.svg import svg_text
from tests.reports.pictures.drawn import NS, read


def picture(title: str = "a title", text: str = "band") -> Picture:
    marks = (
        Outline(rectangle((10, 10), (90, 50)), name=title),
        Stroke(((0, 0), (5, 5)), dashes=(2, 1)),
        Hatch((10, 10), (90, 50)),
        Lettering((50, 30), text, 9, "middle", upright=True),
    )
    return Picture("layout-1", 100, 60, title, "so many pieces", marks)


def test_it_is_an_image_with_a_title_and_a_description() -> None:
    root = read(svg_text(picture()))
    assert root.get("role") == "img"
    named = {one.get("id"): one.text for one in root if one.get("id")}
    ids = root.get("aria-labelledby", "").split()
    assert [named[one] for one in ids] == ["a title", "so many pieces"]


@pytest.mark.parametrize(
    "text", ["<b>", "]]>", "&amp;", "\x00\x0b", "\ud800", "\ufffe", "a\u2028b"]
)
def test_any_text_is_well_formed(text: str) -> None:
    root = read(svg_text(picture(text, text)))
    assert {one.tag for one in root.iter()} == {
        f"{NS}{tag}" for tag in ("svg", "title", "desc", "polygon", "polyline", "path", "text")
    }
    assert svg_text(picture(text, text)).encode()


def test_nothing_in_it_is_fetched() -> None:
    text = svg_text(picture())
    assert "href" not in text
    assert text.count("http") == 1, "the name of the standard alone"


def test_hatching_is_slanted_within_its_rectangle() -> None:
    for (x, y), (u, v) in Hatch((10, 10), (90, 50)).lines():
        assert 10 <= x < u <= 90
        assert 10 <= v < y <= 50
        assert u - x == pytest.approx(y - v)
