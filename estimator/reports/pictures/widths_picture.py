"""The widths of a fabric compared: the length to buy of each as a bar, and its cost as another."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.one_width import WidthOption
from estimator.estimated import Estimate
from estimator.measure import Length, natural_text, shop_text
from estimator.reports.pictures.lettering import shortened
from estimator.reports.pictures.marks import (
    HEAVY,
    PAPER,
    THIN,
    TINTS,
    USUAL,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    Stroke,
    rectangle,
)
from estimator.reports.units import tape_unit, width_text
from estimator.reports.uses import fabric_title

WIDE, LEFT, LONGEST = 400.0, 84.0, 210.0
TOP, BAR, GAP, ROW = 24.0, 11.0, 3.0, 36.0
SIZE, SMALL = 9.0, 8.0
_LENGTH, _COST = TINTS[1], PAPER


def is_compared(choice: FabricChoice) -> bool:
    """Whether there is more than one width to compare."""
    return len(choice.options) + len(choice.unfit) > 1


def widths_picture(choice: FabricChoice, estimate: Estimate) -> Picture:
    """A chart of one fabric, the narrowest width first."""
    options = sorted(choice.options, key=lambda option: option.width)
    longest = max(_bought(option).ticks for option in options)
    dearest = max((option.buy.cost or Decimal(0) for option in options), default=Decimal(0))
    marks: list[Mark] = [*_signs(priced=bool(dearest))]
    said = []
    y = TOP
    for option in options:
        width = width_text(option.width, option.buy.offer.sold_by, estimate)
        length = shop_text(_bought(option), option.buy.offer.sold_by)
        cost = "no price" if option.buy.cost is None else f"{option.buy.cost:f}"
        if option.buy.cost is not None:
            cost = f"{cost} {estimate.currency}"
        bought = option is choice.chosen
        marks += _row(y, width, bought=bought)
        marks += _bar(y, _bought(option).ticks / (longest or 1), length, _LENGTH, bought=bought)
        share = float(option.buy.cost / dearest) if option.buy.cost and dearest else 0.0
        marks += _bar(y + BAR + GAP, share, cost, _COST, bought=bought)
        said.append(f"{width} wide: {length}, {cost}{', bought' if bought else ''}")
        y += ROW
    for unfit in choice.unfit:
        text = f"{natural_text(unfit.width, tape_unit(estimate))}: cannot be used"
        marks.append(Lettering((LEFT, y + BAR / 2), shortened(text, WIDE - LEFT, SIZE), SIZE))
        said.append(text)
        y += SIZE * 2
    axis = Stroke(((LEFT, TOP - 4), (LEFT, y - 4)), THIN)
    return Picture(
        stem=f"widths-{estimate.fabrics.index(choice) + 1}",
        width=WIDE,
        height=y,
        title=f"{fabric_title(choice, estimate)}: widths compared",
        description=f"{'; '.join(said)}.",
        marks=(*marks, axis),
    )


def _bought(option: WidthOption) -> Length:
    assert isinstance(option.buy.bought, Length), "fabric is cut to length"
    return option.buy.bought


def _signs(*, priced: bool) -> Iterator[Mark]:
    yield Outline(rectangle((LEFT, 3), (LEFT + 12, 12)), _LENGTH, THIN)
    yield Lettering((LEFT + 16, 7.5), "length to buy", SMALL)
    if priced:
        yield Outline(rectangle((LEFT + 90, 3), (LEFT + 102, 12)), _COST, THIN)
        yield Hatch((LEFT + 90, 3), (LEFT + 102, 12), 3.0)
        yield Lettering((LEFT + 106, 7.5), "cost", SMALL)


def _row(y: float, width: str, *, bought: bool) -> Iterator[Mark]:
    name = shortened(width, LEFT - 10, SIZE)
    yield Lettering((LEFT - 6, y + BAR / 2), name, SIZE, "end")
    if bought:
        yield Lettering((LEFT - 6, y + BAR * 1.5 + GAP), "bought", SMALL, "end")


def _bar(y: float, share: float, text: str, fill: str, *, bought: bool) -> Iterator[Mark]:
    """A bar whose figure stands behind its end."""
    low, high = (LEFT, y), (LEFT + LONGEST * share, y + BAR)
    if share:
        yield Outline(rectangle(low, high), fill, HEAVY if bought else USUAL)
        if fill == PAPER:
            yield Hatch(low, high, 3.5)
    figure = shortened(text, WIDE - high[0] - 6, SIZE)
    yield Lettering((high[0] + 6, y + BAR / 2), figure, SIZE)
