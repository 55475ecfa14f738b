"""Field types shared by the plan and the catalog: each reads what a person wrote, or refuses it.

The unit of a bare number comes with pydantic's validation context: ``{"unit": Unit.IN}``. In a
catalog there is none, and each length must carry its own. ``{"measures": {...}}`` holds the named
measures from which a size may come.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    StringConstraints,
    ValidationInfo,
    WithJsonSchema,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import PydanticCustomError

from estimator.arithmetic import length_from
from estimator.measure import LONGEST, ZERO, Length, Unit
from estimator.quoting import NotReadable, one_line, quoted, text_of
from estimator.written import read_length, read_money, read_share


class Entry(BaseModel):
    """A frozen table of a plan or row of a catalog; unknown keys are refused."""

    # built when first used: a plan without trims does not wait for theirs
    model_config = ConfigDict(
        frozen=True, extra="forbid", arbitrary_types_allowed=True, defer_build=True
    )


def or_bare(schema: JsonSchemaValue, bare: JsonSchemaValue) -> JsonSchemaValue:
    """The JSON schema of an entry that may be written short: as its table, or as ``bare``."""
    return {"anyOf": [schema, bare]}


def refusal(wrong: str, right: str) -> PydanticCustomError:
    """A complaint that pydantic carries to the reader with its remedy."""
    return PydanticCustomError("refused", "{wrong}", {"wrong": wrong, "right": right})


def reading(read: Callable[[object], Any]) -> Callable[[object], Any]:
    """A reader of written amounts as a validator: its NotReadable becomes a refusal."""

    def validate(written: object) -> Any:
        try:
            return read(written)
        except NotReadable as problem:
            raise refusal(problem.wrong, problem.right) from None

    return validate


def unit_of(info: ValidationInfo) -> Unit | None:
    """The unit of bare numbers in what is being read, or None where each must carry its own."""
    unit = (info.context or {}).get("unit")
    return unit if isinstance(unit, Unit) else None


def _size(written: object, info: ValidationInfo) -> Length:
    """A length, or ``{ from = "waist / 4 + 1 in" }``: reckoned from the wearer's measures."""
    if isinstance(written, Mapping):
        context = info.context or {}
        unread = context.get("unread_measures", frozenset())
        return _from_measure(written, context.get("measures", {}), unread, unit_of(info))
    try:
        return _length(written, info)
    except PydanticCustomError as problem:
        measures = (info.context or {}).get("measures", {})
        right = _as_from(written, measures, unit_of(info))
        if not right or problem.context is None:
            raise
        raise refusal(problem.context["wrong"], right) from None


def _as_from(written: object, measures: Mapping[str, Length], unit: Unit | None) -> str:
    """What would be right where a measure is named in the place of a size; else nothing.

    A last number without a unit may be a length that lacks it: ``waist + 10``.
    """
    text = one_line(written) if isinstance(written, str) and '"' not in written else ""
    if not measures or not named_in(text, measures):
        return ""
    for sum_ in (text, f"{text} {unit.symbol if unit else ''}"):
        try:
            length_from(sum_, measures, unit)
        except NotReadable:
            continue
        return f'write {{ from = "{sum_}" }}'
    return f'write it like {{ from = "{named_in(text, measures)[0]} / 4 + 1 in" }}'


def _length(written: object, info: ValidationInfo) -> Length:
    found: Length = reading(lambda text: read_length(text, unit_of(info)))(written)
    return found


def _from_measure(
    written: Mapping[str, object],
    measures: Mapping[str, Length],
    unread: frozenset[str],
    unit: Unit | None,
) -> Length:
    text = written.get("from")
    if set(written) != {"from"} or not isinstance(text, str):
        raise refusal("a size that is a table holds one key, from", 'write { from = "waist" }')
    for name in named_in(text, {*measures, *unread}) if unread else ():
        if name in unread:
            raise refusal(f"the measure {quoted(name)} could not be read", "put the measure right")
    found: Length = reading(lambda sum_: length_from(str(sum_), measures, unit))(text)
    if found > LONGEST:
        raise refusal(f"{quoted(text)} comes to more than 10 km", "check the numbers in it")
    return found


def named_in(text: str, names: Collection[str]) -> list[str]:
    """The measures that an arithmetic names, the longest name first where one holds another."""
    longest_first = sorted(names, key=lambda name: (-len(name), name))
    return re.findall(rf"(?<!\w)(?:{'|'.join(map(re.escape, longest_first))})(?!\w)", text)


def _more_than_zero(length: Length) -> Length:
    if length <= ZERO:
        raise refusal("the length is zero", "write a length of more than zero")
    return length


