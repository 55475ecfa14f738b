"""Fabrics on whose width a ring depends: whole widths sewn together set what is sewn to them.

The width of such a fabric moves every strip and trim that follows the ring, so that it cannot be
chosen by itself: each way to choose such widths is estimated whole.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import product
from math import prod

from estimator.buying.fabric_widths import compared, offers_by_width
from estimator.catalog import Offer
from estimator.estimated import Estimate, listed
from estimator.faults import Fault, Refused
from estimator.needs.types import FabricTerms, Needs

MOST_WIDTH_CHOICES = 256
Widths = Mapping[FabricTerms, tuple[Offer, ...]]
"""For fabrics whose width sets a ring: the fabric's terms, and its offers at one width."""


def ring_setting_widths(needs: Needs) -> Iterator[Widths]:
    """Each way to choose the widths of fabrics on which a ring of whole widths depends."""
    setting = [need for need in needs.fabrics if need.sets_rings]
    choices = [offers_by_width(need.terms) for need in setting]
    if prod(map(len, choices)) > MOST_WIDTH_CHOICES:
        names = ", ".join(f"'{need.title}'" for need in setting)
        wrong = f"strips in whole widths can be had in more than {MOST_WIDTH_CHOICES} ways"
        raise Refused(
            [Fault(setting[0].sources[0].where, wrong, f"fix the width of some of {names}")]
        )
    for chosen in product(*choices):
        yield {need.terms: offers for need, offers in zip(setting, chosen, strict=True)}


def beside_the_others(best: Estimate, found: Sequence[Estimate]) -> Estimate:
    """The best estimate, its fabrics compared with the widths that the other estimates took."""
    if len(found) == 1:
        return best
    fabrics = []
    for number, choice in enumerate(best.fabrics):
        alike = [one for one in found if _same_but_for(number, one, best)]
        fabrics.append(compared(choice, [one.fabrics[number] for one in alike]))
    return replace(best, fabrics=tuple(fabrics), purchases=listed(fabrics, best.purchases))


def _same_but_for(number: int, one: Estimate, other: Estimate) -> bool:
    """Whether two estimates take the same width of every fabric but one."""
    pairs = enumerate(zip(one.fabrics, other.fabrics, strict=True))
    return all(n == number or a.chosen.width == b.chosen.width for n, (a, b) in pairs)
