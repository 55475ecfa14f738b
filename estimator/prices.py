"""Prices as a plan states them: ``8.50 per yd``, ``2.40 each``."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from pydantic import BeforeValidator

from estimator.fields import reading
from estimator.measure import Unit
from estimator.written import NotReadable, quoted, read_money, text_of


@dataclass(frozen=True, slots=True)
class Price:
    """An amount of money for one unit of length, or for one put-up where ``per`` is None."""

    amount: Decimal
    per: Unit | None


_PER = {unit.symbol: unit for unit in Unit}
_RIGHT = "write it like 8.50 per yd, 9.20 per m or 2.40 each"


def read_price(written: object) -> Price:
    """Reads ``8.50 per yd`` or ``2.40 each``; raises NotReadable for anything else."""
    if isinstance(written, Price):
        return written
    found = re.fullmatch(r"(\S+) (?:per (\w+)|each)", text_of(written))
    if not found:
        raise NotReadable(f"{quoted(written)} does not say what the price is for", _RIGHT)
    per = found[2]
    if per is not None and per not in _PER:
        raise NotReadable(f"{quoted(written)} is a price per {quoted(per)}", _RIGHT)
    return Price(read_money(found[1]), _PER[per] if per else None)


PriceField = Annotated[Price, BeforeValidator(reading(read_price))]
