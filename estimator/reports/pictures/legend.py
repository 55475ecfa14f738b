"""What stands below the picture of a layout: the scale bar, the signs, and names without room."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.measure import Unit
from estimator.reports.pictures.labels import Words, arrow
from estimator.reports.pictures.lettering import LEADING, shortened, width_of
from estimator.reports.pictures.marks import (
    DASHES,
    INK,
    PAPER,
    THIN,
    USUAL,
    Hatch,
    Lettering,
    Mark,
    Outline,
    rectangle,
)
from estimator.reports.pictures.outlines import Grain

LEFT, WIDE = 8.0, 384.0
SIZE = 8.0
SIGN = 12.0
LONGEST_BAR = 120.0
_STEPS = (1, 2, 3, 6, 9, 12, 18, 24, 36, 72), (1, 2, 5, 10, 20, 50, 100, 200)


def legend_below(
    top: float,
    unit: Unit,
    scale: float,
    *,
    boxed: bool,
    one_way: bool,
    turned: bool,
    entries: Sequence[str],
) -> tuple[float, list[Mark]]:
    """The legend from ``top`` on, and where it ends; ``scale`` is in units a tick."""
    marks: list[Mark] = [*_scale_bar(top, unit, scale)]
    line = SIZE * LEADING
    signs = ["waste"]
    grain = "the top of each piece" if one_way else "grain"
    signs.append(f"{grain}{', across where a piece is turned' if turned else ''}")
    if boxed:
        signs.append("box round a paper pattern")
    x, y = LEFT, top + 22
    for number, text in enumerate(signs):
        wide = SIGN + 4 + width_of(text, SIZE)
        if x > LEFT and x + wide > LEFT + WIDE:
            x, y = LEFT, y + line + 2
        marks += _sign(number, x, y, one_way=one_way)
        marks.append(Lettering((x + SIGN + 4, y), text, SIZE))
        x += wide + 14
    y += line + 2
    for entry in entries:
        marks.append(Lettering((LEFT, y), shortened(entry, WIDE, SIZE), SIZE))
        y += line
    return y, marks


def _scale_bar(top: float, unit: Unit, scale: float) -> Iterator[Mark]:
    """A bar of a round length in four parts, black and white by turns."""
    whole = Unit.CM if unit.metric else Unit.IN
    steps = _STEPS[whole.metric]
    one = whole.length.ticks * scale
    step = max((step for step in steps if step * one <= LONGEST_BAR), default=steps[0])
    part = step * one / 4
    for number in range(4):
        low, high = LEFT + number * part, LEFT + (number + 1) * part
        fill = INK if number % 2 == 0 else PAPER
        yield Outline(rectangle((low, top), (high, top + 5)), fill, THIN)
    text = f"{step} {whole.symbol}, drawn to scale"
    yield Lettering((LEFT + 4 * part + 6, top + 2.5), text, SIZE)


def _sign(number: int, x: float, y: float, *, one_way: bool) -> Iterator[Mark]:
    low, high = (x, y - 4.5), (x + SIGN, y + 4.5)
    if number == 0:
        yield Outline(rectangle(low, high), PAPER, THIN)
        yield Hatch(low, high, 3.5)
    elif number == 1:
        words = Words("", "", "", Grain.ALONG, one_way)
        yield from arrow((x + SIGN / 2, y), 11.0, words)
    else:
        yield Outline(rectangle(low, high), PAPER, USUAL, DASHES)
