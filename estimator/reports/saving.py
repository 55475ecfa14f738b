"""Writing files whole or not at all, and never over a list that somebody has filled in."""

from __future__ import annotations

import hashlib
import io
import os
import re
import tempfile
import warnings
import zipfile
from decimal import Decimal
from pathlib import Path
from typing import Any

from openpyxl import Workbook, load_workbook
from openpyxl.packaging.custom import StringProperty

from estimator.faults import Fault, Refused

SEAL = "shopping list as written"
_ELSEWHERE = "choose another place"
_STEADY = (1980, 1, 1, 0, 0, 0)
_STAMPS = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:\2>)")


def save_workbook(book: Workbook, path: Path) -> None:
    """Writes a workbook to ``path``; raises Refused where that cannot be, or must not.

    The same workbook is written as the same bytes. A list that somebody has filled in stays.
    """
    if path.suffix.lower() != ".xlsx":
        raise _refused(path, "is not the name of a spreadsheet", "let it end in .xlsx")
    if is_there(path):
        _refuse_filled_in(path)
    _properties(book).append(StringProperty(name=SEAL, value=_seal(book)))
    write_whole(path, workbook_bytes(book))


def workbook_bytes(book: Workbook) -> bytes:
    """A workbook as a file holds it: the same workbook gives the same bytes."""
    held = io.BytesIO()
    book.save(held)
    return _steady(held.getvalue())


def is_there(path: Path) -> bool:
    """Whether something of this name is there already; raises Refused where nobody can tell."""
    try:
        return path.exists()
    except (OSError, ValueError) as problem:
        raise _refused(path, f"cannot be written ({_reason(problem)})", _ELSEWHERE) from None


def _refuse_filled_in(path: Path) -> None:
    """Raises Refused unless the file is a list of ours that is just as it was written."""
    if path.is_dir():
        raise _refused(path, "is a folder", "name a file in it, as in list.xlsx")
    other = "is there already and is no shopping list of ours"
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            book = load_workbook(path)
        seal = next((one.value for one in _properties(book).props if one.name == SEAL), None)
        found = _seal(book)
    except Exception:
        # What a damaged or strange file makes the spreadsheet library raise has no end (syntax,
        # index, key, attribute, zlib, struct errors); whatever it is, the file is not ours to lose.
        raise _refused(path, other, "choose another name") from None
    if seal is None:
        raise _refused(path, other, "choose another name")
    if seal != found:
        raise _refused(
            path,
            "has been filled in since it was written",
            "choose another name with --out, so that nothing is lost",
        )


def _properties(book: Any) -> Any:
    """The workbook's own properties, of which the type stubs know nothing."""
    return book.custom_doc_props


def _seal(book: Workbook) -> str:
    """A fingerprint of all that the cells hold."""
    digest = hashlib.sha256()
    for sheet in book.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                value: object = cell.value
                if value is None or value == "":
                    continue
                if isinstance(value, int | float | Decimal):
                    value = f"{float(value):.9g}"
                digest.update(f"{sheet.title}!{cell.coordinate}={value}\n".encode())
    return digest.hexdigest()


def _steady(archive: bytes) -> bytes:
    """The same workbook without the moment of its writing."""
    steady = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(archive)) as old,
        zipfile.ZipFile(steady, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for entry in old.infolist():
            content = old.read(entry)
            if entry.filename == "docProps/core.xml":
                content = _STAMPS.sub(rb"\g<1>1980-01-01T00:00:00Z\g<3>", content)
            info = zipfile.ZipInfo(entry.filename, _STEADY)
            info.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(info, content)
    return steady.getvalue()


def write_whole(path: Path, content: bytes) -> None:
    """Writes a file beside its place and moves it there; raises Refused, and leaves nothing."""
    held = None
    try:
        with tempfile.NamedTemporaryFile(dir=path.parent, prefix=".", delete=False) as file:
            held = Path(file.name)
            file.write(content)
        held.chmod(0o666 & ~_umask())
        held.replace(path)
    except (OSError, ValueError) as problem:
        if held is not None:
            held.unlink(missing_ok=True)
        if isinstance(problem, FileNotFoundError) and not path.parent.is_dir():
            wrong = f"cannot be written: there is no folder '{path.parent}'"
            raise _refused(path, wrong, "make it, or choose another place") from None
        raise _refused(path, f"cannot be written ({_reason(problem)})", _ELSEWHERE) from None


def _reason(problem: OSError | ValueError) -> str:
    return getattr(problem, "strerror", None) or str(problem)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _refused(path: Path, wrong: str, right: str) -> Refused:
    return Refused([Fault(str(path), wrong, right)])
