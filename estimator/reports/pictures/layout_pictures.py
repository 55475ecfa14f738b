"""The cutting layouts drawn to scale: the cut end above, the near selvedge or fold on the left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.one_width import WidthOption
from estimator.estimated import Estimate
from estimator.layout import Layout, Style
from estimator.measure import Length, Unit, tape_text
from estimator.needs.types import FabricTerms
from estimator.reports.alike import alike_cuts, cuts_words
from estimator.reports.pictures.labels import Label, label
from estimator.reports.pictures.legend import legend_below
from estimator.reports.pictures.lettering import width_of
from estimator.reports.pictures.marks import (
    CHAIN,
    DASHES,
    GREY,
    HEAVY,
    INK,
    PAPER,
    THIN,
    TINTS,
    USUAL,
    Hatch,
    Lettering,
    Mark,
    Outline,
    Picture,
    Point,
    Stroke,
    rectangle,
)
from estimator.reports.pictures.outlines import Drawn, Grain, outlines
from estimator.reports.pictures.parts import Band, bands_of
from estimator.reports.pictures.wording import Namer
from estimator.reports.remnant_papers import laid_on_remnant, remnant_title
from estimator.reports.units import tape_unit
from estimator.reports.uses import fabric_title

WIDE = 400.0
LEFT, RIGHT, TOP = 66.0, 8.0, 20.0
LONGEST = 440.0
"""How much of the height a part may take, so that it fits a page with its legend."""
SMALL = 7.5
ROW_TEXT = 9.0
"""The size of the small letters, and from line to line of them."""


def layout_pictures(choice: FabricChoice, number: int, estimate: Estimate) -> tuple[Picture, ...]:
    """A cut of a fabric, and those alike, in as many pictures as it is long, all of one scale."""
    cuts = choice.chosen.laid.cuts
    title = fabric_title(choice, estimate)
    numbers = next(group for group in alike_cuts(choice) if number in group)
    if words := cuts_words(numbers, len(cuts)):
        title += f", {words}"
    stem = f"layout-{estimate.fabrics.index(choice) + 1}-{number + 1}"
    edge = Sides("fold", "both selvedges") if choice.chosen.breadth.folded else SELVEDGES
    sheet = _Sheet.of(choice.chosen, cuts[number], choice.need.terms, edge, estimate)
    return tuple(_in_parts(sheet, stem, title))


def remnant_pictures(choice: FabricChoice, number: int, estimate: Estimate) -> tuple[Picture, ...]:
    """What is cut from one remnant of a fabric, drawn as a cut of new cloth is."""
    option = laid_on_remnant(choice, number)
    title = remnant_title(choice, number, estimate)
    stem = f"layout-{estimate.fabrics.index(choice) + 1}-remnant-{number + 1}"
    sheet = _Sheet.of(option, option.laid.cuts[0], choice.need.terms, OWN_EDGES, estimate)
    return tuple(_in_parts(sheet, stem, title))


def _in_parts(sheet: _Sheet, stem: str, title: str) -> Iterator[Picture]:
    bands = bands_of(sheet.cut, int(LONGEST / sheet.scale) + 1)
    drawn = tuple(outlines(sheet.option, sheet.cut))
    for part, band in enumerate(bands, start=1):
        of_all = f", part {part} of {len(bands)}" if len(bands) > 1 else ""
        yield sheet.picture(drawn, band, stem=f"{stem}-{part}", title=f"{title}{of_all}")


class Sides(NamedTuple):
    """What the cloth has on its left and on its right."""

    near: str
    far: str


SELVEDGES = Sides("selvedge", "selvedge")
OWN_EDGES = Sides("edge", "edge")
"""A remnant may have lost its selvedges."""


@dataclass(frozen=True)
class _Sheet:
    """What all parts of one cut have in common; ``scale`` is in units of the picture a tick."""

    option: WidthOption
    cut: Layout
    unit: Unit
    namer: Namer
    scale: float
    left: float
    sides: Sides
    one_way: bool

    @classmethod
    def of(
        cls, option: WidthOption, cut: Layout, terms: FabricTerms, sides: Sides, estimate: Estimate
    ) -> _Sheet:
        """The widest scale at which neither the cloth nor any part of it is too large."""
        edge = option.breadth.selvedge.ticks
        wide = cut.width + edge * (1 if option.breadth.folded else 2)
        longest = max(end - start for start, end in bands_of(cut, 0))
        scale = min((WIDE - LEFT - RIGHT) / wide, LONGEST / longest)
        return cls(
            option=option,
            cut=cut,
            unit=tape_unit(estimate),
            namer=Namer.of(option.pieces, cut, tape_unit(estimate)),
            scale=scale,
            left=LEFT + (0 if option.breadth.folded else edge) * scale,
            sides=sides,
            one_way=terms.nap,
        )

    def picture(self, drawn: Sequence[Drawn], band: Band, stem: str, title: str) -> Picture:
        """The pieces that begin in one part of the cloth."""
        here = [one for one in drawn if band[0] <= one.place.along < band[1]]
        bottom = TOP + (band[1] - band[0]) * self.scale
        marks: list[Mark] = [*self._cloth(band)]
        labels: list[tuple[Drawn, Label]] = []
        for one in here:
            shape = tuple(self._at(point, band) for point in one.corners)
            words = self.namer.words(one, one_way=self.one_way)
            tint = TINTS[one.number % len(TINTS)]
            dashes = DASHES if one.boxed else ()
            marks.append(Outline(shape, tint, USUAL, dashes, f"{words.name}, {words.size}"))
            holes = tuple(tuple(self._at(point, band) for point in hole) for hole in one.holes)
            marks += (Outline(hole, PAPER, USUAL) for hole in holes)
            written = label(shape, holes, words)
            labels.append((one, written))
            marks += written.marks
        marks += self._edges(band)
        marks += self._distances(band)
        low, below = legend_below(
            bottom + 12,
            self.unit,
            self.scale,
            boxed=any(one.boxed for one in here),
            one_way=self.one_way,
            turned=any(one.grain is Grain.ACROSS for one in here),
            entries=self.namer.entries(labels),
        )
        marks += below
        return Picture(stem, WIDE, low, title, self._described(here, band), tuple(marks))

    def _at(self, point: Point, band: Band) -> Point:
        return self.left + point[0] * self.scale, TOP + (point[1] - band[0]) * self.scale

    def _cloth(self, band: Band) -> Iterator[Mark]:
        """The cloth between its edges, all of it waste as far as no piece lies on it."""
        low, high = self._at((0, band[0]), band), self._at((self.cut.width, band[1]), band)
        yield Outline(rectangle(low, high), PAPER, THIN)
        yield Hatch(low, high)
        edge = self.option.breadth.selvedge.ticks * self.scale
        if edge:
            yield Outline(rectangle((high[0], low[1]), (high[0] + edge, high[1])), GREY, THIN)
        if edge and not self.option.breadth.folded:
            yield Outline(rectangle((low[0] - edge, low[1]), (low[0], high[1])), GREY, THIN)

    def _edges(self, band: Band) -> Iterator[Mark]:
        """The cut end, what is at either side, and where the layout goes on or ends."""
        folded = self.option.breadth.folded
        low, high = self._at((0, band[0]), band), self._at((self.cut.width, band[1]), band)
        near, right = self.sides
        yield Lettering((LEFT, TOP - 8), near, SMALL)
        far = WIDE - RIGHT if self.scale * self.cut.width > WIDE / 2 else high[0]
        start = "cut end" if band[0] == 0 else f"from {self._tape(band[0])}"
        room = high[0] - LEFT - width_of(near, SMALL) - width_of(right, SMALL) - 12
        if width_of(start, SMALL) <= room:
            yield Lettering((far, TOP - 8), right, SMALL, "end")
            middle = (LEFT + width_of(near, SMALL) + far - width_of(right, SMALL)) / 2
            yield Lettering((middle, TOP - 8), start, SMALL, "middle")
        else:
            yield Lettering((high[0] + 4, TOP + 6), right, SMALL)
        whole = ((low[0], low[1]), (high[0], low[1]))
        yield Stroke(whole, HEAVY if band[0] == 0 else USUAL, dashes=() if band[0] == 0 else DASHES)
        if folded:
            yield Stroke(((low[0], low[1]), (low[0], high[1])), HEAVY, dashes=CHAIN)

    def _distances(self, band: Band) -> Iterator[Mark]:
        """Rows and their distances from the cut end; in a close layout the pieces' own."""
        starts = {row.start: f"row {number}" for number, row in enumerate(self.cut.rows, start=1)}
        if self.cut.style is Style.CLOSE:
            starts = {place.along: "" for place in self.cut.placements}
        shown = sorted(start for start in starts if band[0] <= start < band[1])
        if band[1] == self.cut.length:
            starts[band[1]] = "end"
            shown.append(band[1])
        free = TOP - 6.0
        for start, after in zip(shown, (*shown[1:], None), strict=True):
            x, y = self._at((0, start), band)
            if self.cut.rows and band[0] < start < band[1]:
                yield Stroke(((x, y), (x + self.cut.width * self.scale, y)), THIN, INK, DASHES)
            room = ROW_TEXT * 3 if after is None else (after - start) * self.scale
            lines = self._distance(starts[start], start, room)
            high = ROW_TEXT * len(lines)
            top = max(free, y - high / 2)
            if not self.cut.rows and top > y and start < band[1]:
                continue
            yield Stroke(((LEFT - 4, y), (LEFT - 1, y)), THIN)
            if top + high / 2 - y > 1:
                yield Stroke(((LEFT - 8, top + high / 2), (LEFT - 4, y)), THIN)
            for line in lines:
                yield Lettering((LEFT - 9, top + ROW_TEXT / 2), line, SMALL, "end")
                top += ROW_TEXT
            free = top

    def _distance(self, name: str, start: int, room: float) -> tuple[str, ...]:
        """The name of a row and its distance: below each other where there is room for both."""
        tape = self._tape(start)
        if not name:
            return (tape,)
        one_line = f"{name}, {tape}"
        short = width_of(one_line, SMALL) <= LEFT - 11
        return (one_line,) if short and room < ROW_TEXT * 2 else (name, tape)

    def _tape(self, ticks: int) -> str:
        return tape_text(Length(ticks), self.unit)

    def _described(self, here: Sequence[Drawn], band: Band) -> str:
        counts: dict[str, int] = {}
        for one in here:
            words = self.namer.words(one, one_way=False)
            counts[f"{words.name}, {words.size}"] = counts.get(f"{words.name}, {words.size}", 0) + 1
        pieces = "; ".join(f"{count} × {name}" for name, count in counts.items())
        return (
            f"{self.cut.style.value.capitalize()} from {self._tape(band[0])} to "
            f"{self._tape(band[1])} from the cut end: {pieces}."
        )
