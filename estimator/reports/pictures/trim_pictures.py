"""Trims as bars: which runs are cut from which card, spool, length off the roll or in hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import Length, Unit, shop_text, tape_text, total
from estimator.reports.left_over import tape_on
from estimator.reports.pictures.lettering import LEADING, harmless, shortened, width_of
from estimator.reports.pictures.marks import (
    PAPER,
    TINTS,
    USUAL,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    rectangle,
)
from estimator.reports.pictures.wording import lettered
from estimator.reports.stash_papers import amount_text, own_unit, where_text
from estimator.reports.units import tape_unit
from estimator.reports.uses import several_garments, use_of
from estimator.stash import Taken
from estimator.working import Source

WIDE, LEFT, LONGEST, BAR = 400.0, 8.0, 384.0, 18.0
SIZE = 8.0
LINE = SIZE * LEADING
MOST_DRAWN = 40
"""With more runs on one card, those alike are drawn as one."""
Run = tuple[str, Length, int]
"""The name of a run, its length, and how many alike of it are drawn as one."""


@dataclass(frozen=True, slots=True)
class _Bar:
    """A length in words, what it ``holds``, the ``runs`` cut from it, and its ``rest`` in words."""

    length: str
    holds: Length
    runs: tuple[Run, ...]
    rest: str


def trim_pictures(estimate: Estimate) -> tuple[Picture, ...]:
    """A picture of each trim and elastic that is cut to its length, in the list's order."""
    cut = [
        one
        for one in estimate.purchases
        if one.buy.filled or any(taken.runs for taken in one.taken)
    ]
    return tuple(_of(one, number, estimate) for number, one in enumerate(cut, start=1))


def _of(purchase: Purchase, number: int, estimate: Estimate) -> Picture:
    unit = tape_unit(estimate)
    bars = _bars(purchase, estimate)
    longest = max(bar.holds.ticks for bar in bars)
    letters = _letters([run for bar in bars for run in bar.runs], unit)
    marks: list[Mark] = []
    below: dict[str, str] = {}
    said = []
    y = SIZE
    for bar, count in bars.items():
        head = f"{count} × {bar.length}, {bar.rest}"
        said.append(f"{head}: {', '.join(_text(run, unit) for run in bar.runs) or 'to spare'}")
        marks.append(Lettering((LEFT, y), shortened(head, LONGEST, SIZE), SIZE))
        y += LINE * 0.8
        scale = LONGEST / longest
        end = (LEFT + bar.holds.ticks * scale, y + BAR)
        marks += (Outline(rectangle((LEFT, y), end), PAPER, USUAL), Hatch((LEFT, y), end))
        x = LEFT
        for run in bar.runs:
            wide = run[1].ticks * run[2] * scale
            text = _text(run, unit)
            marks += _run(x, y, wide, text, letters, below)
            x += wide
        y += BAR + LINE
    for text, letter in below.items():
        line = f"{letter}: {text}"
        marks.append(Lettering((LEFT, y), shortened(line, LONGEST, SIZE), SIZE))
        y += LINE
    use = use_of(purchase, estimate)
    return Picture(
        stem=f"trim-{number}",
        width=WIDE,
        height=y,
        title=f"{purchase.title} for {use}" if use else purchase.title,
        description=f"{'; '.join(said)}.",
        marks=tuple(marks),
    )


def _bars(purchase: Purchase, estimate: Estimate) -> Counter[_Bar]:
    """The lengths in hand and those bought with their runs, and how many there are alike."""
    unit, with_garments = tape_unit(estimate), several_garments(estimate)
    tape = unit if purchase.buy.offer.put_up.cut_to_length else tape_on(purchase, estimate)
    bars: Counter[_Bar] = Counter()
    for taken in purchase.taken:
        if taken.runs:
            bars[_in_hand(taken, unit, _drawn(taken.runs, with_garments))] += 1
    for one in purchase.buy.filled:
        left = one.holds - total(length for _, length in one.runs)
        rest = f"{tape_text(left, tape)} {_rest(purchase)}"
        runs = _drawn(one.runs, with_garments)
        bars[_Bar(_put_up(purchase, one.holds), one.holds, runs, rest)] += 1
    return bars


def _in_hand(taken: Taken, unit: Unit, runs: tuple[Run, ...]) -> _Bar:
    holds = taken.single.thing.length
    assert holds, "runs are cut from what has a length"
    own = own_unit(taken.single.thing, unit)
    length = f"{amount_text(holds, own)} from {where_text(taken)}"
    left = f"{amount_text(taken.left, own)} left" if taken.left else "nothing left"
    return _Bar(length, holds, runs, left)


def _drawn(runs: Sequence[tuple[Source, Length]], with_garments: bool) -> tuple[Run, ...]:
    named = [
        (harmless(str(source) if with_garments else source.name), length) for source, length in runs
    ]
    if len(named) > MOST_DRAWN:
        return tuple((*run, len(list(alike))) for run, alike in groupby(named))
    return tuple((name, length, 1) for name, length in named)


def _put_up(purchase: Purchase, holds: Length) -> str:
    offer = purchase.buy.offer
    if isinstance(purchase.buy.bought, Length):
        return f"{shop_text(holds, offer.sold_by)} off the roll"
    one_of = f"{shop_text(holds, Unit.M if offer.put_up.metric else Unit.YD)} of a "
    return f"{one_of if offer.put_up.pieces > 1 else ''}{offer.put_up.text}"


def _rest(purchase: Purchase) -> str:
    cut = isinstance(purchase.buy.bought, Length)
    return "for waste and rounding" if cut else "left over"


def _text(run: Run, unit: Unit) -> str:
    name, length, many = run
    text = f"{name}, {tape_text(length, unit)}"
    return f"{many} × {text}" if many > 1 else text


def _letters(runs: list[Run], unit: Unit) -> dict[str, str]:
    """A letter for each run that differs from those before it."""
    texts = dict.fromkeys(_text(run, unit) for run in runs)
    return {text: lettered(number) for number, text in enumerate(texts)}


def _run(
    x: float, y: float, wide: float, text: str, letters: Mapping[str, str], below: dict[str, str]
) -> Iterator[Mark]:
    """A run as a part of its bar: with its name, or with its letter, which goes ``below``."""
    letter = letters[text]
    tint = TINTS[list(letters).index(text) % len(TINTS)]
    yield Outline(rectangle((x, y), (x + wide, y + BAR)), tint, USUAL, name=text)
    said = text
    if width_of(text, SIZE) + 4 > wide:
        said = letter
        below[text] = letter
    if width_of(said, SIZE) + 2 <= wide:
        yield Lettering((x + wide / 2, y + BAR / 2), said, SIZE, "middle")
