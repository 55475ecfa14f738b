"""The estimate for another program: plain values, every length in millimetres and in words."""

from __future__ import annotations

from typing import Any

from estimator.buying.fabric_widths import FabricChoice, WidthOption
from estimator.buying.types import Purchase
from estimator.estimate import Estimate
from estimator.measure import Length, Unit, tape_text, usable_text
from estimator.needs.types import CutPiece
from estimator.reports.assumptions import assumptions
from estimator.reports.shopping_list import title_of
from estimator.reports.units import tape_unit
from estimator.reports.working_lines import Working, cut_workings, workings


def estimate_json(estimate: Estimate) -> dict[str, Any]:
    """The whole estimate. Money is text with two decimals, so that no cent is lost."""
    return {
        "job": title_of(estimate),
        "currency": estimate.currency or None,
        "cost": f"{estimate.cost:.2f}",
        "lines_without_price": estimate.unpriced,
        "shopping_list": [_purchase(one, tape_unit(estimate)) for one in estimate.purchases],
        "fabrics": widths_json(estimate),
        "remarks": list(estimate.remarks),
        "advice": list(estimate.advice),
        "assumptions": list(assumptions(estimate)),
        "cautions": list(estimate.cautions),
    }


def widths_json(estimate: Estimate) -> list[dict[str, Any]]:
    """Each fabric at each of its widths, with the layout at each."""
    return [_fabric(choice, tape_unit(estimate)) for choice in estimate.fabrics]


def working_json(estimate: Estimate, about: str = "") -> dict[str, Any]:
    """The working of each quantity and each cut size."""
    return {
        "what_to_buy": _workings(workings(estimate), about),
        "cut_sizes": _workings(cut_workings(estimate), about),
    }


def _workings(found: tuple[Working, ...], about: str) -> list[dict[str, Any]]:
    return [
        {
            "title": one.title,
            "lines": [{"label": n.label, "done": n.done, "gives": n.result} for n in one.lines],
            "answer": one.answer,
        }
        for one in found
        if about.casefold() in one.title.casefold()
    ]


def length_json(length: Length | None, unit: Unit) -> dict[str, Any] | None:
    """A length in millimetres (exact to a tick) and as a tape reads it."""
    if length is None:
        return None
    return {"mm": length.ticks / Unit.MM.length.ticks, "text": tape_text(length, unit)}


def _purchase(one: Purchase, unit: Unit) -> dict[str, Any]:
    buy = one.buy
    price = buy.offer.price_per_sold_unit
    return {
        "key": one.key,
        "group": one.group.value,
        "item": one.title,
        "used_as": list(one.names),
        "colour": one.colour or None,
        "shop": buy.offer.shop or None,
        "width": length_json(one.width, unit),
        "needed": length_json(one.needed, unit) if isinstance(one.needed, Length) else one.needed,
        "buy": float(buy.sold_units),
        "unit": buy.unit,
        "unit_price": None if price is None else f"{price:f}",
        "cost": None if buy.cost is None else f"{buy.cost:.2f}",
        "notes": list(one.notes),
        "from": [{"what": str(source), "place": source.place} for source in one.sources],
    }


def _fabric(choice: FabricChoice, unit: Unit) -> dict[str, Any]:
    return {
        "item": choice.need.title,
        "key": choice.need.key,
        "choice": choice.reason,
        "widths": [_width(option, option is choice.chosen, unit) for option in choice.options],
        "cannot_be_used": [length_json(one.width, unit) for one in choice.unfit],
    }


def _width(option: WidthOption, chosen: bool, unit: Unit) -> dict[str, Any]:
    return {
        "width": length_json(option.width, unit),
        "usable": {
            "mm": option.usable.ticks / Unit.MM.length.ticks,
            "text": usable_text(option.usable, unit),
        },
        "chosen": chosen,
        "buy": float(option.buy.sold_units),
        "unit": option.buy.unit,
        "cost": None if option.buy.cost is None else f"{option.buy.cost:.2f}",
        "folded": option.breadth.folded,
        "waste_share": round(float(option.waste), 4),
        "layout_length": length_json(option.laid.length, unit),
        "least_that_any_layout_buys": length_json(option.least, unit),
        "style": option.laid.style.value,
        "pieces": [_piece(piece, unit) for piece in option.pieces],
        "places": [
            {
                "cut": number,
                "piece": option.laid.lots[place.blank].piece,
                "head_to_tail": option.laid.lots[place.blank].count,
                "layers": option.laid.lots[place.blank].layers,
                "half_on_fold": option.laid.lots[place.blank].half,
                "across": length_json(Length(place.across), unit),
                "along": length_json(Length(place.along), unit),
                "turned": place.turned,
            }
            for number, cut in enumerate(option.laid.cuts, start=1)
            for place in cut.placements
        ],
    }


def _piece(piece: CutPiece, unit: Unit) -> dict[str, Any]:
    return {
        "name": piece.name,
        "garment": piece.source.garment,
        "quantity": piece.quantity,
        "cut_width": length_json(piece.width.value, unit),
        "cut_length": length_json(piece.length.value, unit),
        "finished": [length_json(size, unit) for size in piece.finished],
        "may_turn": piece.may_turn,
        "note": piece.note or None,
    }
