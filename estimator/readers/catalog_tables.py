"""A catalog from its tables, wherever they stand: what shops sell, and the ways to buy it.

A third table, which may be left out, says what a visit to each shop costs.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.catalog import Catalog, Item, Kind, Offer, Shop
from estimator.faults import Fault, Faults, Wrong, nearest
from estimator.quoting import quoted
from estimator.readers.table_rows import complain, rows_of
from estimator.readers.written_tables import WrittenTable


def catalog_of(
    of_items: WrittenTable,
    of_offers: WrittenTable,
    faults: Faults,
    of_shops: WrittenTable | None = None,
) -> Catalog:
    """The catalog of its tables; raises Refused with every complaint about them.

    ``faults`` are those about cells that could not be read.
    """
    told = {fault.where for fault in faults.found}
    found = Faults()
    catalog = _catalog(of_items, of_offers, found)
    if of_shops is not None:
        catalog = replace(catalog, shops=tuple(_shops(of_shops, catalog, found)))
    faults.found += [fault for fault in found.found if fault.where not in told]
    faults.refuse_if_any()
    return catalog


def _catalog(of_items: WrittenTable, of_offers: WrittenTable, faults: Faults) -> Catalog:
    unread: set[str] = set()
    items = _items(of_items, faults, unread)
    offers: dict[str, list[Offer]] = {}
    first: tuple[str, int] | None = None
    for row, offer in rows_of(of_offers, Offer, faults, set()):
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
            complain(faults, of_offers, row, wrong_offer)
        offers.setdefault(offer.item, []).append(offer)
    return Catalog(
        items,
        {name: tuple(rows) for name, rows in offers.items()},
        first[0] if first else "",
    )


def _shops(table: WrittenTable, catalog: Catalog, faults: Faults) -> Iterator[Shop]:
    """What is known of the shops."""
    seen: dict[str, int] = {}
    for row, shop in rows_of(table, Shop, faults, set()):
        first = seen.setdefault(shop.name, row)
        try:
            refuse_unknown_shop(shop, catalog)
            if first != row:
                wrong = f"{quoted(shop.name)} stands here twice, as in row {first}"
                raise Wrong(wrong, "give each shop one row", ("name",))
        except Wrong as wrong_shop:
            complain(faults, table, row, wrong_shop)
        yield shop


def refuse_unknown_shop(shop: Shop, catalog: Catalog) -> None:
    """Raises Wrong for a shop at which nothing is on offer."""
    if shop.name not in catalog.shop_names:
        wrong = f"nothing is on offer at {quoted(shop.name)}"
        raise Wrong(wrong, nearest(shop.name, catalog.shop_names), ("name",))


def _items(table: WrittenTable, faults: Faults, unread: set[str]) -> dict[str, Item]:
    """The items by their names; ``unread`` takes those of the rows that cannot stand."""
    items: dict[str, Item] = {}
    for row, item in rows_of(table, Item, faults, unread):
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
        if isinstance(offer.put_up.holds, int) and offer.length is None:
            raise Wrong(
                f"{about}, and {quoted(offer.put_up.text)} does not say how long it is",
                "fill in length, leave put_up empty, or write it like card of 3 yd",
                ("put_up",),
            )
    elif offer.put_up.cut_to_length:
        raise Wrong(f"{about}, and is not cut to length", "write each or pack of 6", ("put_up",))
