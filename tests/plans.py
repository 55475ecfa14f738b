"""Short plans in the format of a user's own file, and what tests look at in their estimates."""

from __future__ import annotations

from collections.abc import Mapping
from os import sep
from pathlib import Path
from tempfile import TemporaryDirectory

from estimator import Catalog, Estimate, GarmentOrder, Length, Plan, Refused, estimate
from estimator.buying.types import Purchase
from estimator.catalog import Item, Offer
from estimator.files import estimate_files
from estimator.needs.cut_piece import CutPiece
from estimator.readers.plan_tables import Draft, draft_of
from estimator.readers.plan_toml import tables_from_text
from estimator.written import length

Size = tuple[Length, Length]

HEADING = """
[garment]
name = "apron"
[[fabric]]
name = "print"
widths = ["45 in"]
selvedge = "0"
"""
"""An inch plan with the house's 5/8 in seams and a print of which 45 in can be used."""


def draft(text: str, taken: Mapping[str, Length] | None = None) -> Draft:
    """A plan from its text, by a wearer's measures if they are ``taken``."""
    return draft_of(tables_from_text(text, "apron.toml"), taken)


def plan(text: str) -> Plan:
    """A plan without a fault in it."""
    found = draft(text)
    assert found.faults == ()
    return found.plan


def in_print(text: str) -> Estimate:
    """The estimate of pieces cut from the print of the heading."""
    return estimate(plan(HEADING + text))


def order(text: str, *, count: int = 1, wearer: str = "") -> GarmentOrder:
    found = draft(text)
    assert found.faults == ()
    return GarmentOrder(found.plan, count, wearer, found.places)


def complaints(text: str, shop: Path | None = None) -> list[str]:
    """All that the file of a plan is refused for, as it would be printed; none for a sound one."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "apron.toml"
        file.write_text(text, encoding="utf-8")
        try:
            estimate_files([file], shop)
        except Refused as refused:
            return [str(fault).replace(f"{folder}{sep}", "") for fault in refused.faults]
    return []


def by(width: str, long: str) -> Size:
    """A cut size as it is spoken: ``by("18 3/4", "27 7/8")``, inches unless it says otherwise."""
    return length(width), length(long)


def cut_pieces(found: Estimate) -> dict[str, CutPiece]:
    return {piece.name: piece for choice in found.fabrics for piece in choice.chosen.pieces}


def cut_sizes(found: Estimate) -> dict[str, Size]:
    return {
        name: (piece.width.value, piece.length.value) for name, piece in cut_pieces(found).items()
    }


def cut_size(text: str) -> Size:
    """The cut size of the only piece among these tables."""
    (size,) = cut_sizes(in_print(text)).values()
    return size


def bought(found: Estimate, name: str) -> Purchase:
    """The line of the list on which the thing of this name stands."""
    (line,) = (one for one in found.purchases if name in one.names)
    return line


def needed(found: Estimate, name: str) -> Length:
    """The length needed of a fabric, trim or elastic, before the shop's minimum and step."""
    of_line = bought(found, name).needed
    assert isinstance(of_line, Length)
    return of_line


def catalog(items: list[dict[str, str]], offers: list[dict[str, str]]) -> Catalog:
    """A catalog of a few rows; where an item has no name of its own, its item does."""
    rows = [Item.model_validate({"name": row["item"], **row}) for row in items]
    by_item: dict[str, tuple[Offer, ...]] = {}
    for row in offers:
        offer = Offer.model_validate(row)
        by_item[offer.item] = (*by_item.get(offer.item, ()), offer)
    return Catalog({row.item: row for row in rows}, by_item, "USD")
