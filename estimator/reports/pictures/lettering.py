"""Text in pictures: made harmless, measured, wrapped and shortened, so that it stays in its place.

It is measured in the font that travels with the program. That is among the widest of the usual
ones without serifs, so that a line which fits in it also fits in those that a page may be shown in.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from typing import TYPE_CHECKING

from estimator.shipped import shipped

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

MORE = "…"
LEADING = 1.2
"""From line to line, in sizes of the font."""
_MEASURED_AT = 100
_UNSEEN = {"Cc", "Cs", "Co", "Cn", "Zl", "Zp", "Zs"}
_TURNS = set("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u061c")
"""Marks that turn the direction of whatever is written after them."""


def harmless(text: str) -> str:
    """The text in one line: no control characters, no marks that turn what stands beside it."""
    seen = "".join(
        " " if unicodedata.category(char) in _UNSEEN else char
        for char in text
        if char not in _TURNS
    )
    return " ".join(seen.split())


@lru_cache(maxsize=64)
def font(size: int) -> FreeTypeFont:
    """The font that travels with the program."""
    from PIL import ImageFont

    return ImageFont.truetype(str(shipped("templates") / "fonts" / "DejaVuSans.ttf"), size)


@lru_cache(maxsize=8192)
def _width(text: str) -> float:
    measured: float = font(_MEASURED_AT).getlength(text) / _MEASURED_AT
    if text.isascii():
        return measured
    wide = sum(1 for char in text if unicodedata.east_asian_width(char) in "WF")
    return max(measured, wide * 1.3 + (len(text) - wide) * 0.3)


def width_of(text: str, size: float) -> float:
    """How wide a line is in units of the picture."""
    return _width(text) * size


def shortened(text: str, room: float, size: float) -> str:
    """The text, or as much of its beginning as fits, with dots; nothing where those do not."""
    if width_of(text, size) <= room:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_of(text[:middle].rstrip() + MORE, size) <= room:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + MORE if low else ""


def wrapped(text: str, room: float, size: float) -> tuple[str, ...] | None:
    """The text on as few lines as take its words; None where a word is wider than the room."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, size) <= room:
            lines[-1] = longer
        elif width_of(word, size) <= room:
            lines.append(word)
        else:
            return None
    return tuple(lines)
