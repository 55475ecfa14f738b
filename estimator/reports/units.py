"""In which unit a paper reads."""

from __future__ import annotations

from estimator.estimated import Estimate
from estimator.measure import Length, Unit, Units, natural_text, tape_text


def tape_unit(estimate: Estimate) -> Unit:
    """Inches, centimetres or millimetres: as asked for, else as the first garment is written."""
    garments = estimate.job.garments
    return garments[0].tape if garments else Unit.IN


def units_asked(estimate: Estimate) -> Units | None:
    """The units in which the papers were asked for; None where they read as the plans do."""
    garments = estimate.job.garments
    return garments[0].units if garments else None


def tape_beside(shop: Unit, unit: Unit) -> Unit:
    """What lengths of a thing sold by ``shop`` are read in: ``unit``, unless the systems differ."""
    return unit if shop.metric == unit.metric else shop.tape


def tape_of(shop: Unit, estimate: Estimate) -> Unit:
    """What lengths of a thing sold by ``shop`` are read in on the papers of an estimate."""
    unit = tape_unit(estimate)
    return unit if units_asked(estimate) else tape_beside(shop, unit)


def width_text(width: Length, shop: Unit, estimate: Estimate) -> str:
    """A width on offer as the trade names it; in the units asked for as well: ``111.8 cm (44 in)``.

    ``shop`` is what the thing is sold by.
    """
    unit = tape_of(shop, estimate)
    named = natural_text(width, unit)
    if units_asked(estimate) is None:
        return named
    read = tape_text(width, unit)
    return read if read == named else f"{read} ({named})"
