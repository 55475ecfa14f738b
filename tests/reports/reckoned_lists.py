"""What others make of the formulas of a list: a formula engine, and a spreadsheet program."""

from __future__ import annotations

import warnings
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from openpyxl import load_workbook
from pycel import ExcelCompiler

from estimator.reports.buyers_list.columns import LETTER_OF, LIST_SHEET
from tests.reports.filled_lists import needs_office, row_of, saved_by_office, sum_row, the_list

Reckon = Callable[[str, str], Any]


def reckoned(path: Path) -> Reckon:
    """What a formula engine that shares no code with the program makes of a cell of the list."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        engine = ExcelCompiler(str(path))

    def result(item: str, heading: str) -> Any:
        return engine.evaluate(f"'{LIST_SHEET}'!{address(path, item, heading)}")

    return result


def reckoned_by_office(path: Path) -> Reckon:
    """What LibreOffice makes of a cell of the list."""
    with TemporaryDirectory() as folder:
        saved = load_workbook(saved_by_office(path, Path(folder)), data_only=True)[LIST_SHEET]

    def result(item: str, heading: str) -> Any:
        value = saved[address(path, item, heading)].value
        return "" if value is None else value

    return result


def address(path: Path, item: str, heading: str) -> str:
    sheet = the_list(path)[1]
    name = item.removeprefix("sum ")
    row = sum_row(sheet, name) if name != item else row_of(sheet, item)
    return f"{LETTER_OF[heading]}{row}"


ENGINES = pytest.mark.parametrize(
    "reckoned",
    [
        pytest.param(reckoned, id="a formula engine"),
        pytest.param(reckoned_by_office, id="a spreadsheet program", marks=needs_office),
    ],
)
