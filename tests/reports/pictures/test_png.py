"""Pictures as PNG."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from estimator.reports.pictures.marks import (
    CHAIN,
    INK,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    Stroke,
    rectangle,
)
from estimator.reports.pictures.png import DOTS_PER_UNIT, png_bytes


def dotted(*marks: Mark) -> Image.Image:
    picture = Picture("test", 100, 60, "a title", "words", marks)
    return Image.open(BytesIO(png_bytes(picture))).convert("RGB")


def dark(image: Image.Image, low: tuple[int, int], high: tuple[int, int]) -> int:
    """How many dark dots there are between two corners given in units of the picture."""
    scale = DOTS_PER_UNIT
    part = image.crop((*(round(n * scale) for n in low), *(round(n * scale) for n in high)))
    return sum(1 for value in part.convert("L").tobytes() if value < 110)


def test_it_has_so_many_dots_a_unit() -> None:
    assert dotted().size == (250, 150)


def test_an_outline_is_filled_and_has_an_edge() -> None:
    image = dotted(Outline(rectangle((20, 10), (80, 50)), "#cfe3f1"))
    assert image.getpixel((125, 75)) == pytest.approx((0xCF, 0xE3, 0xF1), abs=3)
    assert dark(image, (15, 5), (25, 55)) > 50
    assert dark(image, (30, 20), (70, 40)) == 0


def test_hatching_stays_in_its_rectangle() -> None:
    image = dotted(Hatch((20, 10), (80, 50)))
    assert image.crop((0, 0, 45, 150)).getcolors() == [(45 * 150, (255, 255, 255))]
    assert len(image.crop((60, 40, 180, 110)).getcolors() or []) > 1


def test_a_chain_of_dashes_has_gaps_and_a_plain_line_none() -> None:
    lines = [
        dark(dotted(Stroke(((0, 30), (100, 30)), 2, INK, dashes)), (0, 20), (100, 40))
        for dashes in ((), CHAIN)
    ]
    assert 0 < lines[1] < lines[0] * 0.9


@pytest.mark.parametrize("upright", [False, True])
def test_text_stands_round_its_middle_and_upright_text_is_turned(upright: bool) -> None:
    image = dotted(Lettering((50, 30), "waistband", 9, "middle", upright))
    long, across = dark(image, (25, 22), (75, 38)), dark(image, (42, 2), (58, 58))
    assert (across > long) == upright
    assert dark(image, (0, 0), (20, 60)) == 0


@pytest.mark.parametrize("text", ["=1+1", "🧵 ribbon", "כנף", "½ × ÷ é ł ж", "", "a\nb"])
def test_no_text_is_a_fault(text: str) -> None:
    for upright in (False, True):
        assert dotted(Lettering((50, 30), text, 9, "middle", upright)).size == (250, 150)
