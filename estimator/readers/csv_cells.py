"""The cells of a table saved as CSV, whatever parts them in the country of the program."""

from __future__ import annotations

import csv
import io
from pathlib import Path

from estimator.faults import Fault, Refused


def cells_of(text: str, path: Path) -> list[list[str]]:
    """The rows of a table; raises Refused for what is none."""
    try:
        return list(csv.reader(io.StringIO(text), delimiter=_delimiter(text)))
    except csv.Error as problem:
        wrong = f"is not a table of comma-separated values ({problem})"
        right = "save it as CSV from a spreadsheet program"
        raise Refused([Fault(str(path), wrong, right)]) from None


def _delimiter(text: str) -> str:
    """Comma, or the semicolon or tab that spreadsheet programs write in some countries."""
    heading = text.split("\n", 1)[0]
    return max(",;\t", key=heading.count)
