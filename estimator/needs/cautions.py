"""Cautions for the list: short plain lines that defer to local rules and licensed practice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.catalog import Kind
from estimator.job import Job
from estimator.plan import Made, Wearer

SMALL_PARTS = {Kind.NOTION}


def cautions_for(job: Job, notions: Iterable[Kind]) -> tuple[str, ...]:
    """What the list must say of a job's risks, each line once; ``notions`` are the kinds bought."""
    return tuple(dict.fromkeys(_cautions(job, set(notions))))


def _cautions(job: Job, notions: set[Kind]) -> Iterator[str]:
    wearers = {order.plan.garment.wearer for order in job.garments}
    if wearers != {Wearer.ADULT}:
        if _has_cords(job):
            yield (
                "Cords, ties and drawstrings can strangle a child: none at the neck or hood, and "
                "short fixed ends at the waist. Follow the rules for children's clothing where "
                "you are."
            )
        if notions & SMALL_PARTS:
            yield (
                "Buttons, snaps and other small parts can choke a child under three: leave them "
                "off, or follow the rules for small parts where you are."
            )
    yield (
        "Cloth, net and trim can burn: near open flame, for children's sleepwear or for the stage, "
        "ask for the fabric's flammability class and follow local fire rules; flame-retardant "
        "treatment is for licensed practice."
    )


def _has_cords(job: Job) -> bool:
    """Tubes are ties and drawstrings; a trim of a stated length may be a cord."""
    return any(
        piece.made is Made.TUBE for order in job.garments for piece in order.plan.piece
    ) or any(trim.length is not None for order in job.garments for trim in order.plan.trim)
