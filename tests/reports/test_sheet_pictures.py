"""Pictures in the workbook."""

from __future__ import annotations

import zipfile
from io import BytesIO
from pathlib import Path
from xml.etree.ElementTree import fromstring

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator.files import estimate_files
from estimator.reports.pictures.files import all_pictures
from estimator.reports.workbook import workbook_of
from tests.shipped_plans import DEMOS, SHOPS, stem

NAMED = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}cNvPr"


def saved(path: Path) -> bytes:
    held = BytesIO()
    workbook_of(estimate_files([path], SHOPS)).save(held)
    return held.getvalue()


def rows_of(sheet: Worksheet) -> list[tuple[int, int]]:
    """The first and the last row that each picture of a sheet touches."""
    found = []
    for image in sheet._images:
        row = image.anchor._from.row + 1
        left = image.anchor.ext.height / 12_700
        first = row
        while left > (sheet.row_dimensions[row].height or 15):
            left -= sheet.row_dimensions[row].height or 15
            row += 1
        found.append((first, row))
    return sorted(found)


@pytest.mark.parametrize("path", DEMOS, ids=stem)
def test_no_picture_covers_a_cell_with_something_in_it_or_another_picture(path: Path) -> None:
    book = load_workbook(BytesIO(saved(path)))
    for name in ("Layout", "Widths"):
        sheet = book[name]
        places = rows_of(sheet)
        assert places
        full = {row[0].row for row in sheet.iter_rows() if any(cell.value for cell in row)}
        taken = [row for first, last in places for row in range(first, last + 1)]
        assert len(taken) == len(set(taken))
        assert not full & set(taken)
        assert all((sheet.row_dimensions[row].height or 15) <= 409 for row in taken)


def test_each_layout_stands_below_its_own_table() -> None:
    found = estimate_files([DEMOS[0]], SHOPS)
    sheet = load_workbook(BytesIO(saved(DEMOS[0])))["Layout"]
    heads = [row[0].row for row in sheet.iter_rows() if row[0].value == "No."]
    firsts = [first for first, _ in rows_of(sheet)]
    cuts = sum(len(choice.chosen.laid.cuts) for choice in found.fabrics)
    assert len(heads) == cuts
    for head, after in zip(heads, (*heads[1:], sheet.max_row + 100), strict=True):
        assert any(head < first < after for first in firsts)


def test_every_picture_of_the_job_is_in_the_workbook_with_its_words() -> None:
    found = estimate_files([DEMOS[0]], SHOPS)
    pictures = list(all_pictures(found))
    with zipfile.ZipFile(BytesIO(saved(DEMOS[0]))) as book:
        media = [name for name in book.namelist() if name.startswith("xl/media/")]
        words = [
            one.get("descr", "")
            for name in book.namelist()
            if name.startswith("xl/drawings/drawing")
            for one in fromstring(book.read(name)).iter(NAMED)
        ]
    assert len(media) == len(pictures)
    assert sorted(one.split(".")[0] for one in words) == sorted(
        one.title.split(".")[0] for one in pictures
    )
