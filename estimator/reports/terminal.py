"""Papers as plain text for a terminal or a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence

from tabulate import tabulate

from estimator.buying.fabric_widths import FabricChoice
from estimator.estimate import Estimate
from estimator.reports.assumptions import assumptions
from estimator.reports.fabric_papers import (
    cut_table,
    layout_table,
    proof_text,
    waste_text,
    widths_table,
)
from estimator.reports.shopping_list import Line, sections, title_of, totals
from estimator.reports.sketch import sketch
from estimator.reports.tables import Format, Table, text_of
from estimator.reports.working_lines import Working, cut_workings, workings

WIDE = 100
_LEFT = {Format.TEXT}


def estimate_text(estimate: Estimate) -> str:
    """The shopping list, the fabrics with their proofs, and what was taken for granted."""
    return "\n".join(_estimate_lines(estimate))


def _estimate_lines(estimate: Estimate) -> Iterator[str]:
    yield from heading(f"Shopping list: {title_of(estimate)}")
    money = f" ({estimate.currency})" if estimate.currency else ""
    headings = ["Item", "Width", "Needed", "Buy", "Unit", f"Price{money}", f"Cost{money}"]
    align = ["left", "left", "right", "right", "left", "right", "right"]
    rows: list[list[str]] = []
    for section in sections(estimate):
        rows.append([f"{section.title.upper()}", *[""] * (len(headings) - 1)])
        rows += [_list_row(line) for line in section.lines]
    yield grid(rows, headings, align)
    yield ""
    yield from totals(estimate)
    yield ""
    yield from _fabrics(estimate)
    yield from bullets("Look at this", estimate.remarks)
    yield from bullets("Taken for granted", assumptions(estimate))
    yield from bullets("Cautions", estimate.cautions)


def _list_row(line: Line) -> list[str]:
    item = f"  {line.item} ({line.shop})" if line.shop else f"  {line.item}"
    note = "\n".join(textwrap.wrap(line.note, 44, initial_indent="    ", subsequent_indent="    "))
    return [
        f"{item}\n{note}" if note else item,
        line.width,
        f"{line.needed.text} {line.needed.unit}".strip(),
        line.buy.text,
        line.buy.unit,
        "" if line.unit_price is None else f"{line.unit_price:.2f}",
        "" if line.cost is None else f"{line.cost:.2f}",
    ]


def _fabrics(estimate: Estimate) -> Iterator[str]:
    if not estimate.fabrics:
        return
    yield "How the fabrics lie:"
    for choice in estimate.fabrics:
        option = choice.chosen
        rows = len(option.layout.rows)
        style = option.layout.style.value
        if rows:
            style = f"{rows} straight row{'s' if rows > 1 else ''}"
        yield from wrapped(
            f"- {choice.need.title}: {style}; {proof_text(option)}; "
            f"{waste_text(option, estimate.currency)}."
        )
    yield ""


def layout_text(estimate: Estimate) -> str:
    """The cut list, and each layout row by row."""
    parts = [table_text(cut_table(estimate))]
    for choice in estimate.fabrics:
        parts.append(table_text(layout_table(choice, estimate)))
        parts += _sketches(choice)
    return "\n".join(parts)


def _sketches(choice: FabricChoice) -> Iterator[str]:
    """The rows of a layout from the cut end on, selvedge to selvedge."""
    layout = choice.chosen.layout
    names = tuple(piece.name for piece in choice.chosen.pieces)
    for number, row in enumerate(layout.rows, start=1):
        yield f"row {number:3} {sketch(layout, row, names)}"
    if layout.rows:
        yield ""


def widths_text(estimate: Estimate) -> str:
    """Every fabric at each width on offer."""
    if not estimate.fabrics:
        return "The plan has no fabrics to compare."
    return "\n".join(table_text(widths_table(one, estimate)) for one in estimate.fabrics)


def working_text(estimate: Estimate, about: str = "") -> str:
    """The working of each quantity and cut size, or of those whose title holds ``about``."""
    lines: list[str] = []
    for title, found in (
        ("What to buy", workings(estimate)),
        ("Cut sizes", cut_workings(estimate)),
    ):
        chosen = [one for one in found if about.casefold() in one.title.casefold()]
        if chosen:
            lines += heading(title)
            for working in chosen:
                lines += _working(working)
    return "\n".join(lines)


def _working(working: Working) -> Iterator[str]:
    where = f"  ({', '.join(filter(None, working.places))})" if any(working.places) else ""
    yield f"{working.title}{where}"
    rows = [[f"  {line.label}", line.done, f"= {line.result}"] for line in working.lines]
    yield tabulate(rows, tablefmt="plain", colalign=("left", "left", "left"), disable_numparse=True)
    yield f"  {working.answer}"
    yield ""


def table_text(table: Table) -> str:
    """A typed table as text, with its title and notes."""
    rows = [[_wrapped_cell(text_of(value, table.unit)) for value in row] for row in table.rows]
    align = ["left" if column.format in _LEFT else "right" for column in table.columns]
    body = grid(rows, [column.heading for column in table.columns], align)
    notes = [line for note in table.notes for line in wrapped(note)]
    return "\n".join([*heading(table.title), body, *notes, ""])


def _wrapped_cell(text: str) -> str:
    return "\n".join(textwrap.wrap(text, 46)) if len(text) > 46 else text


def grid(rows: Sequence[Sequence[str]], headings: Sequence[str], align: Sequence[str]) -> str:
    """Rows under headings, each column aligned as its values want."""
    if not rows:
        return "(none)"
    return tabulate(
        rows,
        headers=headings,
        tablefmt="simple",
        preserve_whitespace=True,
        colalign=tuple(align),
        disable_numparse=True,
    )


def heading(title: str) -> list[str]:
    """A title with a line under it."""
    return [title, "=" * len(title), ""]


def bullets(title: str, lines: Iterable[str]) -> Iterator[str]:
    """A titled list of sentences; nothing at all where there are none."""
    found = tuple(lines)
    if found:
        yield f"{title}:"
        for line in found:
            yield from wrapped(f"- {line}")
        yield ""


def wrapped(text: str) -> list[str]:
    """A sentence on lines that fit a terminal."""
    return textwrap.wrap(text, WIDE, subsequent_indent="  " if text.startswith("- ") else "")
