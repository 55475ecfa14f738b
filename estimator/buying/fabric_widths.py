"""A fabric at each width on offer: laid out, bought and compared; one width is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.buying.cut_lengths import as_sold, cut_from_roll, fabric_needed, longest_layout
from estimator.buying.laying import (
    Laid,
    best_made_up,
    cloth_of,
    laid_out,
    least_of,
    total_area,
)
from estimator.buying.types import Buy, Purchase, least_bought
from estimator.catalog import Offer
from estimator.faults import Fault, Faults, Refused, Wrong
from estimator.measure import ZERO, Length, Unit, natural_text, tape_text, total
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.fits import least_length, refuse_between_selvedges, refuse_too_wide
from estimator.needs.makeup import ways_to_make
from estimator.needs.selvedges import Breadth, breadth_of
from estimator.needs.terms import allowed_offers, usable_width
from estimator.needs.types import CutPiece, FabricNeed, FabricTerms


@dataclass(frozen=True, slots=True)
class WidthOption:
    """A fabric at one width: what is cut from it, how it lies, what is bought.

    ``needed`` is before the shop's minimum and step. ``least`` is what any layout of these pieces
    would have to buy. ``waste`` is the share of the usable cloth bought that is in no piece.
    """

    width: Length
    breadth: Breadth
    pieces: tuple[CutPiece, ...]
    laid: Laid
    needed: Length
    least: Length
    buy: Buy
    waste: Fraction

    @property
    def usable(self) -> Length:
        """The width between the selvedges, of open fabric."""
        return self.breadth.usable

    @property
    def step(self) -> Length:
        """The selling step of the offer on which it is bought."""
        return self.buy.offer.selling_step

    @property
    def boxed(self) -> bool:
        """Whether some piece is laid out by the box round its outline."""
        return any(piece.boxed for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class Unfit:
    """A width on offer from which the fabric's pieces cannot be cut, and the complaints of it."""

    width: Length
    usable: Length
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True)
class FabricChoice:
    """A fabric of the job at all its widths, the chosen one, and why."""

    need: FabricNeed
    options: tuple[WidthOption, ...]
    unfit: tuple[Unfit, ...]
    chosen: WidthOption

    @property
    def reason(self) -> str:
        """Why this width is bought; nothing where there was no choice."""
        count = len(self.options)
        if self.need.terms.fixed_width is not None:
            return "width fixed by the plan"
        if count == 1:
            return "the only width that takes the pieces" if self.unfit else ""
        costs = [option.buy.cost for option in self.options]
        if self.need.sets_rings and None not in costs:
            return f"cheapest of {count} widths with the trims that hang on them"
        if None not in costs:
            level = costs.count(self.chosen.buy.cost) > 1
            return f"cheapest of {count} widths" + (", level with another" if level else "")
        return f"shortest of {count} widths; prices lack, so the cheapest is not known"

    @property
    def purchase(self) -> Purchase:
        """The fabric's line on the shopping list."""
        terms, chosen = self.need.terms, self.chosen
        notes = [chosen.buy.note, *self.need.notes, self.reason]
        if terms.nap:
            notes.append("nap or one-way print: all pieces lie one way")
        return Purchase(
            key=self.need.key,
            group=self.need.group,
            title=self.need.title,
            names=self.need.names,
            colour=terms.colour,
            width=chosen.width,
            needed=chosen.needed,
            buy=chosen.buy,
            notes=tuple(filter(None, notes)),
            sources=self.need.sources,
            alike=terms,
        )


MOST_PIECES = 20_000


def at_all_widths(
    need: FabricNeed,
    groups: Sequence[Sequence[Offer]],
    edges: Sequence[EdgeLengths],
    unit: Unit,
) -> list[WidthOption | Unfit]:
    """A fabric at each width of ``groups``, which go from the narrowest to the widest.

    ``edges`` are those of each garment of the job as it is sewn; complaints are worded in ``unit``.
    Raises Refused for more pieces than can be laid out.
    """
    found: list[WidthOption | Unfit] = []
    for offers in groups:
        narrower = [option for option in found if isinstance(option, WidthOption)]
        found.append(_at_width(need, offers, edges, unit, narrower))
    return found


def _at_width(
    need: FabricNeed,
    offers: Sequence[Offer],
    edges: Sequence[EdgeLengths],
    unit: Unit,
    narrower: Sequence[WidthOption],
) -> WidthOption | Unfit:
    """A fabric made up and laid out on the offers of one width, and the cheapest of those."""
    terms, first = need.terms, offers[0]
    breadth = breadth_of(terms, first)
    assert first.width is not None, "an offer of a fabric has a width"
    faults = Faults()
    with faults.about(need.sources[0].where):
        if breadth.usable <= ZERO:
            raise Wrong("the selvedges take all of the width", "state a smaller selvedge")
    strips = []
    for one in need.hanging if breadth.usable > ZERO else ():
        with faults.at(one.order.places, one.path):
            strips.append(ways_to_make(one, edges[one.garment], breadth))
    pieces = best_made_up(need.pieces, strips, terms, breadth, first)
    for piece in pieces:
        with faults.about(piece.source.where):
            refuse_too_wide(piece, terms, offers, need.title, unit)
            refuse_between_selvedges(piece, breadth, first.width, need.title, unit)
            _refuse_too_long(piece, terms, breadth, offers, unit)
    if faults.found:
        return Unfit(first.width, breadth.usable, tuple(faults.found))
    _refuse_too_many(need, pieces)
    known = [option.laid for option in narrower if option.pieces == pieces]
    return _cheapest(need, offers, breadth, pieces, known)


