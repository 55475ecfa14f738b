"""Prices as a plan states them, ``8.50 per yd`` or ``2.40 each``, and money to its least coin."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import Annotated

from pydantic import BeforeValidator, WithJsonSchema

from estimator.fields import reading
from estimator.measure import Unit
from estimator.quoting import NotReadable, quoted, text_of
from estimator.written import read_money


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


PriceField = Annotated[
    Price,
    BeforeValidator(reading(read_price)),
    WithJsonSchema({"type": "string", "description": 'As in "8.50 per yd" or "2.40 each".'}),
]


USUAL_DECIMALS = 2
_WHOLE = {
    "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND",
    "VUV", "XAF", "XOF", "XPF",
}  # fmt: skip
_THOUSANDTHS = {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}
_DECIMALS = {**dict.fromkeys(_WHOLE, 0), **dict.fromkeys(_THOUSANDTHS, 3)}
"""Currencies without two decimals: the minor units of ISO 4217, from memory."""


def decimals_of(currency: str) -> int:
    """How many decimals amounts of a currency have; two where none is named."""
    return _DECIMALS.get(currency, USUAL_DECIMALS)


def to_the_coin(amount: Decimal | Fraction, currency: str) -> Decimal:
    """An amount to the least coin of its currency, half up."""
    coin = Decimal(1).scaleb(-decimals_of(currency))
    if isinstance(amount, Fraction):
        amount = Decimal(amount.numerator) / amount.denominator
    return amount.quantize(coin, ROUND_HALF_UP)


def money_text(amount: Decimal, currency: str) -> str:
    """An amount with the decimals of its currency: ``12.50`` of USD, ``1250`` of JPY."""
    return f"{to_the_coin(amount, currency):f}"
