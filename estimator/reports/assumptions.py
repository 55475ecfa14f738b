"""What was taken for granted: every default in force, so that a reader can question it."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.estimated import Estimate
from estimator.job import GarmentOrder
from estimator.measure import Length, decimal_text, shop_text, tape_text, usable_text
from estimator.reports.scaled import scaled_for_wearers
from estimator.reports.shopping_list import without_thread
from estimator.reports.units import tape_of, width_text
from estimator.reports.uses import fabric_title


def assumptions(estimate: Estimate) -> tuple[str, ...]:
    """The allowances and rules in force, garment by garment, then what holds for the whole list."""
    lines = [line for order in estimate.job.garments for line in _of_garment(order)]
    lines += scaled_for_wearers(estimate)
    lines += estimate.granted
    lines += _of_fabrics(estimate)
    if not all(choice.chosen.breadth.folded for choice in estimate.fabrics):
        lines.append("Fabric is laid out open, in one layer, unless something else is said.")
    lines += without_thread(estimate)
    return tuple(dict.fromkeys(lines))


def _of_garment(order: GarmentOrder) -> Iterator[str]:
    garment = order.plan.garment
    rules, unit = garment.rules, order.tape

    def tape(length: Length) -> str:
        return tape_text(length, unit)

    yield (
        f"{garment.name}: seam allowance {tape(rules.seam_allowance)}, turn-under "
        f"{tape(rules.turn_under)}, cut sizes up to the next {tape(order.mark)}."
    )
    yield (
        f"{garment.name}: rolled hems are {tape(rules.rolled_hem)} deep and turned twice, "
        f"overlocked edges lose {tape(rules.serged)}, rounds of trim without a repeat overlap "
        f"{tape(rules.overlap)}."
    )
    waste = decimal_text(rules.trim_waste * 100, 1)
    yield f"{garment.name}: {waste} % waste is added to trims by the length, unless they state it."
    for piece in order.plan.piece:
        whole = {name: edge.length for name, edge in piece.edges.items() if piece.is_on_fold}
        for name, length in whole.items():
            if length:
                yield (
                    f"{garment.name}: {piece.name} is on the fold; its {name} of {tape(length)} is "
                    "the whole of it, over both halves."
                )
    if any(lacing.tie is None for lacing in order.plan.lacing):
        yield f"{garment.name}: laces have {tape(rules.tie)} at each end to tie."
    if any(one.casing_for is None and one.clear is None for one in order.plan.boning):
        yield f"{garment.name}: bones end {tape(rules.bone_clear)} short of their channels' ends."


def _of_fabrics(estimate: Estimate) -> Iterator[str]:
    for choice in estimate.fabrics:
        terms, option = choice.need.terms, choice.chosen
        shop = option.buy.offer.sold_by
        unit = tape_of(shop, estimate)
        width = width_text(option.width, shop, estimate)
        parts = [
            f"each cut end is straightened by {tape_text(terms.straightening, unit)}",
            f"usable {usable_text(option.usable, unit)} of {width}",
            f"sold by {shop_text(option.step, shop)}",
        ]
        if terms.shrinkage or terms.shrinkage_across:
            parts.append(
                f"shrinks {decimal_text(terms.shrinkage * 100, 1)} % in length and "
                f"{decimal_text(terms.shrinkage_across * 100, 1)} % in width before it is cut"
            )
        if terms.repeat:
            parts.append(
                f"cut edges start on the repeat of {tape_text(terms.repeat, unit)}: "
                "where allowances differ, shift the pattern to match at the seam"
            )
        if terms.repeat_across:
            across = tape_text(terms.repeat_across, unit)
            of_fold = ", counted from the fold" if option.breadth.folded else ""
            parts.append(f"pieces start on the repeat of {across} across{of_fold}")
            if any(piece.selvedges for piece in option.pieces):
                parts.append("but for those on the selvedge, which lie where that is")
        if option.breadth.folded:
            parts.append("laid folded lengthwise and cut in pairs")
            if terms.repeat_across:
                off = tape_text(option.breadth.off_middle, unit)
                parts.append(
                    "folded on the middle of a bar or halfway between two, the nearest to the "
                    f"middle of the fabric and at most {off} off it: only a plaid that is the same "
                    "from left and right can be matched so; pieces on the fold have that line in "
                    "their middle"
                )
        if option.buy.offer.bolt:
            if terms.repeat and len(option.laid.cuts) > 1:
                more = tape_text(terms.repeat, unit)
                parts.append(
                    f"each cut after the first has {more} more, to be trimmed to the place of the "
                    "repeat at which the first begins"
                )
            parts.append(f"no cut is longer than {shop_text(option.buy.offer.bolt, shop)}")
        if terms.nap:
            parts.append("nap or one-way print, no piece is turned")
        waste = decimal_text(terms.waste * 100, 1)
        parts.append(f"waste allowance {waste} % beyond the layout")
        yield f"{fabric_title(choice, estimate)}: {', '.join(parts)}."