def _positive_size(written: object, info: ValidationInfo) -> Length:
    return _more_than_zero(_size(written, info))


def _less_than_all(share: Fraction) -> Fraction:
    if share >= 1:
        raise refusal("a share of 100 % or more leaves nothing", "write less than 100 %")
    return share


def _whole_number(written: object) -> int:
    if isinstance(written, str) and written.strip().isascii() and written.strip().isdigit():
        written = int(written[:12])
    if isinstance(written, bool) or not isinstance(written, int):
        raise refusal(f"{quoted(written)} is not a whole number", "write a whole number, as in 4")
    if not 1 <= written <= 100_000:
        told = quoted(written).strip("'")
        raise refusal(f"{told} is not from 1 to 100000", "write how many there are")
    return written


MOST_FULLNESS = 20


def _fullness(written: object) -> Fraction:
    """From 1 to 20: how many times an edge a trim that is gathered takes."""
    amount = _times_an_edge(written)
    if not 1 <= amount <= MOST_FULLNESS:
        raise refusal(f"a fullness of {quoted(written)} is not from 1 to 20", "2 is usual")
    return amount


def _fullness_onto(written: object) -> Fraction:
    """From 0.1 to 20; less than 1 where the edge is gathered onto the piece, as onto a cuff."""
    amount = _times_an_edge(written)
    if not Fraction(1, 10) <= amount <= MOST_FULLNESS:
        raise refusal(
            f"a fullness of {quoted(written)} is not from 0.1 to 20",
            "2 is usual for a ruffle, 0.5 for a cuff onto a gathered sleeve",
        )
    return amount


def _times_an_edge(written: object) -> Fraction:
    """The digits are counted first: a Fraction of 1e99999999 takes for ever."""
    text = text_of(written)
    if not re.fullmatch(r"\d{1,3}([.,]\d{1,4})?|\d{1,3}/0*[1-9]\d{0,2}", text, re.ASCII):
        raise refusal(f"{quoted(written)} is not a number", "write fullness as in 2 or 1.5")
    return Fraction(text.replace(",", "."))


def _one_line(written: object) -> object:
    """Text on one line: line breaks and runs of blanks are one blank."""
    return one_line(written) if isinstance(written, str) else written


def as_written(description: str, *, table: dict[str, Any] | None = None) -> WithJsonSchema:
    """How a field that reads what people write stands in the JSON schema: text, or a bare number.

    ``table`` is the schema of what else may be written.
    """
    forms: list[dict[str, Any]] = [{"type": "string"}, {"type": "number"}]
    return WithJsonSchema({"anyOf": forms + ([table] if table else []), "description": description})


_FROM_A_MEASURE = {
    "type": "object",
    "properties": {"from": {"type": "string"}},
    "required": ["from"],
    "additionalProperties": False,
}
_SHARE = as_written('A percentage, as in "5 %".')
_FULLNESS = as_written("How many times the edge that it is gathered onto, as in 2 or 1.5.")

Size = Annotated[
    Length,
    BeforeValidator(_positive_size),
    as_written(
        'A length of more than zero, as in "17 1/2", "44.5 cm" or { from = "waist / 4" }.',
        table=_FROM_A_MEASURE,
    ),
]
"""A length of more than zero, or one that comes from a named measure."""
SizeOrPoint = Annotated[
    Length,
    BeforeValidator(_size),
    as_written(
        'A length, as in "17 1/2", or { from = "waist / 4" }; zero where the piece comes to a '
        "point.",
        table=_FROM_A_MEASURE,
    ),
]
"""The width of an end of a piece: a size, or zero where it comes to a point."""
Allowance = Annotated[
    Length, BeforeValidator(_length), as_written('A length that may be zero, as in "5/8".')
]
"""A length that may be zero."""
Share = Annotated[Fraction, BeforeValidator(reading(read_share)), _SHARE]
Shrinkage = Annotated[
    Fraction, BeforeValidator(lambda written: _less_than_all(reading(read_share)(written))), _SHARE
]
Money = Annotated[
    Decimal, BeforeValidator(reading(read_money)), as_written("An amount of money, as in 8.50.")
]
Count = Annotated[
    int, BeforeValidator(_whole_number), as_written("A whole number from 1 to 100000.")
]
Fullness = Annotated[Fraction, BeforeValidator(_fullness), _FULLNESS]
FullnessOnto = Annotated[Fraction, BeforeValidator(_fullness_onto), _FULLNESS]
Name = Annotated[str, BeforeValidator(_one_line), StringConstraints(min_length=1, max_length=200)]
Note = Annotated[str, BeforeValidator(_one_line), StringConstraints(max_length=2000)]
