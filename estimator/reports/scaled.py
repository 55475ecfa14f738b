"""What was scaled for each wearer: the sizes that come from measures, and to what they come."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.estimated import Estimate
from estimator.job import GarmentOrder, Reckoned
from estimator.measure import about_text
from estimator.needs.cut_piece import CutPiece


def scaled_for_wearers(estimate: Estimate) -> tuple[str, ...]:
    """A sentence for each garment that is made by a wearer's measures."""
    return tuple(dict.fromkeys(_sentences(estimate)))


def _sentences(estimate: Estimate) -> Iterator[str]:
    for order in estimate.job.garments:
        if order.wearer and order.reckoned:
            sizes = "; ".join(f"{one.of} {scaled_text(one, order)}" for one in order.reckoned)
            yield f"{order.plan.garment.name} for {order.wearer}: {sizes}."


def scaled_text(one: Reckoned, order: GarmentOrder) -> str:
    """``width: waist / 4 + 1 in = 8 in``."""
    size = about_text(one.size, order.tape)
    return f"{one.place}: {one.text} = {size}"


def scaled_note(piece: CutPiece, estimate: Estimate) -> str:
    """What was reckoned of the sizes of one piece; nothing where all are stated."""
    source = piece.source
    for order in estimate.job.garments:
        if (order.plan.garment.name, order.wearer) == (source.garment, source.wearer):
            return ", ".join(
                scaled_text(one, order) for one in order.reckoned if one.of == source.name
            )
    return ""
