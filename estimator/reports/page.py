"""The page: everything in one HTML file that asks nothing of any network.

Its words stand in ``templates/page``. Text from a plan is escaped wherever it stands; only the
pictures, which escape it themselves, are markup.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from estimator.buying.fabric_widths import FabricChoice
from estimator.estimated import Estimate
from estimator.layout import Style
from estimator.prices import money_text
from estimator.reports.alike import alike_cuts
from estimator.reports.assumptions import assumptions
from estimator.reports.budget_papers import budget_table, savings_table
from estimator.reports.fabric_papers import cut_table, widths_table
from estimator.reports.layout_papers import written_layouts
from estimator.reports.made import made
from estimator.reports.measure_sheet import measure_tables
from estimator.reports.pictures.layout_pictures import layout_pictures, remnant_pictures
from estimator.reports.pictures.lettering import harmless
from estimator.reports.pictures.marks import Picture
from estimator.reports.pictures.svg import svg_text
from estimator.reports.pictures.trim_pictures import trim_pictures
from estimator.reports.pictures.widths_picture import is_compared, widths_picture
from estimator.reports.remnant_papers import remnant_layouts
from estimator.reports.savings import savings
from estimator.reports.shopping_list import Line, Section, notes_of, sections, title_of, totals
from estimator.reports.stash_papers import stash_table
from estimator.reports.tables import Column, Format, Table, price_text, text_of
from estimator.reports.uses import several_garments
from estimator.reports.working_lines import Working, cut_workings, workings_of
from estimator.shipped import shipped

if TYPE_CHECKING:
    from markupsafe import Markup

GENERATOR = "estimator"
WORDS = 20
"""From this width on a column holds words and no short entries."""
_PARTS = {
    "list": "Shopping list",
    "layouts": "Cutting layouts",
    "cuts": "Cut list",
    "trims": "Trims",
    "widths": "Widths",
    "before": "Before sewing",
    "measured": "Measure sheet",
    "granted": "Taken for granted",
}


def page_text(estimate: Estimate) -> str:
    """The whole page as text."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined
    from markupsafe import Markup

    def one_line(value: Any) -> Any:
        plain = isinstance(value, str) and not isinstance(value, Markup)
        return _unbroken(harmless(value)) if plain else value

    folder = shipped("templates") / "page"
    room = Environment(
        loader=FileSystemLoader(folder),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=one_line,
    )
    said = _said(estimate)
    said["style"] = Markup((folder / "page.css").read_text(encoding="utf-8"))
    said["script"] = Markup((folder / "page.js").read_text(encoding="utf-8"))
    text = room.get_template("page.html").render(said)
    return f"{text.strip()}\n"


def _unbroken(text: str) -> str:
    """A text in which no line ends between a number, its fraction and its unit."""
    return _WITHIN_A_SIZE.sub("\N{NO-BREAK SPACE}", text)


_WITHIN_A_SIZE = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|cm|mm|yd|m|%)(?!\w))")


def _said(estimate: Estimate) -> dict[str, Any]:
    """All that the template names."""
    said: dict[str, Any] = {
        "generator": GENERATOR,
        "title": title_of(estimate),
        "made": made(estimate),
        "notes": notes_of(estimate),
        "totals": totals(estimate, estimate.job.funds),
        "currency": estimate.currency,
        "unpriced": estimate.unpriced,
        "charges": [
            {"shop": one.shop, "cost": money_text(one.charge, estimate.currency)}
            for one in estimate.visits
            if one.charge
        ],
        "total": _money(estimate.total) if estimate.unpriced < len(estimate.purchases) else "",
        "sections": _sections(estimate),
        "beside": [
            _table(one)
            for one in (stash_table(estimate), budget_table(estimate), savings_table(estimate))
            if one
        ],
        "remarks": estimate.remarks,
        "cautions": estimate.cautions,
        "layouts": [one for choice in estimate.fabrics for one in _layouts(choice, estimate)],
        "cuts": _table(cut_table(estimate, with_garments=several_garments(estimate))),
        "cut_name": 2 if several_garments(estimate) else 1,
        "cut_workings": cut_workings(estimate),
        "trims": [{"title": one.title, "picture": _drawn(one)} for one in trim_pictures(estimate)],
        "widths": [_widths(choice, estimate) for choice in estimate.fabrics],
        "savings": savings(estimate),
        "before": estimate.advice,
        "measured": [_table(one) for one in measure_tables(estimate)],
        "measured_open": not several_garments(estimate),
        "granted": assumptions(estimate),
    }
    there = {**said, "list": True, "cuts": said["cuts"]["rows"]}
    said["parts"] = [{"id": key, "title": _PARTS[key]} for key in _PARTS if there[key]]
    return said


