"""The shopping list as comma-separated values (RFC 4180), a line for each thing to buy."""

from __future__ import annotations

import csv
import io
from decimal import Decimal

from estimator.estimated import Estimate
from estimator.reports.shopping_list import sections
from estimator.reports.tables import Sold, price_text

HEADINGS = (
    "part", "item", "colour", "width", "needed", "needed_unit", "buy", "unit", "price", "cost",
    "currency", "shop", "instead", "notes", "key",
)  # fmt: skip
_FORMULA_BEGINS = ("=", "+", "-", "@")


def list_csv(estimate: Estimate) -> str:
    """Numbers have a decimal point and no unit; text is never a formula for a spreadsheet program.

    Text that begins like one has an apostrophe before it, as is common practice.
    """
    held = io.StringIO()
    rows = csv.writer(held, lineterminator="\n")
    rows.writerow(HEADINGS)
    for section in sections(estimate):
        for line in section.lines:
            cells = (
                section.title,
                line.item,
                line.colour,
                line.width,
                _number(line.needed),
                line.needed.unit,
                _number(line.buy),
                line.buy.unit,
                "" if line.unit_price is None else price_text(line.unit_price, estimate.currency),
                "" if line.cost is None else f"{line.cost:f}",
                estimate.currency if line.cost is not None else "",
                line.shop,
                "; ".join(line.instead),
                line.note,
                line.key,
            )
            rows.writerow([_harmless(cell) for cell in cells])
    return held.getvalue()


def _number(sold: Sold) -> str:
    shown = sold.shown
    return f"{(Decimal(shown.numerator) / shown.denominator).normalize():f}"


def _harmless(text: str) -> str:
    return f"'{text}" if text.startswith(_FORMULA_BEGINS) else text
