"""The estimate for another program: plain values, every length in millimetres and in words."""

from __future__ import annotations

from decimal import Decimal

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.laying import Laid
from estimator.buying.one_width import WidthOption
from estimator.buying.types import Buy, Purchase
from estimator.estimated import Estimate
from estimator.measure import Length, Unit, tape_text, usable_text
from estimator.needs.cut_piece import CutPiece
from estimator.prices import money_text
from estimator.reports.assumptions import assumptions
from estimator.reports.budget_papers import account
from estimator.reports.json_shapes import (
    BoughtJson,
    BudgetJson,
    EstimateJson,
    FabricJson,
    LengthJson,
    PieceJson,
    PlaceJson,
    PurchaseJson,
    TakenJson,
    WidthJson,
    WorkingJson,
    WorkingOfJson,
)
from estimator.reports.left_over import left_over
from estimator.reports.shopping_list import title_of
from estimator.reports.units import tape_unit
from estimator.reports.working_lines import Working, cut_workings, workings
from estimator.stash import Taken
from estimator.would_save import would_save


def estimate_json(estimate: Estimate) -> EstimateJson:
    """The whole estimate. Money is text, to the least coin of its currency."""
    return {
        "job": title_of(estimate),
        "currency": estimate.currency or None,
        "cost": money_text(estimate.cost, estimate.currency),
        "total": money_text(estimate.total, estimate.currency),
        "shops": [
            {"shop": one.shop, "charge": money_text(one.charge, estimate.currency)}
            for one in estimate.visits
        ],
        "budget": _budget(estimate),
        "lines_without_price": estimate.unpriced,
        "shopping_list": [_purchase(one, estimate) for one in estimate.purchases],
        "fabrics": widths_json(estimate),
        "remarks": list(estimate.remarks),
        "advice": list(estimate.advice),
        "assumptions": list(assumptions(estimate)),
        "cautions": list(estimate.cautions),
    }


def _budget(estimate: Estimate) -> BudgetJson | None:
    bill = account(estimate)
    if bill is None:
        return None

    def money(amount: Decimal) -> str:
        return money_text(amount, estimate.currency)

    ceiling = estimate.job.funds.budget
    return {
        "goods": money(bill.goods),
        "charges": money(bill.charges),
        "tax": money(bill.tax),
        "contingency": money(bill.contingency),
        "to_spend": money(bill.in_all),
        "spent": money(bill.spent),
        "ceiling": None if ceiling is None else money(ceiling),
        "left": None if bill.left is None else money(bill.left),
        "would_save": [
            {"change": one.change, "saves": money(one.money)} for one in would_save(estimate)
        ],
    }


def widths_json(estimate: Estimate) -> list[FabricJson]:
    """Each fabric at each of its widths, with the layout at each."""
    return [_fabric(choice, tape_unit(estimate)) for choice in estimate.fabrics]


def working_json(estimate: Estimate, about: str = "") -> WorkingJson:
    """The working of each quantity and each cut size."""
    return {
        "what_to_buy": _workings(workings(estimate), about),
        "cut_sizes": _workings(cut_workings(estimate), about),
    }


def _workings(found: tuple[Working, ...], about: str) -> list[WorkingOfJson]:
    return [
        {
            "title": one.title,
            "lines": [{"label": n.label, "done": n.done, "gives": n.result} for n in one.lines],
            "answer": one.answer,
        }
        for one in found
        if about.casefold() in one.title.casefold()
    ]


def length_json(length: Length, unit: Unit) -> LengthJson:
    """A length in millimetres (exact to a tick) and as a tape reads it."""
    return {"mm": length.ticks / Unit.MM.length.ticks, "text": tape_text(length, unit)}


