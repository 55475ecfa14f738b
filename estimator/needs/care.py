"""Before sewing: which needle, what to wash first, and the care that every part can stand.

The gentlest care wins, and the list says which part forces it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.catalog import Item, Weight
from estimator.fibres import (
    FIBRES,
    FUSES_AT,
    GENTLEST_FIRST,
    Care,
    Wash,
    fibres_in,
)
from estimator.job import GarmentOrder, Job
from estimator.measure import decimal_text
from estimator.plan import Bought, ByLength, Fabric, Role

DIFFERENT = Fraction(2, 100)
"""Parts whose shrinkage differs by 2 % or more pucker in the wash (common practice)."""

NEEDLES = {
    Weight.SHEER: "60/8",
    Weight.LIGHT: "70/10",
    Weight.MEDIUM: "80/12",
    Weight.HEAVY: "90/14",
    Weight.VERY_HEAVY: "100/16",
}
"""Sizes by the weight of the fabric, metric and imperial (common practice)."""

MOST_NAMED = 4


@dataclass(frozen=True, slots=True)
class Part:
    """A fabric, trim or notion of a garment, as far as its care goes."""

    name: str
    text: str
    wash: Wash | None
    shrinkage: Fraction
    soft: bool
    fabric: Fabric | None = None
    item: Item | None = None

    @property
    def fibres(self) -> tuple[str, ...]:
        """The fibres that are known of it."""
        return fibres_in(self.text)

    @property
    def cares(self) -> tuple[tuple[str, Care], ...]:
        """What each of its fibres can stand."""
        return tuple((fibre, FIBRES[fibre]) for fibre in self.fibres)

    @property
    def iron(self) -> int | None:
        """The hottest iron, in °C, that all of its fibres can stand; None where none is known."""
        return min((care.iron for _, care in self.cares), default=None)


def advice_for(job: Job) -> tuple[str, ...]:
    """What the list should say before anything is sewn, each line once."""
    lines = [line for order in job.garments for line in _of_garment(order, job)]
    return tuple(dict.fromkeys(lines))


def _of_garment(order: GarmentOrder, job: Job) -> Iterator[str]:
    parts = _parts(order, job)
    name = order.plan.garment.name
    yield from (f"{name}: {line}" for line in _needles(parts))
    yield from (f"{name}: {line}" for line in _first_washed(parts))
    yield from (f"{name}: {line}" for line in _unequal(parts))
    yield from (f"{name}: {line}" for line in _gentlest(parts))
    yield from (f"{name}: {line}" for line in _fused(parts, order))


def _parts(order: GarmentOrder, job: Job) -> tuple[Part, ...]:
    plan, items = order.plan, job.catalog.items
    tables: tuple[Sequence[Fabric | Bought], ...] = (
        plan.fabric,
        # a binding cut from a fabric is cared for as that is
        [trim for trim in plan.trim if trim.cut_from is None],
        plan.elastic, plan.lacing, plan.boning, plan.loops, plan.notion,
    )  # fmt: skip
    return tuple(
        _part(one, items.get(one.buy) if one.buy else None) for table in tables for one in table
    )


def _part(one: Fabric | Bought, item: Item | None) -> Part:
    shrinkage = getattr(one, "shrinkage", None)
    if shrinkage is None:
        shrinkage = item.shrinkage_length if item else Fraction(0)
    return Part(
        name=one.name,
        text=one.fibres or (item.fibres if item else ""),
        wash=one.care or (item.care if item else None),
        shrinkage=shrinkage,
        soft=isinstance(one, Fabric | ByLength),
        fabric=one if isinstance(one, Fabric) else None,
        item=item,
    )


def _needles(parts: Sequence[Part]) -> Iterator[str]:
    """A needle for each fabric whose weight is known."""
    found: dict[str, list[str]] = {}
    for part in parts:
        weight = _of(part, "weight")
        if part.fabric is None or not isinstance(weight, Weight):
            continue
        kind = "universal"
        if _of(part, "knit"):
            kind = "ball point"
        elif {"leather", "suede"} & set(part.fibres):
            kind = "leather point"
        elif weight in (Weight.HEAVY, Weight.VERY_HEAVY):
            kind = "strong, sharp point"
        found.setdefault(f"{NEEDLES[weight]}, {kind}", []).append(part.name)
    if found:
        listed = "; ".join(f"{needle} for {', '.join(names)}" for needle, names in found.items())
        yield f"machine needles {listed}; take the thicker where layers meet."


def _of(part: Part, key: str) -> object:
    """What the plan says of a fabric, else the catalog."""
    stated = getattr(part.fabric, key, None)
    return stated if stated is not None else getattr(part.item, key, None)


def _percent(share: Fraction) -> str:
    return f"{decimal_text(share * 100, 1)} %"


def _first_washed(parts: Sequence[Part]) -> Iterator[str]:
    """What is shrunk before it is cut; fusible only soaked, for its glue must not be worked."""
    shrinking = [part for part in parts if part.shrinkage]
    fusible = [part for part in shrinking if _of(part, "fusible")]
    others = [part for part in shrinking if part not in fusible]
    if others:
        how = "wash"
        if _gentlest_wash(parts) is Wash.DRY_CLEAN:
            how = "steam, or have cleaned,"
        yield (
            f"before cutting {how} as the garment will be: {_by_shrinkage(others)}; the quantities "
            "allow for the shrinking."
        )
    if fusible:
        yield (
            f"before cutting soak in warm water and hang up, without wringing: "
            f"{_by_shrinkage(fusible)}."
        )


def _by_shrinkage(parts: Sequence[Part]) -> str:
    """The parts that shrink alike together, those that shrink most first."""
    found: dict[Fraction, list[str]] = {}
    for part in sorted(parts, key=lambda one: -one.shrinkage):
        found.setdefault(part.shrinkage, []).append(part.name)
    return "; ".join(f"{_percent(share)} {_few(names)}" for share, names in found.items())


def _few(names: Sequence[str]) -> str:
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _unequal(parts: Sequence[Part]) -> Iterator[str]:
    """What shrinks otherwise than the shell: the first of the main fabrics."""
    shell = next((p for p in parts if p.fabric and p.fabric.role is Role.MAIN), None)
    if shell is None:
        return
    others = [
        part
        for part in parts
        if part.soft and part is not shell and abs(part.shrinkage - shell.shrinkage) >= DIFFERENT
    ]
    if others:
        listed = _by_shrinkage(others)
        yield (
            f"{shell.name} shrinks {_percent(shell.shrinkage)}, and otherwise {listed}: unless all "
            "are washed first, the seams will pucker."
        )


def _gentlest_wash(parts: Sequence[Part]) -> Wash | None:
    washes = [wash for part in parts for wash in _washes(part)]
    return min(washes, key=GENTLEST_FIRST.index, default=None)


def _washes(part: Part) -> tuple[Wash, ...]:
    """A care label says more than the fibres."""
    return (part.wash,) if part.wash else tuple(care.wash for _, care in part.cares)


def _gentlest(parts: Sequence[Part]) -> Iterator[str]:
    """The care of the whole, and what forces it."""
    wash = _gentlest_wash(parts)
    if wash is None:
        return
    labels = _few([part.name for part in parts if part.wash is wash])
    by = [f"the label of {labels}"] if labels else []
    by += _forced([part for part in parts if not part.wash], lambda care: care.wash is wash)
    lines = [f"{wash.value} ({', '.join(by)})"]
    iron = min((part.iron for part in parts if part.iron is not None), default=None)
    if iron is not None:
        told = f"iron at most at {iron} °C" if iron else "do not iron"
        lines.append(f"{told} ({', '.join(_forced(parts, lambda care: care.iron == iron))})")
    frail = _forced(parts, lambda care: not care.tumble)
    if frail:
        lines.append(f"do not tumble dry ({', '.join(frail)})")
    yield f"care, the gentlest that any part needs: {'; '.join(lines)}."
    unknown = [part.name for part in parts if part.soft and not part.cares and not part.wash]
    if unknown:
        yield f"nothing is known of the care of {_few(unknown)}: ask in the shop."


def _forced(parts: Sequence[Part], forces: Callable[[Care], bool]) -> list[str]:
    """The fibres that force a care, each with the parts that hold it."""
    found: dict[str, list[str]] = {}
    for part in parts:
        for fibre, care in part.cares:
            if forces(care):
                found.setdefault(fibre, []).append(part.name)
    return [f"{fibre} in {_few(names)}" for fibre, names in found.items()]


def _fused(parts: Sequence[Part], order: GarmentOrder) -> Iterator[str]:
    """Fusible interfacing under what its heat melts or its press crushes."""
    by_name = {part.name: part for part in parts if part.fabric is not None}
    for piece in order.plan.piece:
        of_piece = [by_name[cut.fabric] for cut in piece.cut if cut.fabric in by_name]
        for fusible in (part for part in of_piece if _of(part, "fusible")):
            for part in of_piece:
                if part is fusible:
                    continue
                why = ""
                if part.iron is not None and part.iron < FUSES_AT:
                    why = f"stands {part.iron} °C" if part.iron else "may not be ironed"
                    why = f"{', '.join(part.fibres)} {why}, and fusing takes about {FUSES_AT} °C"
                elif _of(part, "nap"):
                    why = "pressing may crush its pile"
                if why:
                    yield (
                        f"{fusible.name} is fused to {part.name} in {piece.name}: {why}; try a "
                        "scrap under a cloth, or take an interfacing that is sewn in."
                    )
