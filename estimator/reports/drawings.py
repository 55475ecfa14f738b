"""Pictures and charts in a spreadsheet file, counted without a library that understands them."""

from __future__ import annotations

import io
import posixpath
import re
import zipfile
from collections.abc import Mapping
from xml.etree import ElementTree

_RELATIONS = "{http://schemas.openxmlformats.org/package/2006/relationships}Relationship"
_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_ID = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_ANCHOR = re.compile(rb"<(?:\w+:)?(?:twoCell|oneCell|absolute)Anchor[ >]")
_WORKBOOK = "xl/workbook.xml"


def drawings_on(content: bytes) -> dict[str, int]:
    """How many pictures, charts and shapes each sheet of a workbook holds (ECMA-376, part 1).

    Remarks on cells are none. Raises what zipfile and ElementTree raise for a damaged file.
    """
    with zipfile.ZipFile(io.BytesIO(content)) as file:
        of_book = _related(file, _WORKBOOK)
        sheets = ElementTree.fromstring(file.read(_WORKBOOK)).iter(f"{_MAIN}sheet")
        return {
            sheet.attrib["name"]: _drawn(file, of_book[sheet.attrib[_ID]][1]) for sheet in sheets
        }


def _drawn(file: zipfile.ZipFile, sheet: str) -> int:
    related = _related(file, sheet).values()
    drawings = [target for kind, target in related if kind.endswith("/drawing")]
    return sum(len(_ANCHOR.findall(file.read(one))) for one in drawings)


def _related(file: zipfile.ZipFile, part: str) -> Mapping[str, tuple[str, str]]:
    """The parts that a part refers to, by their ids: what they are to it, and their names."""
    folder, name = posixpath.split(part)
    listed = f"{folder}/_rels/{name}.rels"
    if listed not in file.namelist():
        return {}
    found = {}
    for one in ElementTree.fromstring(file.read(listed)).iter(_RELATIONS):
        target = posixpath.normpath(posixpath.join("/", folder, one.attrib["Target"])).lstrip("/")
        found[one.attrib["Id"]] = one.attrib["Type"], target
    return found
