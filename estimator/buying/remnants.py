"""Pieces laid out on a remnant: a strip of cloth in hand that ends somewhere."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from estimator.buying.cut_lengths import CUT_ENDS, fabric_needed, washed_repeat
from estimator.buying.known_layouts import known_or
from estimator.buying.laying import Laid, cloth_of_width
from estimator.buying.lots import single_lots
from estimator.layout import Blank, Cloth, Cuts, Layout, fullest, renamed
from estimator.measure import ZERO, Length
from estimator.needs.cut_piece import CutPiece
from estimator.needs.selvedges import Breadth
from estimator.needs.types import FabricTerms
from estimator.stash import Single, Taken
from estimator.working import Reckoning


@dataclass(frozen=True, slots=True)
class FromRemnant:
    """What is cut from one remnant: ``pieces`` with the numbers of them, and how they lie.

    ``needed`` is what is cut off the remnant, as it lies in the stash. ``trimmed`` says that it has
    first to be trimmed to where other pieces start on the repeat.
    """

    single: Single
    breadth: Breadth
    pieces: tuple[CutPiece, ...]
    laid: Laid
    needed: Reckoning
    trimmed: bool = False

    @property
    def taken(self) -> Taken:
        """What goes from the stash, and what is left."""
        return Taken(self.single, self.needed.value, length_of(self.single) - self.needed.value)


def length_of(single: Single) -> Length:
    """How long a thing in hand is."""
    return single.thing.length or ZERO


def cut_area(single: Single) -> int:
    """Width times length in square ticks, by which remnants are told large from small."""
    return (single.thing.width or ZERO).ticks * length_of(single).ticks


def in_hand(terms: FabricTerms, single: Single) -> FabricTerms:
    """The terms of the fabric as it is in hand: washed already, it does not shrink again."""
    if not single.thing.washed:
        return terms
    washed = Fraction(0)
    repeat, across = terms.repeat, terms.repeat_across
    return replace(
        terms,
        shrinkage=washed,
        shrinkage_across=washed,
        repeat=repeat.times(1 - terms.shrinkage) if repeat else None,
        repeat_across=across.times(1 - terms.shrinkage_across) if across else None,
    )


def breadth_of_remnant(terms: FabricTerms, single: Single, *, trimmed: bool = False) -> Breadth:
    """What can be cut from across a remnant, laid open, as it is when it is cut.

    Its usable width is as stated, or that of new cloth as wide, or what is between two selvedges.
    Of its own edges nothing is asked: no piece lies on them. ``trimmed`` to the repeat of a plaid,
    it may lose one across.
    """
    width = single.thing.width or ZERO
    usable = single.thing.usable or _usable_of_new(terms, width)
    own = in_hand(terms, single)
    left = 1 - own.shrinkage_across
    lost = own.repeat_across.times(left) if trimmed and own.repeat_across else ZERO
    return Breadth(usable.times_rounded_down(left) - lost, ZERO)


def _usable_of_new(terms: FabricTerms, width: Length) -> Length:
    """The least that is usable of any that is sold so wide, before it is washed."""
    within = width - min(terms.selvedge * 2, width)
    sold = [terms.usable or offer.usable for offer in terms.offers if offer.width == width]
    return min((usable or within for usable in sold), default=within)


def longest_on(terms: FabricTerms, single: Single, *, trimmed: bool = False) -> int:
    """The longest layout in ticks that a remnant takes, both of its ends straightened.

    ``trimmed`` to the repeat of a matched print, it may lose one.
    """
    own = in_hand(terms, single)
    grown = (1 + own.waste) / (1 - own.shrinkage)
    lost = washed_repeat(own).ticks if trimmed else 0
    return int(length_of(single).ticks / grown) - terms.straightening.ticks * CUT_ENDS - lost


@lru_cache(maxsize=256)
def laid_on_remnant(
    terms: FabricTerms, single: Single, pieces: tuple[CutPiece, ...], *, first: bool = True
) -> FromRemnant | None:
    """As much of the pieces as goes on a remnant; None where nothing does.

    Pieces that use a selvedge are left for new cloth: a remnant may have lost its own. So are those
    of a folded plaid, which are cut in mirrored pairs. A remnant of a matched print begins anywhere
    in the repeat: unless it is the ``first`` and takes all, it has to be trimmed to match. Kept,
    because each shop's cloth leaves the same pieces to be tried.
    """
    is_matched = bool(terms.repeat or terms.repeat_across)
    if terms.folded and terms.repeat_across:
        return None
    if first or not is_matched:
        found = _laid_on(terms, single, pieces, trimmed=False)
        if found is None or not is_matched or not without(pieces, found.pieces):
            return found
    return _laid_on(terms, single, pieces, trimmed=True)


def _laid_on(
    terms: FabricTerms, single: Single, pieces: tuple[CutPiece, ...], *, trimmed: bool
) -> FromRemnant | None:
    breadth = breadth_of_remnant(terms, single, trimmed=trimmed)
    longest = longest_on(terms, single, trimmed=trimmed)
    able = [piece for piece in pieces if not piece.selvedges]
    if breadth.usable <= ZERO or longest <= 0 or not able:
        return None
    own = in_hand(terms, single)
    cloth = cloth_of_width(own, breadth)
    lots = single_lots(able, breadth, cloth, nap=terms.nap)
    layout = _fullest(cloth, [lot.blank for lot in lots], longest, rows_only=terms.rows_only)
    if layout is None:
        return None
    held = Counter(lots[place.blank].piece for place in layout.placements)
    own_numbers = {number: place for place, number in enumerate(sorted(held))}
    cut = tuple(replace(able[number], quantity=held[number]) for number in own_numbers)
    kept = {n: lot for n, lot in enumerate(lots) if lot.piece in own_numbers}
    layout = renamed(layout, {number: place for place, number in enumerate(kept)})
    own_lots = tuple(
        replace(
            lot,
            piece=own_numbers[lot.piece],
            blank=replace(lot.blank, quantity=held[lot.piece]),
        )
        for lot in kept.values()
    )
    needed = fabric_needed(Length(layout.length), own, further=int(trimmed))
    laid = Laid(own_lots, (layout,), layout.bound)
    return FromRemnant(single, breadth, cut, laid, needed, trimmed)


def _fullest(
    cloth: Cloth, blanks: Sequence[Blank], longest: int, *, rows_only: bool
) -> Layout | None:
    """The fullest layout that is found on a remnant, remembered or worked out."""

    def worked_out() -> Cuts:
        found = fullest(cloth, blanks, longest, rows_only=rows_only)
        return Cuts((found,) if found else (), 0)

    cuts = known_or(cloth, ("a strip as full as can be",), blanks, (longest, rows_only), worked_out)
    return next(iter(cuts.layouts), None)


def without(pieces: Sequence[CutPiece], cut: Sequence[CutPiece]) -> tuple[CutPiece, ...]:
    """The pieces that are still to be cut once so many of some have been."""
    gone: Counter[CutPiece] = Counter()
    for piece in cut:
        gone[replace(piece, quantity=1)] += piece.quantity
    left = []
    for piece in pieces:
        alike = replace(piece, quantity=1)
        taken = min(piece.quantity, gone[alike])
        gone[alike] -= taken
        if taken < piece.quantity:
            left.append(replace(piece, quantity=piece.quantity - taken))
    return tuple(left)
