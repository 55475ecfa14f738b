"""Papers as plain text for a terminal or a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence

from tabulate import tabulate

from estimator.estimated import Estimate
from estimator.layout import Style
from estimator.reports.assumptions import assumptions
from estimator.reports.budget_papers import budget_table, savings_table
from estimator.reports.fabric_papers import (
    cut_table,
    proof_text,
    waste_text,
    widths_table,
)
from estimator.reports.layout_papers import written_layouts
from estimator.reports.made import made
from estimator.reports.remnant_papers import remnant_layouts
from estimator.reports.savings import savings
from estimator.reports.shopping_list import Line, Section, notes_of, sections, title_of, totals
from estimator.reports.stash_papers import NOTHING_TO_BUY, stash_table
from estimator.reports.tables import Format, Table, price_text, text_of
from estimator.reports.uses import fabric_title, named, several_garments
from estimator.reports.working_lines import Working, cut_workings, workings

WIDE = 100
LEAST = 24
GAP = "  "
HEAD_PADDING = 2
"""What tabulate adds to a heading."""
_LEFT = {Format.TEXT}


def estimate_text(estimate: Estimate) -> str:
    """The shopping list, the fabrics with their proofs, and what was taken for granted."""
    return "\n".join(_estimate_lines(estimate))


def _estimate_lines(estimate: Estimate) -> Iterator[str]:
    yield from heading(f"Shopping list: {title_of(estimate)}")
    yield from bullets("What is made", made(estimate))
    for note in notes_of(estimate):
        yield from wrapped(note)
        yield ""
    if estimate.currency:
        yield from (f"Prices in {estimate.currency}.", "")
    if estimate.purchases:
        yield _list_grid(estimate)
        yield ""
    yield from totals(estimate)
    yield ""
    for table in (stash_table(estimate), budget_table(estimate), savings_table(estimate)):
        if table:
            yield table_text(table)
    yield from _fabrics(estimate)
    yield from bullets("Planned together", savings(estimate))
    yield from bullets("Look at this", estimate.remarks)
    yield from bullets("Before sewing", estimate.advice)
    yield from bullets("Taken for granted", assumptions(estimate))
    yield from bullets("Cautions", estimate.cautions)


def _list_grid(estimate: Estimate) -> str:
    """The list in parts; things and their notes take what width the figures leave."""
    headings = ["Item", "Width", "Needed", "Buy", "Price", "Cost"]
    align = ["left", "left", "right", "left", "right", "right"]
    parts, currency = sections(estimate), estimate.currency
    figures = [_figures(line, currency) for part in parts for line in part.lines]
    wide = _column_widths(headings[1:], figures)
    room = max(LEAST, WIDE - sum(wide) - len(GAP) * len(wide))
    rows: list[list[str]] = []
    for part in parts:
        rows.append(["\n".join(_indented(part.title.upper(), room, "")), *[""] * len(wide)])
        rows += [[_item(line, part, room), *_figures(line, currency)] for line in part.lines]
    return grid(rows, headings, align)


def _widest(text: str) -> int:
    return max(map(len, text.splitlines() or [""]))


def _item(line: Line, part: Section, room: int) -> str:
    """What is bought and where, and its notes below, a little further in."""
    item, shelf = ", ".join(filter(None, (line.item, line.colour))), line.shelf_in(part.title)
    item += f" ({shelf})" if shelf else ""
    return "\n".join([*_indented(item, room, "  "), *_indented(line.note, room, "    ")])


def _indented(text: str, room: int, indent: str) -> list[str]:
    return textwrap.wrap(text, room, initial_indent=indent, subsequent_indent=indent)


def _figures(line: Line, currency: str) -> list[str]:
    return [
        line.width,
        f"{line.needed.text} {line.needed.unit}".strip(),
        "\n".join(textwrap.wrap(line.buy.phrase, 18)),
        "" if line.unit_price is None else price_text(line.unit_price, currency),
        "" if line.cost is None else f"{line.cost:f}",
    ]


def _fabrics(estimate: Estimate) -> Iterator[str]:
    if not estimate.fabrics:
        return
    yield "How the fabrics lie:"
    for choice in estimate.fabrics:
        option = choice.chosen
        if not option.pieces:
            yield from wrapped(f"- {fabric_title(choice, estimate)}: {NOTHING_TO_BUY}.")
            continue
        style = option.laid.style.value
        if option.laid.style is Style.STRAIGHT_ROWS:
            rows = sum(len(cut.rows) for cut in option.laid.cuts)
            style = f"{rows} straight row{'s' if rows > 1 else ''}"
        if option.breadth.folded:
            style += " on fabric folded lengthwise"
        yield from wrapped(
            f"- {fabric_title(choice, estimate)}: {style}; {proof_text(option)}; "
            f"{waste_text(option, estimate.currency)}."
        )
    yield ""


def layout_text(estimate: Estimate) -> str:
    """The cut list, and each layout row by row."""
    parts = [table_text(cut_table(estimate, with_garments=several_garments(estimate)))]
    for choice in estimate.fabrics:
        for papers in (remnant_layouts, written_layouts):
            for table, sketches in papers(choice, estimate):
                parts += [table_text(table), *sketches, ""]
    return "\n".join(parts)


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
    places = [place for place in working.places if place]
    yield from wrapped(f"{working.title}  ({named(places)})" if places else working.title)
    rows = [[f"  {line.label}", line.done, f"= {line.result}"] for line in working.lines]
    yield tabulate(
        rows,
        tablefmt="plain",
        preserve_whitespace=True,
        colalign=("left", "left", "left"),
        disable_numparse=True,
    )
    yield f"  {working.answer}"
    yield ""


def table_text(table: Table) -> str:
    """A typed table as text, with its title and notes."""
    rows = [[text_of(value, table.unit) for value in row] for row in table.rows]
    headings = [column.heading for column in table.columns]
    rows, headings = _fitted(rows, headings)
    align = ["left" if column.format in _LEFT else "right" for column in table.columns]
    notes = [line for note in table.notes for line in wrapped(note)]
    return "\n".join([*heading(table.title), grid(rows, headings, align), *notes, ""])


def _fitted(rows: list[list[str]], headings: list[str]) -> tuple[list[list[str]], list[str]]:
    """Cells and headings wrapped so that the table fits a terminal, the widest column first."""
    wide = _column_widths(headings, rows)
    least = [
        max(_longest_word([head]) + HEAD_PADDING, _longest_word(column))
        for head, *column in zip(headings, *rows, strict=True)
    ]
    while sum(wide) + len(GAP) * (len(wide) - 1) > WIDE:
        loose = [number for number, size in enumerate(wide) if size > least[number]]
        if not loose:
            break
        wide[max(loose, key=lambda number: wide[number])] -= 1
    heads = [size - HEAD_PADDING for size in wide]
    return [_wrapped_row(row, wide) for row in rows], _wrapped_row(headings, heads)


def _wrapped_row(row: Sequence[str], wide: Sequence[int]) -> list[str]:
    return ["\n".join(textwrap.wrap(cell, size)) for cell, size in zip(row, wide, strict=True)]


def _column_widths(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> list[int]:
    padded = [heading + " " * HEAD_PADDING for heading in headings]
    return [max(map(_widest, column)) for column in zip(padded, *rows, strict=True)]


def _longest_word(cells: Iterable[str]) -> int:
    """The least width of a column: that of its longest word, as far as a word is no sentence."""
    return min(LEAST, max((len(word) for cell in cells for word in cell.split()), default=1))


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
