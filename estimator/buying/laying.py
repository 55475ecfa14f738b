"""Pieces on cloth of one width: boxes or head to tail, strips across or along; the least bought."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain

from estimator.buying.cut_lengths import steps_sold
from estimator.buying.lots import Lot, outline_area, single_lots, slanted_lots
from estimator.catalog import Offer
from estimator.layout import EVERYDAY, Cloth, Effort, Layout, lay_out
from estimator.measure import Length
from estimator.needs.fits import narrowest
from estimator.needs.types import CutPiece, FabricTerms

QUICK = Effort(1_000)
"""For looks whose layout is not the one that is cut."""
Pieces = tuple[CutPiece, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """A layout, and the lots of pieces that its blanks are."""

    lots: tuple[Lot, ...]
    layout: Layout

    @property
    def slanted(self) -> bool:
        """Whether some pieces lie head to tail."""
        return any(lot.count > 1 for lot in self.lots)


@lru_cache(maxsize=1024)
def laid_out(
    terms: FabricTerms,
    usable: Length,
    pieces: tuple[CutPiece, ...],
    offer: Offer,
    effort: Effort = EVERYDAY,
) -> Laid:
    """The pieces on cloth that has been washed: its print repeat has shrunk with it.

    Tapers lie head to tail where that buys less than boxes do. Kept, because choosing the widths on
    which rings depend asks for the same layout many times.
    """
    repeat = terms.repeat.times(1 - terms.shrinkage).ticks if terms.repeat else 0
    cloth = Cloth(usable.ticks, repeat, steps_sold(terms, offer))
    singly = single_lots(pieces)
    boxes = lay_out(cloth, [lot.blank for lot in singly], effort=effort, rows_only=terms.rows_only)
    slanted = slanted_lots(pieces, usable, terms.nap)
    if slanted == singly:
        return Laid(singly, boxes)
    rows = lay_out(cloth, [lot.blank for lot in slanted], effort=effort, rows_only=terms.rows_only)
    if cloth.buys(rows.length) >= cloth.buys(boxes.length):
        return Laid(singly, boxes)
    return Laid(slanted, replace(rows, bound=_outline_bound(pieces, usable)))


def least_of(own: Laid, known: Sequence[Laid], pieces: Pieces, buys: Callable[[int], int]) -> Laid:
    """A width's own layout, unless one known of narrower fabric buys less.

    What is taken over is bounded as it lies: outlines by their area, boxes as those of the width.
    """
    best = min((own, *known), key=lambda laid: buys(laid.layout.length))
    if best is own:
        return own
    width = own.layout.width
    bound = _outline_bound(pieces, Length(width)) if best.slanted else own.layout.bound
    return replace(best, layout=replace(best.layout, width=width, bound=bound))


def _outline_bound(pieces: Sequence[CutPiece], usable: Length) -> int:
    """A length that no layout of the true outlines can go below: their area, and the longest."""
    longest = max(piece.length.value.ticks for piece in pieces)
    return max(longest, -(-total_area(pieces) // usable.ticks))


def total_area(pieces: Sequence[CutPiece]) -> int:
    """The area of all the pieces in square ticks."""
    return sum(outline_area(piece) * piece.quantity for piece in pieces)


def best_made_up(
    sized: Pieces,
    strips: Sequence[Sequence[Pieces]],
    terms: FabricTerms,
    usable: Length,
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
            if max(map(narrowest, tried)) > usable:
                continue
            layout = laid_out(terms, usable, tried, offer, QUICK).layout
            bought.append((steps_sold(terms, offer)(layout.length), way))
        if bought:
            chosen[number] = min(bought, key=lambda one: one[0])[1]
    return (*sized, *chain(*chosen))
