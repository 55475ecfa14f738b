"""The working of every bought quantity and every cut size, line by line as on paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import (
    Length,
    Unit,
    about_text,
    decimal_text,
    put_up_text,
    shop_text,
    tape_text,
)
from estimator.needs.cut_piece import CutPiece
from estimator.needs.types import LengthNeed
from estimator.reports.stash_papers import NOTHING_TO_BUY, amount_text, own_unit, where_text
from estimator.reports.tables import Sold, price_text
from estimator.reports.units import tape_unit
from estimator.reports.uses import named, several_garments, use_of
from estimator.stash import Taken
from estimator.working import Figure, Operation, Step

_SHOP = {Operation.SOLD_BY, Operation.AT_LEAST}


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line on paper: why, what is done, and what it gives."""

    label: str
    done: str
    result: str


@dataclass(frozen=True, slots=True)
class Working:
    """The working of one figure; ``answer`` is the figure as it stands on the list."""

    title: str
    lines: tuple[WorkingLine, ...]
    answer: str
    places: tuple[str, ...] = ()


def workings(estimate: Estimate) -> tuple[Working, ...]:
    """The working of each line of the shopping list, in its order."""
    return tuple(
        working for purchase in estimate.purchases for working in workings_of(purchase, estimate)
    )


def workings_of(purchase: Purchase, estimate: Estimate) -> tuple[Working, ...]:
    """The working of what is bought on a line, and of what each remnant gives for it."""
    unit = tape_unit(estimate)
    return (_of_purchase(purchase, estimate, unit), *_of_stash(purchase, estimate))


def _of_stash(purchase: Purchase, estimate: Estimate) -> Iterator[Working]:
    """What is cut off each remnant for a fabric or length for a trim, and what is left of it."""
    unit = tape_unit(estimate)
    for taken in purchase.taken:
        thing = taken.single.thing
        if taken.runs and thing.length:
            holds = amount_text(thing.length, own_unit(thing, unit))
            yield Working(
                title=f"{purchase.title}, {holds} from {where_text(taken)}",
                lines=tuple(_cut_off(taken, unit, several_garments(estimate))),
                answer=_cut_and_left(taken, unit),
            )
    for choice in estimate.fabrics:
        if choice.need.sources != purchase.sources:
            continue
        for one in choice.chosen.stash:
            yield Working(
                title=f"{purchase.title}, remnant from {where_text(one.taken)}",
                lines=_lines(one.needed.steps, unit, unit.shop),
                answer=_cut_and_left(one.taken, unit),
            )


def _cut_off(taken: Taken, unit: Unit, with_garments: bool) -> Iterator[WorkingLine]:
    """The runs that are cut from a length in hand, those alike told once, and their sum."""
    for (source, length), count in Counter(taken.runs).items():
        name = str(source) if with_garments else source.name
        done = f"{count} × {about_text(length, unit)}" if count > 1 else ""
        yield WorkingLine(name, done, about_text(length * count, unit))
    if len(set(taken.runs)) > 1:
        yield WorkingLine("all runs together", "", _figure(taken.amount, unit))


def _cut_and_left(taken: Taken, tape: Unit) -> str:
    unit = own_unit(taken.single.thing, tape)
    left = amount_text(taken.left, unit) if taken.left else "nothing"
    return f"cut {amount_text(taken.amount, unit)} off it; {left} is left"


def _not_bought(purchase: Purchase) -> Iterator[WorkingLine]:
    """How many runs of a trim are in hand, and so not in the working of what is bought."""
    cut = sum(len(one.runs) for one in purchase.taken)
    if cut and isinstance(purchase.need, LengthNeed):
        runs = sum(run.count for run in purchase.need.runs)
        yield WorkingLine("cut from the stash, worked apart", "", f"{cut} of {runs} runs")


