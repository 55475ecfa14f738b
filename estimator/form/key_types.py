"""What the type of a plan's key says of it: tables or plain values, one or several, which words."""

from __future__ import annotations

import types
from collections.abc import Iterator, Sequence
from enum import Enum
from fractions import Fraction
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BeforeValidator

from estimator.edges import EdgeFinish, EdgeRef
from estimator.fields import Entry
from estimator.form.cells import Kind
from estimator.measure import Length
from estimator.plan.garment import GARMENT_UNITS

YES_NO = ("yes", "no")


def bare_key(model: type[Entry]) -> str:
    """The key that a text in the place of a whole entry is about: a cut's fabric; else nothing."""
    for name, decorator in model.__pydantic_decorators__.model_validators.items():
        if decorator.info.mode == "before":
            made = getattr(model, name)("x")
            if isinstance(made, dict):
                return next(str(key) for key, value in made.items() if value == "x")
    return ""


def parts_of(annotation: Any) -> Iterator[Any]:
    """The types of which an annotation is made up, without Annotated, unions and None."""
    origin = get_origin(annotation)
    if origin is Annotated:
        yield from parts_of(get_args(annotation)[0])
    elif origin in (Union, types.UnionType):
        for one in get_args(annotation):
            yield from parts_of(one)
    elif annotation is not type(None):
        yield annotation


def entry_in(annotation: Any) -> type[Entry] | None:
    """The table that an annotation holds: itself, in a tuple, or in a dictionary by names."""
    for part in parts_of(annotation):
        if isinstance(part, type) and issubclass(part, Entry):
            return part
        if get_origin(part) in (tuple, dict):
            for one in get_args(part):
                if one is not Ellipsis and (found := entry_in(one)):
                    return found
    return None


def is_many(annotation: Any) -> bool:
    """Whether there may be several of it, in an order."""
    return any(get_origin(part) is tuple for part in parts_of(annotation))


def is_named(annotation: Any) -> bool:
    """Whether there may be several of it, each under a name."""
    return any(get_origin(part) is dict for part in parts_of(annotation))


def places_of_several(annotation: Any) -> int:
    """How many places a tuple has of which each holds several; 0 for anything else."""
    for part in parts_of(annotation):
        if get_origin(part) is tuple and Ellipsis not in get_args(part):
            places = get_args(part)
            return len(places) if all(is_many(place) for place in places) else 0
    return 0


def names_edges(annotation: Any) -> bool:
    """Whether a list is one of edges, or of edges and the names of seams."""
    inner = [one for part in parts_of(annotation) if get_origin(part) is tuple
             for place in get_args(part) for one in parts_of(place)]  # fmt: skip
    return EdgeRef in inner


def choices_of(annotation: Any) -> tuple[str, ...]:
    """All that a key may say, where that is a short list of words."""
    for part in parts_of(annotation):
        if get_origin(part) is Literal:
            return tuple(map(str, get_args(part)))
        if part is bool:
            return YES_NO
        if isinstance(part, type) and issubclass(part, Enum):
            values = tuple(one.value for one in part)
            return values if all(isinstance(one, str) for one in values) else tuple(GARMENT_UNITS)
    return ()


def kind_of(annotation: Any) -> Kind:
    """How a cell of it is written."""
    for part in parts_of(annotation):
        if part is Length:
            return Kind.SIZE
        if part is EdgeRef:
            return Kind.EDGE
        if part is str:
            return Kind.TEXT
        if part is int:
            return Kind.COUNT
        if get_origin(part) is tuple:
            return Kind.LIST
        if part in (Fraction, EdgeFinish):
            return Kind.AMOUNT
    return Kind.AMOUNT


def reads_one(annotation: Any, metadata: Sequence[Any] = ()) -> bool:
    """Whether a key has a reader of its own, which takes one name where there may be several."""
    if any(isinstance(one, BeforeValidator) for one in metadata):
        return True
    if get_origin(annotation) is Annotated:
        return reads_one(get_args(annotation)[0], get_args(annotation)[1:])
    if get_origin(annotation) in (Union, types.UnionType):
        return any(map(reads_one, get_args(annotation)))
    return False
