"""Writing files whole or not at all, and never over what somebody else has just saved."""

from __future__ import annotations

import contextlib
import io
import os
import re
import stat
import tempfile
import zipfile
from pathlib import Path

from openpyxl import Workbook

from estimator.faults import Fault, Refused

OUR_PAGE = '<meta name="generator" content="estimator">'
_ELSEWHERE = "choose another place"
_STEADY = (1980, 1, 1, 0, 0, 0)
_STAMPS = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(</dcterms:\2>)")


def earlier_content(path: Path) -> bytes | None:
    """What stands in the place of a list that is to be written; None where nothing does.

    Raises Refused for a name that is no spreadsheet's, a folder, and a file that is open elsewhere.
    """
    if path.suffix.lower() != ".xlsx":
        raise refused(path, "is not the name of a spreadsheet", "let it end in .xlsx")
    if not is_there(path):
        return None
    if path.is_dir():
        raise refused(path, "is a folder", "name a file in it, as in list.xlsx")
    _refuse_open(path)
    try:
        return path.read_bytes()
    except OSError as problem:
        raise refused(path, f"cannot be read ({_reason(problem)})", _ELSEWHERE) from None


def _refuse_open(path: Path) -> None:
    """Raises Refused where a spreadsheet program has left its mark that the file is open in it."""
    for name in (f"~${path.name}", f".~lock.{path.name}#"):
        lock = path.with_name(name)
        with contextlib.suppress(OSError):
            if not lock.exists():
                continue
            right = f"close it there; if it is open nowhere, remove the file '{lock}'"
            raise refused(path, "is open in a spreadsheet program", right)


def save_workbook(book: Workbook, path: Path, instead_of: bytes | None = None) -> None:
    """Writes a workbook to ``path``, ``instead_of`` what was read there; raises Refused.

    The same workbook is written as the same bytes.
    """
    try:
        content = workbook_bytes(book)
    except OSError as problem:  # the library puts sheets into temporary files
        raise refused(path, f"cannot be written ({_reason(problem)})", _ELSEWHERE) from None
    if earlier_content(path) != instead_of:
        right = "write it once more, so that nothing of it is lost"
        raise refused(path, "has been saved by somebody else just now", right)
    write_whole(path, content)


def workbook_bytes(book: Workbook) -> bytes:
    """A workbook as a file holds it: the same workbook gives the same bytes."""
    held = io.BytesIO()
    book.save(held)
    return _steady(held.getvalue())


def save_page(text: str, path: Path) -> None:
    """Writes a page to ``path``, over an older one of ours; raises Refused over anything else."""
    if path.suffix.lower() not in (".html", ".htm"):
        raise refused(path, "is not the name of a page", "let it end in .html")
    if is_there(path):
        if path.is_dir():
            raise refused(path, "is a folder", "name a file in it, as in list.html")
        try:
            old = path.read_text(encoding="utf-8")
        except (OSError, ValueError):
            old = ""
        if OUR_PAGE not in old[:2000]:
            wrong = "is there already and is no page of ours"
            raise refused(path, wrong, "choose another name")
    write_whole(path, text.encode())


def is_there(path: Path) -> bool:
    """Whether something of this name is there already; raises Refused where nobody can tell."""
    try:
        return path.exists()
    except (OSError, ValueError) as problem:
        raise refused(path, f"cannot be written ({_reason(problem)})", _ELSEWHERE) from None


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
    """Writes a file beside its place and moves it there; raises Refused, and leaves nothing.

    Of a link, what it leads to is written; who may read and write a file stays as it was.
    """
    held = None
    try:
        path = path.resolve()
        mode = stat.S_IMODE(path.stat().st_mode) if path.exists() else 0o666 & ~_umask()
        with tempfile.NamedTemporaryFile(dir=path.parent, prefix=".", delete=False) as file:
            held = Path(file.name)
            file.write(content)
        held.chmod(mode)
        held.replace(path)
    except BaseException as problem:
        # somebody may have interrupted it as well
        if held is not None:
            held.unlink(missing_ok=True)
        if not isinstance(problem, OSError | ValueError):
            raise
        if isinstance(problem, FileNotFoundError) and not path.parent.is_dir():
            wrong = f"cannot be written: there is no folder '{path.parent}'"
            raise refused(path, wrong, "make it, or choose another place") from None
        raise refused(path, f"cannot be written ({_reason(problem)})", _ELSEWHERE) from None


def _reason(problem: OSError | ValueError) -> str:
    return getattr(problem, "strerror", None) or str(problem)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def refused(path: Path, wrong: str, right: str) -> Refused:
    """The complaint about a file that cannot be written, or must not be."""
    return Refused([Fault(str(path), wrong, right)])
