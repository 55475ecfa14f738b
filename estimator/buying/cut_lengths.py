"""Lengths that a shop cuts from the roll: shrinkage, waste, minimum, selling step, price breaks."""

from __future__ import annotations

from estimator.buying.types import Buy
from estimator.catalog import Offer
from estimator.measure import Length
from estimator.needs.runs import SHRINKS
from estimator.needs.types import BuyingTerms, FabricTerms
from estimator.working import Reckoning

CUT_ENDS = 2


def with_waste(length: Reckoning, terms: FabricTerms | BuyingTerms) -> Reckoning:
    """With the waste allowance, which comes last before the shop's own rounding."""
    return length.times("waste allowance", 1 + terms.waste)


def fabric_needed(layout_length: Length, terms: FabricTerms) -> Reckoning:
    """The length of fabric that a layout of this length needs, with both cut ends straightened.

    Shrinkage divides: to have 60 in after washing at 5 %, 60 / 0.95 is needed.
    """
    length = Reckoning.start("length of the cutting layout", layout_length)
    length = length.plus("straightening, two cut ends", terms.straightening * CUT_ENDS)
    return with_waste(length.divided_by(SHRINKS, 1 - terms.shrinkage), terms)


def as_sold(needed: Reckoning, offer: Offer) -> Reckoning:
    """Up to the shop's minimum cut, then up to its selling step."""
    if offer.minimum is not None:
        needed = needed.at_least("the shop's minimum cut", offer.minimum)
    return needed.sold_by("as the shop sells it", offer.selling_step)


def cut_from_roll(needed: Reckoning, offer: Offer) -> Buy:
    """Buys a length on an offer; where the price is from a quantity, at least that quantity."""
    sold = as_sold(needed, offer)
    if isinstance(offer.from_quantity, Length):
        least = offer.from_quantity.up_to(offer.selling_step)
        sold = sold.at_least("the quantity from which this price holds", least)
    return Buy(offer, sold.value, sold.steps)