def _of_purchase(purchase: Purchase, estimate: Estimate, unit: Unit) -> Working:
    buy = purchase.buy
    shop = buy.offer.sold_by
    sold = Sold(buy.sold_units, buy.unit)
    lines = (*_not_bought(purchase), *_lines(buy.steps, unit, shop))
    if not buy.bought:
        return Working(_title(purchase, estimate), lines, NOTHING_TO_BUY)
    answer = f"buy {sold.phrase}"
    price = buy.offer.price_per_sold_unit
    if price is not None:
        per = "each" if buy.unit == "each" else f"per {buy.unit}"
        answer += (
            f" at {price_text(price, buy.offer.currency)} {buy.offer.currency} {per} = {buy.cost:f}"
        )
    return Working(
        title=_title(purchase, estimate),
        lines=lines,
        answer=answer,
        places=tuple(dict.fromkeys(str(source.place) for source in purchase.sources)),
    )


def _title(purchase: Purchase, estimate: Estimate) -> str:
    use = use_of(purchase, estimate)
    return f"{purchase.title} for {use}" if use else purchase.title


def cut_workings(estimate: Estimate) -> tuple[Working, ...]:
    """The working of each cut width and cut length in turn, for the fabrics as they are bought.

    A piece that is cut alike from several fabrics is worked once.
    """
    unit = tape_unit(estimate)
    fabrics: dict[tuple[str, tuple[Step, ...], tuple[Step, ...]], list[str]] = {}
    alike: dict[tuple[str, tuple[Step, ...], tuple[Step, ...]], CutPiece] = {}
    for choice in estimate.fabrics:
        for piece in choice.chosen.all_pieces:
            name = piece.name
            if several_garments(estimate):
                name = f"{piece.source.garment}: {name}"
            key = (name, piece.width.steps, piece.length.steps)
            alike.setdefault(key, piece)
            fabrics.setdefault(key, []).append(choice.need.title)
    return tuple(
        working
        for key, piece in alike.items()
        for working in _of_piece(
            f"{key[0]} in {named(list(dict.fromkeys(fabrics[key])))}", piece, unit
        )
    )


def _of_piece(name: str, piece: CutPiece, unit: Unit) -> Iterator[Working]:
    for side, reckoning in (("width", piece.width), ("length", piece.length)):
        yield Working(
            title=f"{name}, cut {side}",
            lines=_lines(reckoning.steps, unit, unit.shop),
            answer=f"cut {tape_text(reckoning.value, unit)}",
            places=(piece.source.place,),
        )


MOST_ADDED_UP = 3
"""Of more sums it is said how many there are, and each stands above."""


def _lines(steps: Sequence[Step], unit: Unit, shop: Unit) -> tuple[WorkingLine, ...]:
    """The steps as lines; a sum names what is added up, as far as that is few."""
    found: list[WorkingLine] = []
    last: list[Figure] = []
    for step in steps:
        added: list[Figure] = []
        if step.operation is Operation.START:
            last.append(step.result)
        elif step.operation is Operation.IN_ALL:
            assert isinstance(step.operand, int), "so many sums are added"
            added = last[-step.operand :]
            last = [*last[: -step.operand], step.result]
        else:
            last[-1:] = [step.result]
        found.append(_line(step, unit, shop, added))
    return tuple(found)


def _line(step: Step, unit: Unit, shop: Unit, added: Sequence[Figure]) -> WorkingLine:
    operand, result = _figure(step.operand, unit), _figure(step.result, unit)
    if step.operation in _SHOP:
        assert not isinstance(step.operand, Fraction), "shops sell lengths and counts"
        operand = _sold(step.operand, shop)
        result = (
            f"{result}, {_sold(step.result, shop)}" if isinstance(step.result, Length) else result
        )
    if step.operation is Operation.START:
        return WorkingLine(step.label, "", result)
    if step.operation is Operation.IN_ALL:
        few = len(added) <= MOST_ADDED_UP
        done = " + ".join(_figure(one, unit) for one in added) if few else f"{operand} sums added"
        return WorkingLine(step.label, done, result)
    if step.operation is Operation.FITTED and isinstance(step.operand, Length):
        operand = put_up_text(step.operand, unit)
    return WorkingLine(step.label, f"{step.operation.value} {operand}", result)


def _sold(figure: Length | Fraction | int, shop: Unit) -> str:
    return shop_text(figure, shop) if isinstance(figure, Length) else str(figure)


def _figure(figure: Length | Fraction | int, unit: Unit) -> str:
    if isinstance(figure, Length):
        return about_text(figure, unit)
    return decimal_text(Fraction(figure), 4)
