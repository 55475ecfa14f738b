"""The sheets of a form and their columns, as they follow from the tables of a plan."""

from __future__ import annotations

import re
import types
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from enum import Enum
from fractions import Fraction
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BeforeValidator
from pydantic.fields import FieldInfo

from estimator.edges import SIDES, EdgeFinish, EdgeRef
from estimator.fields import Entry
from estimator.form.cells import Kind
from estimator.form.words import CHOICES, COMMON, USUAL, Words, title_of, words_of
from estimator.measure import Length, Unit
from estimator.plan import Edge, Plan
from estimator.plan.garment import GARMENT_UNITS

KeyPath = tuple[str | int, ...]
YES_NO = ("yes", "no")
FINISHES = (
    "seam", "hem 1", "hem 1 double", "rolled hem", "casing 1", "turned under", "serged", "faced",
    "selvedge", "fold", "raw",
)  # fmt: skip
REMARKS = "Remarks"
"""A column of every sheet for people; it is not read."""
GIVEN, YOURS = "What", "Yours"
"""The headings of a sheet that has a row for each key."""
HOW_TO, LISTS = "How to fill in", "Choices"
OTHER_SHEETS = {HOW_TO.casefold(), LISTS.casefold()}
OWN_SHEETS = "notes"
"""Sheets whose name begins so are a person's own, and not read."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column: the key of an entry that it holds (``("edges", "top")``), and how it is written.

    ``choices`` are all that it may hold if it is ``closed``, else examples. ``listed`` says that a
    list is meant even where the cell holds one name; of a list whose entries may tell more on a
    sheet of theirs, ``inner`` is the key that stands here. ``of_edges`` says that it names edges.
    """

    path: KeyPath
    kind: Kind
    words: Words
    choices: tuple[str, ...] = ()
    closed: bool = False
    listed: bool = False
    inner: str = ""
    of_edges: bool = False
    common: bool = True

    @property
    def heading(self) -> str:
        """What stands above it."""
        return self.words.heading

    @property
    def example(self) -> str:
        """What may stand in it; a size has its unit, for the form may be in another."""
        example = self.words.example
        bare = self.kind is Kind.SIZE and re.fullmatch(r"[\d /]+", example)
        return f"{example} {Unit.IN.symbol}" if bare else example

    @property
    def names(self) -> tuple[str, str]:
        """What its heading may be, in small letters: the form's own word, or the plan's key."""
        return self.heading.casefold(), ".".join(map(str, self.path))


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of the form: the entries of one table, or what they hold in one of their keys.

    A sheet of a key belongs to entries of the tables in ``parents``; each of its rows names one.
    ``bare`` is the key of an entry that may stand for the whole of it, and ``by_name`` says that
    the rows are told apart by names of their own and not by their order; ``single`` that an entry
    has no more than one.
    """

    title: str
    keys: tuple[str, ...]
    columns: tuple[Column, ...]
    upright: bool = False
    parents: tuple[str, ...] = ()
    bare: str = ""
    by_name: bool = False
    single: bool = False
    own: tuple[Column, ...] = field(default=())

    @property
    def of_entries(self) -> bool:
        """Whether its rows belong to entries of other sheets."""
        return bool(self.parents)

    @property
    def of_measures(self) -> bool:
        """Whether its rows are names with a size each."""
        return self.keys == ("measures",)

    @property
    def all_columns(self) -> tuple[Column, ...]:
        """The columns that say whose a row is, and then those of the row itself."""
        return (*self.own, *self.columns)


TABLE_OF = Column(("table",), Kind.TEXT, Words("Table", "of which sheet the thing is", "trim"))


@cache
def plan_sheets() -> tuple[Sheet, ...]:
    """Every sheet of a plan's form, in the order of the plan's tables."""
    top: list[Sheet] = []
    inner: dict[tuple[str, type[Entry]], Sheet] = {}
    for key, info in Plan.model_fields.items():
        model = _entry_in(info.annotation)
        if model is None:
            name = Column(("name",), Kind.TEXT, words_of(key, ("name",)))
            size = Column(("size",), Kind.SIZE, words_of(key, ("size",)))
            top.append(Sheet(title_of(key), (key,), (name, size)))
            continue
        upright = not _many(info.annotation)
        top.append(Sheet(title_of(key), (key,), tuple(_columns(key, model)), upright))
        for inner_key, inner_info in model.model_fields.items():
            entry = _entry_in(inner_info.annotation)
            if entry is None or upright:
                continue
            known = inner.get((inner_key, entry))
            if known:
                whose = (*known.parents, key)
                inner[(inner_key, entry)] = replace(
                    known, parents=whose, own=_whose(whose), title=title_of(inner_key)
                )
                continue
            by_name = _named(inner_info.annotation)
            columns = tuple(_columns(entry.__name__.lower(), entry))
            if by_name:
                words = words_of(entry.__name__.lower(), (inner_key,))
                columns = (Column(("",), Kind.TEXT, words), *columns)
            title = title_of(key, inner_key)
            inner[(inner_key, entry)] = Sheet(
                title, (key, inner_key), columns, parents=(key,), bare=bare_key(entry),
                by_name=by_name, single=not by_name and not _many(inner_info.annotation),
                own=_whose((key,)),
            )  # fmt: skip
    return tuple(_after_their_parents(top, list(inner.values())))


def _after_their_parents(top: list[Sheet], inner: list[Sheet]) -> Iterator[Sheet]:
    for sheet in top:
        yield sheet
        yield from (one for one in inner if one.parents[-1] == sheet.keys[0])


def _whose(parents: tuple[str, ...]) -> tuple[Column, ...]:
    """The columns that name the entry to which a row belongs."""
    if len(parents) == 1:
        words = Words(parents[0].capitalize(), f"its name on the sheet {title_of(parents[0])}")
        return (Column((parents[0],), Kind.TEXT, words),)
    table = replace(TABLE_OF, choices=parents, closed=True)
    return (table, Column(("name",), Kind.TEXT, Words("Name", "of the thing, on its own sheet")))


def _columns(table: str, model: type[Entry]) -> Iterator[Column]:
    """The columns of an entry, those that most people need first."""
    found = [one for key, info in model.model_fields.items() for one in _of_key(table, key, info)]
    common = COMMON.get(table, ())
    keys = {".".join(map(str, one.path)): one for one in found}
    first = [keys[key] for key in common if key in keys]
    yield from first
    yield from (replace(one, common=not common) for one in found if one not in first)


def _of_key(table: str, key: str, info: FieldInfo) -> Iterator[Column]:
    """The columns of one key: one, or one a side for edges and for a pair."""
    entry = _entry_in(info.annotation)
    if entry is Edge:
        for side in SIDES:
            path = ("edges", side)
            yield Column(path, Kind.AMOUNT, words_of(table, path), FINISHES)
        if table != "piece":
            words = Words("Other edges", 'as in { neckline = { length = "15" } }')
            yield Column(("edges",), Kind.TABLE, words)
        return
    words = words_of(table, (key,))
    if entry is not None:
        if _many(info.annotation) and bare_key(entry):
            yield Column((key,), Kind.LIST, words, listed=True, inner=bare_key(entry))
        elif _depth_of(table) > 0:
            yield Column((key,), Kind.TABLE, words)
        return
    pair = _pair(info.annotation)
    if pair:
        for number in range(pair):
            words = words_of(table, (key, number))
            yield Column((key, number), Kind.LIST, words, of_edges=True)
        return
    choices = CHOICES.get(f"{table}.{key}") or choices_of(info.annotation)
    kind = _kind(info.annotation)
    listed = kind is Kind.LIST and not _reads_one(info.annotation, info.metadata)
    closed = bool(choices)
    choices = choices or USUAL.get(f"{table}.{key}", ())
    of_edges = kind is Kind.EDGE or _of_edges(info.annotation)
    yield Column((key,), kind, words, choices, closed, listed, of_edges=of_edges)


def _reads_one(annotation: Any, metadata: Sequence[Any] = ()) -> bool:
    """Whether a key has a reader of its own, which takes one name where there may be several."""
    if any(isinstance(one, BeforeValidator) for one in metadata):
        return True
    if get_origin(annotation) is Annotated:
        return _reads_one(get_args(annotation)[0], get_args(annotation)[1:])
    if get_origin(annotation) in (Union, types.UnionType):
        return any(map(_reads_one, get_args(annotation)))
    return False


def _depth_of(table: str) -> int:
    """0 for a table of the plan, whose entries' tables have sheets of their own; else 1."""
    return 0 if table in Plan.model_fields and table != "garment" else 1


