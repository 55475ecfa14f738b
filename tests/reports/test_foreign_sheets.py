"""Sheets that people add to a list: carried with their styles, rules and names."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from openpyxl import load_workbook
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import PatternFill
from openpyxl.workbook.defined_name import DefinedName

from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import CLOAK, LONGER, cloak, the_list, written


def test_sheets_that_people_add_go_along(tmp_path: Path) -> None:
    path = written(CLOAK, tmp_path)
    book, _ = the_list(path)
    own = book.create_sheet("Who pays")
    own["A1"], own["B2"] = "Millrace Players", "=1+2"
    own["A3"] = datetime(2026, 5, 4)
    own["A1"].fill = PatternFill("solid", fgColor="FFCC00")
    own.conditional_formatting.add("B1:B9", CellIsRule(operator="lessThan", formula=["0"]))
    own.merge_cells("C1:D2")
    book.defined_names["purse"] = DefinedName("purse", attr_text="'Who pays'!$B$2")
    book.save(path)
    write_list(cloak(LONGER), path)
    carried = load_workbook(path)["Who pays"]
    assert (carried["A1"].value, carried["B2"].value) == ("Millrace Players", "=1+2")
    assert carried["A3"].value == datetime(2026, 5, 4)
    assert carried["A1"].fill.fgColor.rgb == "00FFCC00"
    assert [str(one.sqref) for one in carried.conditional_formatting] == ["B1:B9"]
    assert [str(span) for span in carried.merged_cells.ranges] == ["C1:D2"]
    assert load_workbook(path).defined_names["purse"].attr_text == "'Who pays'!$B$2"
