"""Where each quantity goes: what every piece, trim and notion of a garment takes of each line."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import Length, shop_text
from estimator.needs.types import CountNeed
from estimator.reports.tables import Column, Format, Table, Value
from estimator.reports.units import tape_unit
from estimator.working import Source

Use = tuple[Source, str, Fraction | None]
"""Whose it is, what it takes in words, and its share of the line."""


def where_table(estimate: Estimate) -> Table:
    """Item by garment: what takes how much of each line, and its share of it.

    Shares of fabric are by the area of what is cut; waste and rounding belong to no one.
    """
    rows = [row for purchase in estimate.purchases for row in _rows(purchase, estimate)]
    return Table(
        title="Where each quantity goes",
        columns=(
            Column("Item", wide=26),
            Column("Garment", wide=26),
            Column("For", wide=28),
            Column("Takes", wide=20),
            Column("Share", Format.SHARE, 8),
        ),
        rows=tuple(rows),
        unit=tape_unit(estimate),
        notes=(
            "Fabric goes by the area of its pieces as cut, trim by its length before waste, "
            "thread with its waste, what is counted with its spares; what comes from the stash is "
            "in it.",
        ),
    )


def _rows(purchase: Purchase, estimate: Estimate) -> Iterator[tuple[Value, ...]]:
    choice = next((one for one in estimate.fabrics if one.need.key == purchase.key), None)
    choice = choice or _of_sources(purchase, estimate)
    uses = _pieces(choice) if choice else _taken(purchase, estimate)
    item: str | None = ", ".join(filter(None, (purchase.title, purchase.colour)))
    for source, takes, share in sorted(uses, key=lambda use: _turn(use[0], estimate)):
        yield item, source.owner, source.name, takes, share
        item = None


def _turn(source: Source, estimate: Estimate) -> tuple[int, int]:
    """Garments come one after the other as they are ordered, the pieces of each as named there."""
    for number, order in enumerate(estimate.job.garments):
        if (order.plan.garment.name, order.wearer) == (source.garment, source.wearer):
            names = [piece.name for piece in order.plan.piece]
            return number, names.index(source.name) if source.name in names else len(names)
    return len(estimate.job.garments), 0


def _of_sources(purchase: Purchase, estimate: Estimate) -> FabricChoice | None:
    """The fabric of a line whose key was told apart from that of another."""
    alike = (one for one in estimate.fabrics if one.need.sources == purchase.sources)
    return next((one for one in alike if one.need.group is purchase.group), None)


def _pieces(choice: FabricChoice) -> list[Use]:
    """The pieces cut from a fabric, those of one name and garment together."""
    count: Counter[Source] = Counter()
    area: Counter[Source] = Counter()
    for piece in choice.chosen.all_pieces:
        count[piece.source] += piece.quantity
        size = piece.width.value.ticks * piece.length.value.ticks
        area[piece.source] += size * piece.quantity
    whole = sum(area.values())
    return [
        (source, f"{number} cut", Fraction(area[source], whole) if whole else None)
        for source, number in count.items()
    ]


def _taken(purchase: Purchase, estimate: Estimate) -> list[Use]:
    """What is taken by its length or by count, all of one source together."""
    takes: Counter[Source] = Counter()
    for source, amount in purchase.takes:
        takes[source] += amount.ticks if isinstance(amount, Length) else amount
    whole = sum(takes.values())
    counted = isinstance(purchase.need, CountNeed)
    return [
        (
            source,
            f"{amount}" if counted else _length_text(Length(amount), estimate),
            Fraction(amount, whole),
        )
        for source, amount in takes.items()
    ]


def _length_text(length: Length, estimate: Estimate) -> str:
    """Up to the next sixteenth of a yard or centimetre, as lists show lengths."""
    shop = tape_unit(estimate).shop
    part = shop.of(Fraction(1, 100) if shop.metric else Fraction(1, 16))
    return shop_text(length.up_to(part), shop)