def bare_key(model: type[Entry]) -> str:
    """The key that a text in the place of a whole entry is about: a cut's fabric; else nothing."""
    for name, decorator in model.__pydantic_decorators__.model_validators.items():
        if decorator.info.mode == "before":
            made = getattr(model, name)("x")
            if isinstance(made, dict):
                return next(str(key) for key, value in made.items() if value == "x")
    return ""


def _parts(annotation: Any) -> Iterator[Any]:
    """The types of which an annotation is made up, without Annotated, unions and None."""
    origin = get_origin(annotation)
    if origin is Annotated:
        yield from _parts(get_args(annotation)[0])
    elif origin in (Union, types.UnionType):
        for one in get_args(annotation):
            yield from _parts(one)
    elif annotation is not type(None):
        yield annotation


def _entry_in(annotation: Any) -> type[Entry] | None:
    """The table that an annotation holds: itself, in a tuple, or in a dictionary by names."""
    for part in _parts(annotation):
        if isinstance(part, type) and issubclass(part, Entry):
            return part
        if get_origin(part) in (tuple, dict):
            for one in get_args(part):
                if one is not Ellipsis and (found := _entry_in(one)):
                    return found
    return None


def _many(annotation: Any) -> bool:
    return any(get_origin(part) is tuple for part in _parts(annotation))


def _named(annotation: Any) -> bool:
    return any(get_origin(part) is dict for part in _parts(annotation))


def _pair(annotation: Any) -> int:
    """How many places a tuple has of which each holds several; 0 for anything else."""
    for part in _parts(annotation):
        if get_origin(part) is tuple and Ellipsis not in get_args(part):
            places = get_args(part)
            return len(places) if all(_many(place) for place in places) else 0
    return 0


def _of_edges(annotation: Any) -> bool:
    """Whether a list is one of edges, or of edges and the names of seams."""
    inner = [one for part in _parts(annotation) if get_origin(part) is tuple
             for place in get_args(part) for one in _parts(place)]  # fmt: skip
    return EdgeRef in inner


def choices_of(annotation: Any) -> tuple[str, ...]:
    """All that a key may say, where that is a short list of words."""
    for part in _parts(annotation):
        if get_origin(part) is Literal:
            return tuple(map(str, get_args(part)))
        if part is bool:
            return YES_NO
        if isinstance(part, type) and issubclass(part, Enum):
            values = tuple(one.value for one in part)
            return values if all(isinstance(one, str) for one in values) else tuple(GARMENT_UNITS)
    return ()


def _kind(annotation: Any) -> Kind:
    for part in _parts(annotation):
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
