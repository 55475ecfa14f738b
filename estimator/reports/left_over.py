"""What is left on the cards and spools of a trim, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.measure import Length, Unit, shop_text, tape_text
from estimator.needs.types import LengthNeed
from estimator.reports.units import tape_of

MOST_TOLD = 4


def left_over(purchase: Purchase, estimate: Estimate) -> Iterator[str]:
    """What is left of a trim's put-ups, as these are put up; nothing where nothing is.

    Equal lengths are told together, and the longest first.
    """
    if not isinstance(purchase.need, LengthNeed) or not purchase.buy.left:
        return
    tape = tape_on(purchase, estimate)
    parts = [
        f"{number} × {_rough_text(length, tape)}" if number > 1 else _rough_text(length, tape)
        for length, number in sorted(Counter(purchase.buy.left).items(), reverse=True)
    ]
    more = ", ..." if len(parts) > MOST_TOLD else ""
    yield f"left over: {', '.join(parts[:MOST_TOLD])}{more}"


def tape_on(purchase: Purchase, estimate: Estimate) -> Unit:
    """What lengths on a put-up are read in: as it is put up, or as the papers were asked for."""
    metric = purchase.buy.offer.put_up.metric
    return tape_of(Unit.M if metric else Unit.YD, estimate)


def _rough_text(length: Length, unit: Unit) -> str:
    """Long lengths in whole eighths of a yard, or tenths of a metre, downwards."""
    shop = unit.shop
    if length < shop.length * 2:
        return tape_text(length, unit)
    part = Unit.CM.length * 10 if shop.metric else Unit.YD.length.times(Fraction(1, 8))
    return shop_text(part * part.times_into(length), shop)
