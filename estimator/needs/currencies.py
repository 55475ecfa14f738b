"""In which currency the prices of a plan are; what is wrong with it is told once for a garment."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.faults import Wrong
from estimator.job import GarmentOrder, Job
from estimator.plan import Plan
from estimator.prices import Price


def currency_of(order: GarmentOrder, job: Job) -> str:
    """The currency of a garment's own prices.

    Raises Wrong where they have none, or not that of the catalog.
    """
    own, shared = order.plan.garment.currency, job.catalog.currency
    unread = not own and ("garment", "currency") in order.places.lines
    if not own and not shared and not unread and any(_prices_in(order.plan)):
        raise Wrong(
            "the plan states prices, and in no currency",
            'add currency = "USD", or another, to [garment]',
            ("garment",),
        )
    if own and shared and own != shared:
        raise Wrong(
            f"the plan's prices are in {own} and the catalog's in {shared}",
            "use one currency in a job",
            ("garment", "currency"),
        )
    return own or shared


def _prices_in(plan: Plan) -> Iterator[Price | None]:
    for fabric in plan.fabric:
        yield from (fabric.price, *(width.price for width in fabric.widths))
    for tables in (plan.trim, plan.elastic, plan.notion, plan.thread, plan.lacing, plan.boning,
                   plan.loops):  # fmt: skip
        for bought in tables:
            yield from (bought.price, *(sold.price for sold in bought.sold))


def currency_in_use(order: GarmentOrder, job: Job) -> str:
    """The currency of an offer that a plan makes; one that is refused is so with the garment."""
    return order.plan.garment.currency or job.catalog.currency
