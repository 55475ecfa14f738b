"""Files from the disk; every way in which that fails is a complaint with its remedy."""

from __future__ import annotations

import stat
from pathlib import Path

from estimator.faults import Fault, Refused

LARGEST = 8_000_000
_PACKED = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""The first bytes of a zip file and of a compound file, in which spreadsheets are kept."""


def read_text(path: Path, what: str) -> str:
    """The text of a UTF-8 file that is ``what`` (a plan, a catalog table); raises Refused."""
    held = read_bytes(path, what)
    if held.startswith(_PACKED):
        wrong = "is no text file, but packed like a spreadsheet of another kind"
        raise _refused(path, wrong, "save it as .xlsx from a spreadsheet program")
    try:
        return held.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        raise _refused(path, "is not a text file in UTF-8", "save it as UTF-8 text") from None


def read_bytes(path: Path, what: str) -> bytes:
    """What a file holds that is ``what``; raises Refused if it cannot be read or is too large."""
    try:
        if path.is_dir():
            raise _refused(path, f"is a folder, not {what}", f"name {what} in it")
        if not stat.S_ISREG(path.stat().st_mode):
            raise _refused(path, "is no file on a disk", f"name a file that holds {what}")
        with path.open("rb") as file:
            held = file.read(LARGEST + 1)
    except FileNotFoundError:
        raise _refused(path, "does not exist", "check the name and the folder") from None
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        raise _refused(path, f"cannot be read ({reason})", "check that it may be read") from None
    if len(held) > LARGEST:
        raise _refused(path, f"is larger than {what} can be", "check that it is the right file")
    return held


def _refused(path: Path, wrong: str, right: str) -> Refused:
    return Refused([Fault(str(path), wrong, right)])
