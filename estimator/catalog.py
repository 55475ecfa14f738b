"""What shops sell: items, and the offers on which each can be bought."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from typing import Annotated, TypeVar

from pydantic import BeforeValidator, ValidationInfo, WithJsonSchema, model_validator

from estimator.faults import nearest
from estimator.fibres import Wash
from estimator.fields import (
    Allowance,
    Entry,
    Money,
    Name,
    Note,
    Shrinkage,
    Size,
    reading,
    refusal,
    unit_of,
)
from estimator.measure import Length, Unit
from estimator.put_up import BY_THE_LENGTH, PutUp, read_put_up
from estimator.quoting import quoted, text_of
from estimator.rules import selling_step
from estimator.written import read_length

EnumT = TypeVar("EnumT", bound=Enum)


class Kind(Enum):
    """What an item is, so that a plan cannot buy a zip for a ribbon."""

    FABRIC = "fabric"
    TRIM = "trim"
    ELASTIC = "elastic"
    ZIP = "zip"
    SEPARATING_ZIP = "separating zip"
    THREAD = "thread"
    NOTION = "notion"


class Weight(Enum):
    """How heavy a fabric is, for the needle that sews it."""

    SHEER = "sheer"
    LIGHT = "light"
    MEDIUM = "medium"
    HEAVY = "heavy"
    VERY_HEAVY = "very heavy"


def _yes_or_no(written: object) -> bool:
    text = str(written).strip().lower()
    if text in ("yes", "y", "true", "1"):
        return True
    if text in ("no", "n", "false", "0"):
        return False
    raise refusal(f"{quoted(written)} is neither yes nor no", "write yes or no")


def _per(written: object) -> Unit:
    if isinstance(written, Unit):
        return written
    text = str(written).strip().lower()
    unit = {unit.symbol: unit for unit in Unit}.get(text)
    if unit is None:
        raise refusal(f"{quoted(written)} is not what cloth is priced by", "write yd or m")
    return unit


def _kind(written: object) -> Kind:
    if isinstance(written, Kind):
        return written
    known = {kind.value: kind for kind in Kind}
    text = " ".join(str(written).split()).lower()
    if text not in known:
        raise refusal(f"{quoted(written)} is not a kind of item", nearest(text, known))
    return known[text]


def _put_up(written: object, info: ValidationInfo) -> PutUp:
    found: PutUp = reading(lambda text: read_put_up(text, unit_of(info)))(written)
    return found


def _currency(written: object) -> str:
    text = str(written).strip()
    if not re.fullmatch(r"[A-Z]{3}", text):
        raise refusal(f"{quoted(written)} is not a currency", "write its ISO 4217 code, as in USD")
    return text


def _from_quantity(written: object, info: ValidationInfo) -> Length | int:
    """A price break is a length where the shop cuts to length, and a count elsewhere."""
    text = "" if isinstance(written, Length) else text_of(written)
    if text.isascii() and text.isdigit():
        if len(text) > 9:
            raise refusal(f"{quoted(written)} is more than any shop sells", "check the number")
        return int(text)
    found: Length = reading(lambda value: read_length(value, unit_of(info)))(written)
    return found


def _named_value(names: type[EnumT]) -> Callable[[object], EnumT | None]:
    """A reader of one of an enumeration's words; an empty cell of a table is None."""

    def read(written: object) -> EnumT | None:
        if written is None or isinstance(written, names):
            return written
        text = text_of(written)
        known = {str(one.value): one for one in names}
        if text and text not in known:
            raise refusal(f"{quoted(written)} is not known here", nearest(text, known))
        return known.get(text)

    return read


