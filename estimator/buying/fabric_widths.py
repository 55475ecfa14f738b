"""A fabric at each width on offer: laid out, bought and compared; one width is chosen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from estimator.buying.cut_lengths import fabric_needed
from estimator.buying.laying import NoSureStart, best_made_up
from estimator.buying.one_width import WidthOption, best_shop, cheapest, matching, takes
from estimator.buying.types import Buy, Purchase, costs_less, least_bought
from estimator.catalog import Offer
from estimator.faults import Fault, Faults, Refused, Wrong
from estimator.measure import ZERO, Length, Unit, about_text, natural_text, tape_text
from estimator.needs.cut_piece import CutPiece
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.fits import (
    LAY_OPEN,
    least_length,
    refuse_between_selvedges,
    refuse_on_plaid,
    refuse_too_wide,
)
from estimator.needs.makeup import ways_to_make
from estimator.needs.selvedges import Breadth, breadth_of
from estimator.needs.terms import allowed_offers, usable_width
from estimator.needs.types import FabricNeed, FabricTerms


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
        if not self.chosen.buy.bought:
            return ""
        if self.need.terms.fixed_width is not None:
            return "width fixed by the plan"
        if count == 1:
            return "the only width that takes the pieces" if self.unfit else ""
        costs = [option.buy.cost for option in self.options]
        looked_at = (self.chosen,) if self.need.sets_rings else self.options
        ways = [way for option in looked_at for way in (option, *option.elsewhere)]
        of_one_lot = matching(self.options, self.need.terms)
        if len(of_one_lot) < count:
            return "the fewest lengths, because all of it must match"
        if None not in costs and any(costs_less([way.buy], [self.chosen.buy]) for way in ways):
            return "not the cheapest by itself, but with the shops that are visited"
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
        if terms.one_dye_lot and chosen.buy.bought:
            lengths = len(chosen.laid.cuts)
            notes.append(
                "all of it must match: have it cut in one length"
                if lengths == 1
                else f"all of it must match, and no bolt holds it: take the {lengths} lengths from "
                "bolts of one dye lot"
            )
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
            others=tuple((buy,) for buy in self._others() if buy.bought and chosen.buy.bought),
            alike=terms,
            taken=tuple(one.taken for one in chosen.stash),
        )

    def _others(self) -> Iterator[Buy]:
        """What may be bought instead: at other widths, and of other offers of the same."""
        for option in self.options:
            if option is not self.chosen:
                yield option.buy
            yield from option.others
            for way in option.elsewhere:
                yield way.buy
                yield from way.others


MOST_PIECES = 20_000


def at_all_widths(
    need: FabricNeed,
    groups: Sequence[Sequence[Offer]],
    edges: Mapping[int, EdgeLengths],
    unit: Unit,
) -> list[WidthOption | Unfit]:
    """A fabric at each width of ``groups``, which go from the narrowest to the widest.

    ``edges`` are those of the garments, by their numbers in the job, as they are sewn; complaints
    are worded in ``unit``. Raises Refused for more pieces than can be laid out.
    """
    found: list[WidthOption | Unfit] = []
    for offers in groups:
        narrower = [
            way
            for option in found
            if isinstance(option, WidthOption)
            for way in (option, *option.elsewhere)
        ]
        at_shops = [_at_width(need, own, edges, unit, narrower) for own in _by_shop(offers)]
        fit = [one for one in at_shops if isinstance(one, WidthOption)]
        found.append(best_shop(matching(fit, need.terms)) if fit else at_shops[0])
    return found


def _by_shop(offers: Sequence[Offer]) -> list[list[Offer]]:
    shops: dict[str, list[Offer]] = {}
    for offer in offers:
        shops.setdefault(offer.shop, []).append(offer)
    return list(shops.values())


def _at_width(
    need: FabricNeed,
    offers: Sequence[Offer],
    edges: Mapping[int, EdgeLengths],
    unit: Unit,
    narrower: Sequence[WidthOption],
) -> WidthOption | Unfit:
    """A fabric made up and laid out on a shop's offers of one width, and the cheapest of those."""
    terms, first = need.terms, offers[0]
    breadth = breadth_of(terms, first)
    assert first.width is not None, "an offer of a fabric has a width"
    faults = Faults()
    with faults.about(need.sources[0].where):
        if breadth.usable <= ZERO:
            raise Wrong("the selvedges take all of the width", "state a smaller selvedge")
        if breadth.of_a_layer <= ZERO:
            raise Wrong(
                "its repeat across is so wide that there may be no line on which to fold it",
                LAY_OPEN,
            )
    strips = []
    for one in need.hanging if breadth.of_a_layer > ZERO else ():
        with faults.at(one.order.places, one.path):
            strips.append(ways_to_make(one, edges[one.garment], breadth))
    pieces = best_made_up(need.pieces, strips, terms, breadth, first)
    for piece in pieces:
        with faults.about(piece.source.where):
            refuse_too_wide(piece, terms, offers, need.title, unit)
            refuse_on_plaid(piece, breadth, need.title)
            refuse_between_selvedges(piece, breadth, first.width, need.title, unit)
            _refuse_too_long(piece, terms, breadth, offers, unit)
    if faults.found:
        return Unfit(first.width, breadth.usable, tuple(faults.found))
    _refuse_too_many(need, pieces)
    known = [option.laid for option in narrower if option.pieces == pieces]
    try:
        return cheapest(terms, offers, breadth, pieces, known)
    except NoSureStart as problem:
        with faults.about(problem.piece.source.where):
            raise _no_sure_start(problem.piece, terms, offers, unit) from problem
    return Unfit(first.width, breadth.usable, tuple(faults.found))


