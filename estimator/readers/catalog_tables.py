"""A catalog from its two tables, wherever they stand: what shops sell, and the ways to buy it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from pydantic import ValidationError

from estimator.catalog import Catalog, Item, Kind, Offer
from estimator.faults import Fault, Faults, Refused, Wrong, nearest
from estimator.fields import Entry
from estimator.readers.complaints import wrongs_in
from estimator.written import NotReadable, one_line, quoted, refuse_date

EntryT = TypeVar("EntryT", bound=Entry)


@dataclass(frozen=True)
class CatalogTable:
    """A table as it was written: its cells from the heading on, row by row, all of them text.

    ``name`` is what complaints call it, and ``place`` words a row and a column of it, both from 1.
    """

    name: str
    cells: Sequence[Sequence[str]]
    place: Callable[[int, int | None], str]


def catalog_of(of_items: CatalogTable, of_offers: CatalogTable, faults: Faults) -> Catalog:
    """The catalog of two tables; raises Refused with every complaint about them.

    ``faults`` are those about cells that could not be read.
    """
    told = {fault.where for fault in faults.found}
    found = Faults()
    catalog = _catalog(of_items, of_offers, found)
    faults.found += [fault for fault in found.found if fault.where not in told]
    faults.refuse_if_any()
    return catalog


def _catalog(of_items: CatalogTable, of_offers: CatalogTable, faults: Faults) -> Catalog:
    unread: set[str] = set()
    items = _items(of_items, faults, unread)
    offers: dict[str, list[Offer]] = {}
    first: tuple[str, int] | None = None
    for row, offer in _rows(of_offers, Offer, faults, set()):
        if offer.item in unread:
            continue
        try:
            if offer.item not in items:
                wrong = f"there is no item {quoted(offer.item)} in {of_items.name}"
                raise Wrong(wrong, nearest(offer.item, items))
            _refuse_ill_suited(offer, items[offer.item])
            if offer.currency:
                first = first or (offer.currency, row)
            if first and offer.currency not in ("", first[0]):
                raise Wrong(
                    f"prices are in {offer.currency} here and in {first[0]} in row {first[1]}",
                    "use one currency in a catalog",
                )
        except Wrong as wrong_offer:
            _complain(faults, of_offers, row, wrong_offer)
        offers.setdefault(offer.item, []).append(offer)
    return Catalog(
        items,
        {name: tuple(rows) for name, rows in offers.items()},
        first[0] if first else "",
    )


def _items(table: CatalogTable, faults: Faults, unread: set[str]) -> dict[str, Item]:
    """The items by their names; ``unread`` takes those of the rows that cannot stand."""
    items: dict[str, Item] = {}
    for row, item in _rows(table, Item, faults, unread):
        if item.item in items:
            wrong = f"the item {quoted(item.item)} stands here twice"
            right = "give each item its own name in the column item"
            faults.found.append(Fault(table.place(row, None), wrong, right))
            unread.add(item.item)
        items[item.item] = item
    return items


_BY_THE_LENGTH = {Kind.TRIM, Kind.ELASTIC}


def _refuse_ill_suited(offer: Offer, item: Item) -> None:
    """Raises Wrong for an offer of a width or put-up in which the kind of item is not sold."""
    about = f"{quoted(item.item)} is {'an' if item.kind is Kind.ELASTIC else 'a'} {item.kind.value}"
    if item.kind is Kind.FABRIC:
        if offer.width is None:
            raise Wrong(f"{about}, and this offer has no width", "fill in width", ("width",))
        if not offer.put_up.cut_to_length:
            raise Wrong(f"{about}, and is cut to length", "leave put_up empty", ("put_up",))
    elif item.kind in _BY_THE_LENGTH:
        if isinstance(offer.put_up.holds, int):
            raise Wrong(
                f"{about}, and {quoted(offer.put_up.text)} does not say how long it is",
                "leave put_up empty, or write it like card of 3 yd",
                ("put_up",),
            )
    elif offer.put_up.cut_to_length:
        raise Wrong(f"{about}, and is not cut to length", "write each or pack of 6", ("put_up",))


def _rows(
    table: CatalogTable, model: type[EntryT], faults: Faults, unread: set[str]
) -> Iterator[tuple[int, EntryT]]:
    """The sound rows of a table with their row numbers as a spreadsheet program shows them.

    The items of the other rows go into ``unread``: the row's own complaint is enough.
    """
    rows = table.cells
    header = [name.strip().lower() for name in rows[0]] if rows else []
    _check_header(header, table, model)
    for number, row in enumerate(rows[1:], start=2):
        cells = {name: cell.strip() for name, cell in zip(header, row, strict=False)}
        if not any(cell.strip() for cell in row):
            continue
        if any(cell.strip() for cell in row[len(header) :]):
            wrong = "the row has more cells than the heading"
            faults.found.append(
                Fault(table.place(number, None), wrong, "put text with commas in quotes")
            )
            unread.add(one_line(cells["item"]))
            continue
        wrongs: list[Wrong] = []
        try:
            for name in cells:
                _refuse_date(cells[name], name)
            entry = model.model_validate({name: cell for name, cell in cells.items() if cell})
        except ValidationError as error:
            wrongs = wrongs_in(error, model)
        except Wrong as wrong_cell:
            wrongs = [wrong_cell]
        for one in wrongs:
            _complain(faults, table, number, one)
        if wrongs:
            unread.add(one_line(cells.get("item", "")))
        else:
            yield number, entry


def _complain(faults: Faults, table: CatalogTable, row: int, wrong: Wrong) -> None:
    header = [name.strip().lower() for name in table.cells[0]]
    column = str(wrong.at[0]) if wrong.at else ""
    number = header.index(column) + 1 if column in header else None
    faults.found.append(Fault(table.place(row, number), wrong.wrong, wrong.right))


def _refuse_date(cell: str, column: str) -> None:
    if column in ("notes", "name", "item", "shop", "shelf", "colour", "fibres"):
        return
    try:
        refuse_date(cell)
    except NotReadable as problem:
        raise Wrong(problem.wrong, problem.right, (column,)) from None


def _check_header(header: list[str], table: CatalogTable, model: type[Entry]) -> None:
    known = model.model_fields
    faults = [
        Fault(table.place(1, number), f"there is no column {quoted(name)} in this table",
              nearest(name, known))
        for number, name in enumerate(header, start=1)
        if name not in known
    ]  # fmt: skip
    faults += [
        Fault(table.place(1, None), f"the column {quoted(name)} is missing", f"add a column {name}")
        for name, field in known.items()
        if field.is_required() and name not in header
    ]
    faults += [
        Fault(
            table.place(1, None), f"the column {quoted(name)} stands here twice", "keep one of them"
        )
        for name in dict.fromkeys(header)
        if header.count(name) > 1
    ]
    if faults:
        raise Refused(faults)
