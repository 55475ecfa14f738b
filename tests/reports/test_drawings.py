"""Pictures that people put into a list: told of, and not lost."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest

from estimator import Refused
from estimator.reports.buyers_list.file import write_list
from tests.reports.filled_lists import CLOAK, cloak, written


def with_a_picture(content: bytes) -> bytes:
    """The same workbook with a drawing on its first sheet, as a program puts one in."""
    drawing = (
        '<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing">'
        "<xdr:twoCellAnchor ></xdr:twoCellAnchor></xdr:wsDr>"
    )
    kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/drawing"
    related = (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'<Relationship Id="rId1" Type="{kind}" Target="../drawings/drawing99.xml"/>'
        "</Relationships>"
    )
    held = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(held, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name))
        new.writestr("xl/drawings/drawing99.xml", drawing)
        new.writestr("xl/worksheets/_rels/sheet1.xml.rels", related)
    return held.getvalue()


def test_a_list_with_a_picture_that_cannot_be_carried_is_left_alone(tmp_path: Path) -> None:
    path = written(CLOAK, tmp_path)
    path.write_bytes(with_a_picture(path.read_bytes()))
    before = path.read_bytes()
    with pytest.raises(Refused, match=r"pictures or charts on the sheet 'Shopping list'.*--out"):
        write_list(cloak(), path)
    assert path.read_bytes() == before
