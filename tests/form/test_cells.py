"""How values of a plan stand in cells, in the words of somebody who writes no TOML."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.faults import Wrong
from estimator.form.cells import Kind, cell_of, value_of


@pytest.mark.parametrize(
    ("value", "kind", "cell"),
    [
        ("17 1/2", Kind.SIZE, "17 1/2"),
        ({"from": "waist / 2 + 1 in"}, Kind.SIZE, "from waist / 2 + 1 in"),
        (["print", "lining"], Kind.LIST, "print; lining"),
        (["a; b", 'with "marks"', '"quoted"'], Kind.LIST, '"a; b"; with "marks"; """quoted"""'),
        (["=1+1", "{odd", "plain"], Kind.LIST, '=1+1; "{odd"; plain'),
        ("from waist", Kind.TEXT, "from waist"),
        ("{ odd }", Kind.TEXT, "{ odd }"),
        (4, Kind.COUNT, 4),
        (2.5, Kind.AMOUNT, 2.5),
        ("hem 1 1/4 double", Kind.AMOUNT, "hem 1 1/4 double"),
        ({"neckline": {"length": "15", "finish": "faced"}}, Kind.TABLE,
         '{ neckline = { length = "15", finish = "faced" } }'),
    ],
)  # fmt: skip
def test_a_value_stands_in_plain_words_and_is_read_back(
    value: Any, kind: Kind, cell: object
) -> None:
    assert cell_of(value, kind) == cell
    assert value_of(cell_of(value, kind), kind) == value


@pytest.mark.parametrize(
    ("written", "kind", "value"),
    [
        ("FROM waist", Kind.SIZE, {"from": "waist"}),
        (" print ;lining; ", Kind.LIST, ["print", "lining"]),
        ("print;\nlining", Kind.LIST, ["print", "lining"]),
        ("4", Kind.COUNT, 4),
        (20, Kind.TEXT, "20"),
        (44, Kind.LIST, ["44"]),
        ('["a", { fabric = "b" }]', Kind.LIST, ["a", {"fabric": "b"}]),
    ],
)
def test_what_a_person_types_is_read_as_it_is_meant(written: Any, kind: Kind, value: Any) -> None:
    assert value_of(written, kind) == value


def test_an_edge_that_is_a_table_is_written_as_a_text_where_one_reads_the_same() -> None:
    edge = {"piece": "front", "edge": "shoulder", "count": 2}
    assert cell_of([edge], Kind.LIST) == "2 x front: shoulder"
    assert cell_of(edge, Kind.EDGE) == "2 x front: shoulder"
    # of a piece named like a number of others the text would say something else
    odd = {"piece": "2 x front", "edge": "top"}
    assert value_of(cell_of(odd, Kind.EDGE), Kind.EDGE) == odd
    assert value_of(cell_of([odd, "a: b"], Kind.LIST), Kind.LIST) == [odd, "a: b"]


@pytest.mark.parametrize("cell", ["{", "[1,", "{ a = }", "{ a = 1 } b", "[" * 3000])
def test_braces_that_cannot_be_read_are_refused_with_an_example(cell: str) -> None:
    with pytest.raises(Wrong, match="cannot be read; write it like"):
        value_of(cell, Kind.TABLE)


texts = st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc", "Zl", "Zp"]))
names = texts.map(lambda text: " ".join(text.split())).filter(str.isprintable).filter(bool)


@given(st.lists(names, min_size=1))
def test_names_of_any_letters_come_back_from_one_cell(many: list[str]) -> None:
    assert value_of(cell_of(many, Kind.LIST), Kind.LIST) == many


nested = st.recursive(
    texts | st.integers(-10, 10) | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(texts, inner, max_size=3),
)


@given(st.dictionaries(texts, nested, max_size=4))
def test_tables_within_tables_come_back_from_one_cell(table: dict[str, Any]) -> None:
    assert value_of(cell_of(table, Kind.TABLE), Kind.TABLE) == table
