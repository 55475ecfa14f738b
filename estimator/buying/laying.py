"""Pieces on cloth of one width: boxes or head to tail, strips across or along; the least bought."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain

from estimator.buying.cut_lengths import cuts_needed, longest_layout, steps_sold, washed_repeat
from estimator.buying.known_layouts import known_or
from estimator.buying.lots import Lot, is_taper, single_lots, slanted_lots
from estimator.buying.other_widths import widened
from estimator.buying.outline_bound import outline_bound
from estimator.catalog import Offer
from estimator.layout import (
    EVERYDAY,
    THOROUGH,
    Cloth,
    DoesNotFit,
    Effort,
    Held,
    Layout,
    OffTheRepeat,
    Style,
    lay_out_in_cuts,
    least_length_of,
)
from estimator.measure import Length
from estimator.needs.cut_piece import CutPiece
from estimator.needs.fits import goes_on
from estimator.needs.selvedges import Breadth
from estimator.needs.types import FabricTerms
from estimator.working import Reckoning

QUICK = Effort(1_000)
Pieces = tuple[CutPiece, ...]


class NoSureStart(Exception):
    """A piece of a matched print needs a cut of its own, which need not hold a start for it."""

    def __init__(self, piece: CutPiece) -> None:
        super().__init__(f"{piece.name} is not sure to start on the repeat")
        self.piece = piece


@dataclass(frozen=True, slots=True)
class Laid:
    """The layout of each cut of the fabric, mostly one, and the lots of pieces that its blanks are.

    ``bound`` is a length in ticks below which no layouts of these pieces can add up, and ``fewest``
    the number of cuts that any of them needs.
    """

    lots: tuple[Lot, ...]
    cuts: tuple[Layout, ...]
    bound: int
    fewest: int = 1

    @property
    def slanted(self) -> bool:
        """Whether some pieces lie head to tail."""
        return any(lot.count > 1 for lot in self.lots)

    @property
    def length(self) -> Length:
        """All the cuts together, from the first piece to the last of each."""
        return Length(sum(cut.length for cut in self.cuts))

    def needed(self, terms: FabricTerms) -> list[Reckoning]:
        """What each of the cuts needs, before the shop's minimum and step."""
        return cuts_needed([cut.length for cut in self.cuts], terms)

    @property
    def style(self) -> Style:
        """Straight rows, unless some cut is a close layout."""
        styles = {cut.style for cut in self.cuts}
        return Style.CLOSE if Style.CLOSE in styles else Style.STRAIGHT_ROWS

    def buys(self, cloth: Cloth) -> int:
        """What is bought for all the cuts, each rounded by itself."""
        first, *further = (cut.length for cut in self.cuts)
        return cloth.buys(first) + sum(cloth.buys(cloth.repeat + length) for length in further)


def cloth_of(terms: FabricTerms, breadth: Breadth, offer: Offer) -> Cloth:
    """What the layout engine knows of a fabric: washed, its repeats shrunk with it."""
    return replace(cloth_of_width(terms, breadth), buys=steps_sold(terms, offer))


def cloth_of_width(terms: FabricTerms, breadth: Breadth) -> Cloth:
    """The same of a fabric that is not bought: of its length nothing is known."""
    across = terms.repeat_across
    return Cloth(
        width=breadth.of_a_layer.ticks,
        repeat=washed_repeat(terms).ticks,
        repeat_across=across.times(1 - terms.shrinkage_across).ticks if across else 0,
    )


def laid_out(
    terms: FabricTerms, breadth: Breadth, pieces: Pieces, offer: Offer, *, quick: bool = False
) -> Laid:
    """The pieces on cloth that has been washed, in as many cuts as its bolts make of it.

    Tapers lie head to tail where that buys less than boxes do. ``quick`` is for a look whose layout
    is not the one that is cut.

    Raises DoesNotFit for a piece longer than any bolt, and NoSureStart for one of a matched print
    that takes a further cut, where a bolt need not hold its length from the start of a repeat on.
    """
    return laid_once(terms, breadth, pieces, _first_alike(terms, offer), quick=quick)


def _first_alike(terms: FabricTerms, offer: Offer) -> Offer:
    """The first offer on which as much would be bought for each length: shops often sell alike."""

    def sold(one: Offer) -> tuple[object, ...]:
        return one.selling_step, one.minimum, one.bolt

    return next((one for one in terms.offers if sold(one) == sold(offer)), offer)


