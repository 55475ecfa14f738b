"""How many of each garment are made, and for whom."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from estimator.estimated import Estimate
from estimator.job import GarmentOrder


def made(estimate: Estimate) -> tuple[str, ...]:
    """A line for each garment of a show; nothing where the title of the list says it already.

    ``14 × Chorus kirtle: 10 for Size 12, 4 for Size 14.``
    """
    if not estimate.job.title:
        return ()
    garments: dict[str, list[GarmentOrder]] = {}
    for order in estimate.job.garments:
        garments.setdefault(order.plan.garment.name, []).append(order)
    return tuple(
        f"{': '.join(filter(None, (f'{copies_of(orders)} × {name}', for_whom(orders))))}."
        for name, orders in garments.items()
    )


def copies_of(orders: Sequence[GarmentOrder]) -> int:
    """How many are made in all."""
    return sum(order.copies for order in orders)


def for_whom(orders: Sequence[GarmentOrder]) -> str:
    """Every wearer, with a number where somebody has several; nothing where nobody is named."""
    wearers = Counter[str]()
    for order in orders:
        wearers[order.wearer] += order.copies
    if set(wearers) == {""}:
        return ""
    if set(wearers.values()) == {1} and "" not in wearers:
        return f"for {', '.join(wearers)}"
    return ", ".join(
        f"{number} for {who}" if who else f"{number} by the plan's own measures"
        for who, number in wearers.items()
    )
