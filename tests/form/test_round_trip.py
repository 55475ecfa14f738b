"""A plan written as a form and read back is the same plan: nothing of it is lost."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel

from estimator.edges import SIDES, EdgeRef
from estimator.form.filled import filled_rows
from estimator.form.sheets import GIVEN, YOURS, plan_sheets
from estimator.measure import Length, Unit
from estimator.plan import Cut, Edge, Plan, Seam, Width
from estimator.readers.plan_workbook import tables_from_sheets
from estimator.readers.workbooks import Cell, CellSheet

Raw = dict[str, Any]


def sheets_of(raw: Raw) -> list[CellSheet]:
    """The form of a plan as its cells, without a file between."""
    rows = filled_rows(raw)
    sheets = []
    for sheet in plan_sheets():
        cells: dict[tuple[int, int], Cell] = {}
        if sheet.upright:
            cells |= {(1, 1): Cell(GIVEN), (1, 2): Cell(YOURS)}
            (values,) = rows[sheet.title]
            for row, column in enumerate(sheet.columns, start=2):
                cells[(row, 1)] = Cell(column.heading)
                if column in values.cells:
                    cells[(row, 2)] = Cell(values.cells[column])
        else:
            for number, column in enumerate(sheet.all_columns, start=1):
                cells[(1, number)] = Cell(column.heading)
                for row, entry in enumerate(rows[sheet.title], start=2):
                    if column in entry.cells:
                        cells[(row, number)] = Cell(entry.cells[column])
        sheets.append(CellSheet("plan.xlsx", sheet.title, cells))
    return sheets


MARKS = [
    "a",
    "B",
    ";",
    '"',
    "=1+1",
    "{",
    "[x]",
    "from waist",
    "12",
    "½",
    " ",
    "ש",
    "🧵",
    "'",
    ",",
    "-",
]
names = st.lists(st.sampled_from(MARKS), min_size=1, max_size=4).map(
    lambda parts: " ".join("".join(parts).split()) or "x"
)
sizes = st.sampled_from(
    ["17 1/2", "44,5 cm", '½"', "1 yd 4 in", "12", {"from": "waist / 2 + 1 in"}]
)
amounts = st.sampled_from(["5 %", "8.50 per yd", "2.40 each", "card of 3 yd", 2, 1.5, "1/4"])
edges_named = st.builds(lambda a, b: f"{a}: {b}", st.sampled_from(["p", "1 x q;", '"r"']),
                        st.sampled_from(SIDES))  # fmt: skip
finishes = st.sampled_from(["hem 1 1/4", "hem 1 1/4 + 1/2", "raw", "seam 3/8"])


def parts(annotation: Any) -> Iterator[Any]:
    if get_origin(annotation) is Annotated:
        yield from parts(get_args(annotation)[0])
    elif get_origin(annotation) in (Union, UnionType):
        for one in get_args(annotation):
            yield from parts(one)
    elif annotation is not type(None):
        yield annotation


def values_of(model: type[BaseModel], key: str) -> st.SearchStrategy[Any]:
    """Whatever a person may write for a key, by the type of the key."""
    if (model, key) == (Seam, "edges"):
        side = edges_named | st.lists(edges_named, min_size=2, max_size=3)
        return st.tuples(side, side).map(list)
    kinds = list(parts(model.model_fields[key].annotation))
    kind = kinds[0]
    origin, inner = get_origin(kind), get_args(kind)
    if origin is dict:
        return st.dictionaries(st.sampled_from(SIDES), finishes | own_edges, max_size=3) if (
            model is Cut
        ) else st.dictionaries(st.sampled_from(SIDES), finishes | own_edges).flatmap(
            lambda sides: st.dictionaries(names.filter(lambda n: n not in SIDES), own_edges,
                                          max_size=2).map(lambda more: {**sides, **more})
        )  # fmt: skip
    if origin is tuple:
        entry = next(parts(inner[0]))
        if isinstance(entry, type) and issubclass(entry, BaseModel):
            return st.lists(entries(entry), min_size=1, max_size=3)
        several = names if entry is str else edges_named | names.filter(lambda one: ":" not in one)
        return several | st.lists(several, min_size=2, max_size=3)
    if origin is Literal:
        return st.sampled_from(inner)
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return entries(kind)
    if kind is Unit:
        return st.sampled_from(["in", "cm", "mm"])
    if kind is Length:
        return sizes
    if kind is EdgeRef:
        return edges_named
    if kind is bool:
        return st.sampled_from(["yes", "no"])
    if isinstance(kind, type) and issubclass(kind, Enum):
        return st.sampled_from([one.value for one in kind])
    if kind is int:
        return st.integers(0, 50)
    return names if kind is str else amounts


own_edges = st.fixed_dictionaries({"length": sizes}, optional={"finish": finishes})


def entries(model: type[BaseModel]) -> st.SearchStrategy[Any]:
    """Entries of a table with any of their keys, in the plainest way to write them."""
    bare = {Cut: "fabric", Width: "width"}.get(model)
    keys = {key: values_of(model, key) for key in model.model_fields}
    must = {key: keys.pop(key) for key in list(keys) if key == bare or key == "name"}
    if model is not Edge and not must:
        first = next(iter(keys))
        must[first] = keys.pop(first)
    made = st.fixed_dictionaries(must, optional=keys)
    if bare is None:
        return made
    return made.map(
        lambda one: one[bare] if set(one) == {bare} and isinstance(one[bare], str) else one
    )


def plans() -> st.SearchStrategy[Raw]:
    tables = {}
    for key, field in Plan.model_fields.items():
        (kind,) = parts(field.annotation)
        if get_origin(kind) is dict:
            tables[key] = st.dictionaries(names, sizes, max_size=3)
        elif get_origin(kind) is tuple:
            tables[key] = st.lists(
                entries(get_args(kind)[0]),
                max_size=3,
                unique_by=lambda one: str(one.get("name", id(one))).casefold(),
            )
        else:
            tables[key] = entries(kind)
    return st.fixed_dictionaries(tables)


def in_short(raw: Raw) -> Raw:
    """A plan without its empty tables, and ``"print"`` for ``{ fabric = "print" }``."""
    for key, inner, bare in (("fabric", "widths", "width"), ("piece", "cut", "fabric")):
        for entry in raw.get(key, []):
            if inner in entry:
                entry[inner] = [
                    one[bare] if isinstance(one, dict) and set(one) == {bare} else one
                    for one in entry[inner]
                ]
    for piece in raw.get("piece", []):
        if not piece.get("edges"):
            piece.pop("edges", None)
    return {key: value for key, value in raw.items() if value}


@settings(max_examples=60, deadline=None)
@given(plans())
def test_whatever_is_written_in_any_key_of_a_plan_comes_back_from_the_form(raw: Raw) -> None:
    found = tables_from_sheets(sheets_of(raw), "plan.xlsx")
    assert found.faults == found.unread == ()
    assert in_short(found.raw) == in_short(raw)
