"""The sheets of a form and their columns, as they follow from the tables of a plan."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cache

from pydantic.fields import FieldInfo

from estimator.edges import SIDES
from estimator.fields import Entry
from estimator.form.cells import Kind
from estimator.form.key_types import (
    bare_key,
    choices_of,
    entry_in,
    is_many,
    is_named,
    kind_of,
    names_edges,
    places_of_several,
    reads_one,
)
from estimator.form.words import CHOICES, COMMON, USUAL, Words, title_of, words_of
from estimator.measure import Unit
from estimator.plan import Edge, Plan

KeyPath = tuple[str | int, ...]
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
        model = entry_in(info.annotation)
        if model is None:
            name = Column(("name",), Kind.TEXT, words_of(key, ("name",)))
            size = Column(("size",), Kind.SIZE, words_of(key, ("size",)))
            top.append(Sheet(title_of(key), (key,), (name, size)))
            continue
        upright = not is_many(info.annotation)
        top.append(Sheet(title_of(key), (key,), tuple(_columns(key, model)), upright))
        for inner_key, inner_info in model.model_fields.items():
            entry = entry_in(inner_info.annotation)
            if entry is None or upright:
                continue
            known = inner.get((inner_key, entry))
            if known:
                whose = (*known.parents, key)
                inner[(inner_key, entry)] = replace(
                    known, parents=whose, own=_whose(whose), title=title_of(inner_key)
                )
                continue
            by_name = is_named(inner_info.annotation)
            columns = tuple(_columns(entry.__name__.lower(), entry))
            if by_name:
                words = words_of(entry.__name__.lower(), (inner_key,))
                columns = (Column(("",), Kind.TEXT, words), *columns)
            title = title_of(key, inner_key)
            inner[(inner_key, entry)] = Sheet(
                title, (key, inner_key), columns, parents=(key,), bare=bare_key(entry),
                by_name=by_name, single=not by_name and not is_many(inner_info.annotation),
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
    entry = entry_in(info.annotation)
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
        if is_many(info.annotation) and bare_key(entry):
            yield Column((key,), Kind.LIST, words, listed=True, inner=bare_key(entry))
        elif _depth_of(table) > 0:
            yield Column((key,), Kind.TABLE, words)
        return
    pair = places_of_several(info.annotation)
    if pair:
        for number in range(pair):
            words = words_of(table, (key, number))
            yield Column((key, number), Kind.LIST, words, of_edges=True)
        return
    choices = CHOICES.get(f"{table}.{key}") or choices_of(info.annotation)
    kind = kind_of(info.annotation)
    listed = kind is Kind.LIST and not reads_one(info.annotation, info.metadata)
    closed = bool(choices)
    choices = choices or USUAL.get(f"{table}.{key}", ())
    of_edges = kind is Kind.EDGE or names_edges(info.annotation)
    yield Column((key,), kind, words, choices, closed, listed, of_edges=of_edges)


def _depth_of(table: str) -> int:
    """0 for a table of the plan, whose entries' tables have sheets of their own; else 1."""
    return 0 if table in Plan.model_fields and table != "garment" else 1
