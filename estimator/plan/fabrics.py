"""The fabric tables of a plan."""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import Enum
from typing import Any, Literal

from pydantic import GetJsonSchemaHandler, model_validator
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from estimator.catalog import WashField, WeightField, YesOrNo
from estimator.fields import (
    Allowance,
    Entry,
    Name,
    Note,
    Share,
    Shrinkage,
    Size,
    or_bare,
    refusal,
)
from estimator.measure import Unit
from estimator.prices import PriceField
from estimator.quoting import NotReadable, quoted
from estimator.written import read_length

LayoutWish = Literal["straight rows", "least fabric"]
"""Whether rows are insisted on, or a close layout is taken where it buys less."""


Laid = Literal["open", "folded"]
"""Whether the fabric is laid in one layer, or doubled lengthwise and cut in pairs."""


class Role(Enum):
    """What a fabric does in the garment; decides where it stands on the list."""

    MAIN = "main"
    CONTRAST = "contrast"
    LINING = "lining"
    UNDERLINING = "underlining"
    INTERLINING = "interlining"
    INTERFACING = "interfacing"
    STIFFENING = "stiffening"
    NET = "net"


def _refuse_several(written: str) -> None:
    """Refuses widths that stand in one text with commas between; a decimal comma is none."""
    parts = re.split(r",\s+|(?<=[^\W\d]),", written.strip())
    if len(parts) > 1 and all(map(_is_length, parts)):
        listed = ", ".join(f'"{one.strip()}"' for one in parts)
        raise refusal(f"{quoted(written)} is several widths", f"write widths = [{listed}]")


def _is_length(text: str) -> bool:
    try:
        read_length(text, Unit.IN)
    except NotReadable:
        return False
    return '"' not in text


class Width(Entry):
    """One width at which a fabric may be had, where the plan itself says what is on offer."""

    width: Size
    usable: Size | None = None
    bolt: Size | None = None
    price: PriceField | None = None

    @model_validator(mode="before")
    @classmethod
    def _bare_length(cls, written: Any) -> Any:
        if isinstance(written, str):
            _refuse_several(written)
        return written if isinstance(written, Mapping) else {"width": written}

    @classmethod
    def __get_pydantic_json_schema__(
        cls, core: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return or_bare(handler(core), {"type": ["string", "number"]})


class Fabric(Entry):
    """A fabric: an item of the catalog (``buy``), or described here by the ``widths`` it has."""

    name: Name
    role: Role = Role.MAIN
    buy: Name | None = None
    colour: Note = ""
    width: Size | None = None
    widths: tuple[Width, ...] = ()
    usable: Size | None = None
    selvedge: Allowance | None = None
    price: PriceField | None = None
    step: Size | None = None
    minimum: Size | None = None
    bolt: Size | None = None
    shrinkage: Shrinkage | None = None
    shrinkage_across: Shrinkage | None = None
    nap: YesOrNo | None = None
    one_dye_lot: YesOrNo = False
    repeat: Allowance | None = None
    repeat_across: Allowance | None = None
    straightening: Allowance | None = None
    waste: Share | None = None
    layout: LayoutWish | None = None
    laid: Laid | None = None
    fibres: Note = ""
    care: WashField = None
    fusible: YesOrNo | None = None
    knit: YesOrNo | None = None
    weight: WeightField = None
    note: Note = ""