@lru_cache(maxsize=1024)
def laid_once(
    terms: FabricTerms, breadth: Breadth, pieces: Pieces, offer: Offer, *, quick: bool
) -> Laid:
    """``laid_out``, kept: the widths on which rings depend ask for the same layout often."""
    cloth = cloth_of(terms, breadth, offer)
    longest = longest_layout(terms, offer)
    effort = QUICK if quick else THOROUGH if terms.thorough else EVERYDAY

    def laid(lots: tuple[Lot, ...]) -> Laid:
        blanks = [lot.blank for lot in lots]
        rows_only = terms.rows_only
        cuts = known_or(
            cloth,
            (terms.straightening, terms.waste, terms.shrinkage, offer.selling_step, offer.minimum),
            blanks,
            (longest, effort.work, rows_only),
            lambda: lay_out_in_cuts(cloth, blanks, longest, effort=effort, rows_only=rows_only),
        )
        return Laid(lots, cuts.layouts, cuts.bound, cuts.fewest)

    singly = single_lots(pieces, breadth, cloth, nap=terms.nap)
    slanted = slanted_lots(pieces, breadth, cloth, nap=terms.nap)
    ways: list[Laid] = []
    for lots in [singly] if slanted == singly else [singly, slanted]:
        try:
            ways.append(laid(lots))
        except OffTheRepeat as problem:
            off = pieces[lots[problem.blank].piece]
        except DoesNotFit:
            if lots is singly:
                raise  # while shifted to the repeat, tapers may be longer than a bolt
    if not ways:
        raise NoSureStart(off)
    best = min(ways, key=lambda way: way.buys(cloth))
    if not best.slanted:
        return best
    return replace(best, bound=_bound_as_it_lies(best, pieces, breadth, cloth), fewest=1)


def least_of(
    own: Laid, known: Sequence[Laid], pieces: Pieces, breadth: Breadth, cloth: Cloth
) -> Laid:
    """A width's own layout, unless one known of narrower fabric buys less.

    What is taken over is bounded as it lies: outlines by their area, boxes as those of the width.
    """
    best = min((own, *known), key=lambda laid: laid.buys(cloth))
    if best is own:
        return own
    cuts = tuple(widened(cut, best.lots, cloth.width) for cut in best.cuts)
    if best.slanted:
        bound = _bound_as_it_lies(best, pieces, breadth, cloth)
        return replace(best, cuts=cuts, bound=bound, fewest=1)
    return replace(best, cuts=cuts, bound=own.bound, fewest=own.fewest)


def _bound_as_it_lies(
    laid: Laid, pieces: Sequence[CutPiece], breadth: Breadth, cloth: Cloth
) -> int:
    """A bound for pieces some of which lie head to tail: that of outlines, or of the others alone.

    Only what can never lie head to tail counts by its box.
    """
    boxes = [
        lot.blank
        for lot in laid.lots
        if lot.half or lot.blank.held is not Held.FREE or not is_taper(pieces[lot.piece])
    ]
    in_one = cloth if len(laid.cuts) == 1 else replace(cloth, repeat=0)
    return max(outline_bound(pieces, breadth), least_length_of(in_one, boxes))


def best_made_up(
    sized: Pieces,
    strips: Sequence[Sequence[Pieces]],
    terms: FabricTerms,
    breadth: Breadth,
    offer: Offer,
) -> Pieces:
    """All the pieces, each strip made up in the way that buys least beside the others.

    ``strips`` holds the ways of each, the usual one first; that is kept unless another buys less.
    """
    chosen = [ways[0] for ways in strips]
    for number, ways in enumerate(strips):
        if len(ways) < 2:
            continue
        bought = []
        for way in ways:
            tried = (*sized, *chain(*chosen[:number], way, *chosen[number + 1 :]))
            if not goes_on(tried, breadth):
                continue
            with suppress(NoSureStart, DoesNotFit):  # one too long for a bolt is no way
                laid = laid_out(terms, breadth, tried, offer, quick=True)
                bought.append((laid.buys(cloth_of(terms, breadth, offer)), way))
        if bought:
            chosen[number] = min(bought, key=lambda one: one[0])[1]
    return (*sized, *chain(*chosen))
