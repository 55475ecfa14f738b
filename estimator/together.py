"""Garments planned together beside each by itself: what is saved, and never a dearer answer.

Each line of the list is bought together, or apart where that costs less: a close layout of one
garment may beat the rows of sixty. Where the width of a fabric sets the ring that trims follow, all
lines hang on one another, and all are bought together or all apart. Cloth of one dye lot is always
bought together.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from estimator.buying.types import Purchase, by_what_is_bought, known_cost
from estimator.estimate import settle
from estimator.estimated import Estimate, Saved, bill_with_charges, listed
from estimator.job import Job
from estimator.needs.types import FabricTerms
from estimator.stash import NO_STASH


def each_apart(job: Job) -> tuple[Job, ...]:
    """A job for each garment of a job, alone."""
    return tuple(replace(job, garments=(order,), title="") for order in job.garments)


def beside_each_apart(whole: Estimate, apart: Sequence[Estimate]) -> Estimate:
    """What to buy for a job, given its estimate and those of its garments alone.

    It never costs more than those do.
    """
    singly = _singly(apart)
    best = _cheapest(whole, apart, singly)
    return replace(best, saved=tuple(_saved(best, singly)))


def settled_together(job: Job, whole: Estimate, apart: Sequence[Estimate]) -> Estimate:
    """The same for a job with a stash or charges of shops; the estimates are of all bought new.

    Where shops are weighed, what is best line by line need not be so for the whole: then all
    together and all apart are weighed as well, before the stash is used.
    """
    best = beside_each_apart(whole, apart)
    if not job.shops.matter:
        return _settled(best, job)
    ways = [best, replace(whole, saved=tuple(_saved(whole, _singly(apart))))]
    if not _has_to_match(whole):
        ways.append(_apart(whole, apart))
    new = replace(job, stash=NO_STASH)
    least = min(ways, key=lambda one: bill_with_charges(settle(replace(one, job=new))))
    return _settled(least, job)


def _settled(new: Estimate, job: Job) -> Estimate:
    """The same with the stash used and the shops chosen.

    Of a thing that is not bought after all, nothing is saved by buying it together.
    """
    found = settle(replace(new, job=job))
    bought = by_what_is_bought(line for line in found.purchases if line.buy.bought)
    return replace(found, saved=tuple(one for one in found.saved if one.alike in bought))


def _singly(apart: Sequence[Estimate]) -> dict[object, list[Purchase]]:
    return by_what_is_bought([line for one in apart for line in one.purchases])


def _apart(whole: Estimate, apart: Sequence[Estimate]) -> Estimate:
    """All that the garments need alone, on one list."""
    fabrics = tuple(choice for one in apart for choice in one.fabrics)
    others = [line for one in apart for line in one.purchases]
    granted = tuple(dict.fromkeys(line for one in apart for line in one.granted))
    return replace(whole, fabrics=fabrics, purchases=listed(fabrics, others), granted=granted)


def _cheapest(
    whole: Estimate, apart: Sequence[Estimate], singly: Mapping[object, Sequence[Purchase]]
) -> Estimate:
    if any(choice.need.sets_rings for choice in whole.fabrics):
        if _has_to_match(whole) or not _costs_less(
            [line for own in singly.values() for line in own], whole.purchases
        ):
            return whole
        return _apart(whole, apart)
    dearer = dict.fromkeys(
        alike
        for alike, lines in by_what_is_bought(whole.purchases).items()
        if not _one_lot(alike) and _costs_less(singly.get(alike, []), lines)
    )
    if not dearer:
        return whole
    own_choices = [choice for one in apart for choice in one.fabrics]
    fabrics = tuple(
        choice
        for together in whole.fabrics
        for choice in (
            [one for one in own_choices if one.need.terms == together.need.terms]
            if together.need.terms in dearer
            else [together]
        )
    )
    others = [line for line in whole.purchases if line.alike not in dearer]
    others += [line for alike in dearer for line in singly[alike]]
    return replace(whole, fabrics=fabrics, purchases=listed(fabrics, others))


def _has_to_match(whole: Estimate) -> bool:
    return any(choice.need.terms.one_dye_lot for choice in whole.fabrics)


def _one_lot(alike: object) -> bool:
    """Whether a line is cloth that has to match, and is not bought garment by garment."""
    return isinstance(alike, FabricTerms) and alike.one_dye_lot


def _costs_less(lines: Sequence[Purchase], than: Sequence[Purchase]) -> bool:
    """Whether lines have prices throughout, and cost less than others that have."""
    cost, other = known_cost(lines), known_cost(than)
    return bool(lines) and cost is not None and other is not None and cost < other


def _saved(best: Estimate, singly: Mapping[object, Sequence[Purchase]]) -> list[Saved]:
    """What is saved on each thing that several garments need."""
    found = []
    for alike, lines in by_what_is_bought(best.purchases).items():
        own = singly.get(alike, [])
        if len(own) < 2:
            continue
        alone, together = known_cost(own), known_cost(lines)
        money = None if alone is None or together is None else alone - together
        units = {(line.buy.unit, line.width) for line in (*own, *lines)}
        amount = None
        if len(units) == 1:
            amount = _units(own) - _units(lines)
        if amount or money:
            unit = lines[0].buy.unit if amount else ""
            found.append(Saved(alike, lines[0].title, lines[0].colour, unit, amount, money))
    return sorted(found, key=lambda one: -(one.money or Decimal(0)))


def _units(lines: Sequence[Purchase]) -> Fraction:
    return sum((line.buy.sold_units for line in lines), Fraction(0))
