"""A fabric at one width, made up: laid out for each way its shops sell it, and bought."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.buying.cut_lengths import (
    as_sold,
    cut_from_roll,
    fabric_needed,
    longest_layout,
    washed_repeat,
)
from estimator.buying.laying import Laid, NoSureStart, cloth_of, laid_out, least_of
from estimator.buying.outline_bound import area_cut
from estimator.buying.remnants import FromRemnant
from estimator.buying.types import Buy, least_bought
from estimator.catalog import Offer
from estimator.measure import ZERO, Length, total
from estimator.needs.cut_piece import CutPiece
from estimator.needs.fits import least_length
from estimator.needs.selvedges import Breadth
from estimator.needs.types import FabricTerms


@dataclass(frozen=True, slots=True)
class WidthOption:
    """A fabric at one width: what is cut from it, how it lies, what is bought.

    ``needed`` is before the shop's minimum and step. ``least`` is what any layout of these pieces
    would have to buy. ``waste`` is the share of the usable cloth bought that is in no piece.
    ``elsewhere`` is the same width as each of the other shops sells it. ``stash`` is what is cut
    from remnants, beside ``pieces``. ``others`` are the other offers of this width at its shop.
    """

    width: Length
    breadth: Breadth
    pieces: tuple[CutPiece, ...]
    laid: Laid
    needed: Length
    least: Length
    buy: Buy
    waste: Fraction
    elsewhere: tuple[WidthOption, ...] = ()
    stash: tuple[FromRemnant, ...] = ()
    others: tuple[Buy, ...] = ()

    @property
    def usable(self) -> Length:
        """The width between the selvedges, of open fabric."""
        return self.breadth.usable

    @property
    def step(self) -> Length:
        """The selling step of the offer on which it is bought."""
        return self.buy.offer.selling_step

    @property
    def all_pieces(self) -> tuple[CutPiece, ...]:
        """What is cut from the stash and from what is bought."""
        return (*(piece for one in self.stash for piece in one.pieces), *self.pieces)

    @property
    def boxed(self) -> bool:
        """Whether some piece is laid out by the box round its outline."""
        return any(piece.boxed for piece in self.pieces)


def takes(offer: Offer, terms: FabricTerms, length: Length) -> bool:
    """Whether one bolt of an offer takes a layout of this length."""
    longest = longest_layout(terms, offer)
    return longest is None or length.ticks <= longest


def cheapest(
    terms: FabricTerms,
    offers: Sequence[Offer],
    breadth: Breadth,
    pieces: tuple[CutPiece, ...],
    known: Sequence[Laid] = (),
    *,
    quick: bool = False,
) -> WidthOption:
    """The cheapest of the offers of one width; each selling step has a layout of its own.

    ``known`` are layouts of the same pieces on narrower fabric, which this one can take as well: so
    a wider fabric never needs more length. ``quick`` is for a look at a layout that is not cut.

    Raises NoSureStart as ``laid_out`` does, where it does so for every offer.
    """
    longest_piece = max((least_length(piece, breadth) for piece in pieces), default=ZERO)
    alike: dict[tuple[Length, Length | None, Length | None], list[Offer]] = {}
    for offer in offers:
        if takes(offer, terms, longest_piece):
            key = (offer.selling_step, offer.minimum, offer.bolt)
            alike.setdefault(key, []).append(offer)
    ways = []
    unsure: NoSureStart | None = None
    for group in alike.values():
        try:
            own = laid_out(terms, breadth, pieces, group[0], quick=quick)
        except NoSureStart as problem:
            unsure = problem
            continue
        served = [laid for laid in known if _in_its_bolts(laid, group[0], terms)]
        laid = least_of(own, served, pieces, breadth, cloth_of(terms, breadth, group[0]))
        needed = laid.needed(terms)
        ways += [(laid, needed, cut_from_roll(needed, offer)) for offer in group]
    if unsure is not None and not ways:
        raise unsure
    if terms.one_dye_lot:
        fewest = min(len(laid.cuts) for laid, _, _ in ways)
        ways = [way for way in ways if len(way[0].cuts) == fewest]
    best = least_bought([buy for _, _, buy in ways])
    laid, needed = next((laid, needed) for laid, needed, buy in ways if buy is best)
    width = best.offer.width
    assert isinstance(best.bought, Length), "fabric is cut to length"
    assert width is not None, "an offer of a fabric has a width"
    return WidthOption(
        width=width,
        breadth=breadth,
        pieces=pieces,
        laid=laid,
        needed=total(one.value for one in needed),
        least=least_bought_for(laid.bound, terms, best.offer, laid.fewest),
        buy=best,
        waste=1 - Fraction(area_cut(pieces, breadth), breadth.usable.ticks * best.bought.ticks),
        others=tuple(buy for _, _, buy in ways if buy is not best),
    )


def _in_its_bolts(laid: Laid, offer: Offer, terms: FabricTerms) -> bool:
    """Whether each cut of a layout can be had from a bolt of this offer."""
    first, *further = (Length(cut.length) for cut in laid.cuts)
    repeat = washed_repeat(terms)
    return all(takes(offer, terms, one) for one in (first, *(repeat + cut for cut in further)))


def least_bought_for(bound: int, terms: FabricTerms, offer: Offer, fewest: int = 1) -> Length:
    """What any layout of a length not below the bound has to buy, in as many cuts as it takes.

    Those are ``fewest`` at least.
    """
    longest = longest_layout(terms, offer)
    further = fewest - 1
    if longest is not None and bound > longest:
        rest = max(1, longest - washed_repeat(terms).ticks)
        further = max(further, -(-(bound - longest) // rest))
    return as_sold(fabric_needed(Length(bound), terms, 1 + further, further), offer).value


def matching(options: Sequence[WidthOption], terms: FabricTerms) -> Sequence[WidthOption]:
    """Those in the fewest lengths, where all of a fabric has to match; else all of them."""
    if not terms.one_dye_lot:
        return options
    fewest = min(len(option.laid.cuts) for option in options)
    return [option for option in options if len(option.laid.cuts) == fewest]


def best_shop(options: Sequence[WidthOption]) -> WidthOption:
    """The least that one shop asks for a width, with what the others ask beside it."""
    best = least_bought([option.buy for option in options])
    chosen = next(option for option in options if option.buy is best)
    others = tuple(replace(one, elsewhere=()) for one in options if one is not chosen)
    return replace(chosen, elsewhere=others)