def _no_sure_start(
    piece: CutPiece, terms: FabricTerms, offers: Sequence[Offer], unit: Unit
) -> Wrong:
    """What is wrong where a matched piece needs a further cut, which may begin anywhere."""
    assert terms.repeat is not None, "only what is matched has to start on a repeat"
    longest = max(offers, key=lambda offer: offer.bolt or ZERO)
    assert longest.bolt is not None, "an offer without it takes any length"
    return Wrong(
        f"'{piece.name}' is to start on the repeat of {tape_text(terms.repeat, unit)}, and these "
        f"pieces take more than one bolt of {natural_text(longest.bolt, longest.sold_by)}: a "
        "further bolt may begin anywhere in the repeat, and need not hold the piece from its "
        "next start on",
        "take a longer bolt; or, where the shop cuts from the motif, leave bolt out",
    )


def _refuse_too_long(
    piece: CutPiece, terms: FabricTerms, breadth: Breadth, offers: Sequence[Offer], unit: Unit
) -> None:
    """Raises Wrong for a piece longer than all the bolts of one width."""
    needed = least_length(piece, breadth)
    if any(takes(offer, terms, needed) for offer in offers):
        return
    longest = max(offers, key=lambda offer: offer.bolt or ZERO)
    assert longest.bolt is not None, "an offer without it takes any length"
    takes_up = " and ".join(
        word
        for word, is_so in (
            ("straightened ends", terms.straightening > ZERO),
            ("shrinkage", terms.shrinkage > 0),
            ("waste", terms.waste > 0),
        )
        if is_so
    )
    along = f"'{piece.name}' lies {tape_text(needed, unit)} along the fabric"
    if takes_up:
        whole = fabric_needed(needed, terms).value
        along += f" and takes {about_text(whole, unit)} of it with {takes_up}"
    raise Wrong(
        f"{along}, and no bolt is longer than {natural_text(longest.bolt, longest.sold_by)}",
        "take a longer bolt, or cut the piece in parts with a seam",
    )


def _refuse_too_many(need: FabricNeed, pieces: Sequence[CutPiece]) -> None:
    count = sum(piece.quantity for piece in pieces)
    if count > MOST_PIECES:
        wrong = f"{count} pieces are cut from '{need.title}'"
        right = f"plan at most {MOST_PIECES} at a time"
        raise Refused([Fault(need.sources[0].where, wrong, right)])


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
    return FabricChoice(need, options, unfit, chosen_of(matching(options, need.terms)))


def chosen_of(options: Sequence[WidthOption]) -> WidthOption:
    """The cheapest of the widths, or the shortest where prices lack."""
    best = least_bought([option.buy for option in options])
    return next(option for option in options if option.buy is best)


def compared(choice: FabricChoice, others: Iterable[FabricChoice]) -> FabricChoice:
    """A choice beside the widths that other estimates tried for the same fabric."""
    options = {option.width: option for option in choice.options}
    for other in others:
        for option in other.options:
            options.setdefault(option.width, option)
    in_order = tuple(options[width] for width in sorted(options))
    return replace(choice, options=in_order)
