"""Files that are no sound spreadsheets: each is refused with its reason, none with a traceback."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from estimator import Fault, Refused
from estimator.readers.workbooks import MOST_ROWS, read_workbook


def book_bytes() -> bytes:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = "name"
    held = io.BytesIO()
    book.save(held)
    return held.getvalue()


def zipped(**parts: str) -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in parts.items():
            archive.writestr(name, text)
    return held.getvalue()


def with_part(name: str, change: Callable[[bytes], bytes]) -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(book_bytes())) as old, zipfile.ZipFile(held, "w") as new:
        for entry in old.namelist():
            content = old.read(entry)
            new.writestr(entry, change(content) if entry == name else content)
    return held.getvalue()


def refusal(path: Path, content: bytes) -> str:
    path.write_bytes(content)
    with pytest.raises(Refused) as refused:
        read_workbook(path, "a plan")
    (fault,) = refused.value.faults
    return str(fault).removeprefix(f"{path}")


SHEET = "xl/worksheets/sheet1.xml"


@pytest.mark.parametrize(
    ("content", "wrong"),
    [
        (b"", "is no Excel workbook, or a damaged one"),
        (b"[garment]\nname = 'x'\n", "is no Excel workbook, or a damaged one"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600,
         "is protected with a password, or is a workbook of an old kind; save it as .xlsx from a "
         "spreadsheet program, without a password"),
        (book_bytes()[:900], "is no Excel workbook, or a damaged one"),
        (zipped(mimetype="application/vnd.oasis.opendocument.spreadsheet"),
         "is no Excel workbook; save it as .xlsx"),
        (zipped(**{"xl/workbook.xml": "0" * 60_000_001}), "unpacks to 60 megabytes"),
        (with_part("xl/styles.xml", lambda text: text + b" " * 700_000), "has more styles of"),
        (with_part(SHEET, lambda text: text + b" " * 7_000_000), "unpacks to 7 megabytes"),
        (with_part(SHEET, lambda text: text[:-40]), "is damaged: its cells cannot be read"),
        (with_part(SHEET, lambda text: text.replace(b"<worksheet", b"<!DOCTYPE a><worksheet", 1)),
         "holds what no spreadsheet program writes"),
    ],
    ids=["empty", "text", "password", "cut off", "another kind", "a bomb",
         "swollen styles", "a swollen sheet", "half a sheet", "entities"],
)  # fmt: skip
def test_a_file_that_is_no_sound_workbook_is_refused(
    tmp_path: Path, content: bytes, wrong: str
) -> None:
    assert wrong in refusal(tmp_path / "plan.xlsx", content)


@pytest.mark.parametrize(
    ("cell", "far"),
    [(f"A{MOST_ROWS + 1}", f"row {MOST_ROWS}"), ("IV2", "column 200"), ("A1048576", "row 5000")],
)
def test_a_sheet_that_goes_on_and_on_is_refused(tmp_path: Path, cell: str, far: str) -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet[cell] = "x"
    held = io.BytesIO()
    book.save(held)
    assert f"the sheet goes on beyond {far}" in refusal(tmp_path / "plan.xlsx", held.getvalue())


def test_rows_that_are_only_coloured_are_passed_over(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = "name"
    for row in range(2, MOST_ROWS + 500):
        sheet.cell(row, 1).number_format = "@"
    book.save(tmp_path / "plan.xlsx")
    (found,) = read_workbook(tmp_path / "plan.xlsx", "a plan")
    assert {at: cell.value for at, cell in found.cells.items()} == {(1, 1): "name"}


def test_a_sheet_of_endless_empty_cells_is_refused(tmp_path: Path) -> None:
    rows = "".join(f'<row r="{n}"><c r="XFD{n}"/></row>' for n in range(1, 1000)).encode()
    wide = with_part(SHEET, lambda text: text.replace(b"</sheetData>", rows + b"</sheetData>"))
    assert "too many cells without anything" in refusal(tmp_path / "plan.xlsx", wide)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 5000), st.binary(min_size=1, max_size=40))
def test_a_workbook_with_some_bytes_spoilt_is_read_or_refused(
    tmp_path_factory: pytest.TempPathFactory, at: int, spoilt: bytes
) -> None:
    content = bytearray(book_bytes())
    content[at % len(content) : at % len(content) + len(spoilt)] = spoilt
    path = tmp_path_factory.mktemp("spoilt") / "plan.xlsx"
    path.write_bytes(bytes(content))
    faults: tuple[Fault, ...] = ()
    try:
        read_workbook(path, "a plan")
    except Refused as refused:
        faults = refused.faults
    assert all(fault.wrong and fault.right for fault in faults)
