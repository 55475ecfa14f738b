"""What belongs to the fabrics: widths compared, the proof of each layout, and the cut list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.folding import bought_other_way
from estimator.buying.laying import Laid
from estimator.buying.one_width import WidthOption
from estimator.estimated import Estimate
from estimator.measure import Length, natural_text, shop_text, usable_text
from estimator.needs.cut_piece import CutPiece
from estimator.plan import Made
from estimator.prices import money_text
from estimator.reports.made import made
from estimator.reports.scaled import scaled_note
from estimator.reports.stash_papers import NOTHING_TO_BUY, where_text
from estimator.reports.tables import Column, Format, Sold, Table, Value
from estimator.reports.units import tape_of, tape_unit, width_text
from estimator.reports.uses import fabric_title


def proof_text(option: WidthOption) -> str:
    """How good the layout is, against the least that any layout of the pieces has to buy."""
    bought = option.buy.bought
    assert isinstance(bought, Length), "fabric is cut to length"
    if not bought:
        return NOTHING_TO_BUY
    boxes = "these outlines" if option.laid.slanted else "these rectangles"
    pieces = boxes if option.boxed else "these pieces"
    if bought <= option.least:
        text = f"no {'folded ' if option.breadth.folded else ''}layout of {pieces} buys less"
    else:
        above = shop_text(bought - option.least, option.buy.offer.sold_by)
        text = f"at most {above} above the least possible for {pieces}"
    if option.boxed:
        text += "; enough fabric, but a layout of the paper pattern may take less"
    return text


def other_way_text(choice: FabricChoice) -> str:
    """What would be bought with the fabric folded, or open where it is folded; nothing if as much.

    ``folded lengthwise and cut in pairs it takes 3 1/2 yd, 1/4 yd more``.
    """
    chosen, unit = choice.chosen, choice.chosen.buy.offer.sold_by
    terms = choice.need.terms
    one_hand = terms.nap and any(len(piece.selvedges) == 1 for piece in chosen.pieces)
    if not chosen.pieces or one_hand:
        return ""  # half of a pair is of another hand
    folded = chosen.breadth.folded
    fold = (
        "folded lengthwise where its plaid allows" if terms.repeat_across else "folded lengthwise"
    )
    way = "laid open in one layer" if folded else f"{fold} and cut in pairs"
    other, bought = bought_other_way(choice), chosen.buy.bought
    assert isinstance(bought, Length), "fabric is cut to length"
    if other is None:
        return "" if folded else f"{fold} it does not take all the pieces"
    if other == bought:
        return ""
    more = "more" if other > bought else "less"
    difference = max(other, bought) - min(other, bought)
    return f"{way} it takes {shop_text(other, unit)}, {shop_text(difference, unit)} {more}"


def waste_text(option: WidthOption, currency: str) -> str:
    """The cloth bought that is in no piece, as a share, a length and money."""
    bought = option.buy.bought
    assert isinstance(bought, Length), "fabric is cut to length"
    length = shop_text(_hundredths(bought, option), option.buy.offer.sold_by)
    text = f"waste {round(option.waste * 100)} %, as much as {length}"
    if option.buy.cost is not None:
        share = option.buy.cost * option.waste.numerator / option.waste.denominator
        text += f" or {money_text(share, currency)} {currency}"
    return text


def _hundredths(bought: Length, option: WidthOption) -> Length:
    """The wasted length to the next hundredth of the unit it is sold by."""
    unit = option.buy.offer.sold_by
    return unit.of(Fraction(round(bought.times(option.waste) / unit.length * 100), 100))


def widths_table(choice: FabricChoice, estimate: Estimate) -> Table:
    """A fabric at each width on offer, the cheapest first, and which is bought."""
    unit = tape_unit(estimate)
    money = f" ({estimate.currency})" if estimate.currency else ""
    rows: list[tuple[Value, ...]] = []
    for option in sorted(choice.options, key=_cheapest_first):
        style, proof = option.laid.style.value, proof_text(option)
        rows.append(
            (
                "bought" if option is choice.chosen else "",
                width_text(option.width, option.buy.offer.sold_by, estimate),
                usable_text(option.usable, tape_of(option.buy.offer.sold_by, estimate)),
                Sold(option.buy.sold_units, option.buy.unit),
                option.buy.unit,
                option.buy.cost,
                option.waste,
                "; ".join(filter(None, (style, option.buy.note, *_seamed(option), proof))),
            )
        )
    notes = [f"{sentence(choice.reason)}."] if choice.reason else []
    notes += [
        f"{natural_text(one.width, unit)} cannot be used: {one.faults[0].wrong}."
        for one in choice.unfit
    ]
    if other := other_way_text(choice):
        chosen = choice.chosen
        width = width_text(chosen.width, chosen.buy.offer.sold_by, estimate)
        notes.append(f"At {width}: {other}." if len(choice.options) > 1 else f"{sentence(other)}.")
    strips = any(one.piece.made is Made.JOINED_STRIP for one in choice.need.hanging)
    if strips and any(option.pieces != choice.chosen.pieces for option in choice.options):
        notes.append("Strips take the fabric's width, so the pieces differ from width to width.")
    return Table(
        title=fabric_title(choice, estimate),
        columns=(
            Column("", wide=8),
            Column("Width", wide=11),
            Column("Usable", wide=12),
            Column("Buy", Format.SOLD, 8),
            Column("Unit", wide=6),
            Column(f"Cost{money}", Format.MONEY, 11),
            Column("Waste", Format.SHARE, 7),
            Column("Layout", wide=50),
        ),
        rows=tuple(rows),
        unit=unit,
        notes=tuple(notes),
    )


def _seamed(option: WidthOption) -> Iterator[str]:
    """Which pieces this width takes only in parts, each once."""
    parts = {piece.source.name: piece.seamed for piece in option.pieces if piece.seamed}
    return (f"{name} seamed from {of}" for name, of in parts.items())


def _cheapest_first(option: WidthOption) -> tuple[bool, object, Fraction]:
    cost = option.buy.cost
    return (cost is None, cost or 0, option.buy.amount)


def sentence(text: str) -> str:
    """The text with a capital, as it stands at the start of a note."""
    return text[:1].upper() + text[1:]


def cut_table(estimate: Estimate, *, with_garments: bool = True) -> Table:
    """Every piece to cut, with its cut size and its finished size, and which garment it is of."""
    unit = tape_unit(estimate)
    return Table(
        title="Cut list",
        columns=(
            Column("Fabric", wide=24),
            *([Column("Garment", wide=22)] if with_garments else []),
            Column("Piece", wide=26),
            Column("Cut", Format.COUNT, 6),
            Column("Cut width", Format.TAPE, 12),
            Column("Cut length", Format.TAPE, 12),
            Column("Finished width", Format.TAPE, 12),
            Column("Finished length", Format.TAPE, 12),
            Column("Note", wide=40),
        ),
        rows=tuple(
            _cut_row(choice, piece, with_garments, (where, spare, scaled_note(piece, estimate)))
            for choice in estimate.fabrics
            for pieces, laid, where in _parts(choice)
            for piece, spare in zip(pieces, _spares(pieces, laid), strict=True)
        ),
        unit=unit,
        notes=(
            "Widths lie across the fabric and lengths along it.",
            *([OF_CIRCLES] if any(map(_has_circles, estimate.fabrics)) else []),
            *made(estimate),
        ),
    )


OF_CIRCLES = (
    "Of circles and their parts the finished width is the waist edge, and the finished length "
    "goes from there to the bottom, whichever way they lie."
)


def _has_circles(choice: FabricChoice) -> bool:
    return any(piece.arc is not None for piece in choice.chosen.all_pieces)


def _parts(choice: FabricChoice) -> Iterator[tuple[Sequence[CutPiece], Laid, str]]:
    """What is cut from the stash, and from where; then what is cut from the cloth bought."""
    for one in choice.chosen.stash:
        yield one.pieces, one.laid, f"from the stash: {where_text(one.taken)}"
    yield choice.chosen.pieces, choice.chosen.laid, ""


def _spares(pieces: Sequence[CutPiece], laid: Laid) -> Iterator[str]:
    """Of each piece, what is cut beyond its number where folded fabric is cut in pairs."""
    spare = Counter[int]()
    for lot in laid.lots:
        spare[lot.piece] += lot.spare * lot.blank.quantity
    for number, piece in enumerate(pieces):
        if not spare[number]:
            yield ""
        elif piece.square:
            yield f"folded, {spare[number]} of the other hand are cut with them, to spare"
        else:
            yield "folded, the last is cut in a pair, with one to spare"


def _cut_row(
    choice: FabricChoice, piece: CutPiece, with_garments: bool, notes: tuple[str, ...]
) -> tuple[Value, ...]:
    return (
        choice.need.title,
        *([piece.source.owner] if with_garments else []),
        piece.name,
        piece.quantity,
        piece.width.value,
        piece.length.value,
        *piece.finished,
        "; ".join(filter(None, (*notes, piece.note, "may be turned" if piece.may_turn else ""))),
    )
