"""The table of wearers: measures with their units; what is wrong is told with its cell."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from estimator.faults import Refused
from estimator.readers.wearers_table import read_wearers
from estimator.written import length


def read(tmp_path: Path, text: str):
    path = tmp_path / "wearers.csv"
    path.write_text(text, encoding="utf-8")
    return read_wearers(path)


def told(tmp_path: Path, text: str) -> list[str]:
    with pytest.raises(Refused) as refused:
        read(tmp_path, text)
    return [str(fault).removeprefix(f"{tmp_path}/") for fault in refused.value.faults]


def test_bare_numbers_are_in_the_unit_of_their_row(tmp_path: Path) -> None:
    found = read(tmp_path, "wearer,unit,waist,hip\nAda,in,28 1/2,38\nBo,cm,81,\n\nCy,,30 in,1 m\n")
    assert found.columns == ("waist", "hip")
    assert [(one.name, dict(one.measures)) for one in found.rows] == [
        ("Ada", {"waist": length("28 1/2"), "hip": length("38")}),
        ("Bo", {"waist": length("81 cm")}),
        ("Cy", {"waist": length("30 in"), "hip": length("1 m")}),
    ]


def test_a_table_saved_with_semicolons_is_read(tmp_path: Path) -> None:
    found = read(tmp_path, "wearer;unit;waist\nAda;cm;72,5\n")
    assert found.rows[0].measures["waist"] == length("72.5 cm")


def test_a_sheet_of_a_workbook_is_read_as_the_same_table_saved_as_csv_is(tmp_path: Path) -> None:
    text = "wearer,unit,waist,hip\nAda,in,28 1/2,38\nBo,cm,81.5,\n"
    book = Workbook()
    book.active.title = "Notes"
    book.active["A1"] = "taken at the first fitting"
    sheet = book.create_sheet("Cast")
    for row in (
        ["wearer", "unit", "waist", "hip"],
        ["Ada", "in", "28 1/2", 38],
        ["Bo", "cm", 81.5],
    ):
        sheet.append(row)
    path = tmp_path / "cast.xlsx"
    book.save(path)
    assert read_wearers(path).rows == read(tmp_path, text).rows


def test_a_table_without_end_is_one_complaint(tmp_path: Path) -> None:
    text = "wearer,waist\n" + "".join(f"Singer {n},wide\n" for n in range(5_001))
    assert told(tmp_path, text) == ["wearers.csv: the table has 5001 rows; keep at most 5000 in it"]


def test_a_cell_of_a_workbook_that_cannot_be_used_is_told_with_its_place(tmp_path: Path) -> None:
    book = Workbook()
    for row in (["wearer", "unit", "waist"], ["Ada", "in", "=14*2"], ["Bo", "in", "wide"]):
        book.active.append(row)
    path = tmp_path / "cast.xlsx"
    book.save(path)
    with pytest.raises(Refused) as refused:
        read_wearers(path)
    first, *others = map(str, refused.value.faults)
    assert first == (
        f"{path}, sheet Sheet, cell C2: the cell holds a formula; write its result as a plain value"
    )
    assert any(fault.startswith(f"{path}, sheet Sheet, cell C3: 'wide'") for fault in others)


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("name,waist\nAda,28 in\n", "wearers.csv, row 1: the column 'wearer' is missing; "
         "add a column wearer"),
        ("wearer,waist,waist\nAda,1 in,2 in\n", "wearers.csv, row 1: the column 'waist' stands "
         "here twice; keep one of them"),
        ("wearer,waist,\nAda,28 in,3 in\n", "wearers.csv, row 1: column 3 has no heading; "
         "name the measure in it, or empty the column"),
        ("wearer,waist\nAda,28\n", "wearers.csv, row 2, column waist: '28' has no unit; write the "
         "unit, as in 3 yd or 25 mm, or add a column unit with in or cm"),
        ("wearer,unit,waist\nAda,ell,28\n", "wearers.csv, row 2, column unit: 'ell' is not a unit; "
         "write in, cm or mm"),
        ("wearer,unit,waist\nAda,in,-3\n", "wearers.csv, row 2, column waist: '-3' is negative; "
         "a length is zero or more"),
        ("wearer,unit,waist\nAda,in,0\n", "wearers.csv, row 2, column waist: the measure is zero; "
         "write a length, or leave the cell empty"),
        ("wearer,unit,waist\n,in,28\n", "wearers.csv, row 2: the row has no wearer; "
         "fill in the wearer's name"),
        ("wearer,unit,waist\nAda,in,28\nada,in,29\n", "wearers.csv, row 3: 'ada' stands here "
         "twice, as in row 2; give each wearer one row"),
        ("wearer,unit,waist\nAda,in,28,9\n", "wearers.csv, row 2: the row has more cells than the "
         "heading; put text with commas in quotes"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_its_cell(tmp_path: Path, text: str, complaint: str) -> None:
    assert complaint in told(tmp_path, text)
