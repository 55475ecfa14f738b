"""What would save money: what a plan or show has settled that a cheaper answer would undo.

Each is looked at by itself, bought new; two of them together may save less than their sum.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from estimator.buying.fabric_widths import (
    FabricChoice,
    at_all_widths,
    choose_width,
    offers_by_width,
)
from estimator.estimate import settle
from estimator.estimated import Estimate
from estimator.faults import Refused, Wrong
from estimator.measure import Length, natural_text
from estimator.needs.makeup import sewn_lengths
from estimator.shops import Shops


@dataclass(frozen=True, slots=True)
class Saving:
    """A change, and the money that it would save."""

    change: str
    money: Decimal


def would_save(estimate: Estimate) -> tuple[Saving, ...]:
    """What would save money, the most first; nothing where prices lack or nothing is cheaper.

    Fabrics whose width sets a ring are left out: their trims would change with them.
    """
    found = [*_of_fabrics(estimate), *_of_shops(estimate)]
    return tuple(sorted(found, key=lambda one: (-one.money, one.change)))


def _of_fabrics(estimate: Estimate) -> Iterator[Saving]:
    new = estimate.bought_new or estimate
    for choice in new.fabrics:
        terms, cost = choice.need.terms, choice.chosen.buy.cost
        if cost is None or choice.need.sets_rings:
            continue
        for words, change in (
            ("another width", {"fixed_width": None} if terms.fixed_width else None),
            ("a close layout", {"rows_only": False} if terms.rows_only else None),
            ("laid open", {"folded": False} if terms.folded else None),
        ):
            other = _otherwise(new, choice, change) if change else None
            if other is None or other.chosen.buy.cost is None:
                continue
            money = cost - other.chosen.buy.cost
            if money > 0:
                said = words if words != "another width" else _width_text(other.chosen.width, new)
                yield Saving(f"{choice.need.title}: {said}", money)


def _width_text(width: Length, estimate: Estimate) -> str:
    unit = estimate.job.garments[0].tape
    return f"{natural_text(width, unit)} wide"


def _otherwise(new: Estimate, choice: FabricChoice, change: dict[str, Any]) -> FabricChoice | None:
    """A fabric on other terms; None where its pieces cannot be had so."""
    need = replace(choice.need, terms=replace(choice.need.terms, **change))
    if need.hanging and any(one.need.sets_rings for one in new.fabrics):
        return None
    orders = {one.garment: one.order for one in need.hanging}
    try:
        edges = {number: sewn_lengths(order, {}) for number, order in orders.items()}
        unit = new.job.garments[0].tape
        return choose_width(need, at_all_widths(need, offers_by_width(need.terms), edges, unit))
    except (Refused, Wrong):
        return None


def _of_shops(estimate: Estimate) -> Iterator[Saving]:
    """What going to the fewest shops costs beyond the least total."""
    new, shops = estimate.bought_new, estimate.job.shops
    if new is None or not shops.fewest or estimate.unpriced:
        return
    job = replace(estimate.job, shops=Shops(shops.charges))
    least = settle(replace(new, job=job)) if not job.is_bought_new else replace(new, job=job)
    if least.total < estimate.total:
        names = sorted({one.buy.offer.shop for one in least.purchases if one.buy.offer.shop})
        yield Saving(f"going to {', '.join(names)}", estimate.total - least.total)
