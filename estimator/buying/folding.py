"""The length that the other way of laying a fabric takes: folded beside open, or open beside it."""

from __future__ import annotations

from dataclasses import replace

from estimator.buying.cut_lengths import as_sold
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import NoSureStart, laid_out
from estimator.layout import DoesNotFit
from estimator.measure import Length, total
from estimator.needs.fits import goes_on


def bought_other_way(choice: FabricChoice) -> Length | None:
    """What is bought where the same pieces are laid folded and not open, or the other way round.

    None where they do not all go on the fabric so.
    """
    option = choice.chosen
    breadth = replace(option.breadth, folded=not option.breadth.folded)
    if not goes_on(option.pieces, breadth):
        return None
    terms, offer = choice.need.terms, option.buy.offer
    try:
        laid = laid_out(terms, breadth, option.pieces, offer)
    except (NoSureStart, DoesNotFit):  # it would lie longer than a bolt
        return None
    return total(as_sold(one, offer).value for one in laid.needed(terms))
