"""Cautions for the list: short plain lines that defer to local rules and licensed practice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.catalog import Kind
from estimator.edges import Finish
from estimator.job import Job
from estimator.plan import Made, Plan, Wearer

SMALL_PARTS = {Kind.NOTION}


def cautions_for(job: Job, notions: Iterable[Kind]) -> tuple[str, ...]:
    """What the list must say of a job's risks, each line once; ``notions`` are the kinds bought."""
    return tuple(dict.fromkeys(_cautions(job, set(notions))))


def _cautions(job: Job, notions: set[Kind]) -> Iterator[str]:
    """Only an adult's garment needs no caution for a child: who wears it may not be said."""
    plans = [order.plan for order in job.garments]
    for_children = [plan for plan in plans if plan.garment.wearer is not Wearer.ADULT]
    if any(map(_has_cords, for_children)):
        yield (
            "Cords, ties and drawstrings can strangle a child: none at the neck or hood, and short "
            "fixed ends at the waist (EN 14682; ASTM F1816). Follow the rules for children's "
            "clothing where you are."
        )
    if for_children and notions & SMALL_PARTS:
        yield (
            "Buttons, snaps and other small parts can choke a child under three: leave them off, "
            "or follow the rules for small parts where you are (16 CFR 1501)."
        )
    if any(plan.garment.use == "sleepwear" for plan in for_children):
        yield (
            "Children's sleepwear has fire rules of its own (16 CFR 1615 and 1616): take only "
            "fabric, trim and thread that are sold as fit for it, and follow the rules where you "
            "are."
        )
    if any(plan.garment.use == "stage" for plan in plans):
        yield (
            "On stage keep costumes away from flame, hot lamps and pyrotechnics, and tell whoever "
            "is responsible for fire in the house what they are made of."
        )
    sleepwear = ", for children's sleepwear (16 CFR 1615 and 1616)" if for_children else ""
    yield (
        f"Cloth, net and trim can burn: near open flame{sleepwear} or for the stage, ask for the "
        "fabric's flammability class (16 CFR 1610) and follow local fire rules; flame-retardant "
        "treatment is for licensed practice."
    )


def _has_cords(plan: Plan) -> bool:
    """Tubes are ties and drawstrings; so may be a trim of a stated length, a lace or a casing's.

    A ribbon tied in a bow is one too.
    """
    casings = (
        edge.finish.finish is Finish.CASING for piece in plan.piece for edge in piece.edges.values()
    )
    return (
        any(piece.made is Made.TUBE for piece in plan.piece)
        or any(trim.length or trim.bow or trim.casing for trim in plan.trim)
        or bool(plan.lacing)
        or (any(casings) and not plan.elastic)
    )
