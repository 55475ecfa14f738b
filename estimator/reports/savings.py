"""What planning garments together saves, in words."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.estimated import Estimate, Saved
from estimator.measure import fraction_text, read_in_sixteenths, two_decimals_up
from estimator.prices import money_text
from estimator.put_up import EACH


def savings(estimate: Estimate) -> tuple[str, ...]:
    """The saving against garment by garment: all of it, then thing by thing; nothing for one."""
    return tuple(_lines(estimate))


def _lines(estimate: Estimate) -> Iterator[str]:
    if not estimate.saved:
        return
    money = sum((one.money or Decimal(0) for one in estimate.saved), Decimal(0))
    if money:
        whole = money_text(money, estimate.currency)
        yield f"{whole} {estimate.currency} less than garment by garment."
    if any(line.taken for line in estimate.purchases):
        yield "Reckoned as if all were bought new, with nothing from the stash."
    for one in estimate.saved:
        thing = ", ".join(filter(None, (one.title, one.colour)))
        yield f"{thing}: {_text(one, estimate.currency)} less."


def _text(one: Saved, currency: str) -> str:
    parts = []
    if one.units is not None and one.units > 0:
        parts.append(_amount(one.units, one.unit))
    if one.money:
        parts.append(f"{money_text(one.money, currency)} {currency}")
    return " and ".join(parts)


def _amount(units: Fraction, unit: str) -> str:
    """So much of a unit: ``16 3/4 yd``, ``1.20 m``, ``2 × card of 5 yd``."""
    if unit == "m" or not read_in_sixteenths(units):
        return f"{two_decimals_up(units)} {unit}"
    if unit == EACH.text:
        return fraction_text(units)
    return f"{fraction_text(units)} {unit if unit == 'yd' else f'× {unit}'}"
