"""The line of every value of a TOML file, however oddly it is written."""

import tomllib

from hypothesis import given
from hypothesis import strategies as st

from estimator.faults import Path, Places
from estimator.readers.places import lines_of

TRICKY = """\
# a comment before everything
title = "a [piece] in text # and no comment"

[garment]   # the heading
name = '''
two
lines'''
unit.of."plan" = "in"

[[piece]]
name = "panel"
edges.bottom = "hem 1"
edges."neck line" = { finish = "raw", length = "14" }
takes_up = [
  # a comment inside
  { kind = "tuck", depth = "1/4" },  # one

  { kind = "dart", depth = "1" },
]

[piece.note]
text = "of the first piece"

[[piece.layer]]
fabric = "print"

[[piece.layer]]
fabric = "lining"

[[piece]]
'name' = "tie"
"cut" = [["a", "b"],
         ["c"]]

[[piece.layer]]
fabric = "net"
"""


def line(*path: str | int) -> int:
    return lines_of(TRICKY.encode())[path]


def test_keys_before_any_heading_have_their_lines() -> None:
    assert line("title") == 2


def test_a_table_stands_at_its_heading() -> None:
    assert line("garment") == 4
    assert line("piece", 0) == 10
    assert line("piece", 1) == 30


def test_a_list_of_tables_stands_at_its_first_heading() -> None:
    assert line("piece") == 10


def test_a_text_over_several_lines_stands_where_it_starts() -> None:
    assert line("garment", "name") == 5


def test_dotted_and_quoted_keys_have_their_lines() -> None:
    assert line("garment", "unit", "of", "plan") == 8
    assert line("piece", 0, "edges", "bottom") == 12
    assert line("piece", 0, "edges", "neck line") == 13
    assert line("piece", 1, "name") == 31


def test_keys_of_an_inline_table_have_their_lines() -> None:
    assert line("piece", 0, "edges", "neck line", "length") == 13


def test_each_entry_of_a_list_over_several_lines_has_its_own() -> None:
    assert line("piece", 0, "takes_up") == 14
    assert line("piece", 0, "takes_up", 0) == 16
    assert line("piece", 0, "takes_up", 0, "depth") == 16
    assert line("piece", 0, "takes_up", 1, "kind") == 18


def test_lists_within_lists_have_their_lines() -> None:
    assert line("piece", 1, "cut", 0, 1) == 32
    assert line("piece", 1, "cut", 1, 0) == 33


def test_a_table_under_a_list_belongs_to_the_entry_before_it() -> None:
    assert line("piece", 0, "note", "text") == 22
    assert line("piece", 0, "layer", 1, "fabric") == 28
    assert line("piece", 1, "layer", 0, "fabric") == 36


def test_a_value_without_a_place_takes_its_parents() -> None:
    places = Places("plan.toml", lines_of(TRICKY.encode()))
    assert places.of(("piece", 0, "edges", "bottom", "finish")) == "plan.toml, line 12"
    assert places.of(("piece", 1, "width")) == "plan.toml, line 30"
    assert places.of(("nothing", "known")) == "plan.toml, line 1"


def test_a_path_is_told_in_words_where_no_file_was_read() -> None:
    assert Places().of(("piece", 0, "edges", "bottom")) == "piece 1 edges bottom"


def paths_in(value: object, path: Path = ()) -> set[Path]:
    found = {path}
    if isinstance(value, dict):
        found |= {one for key, inner in value.items() for one in paths_in(inner, (*path, key))}
    if isinstance(value, list):
        found |= {one for at, inner in enumerate(value) for one in paths_in(inner, (*path, at))}
    return found


def test_every_value_that_the_reader_finds_has_a_line_or_a_parent_with_one() -> None:
    # Only the tables that dotted keys imply have no line of their own.
    implied = {("garment", "unit"), ("garment", "unit", "of"), ("piece", 0, "edges"),
               ("piece", 0, "layer"), ("piece", 1, "layer")}  # fmt: skip
    unplaced = paths_in(tomllib.loads(TRICKY)) - set(lines_of(TRICKY.encode()))
    assert unplaced <= implied


keys = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=6)


@given(st.lists(keys, min_size=1, max_size=6, unique=True))
def test_any_key_in_quotes_has_its_line(names: list[str]) -> None:
    quoted = [name.replace("\\", "\\\\").replace('"', '\\"') for name in names]
    text = "[t]\n" + "".join(f'"{name}" = 1\n' for name in quoted)
    assert list(tomllib.loads(text)["t"]) == names
    for number, name in enumerate(names, start=2):
        assert lines_of(text.encode())[("t", name)] == number
