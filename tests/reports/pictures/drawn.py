"""Pictures read back from their SVG, as anybody could."""

from __future__ import annotations

from dataclasses import dataclass
from xml.etree.ElementTree import Element, fromstring

NS = "{http://www.w3.org/2000/svg}"
Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@dataclass(frozen=True)
class Written:
    """A line of text: what it says, its size, its anchor, and where its base line begins."""

    text: str
    size: float
    at: tuple[float, float]
    anchor: str
    upright: bool


def read(svg: str) -> Element:
    root = fromstring(svg)
    assert root.tag == f"{NS}svg"
    return root


def pieces(root: Element) -> list[tuple[str, tuple[tuple[float, float], ...]]]:
    """The title and the corners of each piece."""
    return [
        (str(shape[0].text), corners(shape))
        for shape in root.iter(f"{NS}polygon")
        if shape.get("class") == "piece"
    ]


def corners(shape: Element) -> tuple[tuple[float, float], ...]:
    pairs = (pair.split(",") for pair in shape.get("points", "").split())
    return tuple((float(x), float(y)) for x, y in pairs)


def box(points: tuple[tuple[float, float], ...]) -> Box:
    across, along = [x for x, _ in points], [y for _, y in points]
    return min(across), min(along), max(across), max(along)


def written(root: Element) -> list[Written]:
    return [
        Written(
            str(one.text),
            float(one.get("font-size", "0")),
            (float(one.get("x", "0")), float(one.get("y", "0"))),
            one.get("text-anchor", ""),
            one.get("transform") is not None,
        )
        for one in root.iter(f"{NS}text")
    ]
