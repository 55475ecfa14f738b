"""A plan's file: its syntax, its units and measures, and files that are no plan at all."""

from collections.abc import Callable
from pathlib import Path

import pytest

from estimator import Refused, read_plan
from estimator.measure import Unit
from estimator.plan import Role
from estimator.readers.plans import read_draft
from estimator.written import length
from tests.plans import complaints, plan

APRON = """\
[garment]
name = "apron"
[[fabric]]
name = "print"
widths = ["45 in"]
[[piece]]
name = "panel"
cut = "print"
width = "20 1/4"
length = "30 3/8"
"""


@pytest.mark.parametrize(
    ("line", "where", "right"),
    [
        ("width = 20 1/4", "line 9, column 12", 'write it in quotes: width = "20 1/4"'),
        ("width = 20 1/4  # finished", "line 9, column 12", 'in quotes: width = "20 1/4"'),
        ("width = 20in", "line 9, column 11", 'write it in quotes: width = "20in"'),
        ("width=38,5", "line 9, column 9", 'write it in quotes: width = "38,5"'),
        ("width=“20”", "line 9, column 7", 'write straight quotes, as in width = "20"'),
        ('width = "20”', "line 9, column", 'write straight quotes, as in width = "20"'),
        ("width = ‘20’", "line 9, column 9", 'write straight quotes, as in width = "20"'),
        ("edges = { top = “raw” }", "line 9, column 17", "write straight quotes"),
        ('width = "20" wide # “finished”', "line 9, column 14", "a plan holds lines such as"),
        ("width = ½", "line 9, column 9", 'write it in quotes: width = "½"'),
        ("width: 20", "line 9, column 6", "a plan holds lines such as width ="),
        ('width = "20 1/4', "line 9, column", "a plan holds lines such as width ="),
    ],
)
def test_a_fault_of_syntax_comes_alone_with_line_column_and_remedy(
    line: str, where: str, right: str
) -> None:
    # The unknown key at the end would be a second complaint.
    (found,) = complaints(APRON.replace('width = "20 1/4"', line) + "quantiy = 3\n")
    assert found.startswith(f"apron.toml, {where}")
    assert right in found


def test_the_same_table_twice_is_a_fault_of_syntax() -> None:
    (found,) = complaints('[garment]\nname = "a"\n[garment]\nname = "b"\n')
    assert found.startswith("apron.toml, line 3")
    assert "this is not TOML" in found


def test_brackets_nested_without_end_are_a_complaint() -> None:
    (found,) = complaints("a = " + "[" * 5000)
    assert found.startswith("apron.toml")


def test_a_bare_number_takes_the_unit_of_the_plan() -> None:
    found = plan(APRON.replace('name = "apron"', 'name = "apron"\nunit = "cm"'))
    assert found.garment.unit is Unit.CM
    assert found.piece[0].width == length("20.25 cm")
    assert found.fabric[0].widths[0].width == length("45 in")


def test_a_size_may_come_from_a_named_measure() -> None:
    measured = APRON.replace('"20 1/4"', '{ from = "half waist" }')
    found = plan(measured + '[measures]\n"half waist" = "13 7/8"\n')
    assert found.piece[0].width == length("13 7/8")


def test_a_misspelt_measure_gets_the_nearest_one() -> None:
    found = complaints(APRON.replace('"20 1/4"', '{ from = "wast" }') + "[measures]\nwaist = 28\n")
    assert found[0].endswith("there is no measure 'wast'; did you mean 'waist'?")


@pytest.mark.parametrize("size", ["0", '"-28"', '"28 kg"', "[28]"])
def test_a_measure_is_a_length_of_more_than_zero(size: str) -> None:
    found = complaints(APRON + f"[measures]\nwaist = {size}\n")
    assert [one.split(":")[0] for one in found] == ["apron.toml, line 12 (measure 'waist')"]


def test_a_fabric_is_a_main_fabric_unless_it_says_otherwise() -> None:
    found = plan(APRON.replace('name = "print"\nw', 'name = "print"\nrole = "net"\nw'))
    assert found.fabric[0].role is Role.NET
    assert plan(APRON).fabric[0].role is Role.MAIN


def test_a_plan_is_read_from_its_file(tmp_path: Path) -> None:
    path = tmp_path / "apron.toml"
    path.write_bytes(b"\xef\xbb\xbf" + APRON.replace("\n", "\r\n").encode())
    found = read_draft(path)
    assert found.faults == ()
    assert found.plan == read_plan(path) == plan(APRON)
    assert found.places.of(("piece", 0, "width")) == f"{path}, line 9"


@pytest.mark.parametrize(
    ("make", "wrong", "right"),
    [
        (lambda path: path.with_name("other").touch(), "does not exist",
         "check the name and the folder"),
        (lambda path: path.mkdir(), "is a folder, not a plan", "name a plan in it"),
        (lambda path: path.write_bytes(b"\xff\xfe[\x00"), "is not a text file in UTF-8",
         "save it as UTF-8 text"),
        (lambda path: path.write_bytes(b"PK\x03\x04mimetype"),
         "is no text file, but packed like a spreadsheet of another kind",
         "save it as .xlsx from a spreadsheet program"),
        (lambda path: path.write_bytes(b"#" * 8_000_001), "is larger than a plan can be",
         "check that it is the right file"),
    ],
    ids=["missing", "a folder", "not text", "another spreadsheet", "far too large"],
)  # fmt: skip
def test_a_file_that_is_no_plan_is_refused(
    tmp_path: Path, make: Callable[[Path], object], wrong: str, right: str
) -> None:
    path = tmp_path / "plan.toml"
    make(path)
    with pytest.raises(Refused) as refused:
        read_plan(path)
    assert [str(fault) for fault in refused.value.faults] == [f"{path}: {wrong}; {right}"]
