"""Fabric cut from remnants first, at each width on offer, as far as less has to be bought then."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import islice

from estimator.buying.fabric_widths import FabricChoice, chosen_of
from estimator.buying.laying import Laid, NoSureStart
from estimator.buying.least_taken import least_taken
from estimator.buying.one_width import WidthOption, best_shop, cheapest, matching
from estimator.buying.outline_bound import total_area
from estimator.buying.remnants import FromRemnant, cut_area, laid_on_remnant, without
from estimator.buying.types import costs_less, nothing_bought
from estimator.measure import ZERO
from estimator.needs.cut_piece import CutPiece
from estimator.needs.terms import allowed_offers, usable_width
from estimator.needs.types import FabricTerms
from estimator.stash import Single

MOST_REMNANTS = 24
"""Remnants cut for one fabric of a job, the smallest that hold a piece of it."""
MANY_PIECES, VERY_MANY_PIECES = 12, 300
"""Of more pieces the layouts are looked at quickly, until it is known which remnants are used; of
very many at the chosen width alone."""
STEPS_SAVED = 3
"""Where there are very many pieces, a remnant that holds so many selling steps of them is taken to
save some: to lay out all the rest without each would take long."""


def cut_from_stash_first(choice: FabricChoice, singles: Sequence[Single]) -> FabricChoice:
    """A fabric at each of its widths, some of it cut from remnants where that costs less.

    Where rings hang on the width, the one chosen stays; of very many pieces no other is looked at.
    """
    ordered = sorted(
        (one for one in singles if one.thing.width and one.thing.length),
        key=lambda one: (cut_area(one), one.row, one.nth),
    )
    if not ordered:
        return choice
    terms = choice.need.terms
    one_width = choice.need.sets_rings or _count(choice.chosen.pieces) > VERY_MANY_PIECES
    options = tuple(
        option
        if one_width and option is not choice.chosen
        else best_shop(
            matching([_at_shop(terms, way, ordered) for way in (option, *option.elsewhere)], terms)
        )
        for option in choice.options
    )
    if choice.need.sets_rings:
        place = choice.options.index(choice.chosen)
        return replace(choice, options=options, chosen=options[place])
    return replace(choice, options=options, chosen=chosen_of(matching(options, terms)))


def _at_shop(terms: FabricTerms, plain: WidthOption, singles: Sequence[Single]) -> WidthOption:
    """One width at one shop, with the remnants that save money there; else as it was."""
    offers = [
        offer
        for offer in allowed_offers(terms)
        if offer.shop == plain.buy.offer.shop
        and offer.width == plain.width
        and usable_width(terms, offer) == plain.breadth.usable
    ]
    quick = _count(plain.pieces) > MANY_PIECES
    known: dict[tuple[int, ...], WidthOption] = {}

    def beside(used: tuple[FromRemnant, ...], *, quick: bool = quick) -> WidthOption:
        key = (quick, *map(id, used))
        if key not in known:
            cut = [piece for one in used for piece in one.pieces]
            left = without(plain.pieces, cut)
            try:
                known[key] = (
                    cheapest(terms, offers, plain.breadth, left, quick=quick)
                    if left
                    else _nothing(plain)
                )
            except NoSureStart:
                known[key] = plain
        return known[key]

    filled = _filled(terms, plain.pieces, singles)
    least = beside(filled)
    # where more may cost less, or as much, nothing is sure
    steady = _count(plain.pieces) > VERY_MANY_PIECES and all(
        offer.from_quantity is None and not (offer.minimum and least.needed <= offer.minimum)
        for offer in offers
    )
    worth = STEPS_SAVED * least.step.ticks * least.breadth.usable.ticks

    def saves_for_sure(one: FromRemnant) -> bool:
        return steady and total_area(one.pieces, one.breadth) >= worth

    used = least_taken(filled, lambda some: [beside(some).buy], saves_for_sure)
    found = beside(used, quick=False)
    if not used or not costs_less([found.buy], [plain.buy]):
        return replace(plain, elsewhere=())
    return replace(found, stash=used)


def _filled(
    terms: FabricTerms, pieces: tuple[CutPiece, ...], singles: Sequence[Single]
) -> tuple[FromRemnant, ...]:
    """The remnants, each filled with what those before it leave.

    Where all of a fabric has to match, the smallest that holds all of it.
    """
    if terms.one_dye_lot:
        whole = (laid_on_remnant(terms, single, pieces) for single in singles)
        alone = (one for one in whole if one and not without(pieces, one.pieces))
        return tuple(islice(alone, 1))
    found: list[FromRemnant] = []
    for single in singles:
        if not pieces or len(found) == MOST_REMNANTS:
            break
        one = laid_on_remnant(terms, single, pieces, first=not found)
        if one is not None:
            found.append(one)
            pieces = without(pieces, one.pieces)
    return tuple(found)


def _count(pieces: tuple[CutPiece, ...]) -> int:
    return sum(piece.quantity for piece in pieces)


def _nothing(plain: WidthOption) -> WidthOption:
    """A width of which nothing has to be bought."""
    return replace(
        plain,
        pieces=(),
        laid=Laid((), (), 0),
        needed=ZERO,
        least=ZERO,
        buy=nothing_bought(plain.buy.offer),
        waste=Fraction(0),
        elsewhere=(),
    )
