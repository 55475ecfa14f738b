"""The stash as a shop keeps it in a table: what is wrong in it is told with its cell."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator import Refused
from estimator.readers.stash_table import mark_of, read_stash
from estimator.written import length
from tests.plans import catalog

SHOP = catalog(
    [
        {"item": "lawn", "kind": "fabric", "colour": "white"},
        {"item": "ribbon", "kind": "trim"},
        {"item": "button", "kind": "notion"},
    ],
    [
        {"item": "ribbon", "width": "3/8 in", "price": "1", "per": "yd", "currency": "USD"},
        {"item": "ribbon", "width": "7/8 in", "price": "2", "per": "yd", "currency": "USD"},
    ],
)


def told(tmp_path: Path, text: str) -> list[str]:
    file = tmp_path / "stash.csv"
    file.write_text(text, encoding="utf-8")
    try:
        read_stash(file, SHOP)
    except Refused as refused:
        return [str(fault).replace(f"{tmp_path}/", "") for fault in refused.faults]
    return []


def test_alike_lengths_are_told_apart_and_counted_things_are_not(tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    file.write_text(
        "item,width,length,count,washed,place\n"
        "lawn,54 in,1 1/4 yd,2,yes,chest\n\nbutton,,,12,,tin\n",
        encoding="utf-8",
    )
    stash = read_stash(file, SHOP)
    remnants = stash.of("Lawn", "White")  # the item's own colour, in capitals or not
    assert [(one.row, one.nth, one.thing.length, one.thing.washed) for one in remnants] == [
        (2, 1, length("45 in"), True),
        (2, 2, length("45 in"), True),
    ]
    (buttons,) = stash.of("button", "")
    assert (buttons.row, buttons.nth, buttons.thing.count) == (4, 0, 12)
    assert stash.of("lawn", "green") == ()


@pytest.mark.parametrize(
    ("row", "complaint"),
    [
        ("lawn,,1 yd,1", "row 2, column width: the remnant has no width; measure it and fill in"),
        ("lawn,54 in,,1", "row 2, column length: nothing says how long it is; measure it"),
        ("lawn,54 in,1 yd,none", "row 2, column count: count: 'none' is not a whole number"),
        ("lawn,54,1 yd,1", "row 2, column width: width: '54' "),
        ("ribbon,,1 yd,1", "'ribbon' is sold in several widths; fill in width, one of 3/8 in, 7/8"),
        ("lawn,54 in,1 yd,300", "300 lengths alike are more than can be tried; write at most 200"),
        (",54 in,1 yd,1", "stash.csv, row 2"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_row_is_told(tmp_path: Path, row: str, complaint: str) -> None:
    (line,) = told(tmp_path, f"item,width,length,count\n{row}\n")
    assert complaint in line


def test_a_column_that_no_stash_has_is_refused(tmp_path: Path) -> None:
    (line,) = told(tmp_path, "item,widht\nlawn,54 in\n")
    assert "there is no column 'widht' in this table; did you mean 'width'?" in line


def test_the_mark_changes_with_every_letter(tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    marks = set()
    for text in ("item,count\nbutton,1\n", "item,count\nbutton,2\n", "item,count\nButton,1\n"):
        file.write_text(text, encoding="utf-8")
        marks.add(mark_of(file))
    assert len(marks) == 3
