"""A fabric at each width on offer: laid out, bought and compared; one width is chosen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.buying.cut_lengths import as_sold, cut_from_roll, fabric_needed
from estimator.buying.types import Buy, Purchase, least_bought
from estimator.catalog import Offer
from estimator.layout import Blank, Cloth, Layout, lay_out
from estimator.measure import Length
from estimator.needs.fits import narrowest
from estimator.needs.terms import usable_width
from estimator.needs.types import CutPiece, FabricNeed, FabricTerms


@dataclass(frozen=True, slots=True)
class WidthOption:
    """A fabric at one width: what is cut from it, how it lies, what is bought.

    ``needed`` is before the shop's minimum and step. ``least`` is what any layout of these pieces
    would have to buy. ``waste`` is the share of the usable cloth bought that is in no piece.
    """

    width: Length
    usable: Length
    pieces: tuple[CutPiece, ...]
    layout: Layout
    needed: Length
    least: Length
    buy: Buy
    waste: Fraction

    @property
    def step(self) -> Length:
        """The selling step of the offer on which it is bought."""
        return self.buy.offer.selling_step

    @property
    def boxed(self) -> bool:
        """Whether some piece is laid out by the box round its outline."""
        return any(piece.boxed for piece in self.pieces)


@dataclass(frozen=True, slots=True)
class TooNarrow:
    """A width on offer that cannot take some pieces, and which pieces."""

    width: Length
    usable: Length
    pieces: tuple[CutPiece, ...]


@dataclass(frozen=True, slots=True)
class FabricChoice:
    """A fabric of the job at all its widths, the chosen one, and why."""

    need: FabricNeed
    options: tuple[WidthOption, ...]
    too_narrow: tuple[TooNarrow, ...]
    chosen: WidthOption
    reason: str

    @property
    def purchase(self) -> Purchase:
        """The fabric's line on the shopping list."""
        terms, chosen = self.need.terms, self.chosen
        notes = [*self.need.notes, self.reason]
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
            notes=tuple(notes),
            sources=self.need.sources,
        )


def at_width(
    need: FabricNeed, pieces: tuple[CutPiece, ...], offers: Sequence[Offer]
) -> WidthOption | TooNarrow:
    """A fabric's pieces laid out on the offers of one width, and the cheapest of those offers."""
    terms, first = need.terms, offers[0]
    usable = usable_width(terms, first)
    assert first.width is not None, "an offer of a fabric has a width"
    wide = tuple(piece for piece in pieces if narrowest(piece) > usable)
    if wide:
        return TooNarrow(first.width, usable, wide)
    steps = {(offer.selling_step, offer.minimum): offer for offer in offers}
    ways = []
    for example in steps.values():
        layout = _laid_out(terms, usable, pieces, example)
        needed = fabric_needed(Length(layout.length), terms)
        ways += [
            (layout, needed, cut_from_roll(needed, offer))
            for offer in offers
            if (offer.selling_step, offer.minimum) == (example.selling_step, example.minimum)
        ]
    best = least_bought([buy for _, _, buy in ways])
    layout, needed = next((layout, needed) for layout, needed, buy in ways if buy is best)
    least = as_sold(fabric_needed(Length(layout.bound), terms), best.offer).value
    assert isinstance(best.bought, Length), "fabric is cut to length"
    return WidthOption(
        width=first.width,
        usable=usable,
        pieces=pieces,
        layout=layout,
        needed=needed.value,
        least=least,
        buy=best,
        waste=1 - Fraction(_area(pieces), usable.ticks * best.bought.ticks),
    )


def _laid_out(
    terms: FabricTerms, usable: Length, pieces: tuple[CutPiece, ...], offer: Offer
) -> Layout:
    """The pieces on cloth that has been washed: its print repeat has shrunk with it."""
    repeat = terms.repeat.times(1 - terms.shrinkage).ticks if terms.repeat else 0
    blanks = [
        Blank(
            name=piece.name,
            width=piece.width.value.ticks,
            length=piece.length.value.ticks,
            quantity=piece.quantity,
            may_turn=piece.may_turn,
        )
        for piece in pieces
    ]
    return lay_out(Cloth(usable.ticks, repeat, _buys(terms, offer)), blanks)


def _buys(terms: FabricTerms, offer: Offer) -> Callable[[int], int]:
    """What a layout of some length buys: the layout's only knowledge of the shop."""

    def buys(ticks: int) -> int:
        return as_sold(fabric_needed(Length(ticks), terms), offer).value.ticks

    return buys


def _area(pieces: Sequence[CutPiece]) -> int:
    return sum(
        piece.width.value.ticks * piece.length.value.ticks * piece.quantity for piece in pieces
    )


def offers_by_width(terms: FabricTerms) -> tuple[tuple[Offer, ...], ...]:
    """The offers in groups of one width, narrowest first; only the fixed width where one is."""
    groups: dict[tuple[Length, Length], list[Offer]] = {}
    for offer in terms.offers:
        assert offer.width is not None, "an offer of a fabric has a width"
        if terms.fixed_width in (None, offer.width):
            groups.setdefault((usable_width(terms, offer), offer.width), []).append(offer)
    return tuple(tuple(groups[key]) for key in sorted(groups))


def choose_width(need: FabricNeed, found: Sequence[WidthOption | TooNarrow]) -> FabricChoice | None:
    """The cheapest width, or the shortest where prices lack; None where every one is too narrow."""
    options = [option for option in found if isinstance(option, WidthOption)]
    if not options:
        return None
    best = least_bought([option.buy for option in options])
    chosen = next(option for option in options if option.buy is best)
    return FabricChoice(
        need=need,
        options=tuple(options),
        too_narrow=tuple(one for one in found if isinstance(one, TooNarrow)),
        chosen=chosen,
        reason=_reason(need, options),
    )


def _reason(need: FabricNeed, options: Sequence[WidthOption]) -> str:
    if need.terms.fixed_width is not None:
        return "width fixed by the plan"
    if len(options) == 1:
        return "the only width on offer that takes the pieces"
    if all(option.buy.cost is not None for option in options):
        return f"cheapest of {len(options)} widths"
    return f"shortest of {len(options)} widths; prices lack, so the cheapest is not known"