WeightField = Annotated[Weight | None, BeforeValidator(_named_value(Weight))]
WashField = Annotated[Wash | None, BeforeValidator(_named_value(Wash))]
KindField = Annotated[Kind, BeforeValidator(_kind)]
YesOrNo = Annotated[
    bool,
    BeforeValidator(_yes_or_no),
    WithJsonSchema({"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]}),
]
Currency = Annotated[str, BeforeValidator(_currency)]
PutUpField = Annotated[
    PutUp,
    BeforeValidator(_put_up),
    WithJsonSchema({"type": "string", "description": 'As in "pack of 6" or "card of 3 yd".'}),
]


class Item(Entry):
    """A thing that shops sell. ``repeat`` is along the length: a print's, or a scallop's.

    ``repeat_across`` is that of a plaid.
    """

    item: Name
    name: Name
    kind: KindField
    colour: Note = ""
    fibres: Note = ""
    care: WashField = None
    fusible: YesOrNo = False
    knit: YesOrNo = False
    weight: WeightField = None
    nap: YesOrNo = False
    repeat: Size | None = None
    repeat_across: Size | None = None
    selvedge: Allowance | None = None
    shrinkage_length: Shrinkage = Fraction(0)
    shrinkage_width: Shrinkage = Fraction(0)
    notes: Note = ""


class Offer(Entry):
    """One way to buy an item: a width or put-up at a shop, its selling step and its price.

    ``length`` is that of one (a zip, a lace); ``price`` is for one put-up, or for the length unit
    ``per`` where the shop cuts to length. Widths are nominal; ``usable`` overrides. ``bolt`` is the
    longest length in one. ``shelf`` is where it lies in the shop.
    """

    item: Name
    shop: Note = ""
    shelf: Note = ""
    width: Size | None = None
    usable: Size | None = None
    bolt: Size | None = None
    length: Size | None = None
    put_up: PutUpField = BY_THE_LENGTH
    step: Size | None = None
    minimum: Size | None = None
    from_quantity: Annotated[Length | int, BeforeValidator(_from_quantity)] | None = None
    price: Money | None = None
    per: Annotated[Unit, BeforeValidator(_per)] | None = None
    currency: Currency = ""

    @model_validator(mode="after")
    def _hangs_together(self) -> Offer:
        if self.put_up.cut_to_length and self.price is not None and self.per is None:
            raise refusal("the price says not for what length", "fill in per, with yd or m")
        if not self.put_up.cut_to_length and (self.per or self.step or self.minimum or self.bolt):
            raise refusal(
                "per, step, minimum and bolt are for what is cut to length, "
                f"not '{self.put_up.word}'",
                "leave them empty",
            )
        if self.usable and self.width and self.usable > self.width:
            raise refusal("the usable width is more than the width", "write the smaller as usable")
        if isinstance(self.from_quantity, int) is self.put_up.cut_to_length and self.from_quantity:
            raise refusal(
                "from_quantity is not counted as the offer is",
                "write a length where the shop cuts to length, a number of packs elsewhere",
            )
        if self.price is not None and not self.currency:
            raise refusal("the price has no currency", "fill in currency, as in USD")
        return self

    @property
    def sold_by(self) -> Unit:
        """Yards or metres, for what is cut to length."""
        measured = self.per or Unit.YD
        return measured.shop

    @property
    def selling_step(self) -> Length:
        """By what a cut length is raised."""
        return self.step or selling_step(self.sold_by)

    @property
    def price_per_sold_unit(self) -> Decimal | None:
        """The price of one yard or metre, or of one put-up."""
        if self.price is None or self.per is None:
            return self.price
        share = self.sold_by.length / self.per.length
        return self.price * share.numerator / share.denominator


class Shop(Entry):
    """A shop, and its ``charge`` in the catalog's currency: for a visit there, or a delivery."""

    name: Name
    charge: Money = Decimal(0)
    note: Note = ""


@dataclass(frozen=True, slots=True)
class Catalog:
    """Items by their name in the catalog, and the offers for each; one currency throughout.

    ``shops`` are those of which more is known than their offers.
    """

    items: Mapping[str, Item]
    offers: Mapping[str, tuple[Offer, ...]]
    currency: str = ""
    shops: tuple[Shop, ...] = ()

    @property
    def shop_names(self) -> tuple[str, ...]:
        """The shops that the offers name."""
        return tuple(
            dict.fromkeys(one.shop for rows in self.offers.values() for one in rows if one.shop)
        )


NO_CATALOG = Catalog({}, {})
