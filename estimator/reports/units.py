"""In which unit a paper reads."""

from __future__ import annotations

from estimator.estimate import Estimate
from estimator.measure import Unit


def tape_unit(estimate: Estimate) -> Unit:
    """Inches, centimetres or millimetres: what the first garment is written in."""
    garments = estimate.job.garments
    return garments[0].plan.garment.unit.tape if garments else Unit.IN


def tape_beside(shop: Unit, unit: Unit) -> Unit:
    """What lengths of a thing sold by ``shop`` are read in: ``unit``, unless the systems differ."""
    return unit if shop.metric == unit.metric else shop.tape