def _purchase(one: Purchase, estimate: Estimate) -> PurchaseJson:
    buy, unit = one.buy, tape_unit(estimate)
    price = buy.offer.price_per_sold_unit
    return {
        "key": one.key,
        "group": one.group.value,
        "item": one.title,
        "used_as": list(one.names),
        "colour": one.colour or None,
        "shop": buy.offer.shop or None,
        "shelf": buy.offer.shelf or None,
        "width": length_json(one.width, unit) if one.width else None,
        "needed": length_json(one.needed, unit) if isinstance(one.needed, Length) else one.needed,
        "buy": float(buy.sold_units),
        "unit": buy.unit,
        "unit_price": None if price is None else f"{price:f}",
        "cost": None if buy.cost is None else f"{buy.cost:f}",
        "from_stash": [_taken(taken, unit) for taken in one.taken],
        "instead": [[_on_one_offer(buy, unit) for buy in way] for way in one.others],
        "notes": [*one.notes, *left_over(one, estimate)],
        "from": [{"what": str(source), "place": source.place} for source in one.sources],
    }


def _taken(one: Taken, unit: Unit) -> TakenJson:
    return {
        "row": one.single.row,
        "place": one.single.thing.place or None,
        "take": _amount(one.amount, unit),
        "left": _amount(one.left, unit),
    }


def _amount(amount: Length | int, unit: Unit) -> LengthJson | int:
    return length_json(amount, unit) if isinstance(amount, Length) else amount


def _on_one_offer(way: Buy, unit: Unit) -> BoughtJson:
    width = way.offer.width
    return {
        "width": length_json(width, unit) if width else None,
        "shop": way.offer.shop or None,
        "buy": float(way.sold_units),
        "unit": way.unit,
        "cost": None if way.cost is None else f"{way.cost:f}",
    }


def _fabric(choice: FabricChoice, unit: Unit) -> FabricJson:
    return {
        "item": choice.need.title,
        "key": choice.need.key,
        "choice": choice.reason,
        "widths": [_width(option, option is choice.chosen, unit) for option in choice.options],
        "cannot_be_used": [length_json(one.width, unit) for one in choice.unfit],
    }


def _width(option: WidthOption, chosen: bool, unit: Unit) -> WidthJson:
    return {
        "width": length_json(option.width, unit),
        "usable": {
            "mm": option.usable.ticks / Unit.MM.length.ticks,
            "text": usable_text(option.usable, unit),
        },
        "chosen": chosen,
        "buy": float(option.buy.sold_units),
        "unit": option.buy.unit,
        "cost": None if option.buy.cost is None else f"{option.buy.cost:f}",
        "folded": option.breadth.folded,
        "waste_share": round(float(option.waste), 4),
        "layout_length": length_json(option.laid.length, unit),
        "least_that_any_layout_buys": length_json(option.least, unit),
        "style": option.laid.style.value,
        "pieces": [_piece(piece, unit) for piece in option.pieces],
        "places": _places(option.laid, unit),
        "from_remnants": [
            {
                **_taken(one.taken, unit),
                "pieces": [_piece(piece, unit) for piece in one.pieces],
                "places": _places(one.laid, unit),
            }
            for one in option.stash
        ],
    }


def _places(laid: Laid, unit: Unit) -> list[PlaceJson]:
    return [
        {
            "cut": number,
            "piece": laid.lots[place.blank].piece,
            "head_to_tail": laid.lots[place.blank].count,
            "layers": laid.lots[place.blank].layers,
            "half_on_fold": laid.lots[place.blank].half,
            "across": length_json(Length(place.across), unit),
            "along": length_json(Length(place.along), unit),
            "turned": place.turned,
        }
        for number, cut in enumerate(laid.cuts, start=1)
        for place in cut.placements
    ]


def _piece(piece: CutPiece, unit: Unit) -> PieceJson:
    return {
        "name": piece.name,
        "garment": piece.source.garment,
        "quantity": piece.quantity,
        "cut_width": length_json(piece.width.value, unit),
        "cut_length": length_json(piece.length.value, unit),
        "finished": [None if size is None else length_json(size, unit) for size in piece.finished],
        "may_turn": piece.may_turn,
        "note": piece.note or None,
    }
