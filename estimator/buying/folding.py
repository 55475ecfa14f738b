"""The length that the other way of laying a fabric takes: folded beside open, or open beside it."""

from __future__ import annotations

from dataclasses import replace

from estimator.buying.cut_lengths import as_sold, fabric_needed
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import laid_out
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
    laid = laid_out(choice.need.terms, breadth, option.pieces, option.buy.offer)
    needed = [fabric_needed(Length(cut.length), choice.need.terms) for cut in laid.cuts]
    return total(as_sold(one, option.buy.offer).value for one in needed)
