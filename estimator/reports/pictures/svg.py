"""Pictures as SVG (the open standard of the W3C): one element, self-contained, all text escaped."""

from __future__ import annotations

from collections.abc import Iterable
from typing import assert_never
from xml.etree.ElementTree import Element, SubElement, tostring

from estimator.reports.pictures.lettering import harmless
from estimator.reports.pictures.marks import (
    GREY,
    INK,
    THIN,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    Point,
    Stroke,
)

NAMESPACE = "http://www.w3.org/2000/svg"
FONTS = "Arial, 'Liberation Sans', Helvetica, 'DejaVu Sans', sans-serif"
MIDDLE = 0.35
"""From the middle line of a text down to its base line, in sizes of the font."""


def svg_text(picture: Picture) -> str:
    """The picture as one ``svg`` element, as it stands in a page or in a file of its own."""
    root = Element("svg")
    root.set("xmlns", NAMESPACE)
    root.set("viewBox", f"0 0 {_number(picture.width)} {_number(picture.height)}")
    root.set("role", "img")
    root.set("aria-labelledby", f"{picture.stem}-title {picture.stem}-words")
    root.set("font-family", FONTS)
    _text(root, "title", picture.title).set("id", f"{picture.stem}-title")
    _text(root, "desc", picture.description).set("id", f"{picture.stem}-words")
    for mark in picture.marks:
        _draw(root, mark)
    return tostring(root, encoding="unicode")


def _draw(root: Element, mark: Mark) -> None:
    match mark:
        case Outline():
            shape = SubElement(root, "polygon", points=_points(mark.corners), fill=mark.fill)
            _line(shape, INK, mark.wide, mark.dashes)
            shape.set("stroke-linejoin", "round")
            if mark.name:
                shape.set("class", "piece")
                _text(shape, "title", mark.name)
        case Stroke():
            line = SubElement(root, "polyline", points=_points(mark.points), fill="none")
            _line(line, mark.colour, mark.wide, mark.dashes)
        case Hatch():
            ways = "".join(f"M{_pair(start)}L{_pair(end)}" for start, end in mark.lines())
            hatch = SubElement(root, "path", d=ways, fill="none")
            _line(hatch, GREY, THIN, ())
        case Lettering():
            _letter(root, mark)
        case _:
            assert_never(mark)


def _letter(root: Element, mark: Lettering) -> None:
    x, y = mark.at
    down = mark.size * MIDDLE
    text = _text(root, "text", mark.text)
    text.set("font-size", _number(mark.size))
    text.set("fill", mark.colour)
    text.set("text-anchor", mark.anchor)
    if mark.upright:
        x, down = x + down, 0.0
        text.set("transform", f"rotate(-90 {_number(x)} {_number(y)})")
    text.set("x", _number(x))
    text.set("y", _number(y + down))


def _line(shape: Element, colour: str, wide: float, dashes: tuple[float, ...]) -> None:
    shape.set("stroke", colour)
    shape.set("stroke-width", _number(wide))
    if dashes:
        shape.set("stroke-dasharray", " ".join(map(_number, dashes)))


def _text(parent: Element, tag: str, text: str) -> Element:
    child = SubElement(parent, tag)
    child.text = harmless(text)
    return child


def _points(points: Iterable[Point]) -> str:
    return " ".join(map(_pair, points))


def _pair(point: Point) -> str:
    return f"{_number(point[0])},{_number(point[1])}"


def _number(value: float) -> str:
    """At most two decimals, without idle zeros."""
    return f"{value:.2f}".rstrip("0").rstrip(".") if value else "0"
