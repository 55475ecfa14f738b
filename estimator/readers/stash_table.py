"""The stash from a table, CSV or a sheet of a workbook: a row for each thing in hand."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from pathlib import Path

from estimator.catalog import Catalog, Item, Kind, Offer
from estimator.faults import Faults, Wrong
from estimator.measure import Unit, natural_text
from estimator.quoting import quoted
from estimator.readers.files import read_text
from estimator.readers.table_rows import complain, rows_of
from estimator.readers.workbooks import is_workbook
from estimator.readers.written_tables import WrittenTable, refuse_too_many, table_from
from estimator.stash import InHand, Stash, own_colours

TABLE, SHEET = "a table of the stash", "stash"
MOST_ROWS, MOST_ALIKE = 5_000, 200
_LONG = {Kind.TRIM, Kind.ELASTIC}


def read_stash(path: Path, catalog: Catalog) -> Stash:
    """Reads the table, for a catalog that says what its items are.

    A row of what is in no catalog stands for the fabric, trim or notion of that name in a plan.
    Raises Refused with every complaint about it.
    """
    faults = Faults()
    rows: dict[int, InHand] = {}
    kinds = {name.casefold(): item for name, item in catalog.items.items()}
    table = table_from(path, TABLE, SHEET, faults)
    refuse_too_many(path, table.cells, MOST_ROWS)
    for row, thing in rows_of(table, InHand, faults, set()):
        try:
            item = kinds.get(thing.item.casefold())
            _refuse_ill_suited(thing, item)
            if item and item.kind in _LONG:
                _refuse_no_width(thing, catalog.offers.get(item.item, ()))
        except Wrong as wrong:
            complain(faults, table, row, wrong)
        rows[row] = thing
    faults.refuse_if_any()
    return Stash(rows, str(path), mark_of(path, table), own_colours(catalog))


def _refuse_no_width(thing: InHand, offers: Sequence[Offer]) -> None:
    """Raises Wrong for a length of what is sold in several widths that does not say in which."""
    widths = sorted({offer.width for offer in offers if offer.width})
    if thing.width is None and len(widths) > 1:
        wrong = f"{quoted(thing.item)} is sold in several widths"
        known = ", ".join(natural_text(width, Unit.IN) for width in widths)
        raise Wrong(wrong, f"fill in width, one of {known}", ("width",))


def mark_of(path: Path, table: WrittenTable | None = None) -> str:
    """Eight letters and figures that tell what a stash file says from any other.

    ``table`` is what it says, if that was read already.
    """
    if is_workbook(path):
        # saved again unchanged, a workbook has other bytes
        table = table or table_from(path, TABLE, SHEET, Faults())
        text = json.dumps(table.cells)
    else:
        text = read_text(path, TABLE)
    return hashlib.sha256(text.encode()).hexdigest()[:8]


def _refuse_ill_suited(thing: InHand, item: Item | None) -> None:
    """Raises Wrong for a row that does not say how much of its kind of item is in hand."""
    kind = item.kind if item else None
    if kind is Kind.FABRIC and thing.width is None:
        raise Wrong("the remnant has no width", "measure it and fill in width", ("width",))
    if (kind is Kind.FABRIC or kind in _LONG) and thing.length is None:
        raise Wrong("nothing says how long it is", "measure it and fill in length", ("length",))
    if thing.length is not None and thing.count > MOST_ALIKE:
        wrong = f"{thing.count} lengths alike are more than can be tried"
        raise Wrong(wrong, f"write at most {MOST_ALIKE}", ("count",))
