"""The lines of the list as the workbook shows them, and what of them changed since the last."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.estimated import Estimate
from estimator.reports.buyers_list.as_written import CellValue, text_said
from estimator.reports.buyers_list.as_written import Line as Said
from estimator.reports.buyers_list.columns import DONE, PARTS, SUM_MARK
from estimator.reports.buyers_list.earlier import EarlierList
from estimator.reports.cells import harmless, sold_format
from estimator.reports.shopping_list import FROM_STASH, Line, sections
from estimator.reports.tables import Sold

NEW, NO_LONGER, SINCE = "new", "no longer needed", "Since the last list"


@dataclass(frozen=True, slots=True)
class ListLine:
    """A line as it is written: values by their headings, and formats where they have their own."""

    key: str
    values: Mapping[str, CellValue | None]
    formats: Mapping[str, str]

    @property
    def since(self) -> str:
        """What changed of it since the last list."""
        return text_said(self.values.get(SINCE))


def list_lines(estimate: Estimate, earlier: EarlierList) -> tuple[ListLine, ...]:
    """The lines in the order in which a shop is walked; what is no longer needed comes last.

    As long as nothing else is to be bought than the last list said, its marks stay as they were.
    """
    lines = [line for section in sections(estimate) for line in section.lines]
    keys = {harmless(line.key) for line in lines}
    gone = [key for key in earlier.lines if key not in keys and not key.startswith(SUM_MARK)]
    same = bool(earlier.lines) and not (
        any(_since(line, earlier.lines) for line in lines)
        or any(_amount(earlier.lines[key]) for key in gone)
    )
    found = []
    for line in lines:
        since = _since(line, earlier.lines) if earlier.lines else ""
        if same:
            since = earlier.lines[harmless(line.key)].get(SINCE, "")
        found.append(_list_line(line, since))
    for key in gone:
        if same or _amount(earlier.lines[key]) or key in {*earlier.filled_in, *earlier.asides}:
            found.append(_gone(key, earlier.lines[key]))
    return tuple(found)


def _list_line(line: Line, since: str) -> ListLine:
    needed_format = sold_format(line.needed)
    if line.needed.unit and line.needed.unit != line.buy.unit:
        needed_format += f' "{line.needed.unit}"'
    return ListLine(
        key=harmless(line.key),
        values={
            "Item": line.item,
            "Buy": _number(line.buy),
            "Unit": line.buy.unit,
            "Colour, swatch": line.colour,
            "Width": line.width,
            "Part of the shop": PARTS[line.group],
            "Shop, shelf": line.shop if line.buy.amount else FROM_STASH,
            "Needed": _number(line.needed),
            "Price": line.unit_price,
            "Instead": "\n".join(line.instead),
            "Notes": line.note,
            SINCE: since,
        },
        formats={"Buy": sold_format(line.buy), "Needed": needed_format},
    )


def _number(sold: Sold) -> CellValue:
    shown = sold.shown
    return shown.numerator if shown.denominator == 1 else float(shown)


def _amount(said: Said) -> Fraction:
    return Fraction(said.get("Buy") or 0)


def _since(line: Line, earlier: Mapping[str, Said]) -> str:
    """How much more or less is to be bought than the last list said; nothing if as much."""
    said = earlier.get(harmless(line.key))
    if said is None:
        return NEW
    before, now = _amount(said), Fraction(text_said(_number(line.buy)))
    if now and said.get(SINCE) == NO_LONGER:
        return "needed again"
    if before == now == 0:
        return ""
    unit = said.get("Unit", "")
    if unit != text_said(line.buy.unit):
        return f"was {Sold(before, unit).text} {unit}"
    if before == now:
        return ""
    more = "more" if now > before else "less"
    difference = Sold(abs(now - before), unit).text
    return f"{difference} {unit} {more}" if unit != "each" else f"{difference} {more}"


def _gone(key: str, said: Said) -> ListLine:
    """A line of the last list that nothing needs any more: it stays to be seen, and for its marks.

    Nothing of it is bought; another list that changes drops it, unless somebody wrote on it.
    """
    texts = {
        heading: said.get(heading, "")
        for heading in ("Item", "Unit", "Colour, swatch", "Width", "Part of the shop",
                        "Shop, shelf", "Notes")
    }  # fmt: skip
    price = Decimal(said["Price"]) if said.get("Price") else None
    values = {**texts, "Buy": 0, "Price": price, SINCE: NO_LONGER}
    return ListLine(key, values, {"Buy": "0"})


def filled_in(line: ListLine, earlier: EarlierList) -> Mapping[str, CellValue]:
    """What a person wrote into a line before; what was ticked was bought as it stood there then."""
    written = dict(earlier.filled_in.get(line.key, {}))
    said = earlier.lines.get(line.key)
    if said is None or written.get("Got it") != DONE:
        return written
    for heading, own in (("Buy", "Actual quantity"), ("Price", "Actual price")):
        before = said.get(heading, "")
        if before not in ("", "0") and before != text_said(line.values.get(heading)):
            written.setdefault(own, float(before))
    return written


def asides(line: ListLine, earlier: EarlierList) -> Iterator[str]:
    """Remarks on a line that stood in no cell of their own."""
    yield from earlier.asides.get(line.key, ())
