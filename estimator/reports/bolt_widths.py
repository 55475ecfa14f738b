"""How narrow a bolt may measure, in words for the buyer who lays a tape across it."""

from __future__ import annotations

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.narrowest import narrowest_serving
from estimator.estimated import Estimate
from estimator.measure import shop_text, usable_text
from estimator.plan import Made
from estimator.reports.units import tape_of


def narrowest_text(choice: FabricChoice, estimate: Estimate) -> str:
    """``good down to 43 1/4 in usable, the narrowest found; at 43 in buy 3 yd``, or why not."""
    found = narrowest_serving(choice)
    if found is None:
        strips = any(one.piece.made is Made.JOINED_STRIP for one in choice.need.hanging)
        what = "strips take its whole width" if strips else "pieces reach from selvedge to selvedge"
        return f"{what}: measure the bolt before you buy"
    sold_by = choice.chosen.buy.offer.sold_by
    tape = tape_of(sold_by, estimate)
    washing = " before washing" if choice.need.terms.shrinkage_across else ""
    text = f"good down to {usable_text(found.usable, tape)} usable{washing}, the narrowest found"
    below = usable_text(found.next_down, tape)
    if found.then_buy is None:
        return f"{text}; at {below} the pieces do not go on it as they are cut here"
    return f"{text}; at {below} buy {shop_text(found.then_buy, sold_by)}"
