"""How narrow the bolt may measure before more is needed: what is sold as 45 in often is not.

Each whole inch or every other centimetre is looked at, from the narrowest that could do upwards,
until one serves; the layout found there tells to the tick how narrow it may be. So what is said
hardly hangs on the width from which it is asked. The next whole inch or centimetre below that is
laid out as it would be if it were bought.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from estimator.buying.cut_lengths import as_sold
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import Laid, NoSureStart, laid_out
from estimator.buying.one_width import WidthOption, least_bought_for
from estimator.buying.other_widths import narrowest_cloth
from estimator.buying.outline_bound import area_bound
from estimator.layout import DoesNotFit
from estimator.measure import Length, total
from estimator.needs.fits import BOTH, goes_on, least_width
from estimator.needs.selvedges import Breadth
from estimator.needs.types import FabricTerms
from estimator.plan import Made


@dataclass(frozen=True, slots=True)
class Narrowest:
    """Down to what usable width the bought length serves, measured before washing.

    A layout is known at ``usable``, the narrowest that was found. ``next_down`` is the next whole
    inch or centimetre below it, and ``then_buy`` what has to be bought there, always more; None
    where the pieces, as they are cut for the wider one, do not go on it.
    """

    usable: Length
    next_down: Length
    then_buy: Length | None


def narrowest_serving(choice: FabricChoice) -> Narrowest | None:
    """The narrowest fabric found on which the length that is bought still serves.

    None where strips take the fabric's width or pieces both its selvedges: they are others on every
    width; and where nothing is bought.
    """
    option, terms = choice.chosen, choice.need.terms
    if not option.pieces:
        return None
    if any(one.piece.made is Made.JOINED_STRIP for one in choice.need.hanging):
        return None
    if any(len(piece.selvedges) == BOTH for piece in option.pieces):
        return None
    assert isinstance(option.buy.bought, Length), "fabric is cut to length"
    looks = _Looks(option, terms, option.buy.bought)
    unit = option.buy.offer.sold_by.tape
    mark = unit.length if unit.metric else Length(unit.length.ticks // 4)
    serves = looks.extent(option.laid, option.breadth)
    least = max(least_width(piece, option.breadth) for piece in option.pieces)
    step = unit.length * 2 if unit.metric else unit.length
    tried = _before_washing(least, terms, Length(1)).up_to(unit.length)
    while looks.washed(tried).usable < serves:
        found = looks.at(tried)
        if found is not None and looks.bought(found) <= looks.enough:
            serves = min(serves, looks.extent(found, looks.washed(tried)))
            break
        tried += step
    while True:
        usable = min(
            _before_washing(serves, terms, mark), _before_washing(option.usable, terms, Length(1))
        )
        next_down = Length((usable.ticks - 1) // unit.length.ticks * unit.length.ticks)
        found = looks.at(next_down, quick=False)
        if found is None:
            return Narrowest(usable, next_down, None)
        then_buy = looks.bought(found)
        if then_buy > looks.enough:
            return Narrowest(usable, next_down, then_buy)
        serves = looks.extent(found, looks.washed(next_down))


@dataclass(frozen=True, slots=True)
class _Looks:
    """The same pieces on fabric of other widths, of which ``enough`` is bought."""

    option: WidthOption
    terms: FabricTerms
    enough: Length

    def washed(self, width: Length) -> Breadth:
        """The fabric of such a usable width, measured before washing."""
        washed = width.times_rounded_down(1 - self.terms.shrinkage_across)
        return replace(self.option.breadth, usable=washed)

    def at(self, width: Length, *, quick: bool = True) -> Laid | None:
        """The pieces laid out there; None where they do not all go on it.

        A quick look is not taken either where no layout of them can be short enough.
        """
        pieces, offer, breadth = self.option.pieces, self.option.buy.offer, self.washed(width)
        if not goes_on(pieces, breadth):
            return None
        bound = area_bound(pieces, breadth)
        if quick and least_bought_for(bound, self.terms, offer) > self.enough:
            return None
        try:
            return laid_out(self.terms, breadth, pieces, offer, quick=quick)
        except (NoSureStart, DoesNotFit):  # it would lie longer than a bolt
            return None

    def bought(self, laid: Laid) -> Length:
        """What has to be bought for a layout."""
        offer = self.option.buy.offer
        return total(as_sold(one, offer).value for one in laid.needed(self.terms))

    def extent(self, laid: Laid, breadth: Breadth) -> Length:
        """How narrow the washed fabric may be on which a layout of this breadth still lies."""
        reach = Length(max(narrowest_cloth(cut, laid.lots) for cut in laid.cuts))
        return (reach + breadth.off_middle) * 2 if breadth.folded else reach


def _before_washing(washed: Length, terms: FabricTerms, mark: Length) -> Length:
    """The width of the bolt, up to a mark, that is ``washed`` wide after it has shrunk."""
    return washed.times(1 / (1 - terms.shrinkage_across)).up_to(mark)