def _sections(estimate: Estimate) -> list[dict[str, Any]]:
    """The list in the parts of the shop, each line with its working."""
    found = {one.key: workings_of(one, estimate) for one in estimate.purchases}
    numbers = {key: number for number, key in enumerate(found, start=1)}
    return [
        {
            "title": section.title,
            "lines": [
                _line(line, numbers[line.key], found[line.key], estimate.currency)
                | {"shop": line.shelf_in(section.title)}
                for line in section.lines
            ],
            "cost": _cost_of(section),
        }
        for section in sections(estimate)
    ]


def _cost_of(section: Section) -> str:
    """What has a price, together; nothing where nothing has one."""
    costs = [line.cost for line in section.lines if line.cost is not None]
    return _money(sum(costs, Decimal(0))) if costs else ""


def _line(line: Line, number: int, workings: Sequence[Working], currency: str) -> dict[str, Any]:
    per = "each" if line.buy.unit == "each" else f"a {line.buy.unit}"
    price = "" if line.unit_price is None else f"{price_text(line.unit_price, currency)} {per}"
    return {
        "id": f"line-{number}",
        "key": line.key,
        "item": line.item,
        "colour": line.colour,
        "note": line.note,
        "instead": "; ".join(line.instead),
        "width": line.width,
        "needed": f"{line.needed.text} {line.needed.unit}",
        "buy": line.buy.phrase,
        "price": price,
        "cost": "" if line.cost is None else _money(line.cost),
        "workings": workings,
    }


def _money(amount: Decimal) -> str:
    """An amount that is to the least coin of its currency already."""
    return f"{amount:f}"


def _layouts(choice: FabricChoice, estimate: Estimate) -> list[dict[str, Any]]:
    """Each remnant and each cut of a fabric: its pictures, and the table to chalk by."""
    remnants, cuts = choice.chosen.stash, choice.chosen.laid.cuts
    papers = [
        (table, remnant_pictures(choice, number, estimate), remnants[number].laid.cuts[0])
        for number, (table, _) in enumerate(remnant_layouts(choice, estimate))
    ] + [
        (table, layout_pictures(choice, number, estimate), cuts[number])
        for (number, *_), (table, _) in zip(
            alike_cuts(choice), written_layouts(choice, estimate), strict=True
        )
    ]
    return [
        {
            "table": _table(table),
            "pictures": [_drawn(one) for one in pictures],
            "in_rows": cut.style is Style.STRAIGHT_ROWS,
        }
        for table, pictures, cut in papers
    ]


def _widths(choice: FabricChoice, estimate: Estimate) -> dict[str, Any]:
    picture = _drawn(widths_picture(choice, estimate)) if is_compared(choice) else ""
    return {"table": _table(widths_table(choice, estimate)), "picture": picture}


def _drawn(picture: Picture) -> Markup:
    from markupsafe import Markup

    return Markup(svg_text(picture))


def _table(table: Table) -> dict[str, Any]:
    """A typed table as text; figures stand on the right, and wide columns may break words."""

    def style(column: Column) -> str:
        if column.format is not Format.TEXT:
            return "figure"
        return "words" if column.wide >= WORDS else ""

    return {
        "title": table.title,
        "notes": table.notes,
        "columns": [
            {"heading": column.heading, "style": style(column)} for column in table.columns
        ],
        "rows": [[text_of(value, table.unit) for value in row] for row in table.rows],
    }
