"""What would save money: what a plan or show has settled that a cheaper answer would undo.

Each is looked at by itself, bought new; two of them together may save less than their sum.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from estimator.buying.fabric_widths import (
    FabricChoice,
    at_all_widths,
    choose_width,
    offers_by_width,
)
from estimator.buying.small_things import lines_for
from estimator.buying.types import Purchase, by_what_is_bought, known_cost
from estimator.estimate import estimate as estimate_of
from estimator.estimate import settle
from estimator.estimated import Estimate
from estimator.faults import Refused, Wrong
from estimator.job import Job
from estimator.measure import Length, natural_text, shop_text
from estimator.needs.makeup import sewn_lengths
from estimator.needs.types import LengthNeed
from estimator.put_up import EACH
from estimator.shops import Shops


@dataclass(frozen=True, slots=True)
class Saving:
    """A change, and the money that it would save."""

    change: str
    money: Decimal


def would_save(estimate: Estimate) -> tuple[Saving, ...]:
    """What would save money, the most first; nothing where prices lack or nothing is cheaper."""
    found = [
        *_of_fabrics(estimate),
        *_of_joins(estimate),
        *_of_other_shops(estimate),
        *_of_shops(estimate),
    ]
    return tuple(sorted(found, key=lambda one: (-one.money, one.change)))


_CHANGES: tuple[tuple[str, dict[str, Any], dict[str, Any]], ...] = (
    (_WIDTH := "another width", {"fixed_width": None}, {"width": None}),
    ("a close layout", {"rows_only": False}, {"layout": "least fabric"}),
    ("laid open", {"folded": False}, {"laid": "open"}),
)
"""A change in words, on the terms of a fabric, and in the plan."""


def _of_fabrics(estimate: Estimate) -> Iterator[Saving]:
    new = estimate.bought_new or estimate
    bought = {one.need.used_as for one in estimate.fabrics if one.chosen.buy.bought}
    for choice in new.fabrics:
        if choice.need.used_as not in bought or choice.chosen.buy.cost is None:
            continue
        for words, terms, in_plan in _CHANGES:
            if all(getattr(choice.need.terms, name) == value for name, value in terms.items()):
                continue
            found = _otherwise(new, choice, terms, in_plan)
            if found and found[1] > 0:
                width, money = found
                said = words if words is not _WIDTH else _width_text(width, new)
                yield Saving(f"{choice.need.title}: {said}", money)


def _width_text(width: Length, estimate: Estimate) -> str:
    unit = estimate.job.garments[0].tape
    return f"{natural_text(width, unit)} wide"


def _otherwise(
    new: Estimate, choice: FabricChoice, terms: dict[str, Any], in_plan: dict[str, Any]
) -> tuple[Length, Decimal] | None:
    """The width of a fabric on other terms, and the money saved; None where it cannot be had so.

    Where rings hang on its width, so do other pieces and trims: then all is estimated anew.
    """
    need = replace(choice.need, terms=replace(choice.need.terms, **terms))
    try:
        if need.sets_rings or (need.hanging and any(one.need.sets_rings for one in new.fabrics)):
            whole = estimate_of(_planned_anew(new, choice, in_plan))
            other = next(one for one in whole.fabrics if one.need.used_as == need.used_as)
            same = whole.unpriced == new.unpriced
            return (other.chosen.width, new.cost - whole.cost) if same else None
        orders = {one.garment: one.order for one in need.hanging}
        edges = {number: sewn_lengths(order, {}) for number, order in orders.items()}
        unit = new.job.garments[0].tape
        groups = offers_by_width(need.terms)
        chosen = choose_width(need, at_all_widths(need, groups, edges, unit)).chosen
    except (Refused, Wrong, StopIteration):
        return None
    before, after = choice.chosen.buy.cost, chosen.buy.cost
    return None if before is None or after is None else (chosen.width, before - after)


def _planned_anew(new: Estimate, choice: FabricChoice, in_plan: dict[str, Any]) -> Job:
    """The job with a fabric of its plans changed."""
    garments = list(new.job.garments)
    for number, name in choice.need.used_as:
        plan = garments[number].plan
        fabrics = tuple(
            one.model_copy(update=in_plan) if one.name == name else one for one in plan.fabric
        )
        plan = plan.model_copy(update={"fabric": fabrics})
        garments[number] = replace(garments[number], plan=plan)
    return replace(new.job.bought_new, garments=tuple(garments))


def _of_joins(estimate: Estimate) -> Iterator[Saving]:
    """Trims on cards or spools that take fewer of them where a run may be joined once."""
    unit = estimate.job.garments[0].tape
    for lines in by_what_is_bought(estimate.purchases).values():
        need = lines[0].need
        if not isinstance(need, LengthNeed) or any(line.taken for line in lines):
            continue
        shops = {line.buy.offer.shop for line in lines}
        offers = tuple(one for one in need.terms.offers if one.shop in shops)
        if all(one.put_up.cut_to_length for one in offers) or known_cost(lines) is None:
            continue
        runs = tuple(run if run.joins else replace(run, joins=1) for run in need.runs)
        try:
            terms = replace(need.terms, offers=offers)
            joined = lines_for(replace(need, runs=runs, terms=terms), unit)
        except Wrong:
            continue
        before, after = known_cost(lines), known_cost(joined)
        if before is not None and after is not None and after < before:
            yield Saving(
                f"{lines[0].title}: a join in a run, on {_put_ups(joined)}", before - after
            )


def _of_other_shops(estimate: Estimate) -> Iterator[Saving]:
    """What is bought dearer than it is elsewhere, less what a visit there costs."""
    new, charges = estimate.bought_new, estimate.job.shops.charges
    visited = {one.shop for one in estimate.visits}
    now = by_what_is_bought(estimate.purchases)
    for alike, lines in by_what_is_bought(new.purchases if new else ()).items():
        own = now.get(alike, [])
        before, after = known_cost(own), known_cost(lines)
        shops = sorted({one.buy.offer.shop for one in lines if one.buy.offer.shop} - visited)
        if not own or not shops or before is None or after is None:
            continue
        money = before - after - sum((charges.get(one, Decimal(0)) for one in shops), Decimal(0))
        if money > 0:
            at = " and ".join(shops)
            yield Saving(f"{lines[0].title}: {_put_ups(lines)} at {at}", money)


def _put_ups(lines: Iterable[Purchase]) -> str:
    """What is bought, as in 2 × spool of 10 yd."""
    return " and ".join(
        (
            f"{line.buy.bought} × {line.buy.unit}"
            if line.buy.unit != EACH.text
            else f"{line.buy.bought}"
        )
        if isinstance(line.buy.bought, int)
        else shop_text(line.buy.bought, line.buy.offer.sold_by)
        for line in lines
    )


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
