"""Pictures as PNG, for spreadsheets, which show no SVG: drawn twice as large, then made smooth."""

from __future__ import annotations

import io
from collections.abc import Sequence
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING, assert_never

from estimator.reports.pictures.lettering import font, harmless
from estimator.reports.pictures.marks import (
    GREY,
    INK,
    PAPER,
    THIN,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    Point,
    Stroke,
)

if TYPE_CHECKING:
    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw as Pen

DOTS_PER_UNIT = 2.5
SMOOTH = 2
COLOURS = 128
_ANCHORS = {"start": "lm", "middle": "mm", "end": "rm"}


def png_bytes(picture: Picture) -> bytes:
    """The picture with 2 1/2 dots a unit."""
    from PIL import Image

    scale = DOTS_PER_UNIT * SMOOTH
    size = (round(picture.width * scale), round(picture.height * scale))
    drawing = _Drawing(Image.new("RGB", size, PAPER), scale)
    for mark in picture.marks:
        drawing.draw(mark)
    small = drawing.image.reduce(SMOOTH).quantize(COLOURS, Image.Quantize.FASTOCTREE)
    held = io.BytesIO()
    small.save(held, "PNG", optimize=False)
    return held.getvalue()


class _Drawing:
    """An image that is drawn on, ``scale`` dots a unit."""

    def __init__(self, image: Image, scale: float) -> None:
        from PIL import ImageDraw

        self.image, self.scale = image, scale
        self.pen: Pen = ImageDraw.Draw(image)

    def draw(self, mark: Mark) -> None:
        match mark:
            case Outline():
                corners = [self._dots(point) for point in mark.corners]
                self.pen.polygon(corners, fill=mark.fill)
                self._line((*mark.corners, mark.corners[0]), INK, mark.wide, mark.dashes)
            case Stroke():
                self._line(mark.points, mark.colour, mark.wide, mark.dashes)
            case Hatch():
                for line in mark.lines():
                    self._line(line, GREY, THIN, ())
            case Lettering():
                self._letter(mark)
            case _:
                assert_never(mark)

    def _dots(self, point: Point) -> Point:
        return point[0] * self.scale, point[1] * self.scale

    def _line(
        self, points: Sequence[Point], colour: str, wide: float, dashes: tuple[float, ...]
    ) -> None:
        width = max(1, round(wide * self.scale))
        for part in _dashed(points, dashes) if dashes else [points]:
            self.pen.line([self._dots(one) for one in part], colour, width, joint="curve")

    def _letter(self, mark: Lettering) -> None:
        """Upright text is drawn level on a sheet of its own, which is then turned."""
        from PIL import Image, ImageDraw

        text, letters = harmless(mark.text), font(round(mark.size * self.scale))
        x, y = self._dots(mark.at)
        if not mark.upright:
            self.pen.text((x, y), text, mark.colour, letters, anchor=_ANCHORS[mark.anchor])
            return
        wide, high = round(letters.getlength(text)) + 4, round(mark.size * self.scale * 2)
        sheet = Image.new("L", (wide, high), 0)
        ImageDraw.Draw(sheet).text((wide / 2, high / 2), text, 255, letters, anchor="mm")
        turned = sheet.transpose(Image.Transpose.ROTATE_90)
        up = {"start": wide, "middle": wide / 2, "end": 0}[mark.anchor]
        self.image.paste(mark.colour, (round(x - high / 2), round(y - up)), turned)


def _dashed(points: Sequence[Point], dashes: Sequence[float]) -> list[tuple[Point, Point]]:
    """The pieces of a line that are inked, where ink and gap follow one another."""
    inked = []
    number, left = 0, dashes[0]
    for (x, y), (u, v) in pairwise(points):
        length, done = hypot(u - x, v - y), 0.0
        while length - done > 1e-9:
            step = min(left, length - done)
            ends = [done / length, (done + step) / length]
            if number % 2 == 0:
                start, end = ((x + (u - x) * at, y + (v - y) * at) for at in ends)
                inked.append((start, end))
            done, left = done + step, left - step
            if left <= 1e-9:
                number += 1
                left = dashes[number % len(dashes)]
    return inked
