"""How narrow the bolt may measure before more is needed: what is sold as 45 in often is not."""

from __future__ import annotations

from dataclasses import dataclass, replace

from estimator.buying.cut_lengths import as_sold
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import laid_out
from estimator.buying.one_width import WidthOption
from estimator.layout import Held
from estimator.measure import Length, total
from estimator.needs.fits import BOTH, least_width
from estimator.needs.types import FabricTerms
from estimator.plan import Made

LOOKS = 4
"""How many widths are tried on the way down; each halves what is left to search."""


@dataclass(frozen=True, slots=True)
class Narrowest:
    """Down to what usable width the bought length serves, measured before washing.

    ``next_down`` is the next narrower whole inch or centimetre, and ``then_buy`` what has to be
    bought there; None where the pieces, as they are cut for the wider one, do not go on it.
    """

    usable: Length
    next_down: Length
    then_buy: Length | None


def narrowest_serving(choice: FabricChoice) -> Narrowest | None:
    """The narrowest fabric found on which the length that is bought still serves.

    Every width it names has a layout; a narrower one may exist that was not found. None where
    strips take the fabric's width or pieces both its selvedges: they are others on every width;
    and where nothing is bought.
    """
    option, terms = choice.chosen, choice.need.terms
    if not option.pieces:
        return None
    if any(one.piece.made is Made.JOINED_STRIP for one in choice.need.hanging):
        return None
    if any(len(piece.selvedges) == BOTH for piece in option.pieces):
        return None
    assert isinstance(option.buy.bought, Length), "fabric is cut to length"
    bought, unit = option.buy.bought, option.buy.offer.sold_by.tape
    mark = unit.length if unit.metric else Length(unit.length.ticks // 4)
    least = max(least_width(piece, option.breadth) for piece in option.pieces)
    serves, fails = _extent(option), least - Length(1)
    for _ in range(LOOKS):
        middle = Length((serves.ticks + fails.ticks + 1) // 2)
        if serves - fails <= mark:
            break
        if _bought_at(middle, option, terms) <= bought:
            serves = middle
        else:
            fails = middle
    usable = min(_as_measured(serves, terms, mark), _as_measured(option.usable, terms, Length(1)))
    next_down = Length((usable.ticks - 1) // unit.length.ticks * unit.length.ticks)
    washed = next_down.times_rounded_down(1 - terms.shrinkage_across)
    if washed < least:
        return Narrowest(usable, next_down, None)
    then_buy = _bought_at(washed, option, terms, quick=False)
    return Narrowest(usable, next_down, max(bought, then_buy))


def _bought_at(
    washed: Length, option: WidthOption, terms: FabricTerms, *, quick: bool = True
) -> Length:
    """What has to be bought of a fabric of this usable width, for the same pieces."""
    breadth = replace(option.breadth, usable=washed)
    laid = laid_out(terms, breadth, option.pieces, option.buy.offer, quick=quick)
    return total(as_sold(one, option.buy.offer).value for one in laid.needed(terms))


def _extent(option: WidthOption) -> Length:
    """How far across the fabric a layout reaches: so narrow it may lie unchanged."""
    if any(lot.blank.held in (Held.FAR, Held.EITHER) for lot in option.laid.lots):
        return option.usable  # what lies at the far edge moves with it
    places = (place for cut in option.laid.cuts for place in cut.placements)
    reach = max(place.across + place.width for place in places)
    return (
        (Length(reach) + option.breadth.off_middle) * 2 if option.breadth.folded else Length(reach)
    )


def _as_measured(washed: Length, terms: FabricTerms, mark: Length) -> Length:
    """The width of the bolt, up to a mark, that is ``washed`` wide after it has shrunk."""
    return washed.times(1 / (1 - terms.shrinkage_across)).up_to(mark)