def _refuse_too_long(
    piece: CutPiece, terms: FabricTerms, breadth: Breadth, offers: Sequence[Offer], unit: Unit
) -> None:
    """Raises Wrong for a piece longer than all the bolts of one width."""
    needed = least_length(piece, breadth)
    if any(_takes(offer, terms, needed) for offer in offers):
        return
    longest = max(offers, key=lambda offer: offer.bolt or ZERO)
    assert longest.bolt is not None, "an offer without it takes any length"
    raise Wrong(
        f"'{piece.name}' lies {tape_text(needed, unit)} along the fabric, and no bolt is longer "
        f"than {natural_text(longest.bolt, longest.sold_by)}, its ends still to be straightened",
        "take a longer bolt, or cut the piece in parts with a seam",
    )


def _takes(offer: Offer, terms: FabricTerms, length: Length) -> bool:
    """Whether one bolt of an offer takes a layout of this length."""
    longest = longest_layout(terms, offer)
    return longest is None or length.ticks <= longest


def _refuse_too_many(need: FabricNeed, pieces: Sequence[CutPiece]) -> None:
    count = sum(piece.quantity for piece in pieces)
    if count > MOST_PIECES:
        wrong = f"{count} pieces are cut from '{need.title}'"
        right = f"plan at most {MOST_PIECES} at a time"
        raise Refused([Fault(need.sources[0].where, wrong, right)])


def _cheapest(
    need: FabricNeed,
    offers: Sequence[Offer],
    breadth: Breadth,
    pieces: tuple[CutPiece, ...],
    known: Sequence[Laid],
) -> WidthOption:
    """The cheapest of the offers of one width; each selling step has a layout of its own.

    ``known`` are layouts of the same pieces on narrower fabric, which this one can take as well: so
    a wider fabric never needs more length.
    """
    terms = need.terms
    longest_piece = max((least_length(piece, breadth) for piece in pieces), default=ZERO)
    alike: dict[tuple[Length, Length | None, Length | None], list[Offer]] = {}
    for offer in offers:
        if _takes(offer, terms, longest_piece):
            key = (offer.selling_step, offer.minimum, offer.bolt)
            alike.setdefault(key, []).append(offer)
    ways = []
    for group in alike.values():
        own = laid_out(terms, breadth, pieces, group[0])
        served = [
            laid
            for laid in known
            if all(_takes(group[0], terms, Length(cut.length)) for cut in laid.cuts)
        ]
        laid = least_of(own, served, pieces, breadth, cloth_of(terms, breadth, group[0]))
        needed = [fabric_needed(Length(cut.length), terms) for cut in laid.cuts]
        ways += [(laid, needed, cut_from_roll(needed, offer)) for offer in group]
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
        least=_least_bought(laid.bound, terms, best.offer),
        buy=best,
        waste=1 - Fraction(total_area(pieces, breadth), breadth.usable.ticks * best.bought.ticks),
    )


def _least_bought(bound: int, terms: FabricTerms, offer: Offer) -> Length:
    """What any layout of a length not below the bound has to buy, in as many cuts as it takes."""
    longest = longest_layout(terms, offer)
    cuts = 1 if longest is None else -(-bound // longest)
    return as_sold(fabric_needed(Length(bound), terms, cuts), offer).value


def offers_by_width(terms: FabricTerms) -> tuple[tuple[Offer, ...], ...]:
    """The offers in groups of one width, narrowest first; only the fixed width where one is."""
    groups: dict[tuple[Length, Length], list[Offer]] = {}
    for offer in allowed_offers(terms):
        assert offer.width is not None, "an offer of a fabric has a width"
        groups.setdefault((usable_width(terms, offer), offer.width), []).append(offer)
    return tuple(tuple(groups[key]) for key in sorted(groups))


def choose_width(need: FabricNeed, found: Sequence[WidthOption | Unfit]) -> FabricChoice:
    """The cheapest width, or the shortest where prices lack.

    Raises Refused with the complaints of the widest where every one is too narrow.
    """
    options = tuple(option for option in found if isinstance(option, WidthOption))
    unfit = tuple(one for one in found if isinstance(one, Unfit))
    if not options:
        raise Refused(max(unfit, key=lambda one: one.usable).faults)
    best = least_bought([option.buy for option in options])
    chosen = next(option for option in options if option.buy is best)
    return FabricChoice(need, options, unfit, chosen)


def compared(choice: FabricChoice, others: Iterable[FabricChoice]) -> FabricChoice:
    """A choice beside the widths that other estimates tried for the same fabric."""
    options = {option.width: option for option in choice.options}
    for other in others:
        for option in other.options:
            options.setdefault(option.width, option)
    in_order = tuple(options[width] for width in sorted(options))
    return replace(choice, options=in_order)
