"""Writing a list to its file, over an earlier one too: what people wrote into that is carried."""

from __future__ import annotations

import io
import warnings
from pathlib import Path

from openpyxl import Workbook, load_workbook

from estimator.bill import NO_FUNDS, Funds
from estimator.estimated import Estimate
from estimator.faults import Wrong
from estimator.reports.buyers_list.as_written import Record, record_in
from estimator.reports.buyers_list.earlier import NO_EARLIER_LIST, EarlierList, earlier_list
from estimator.reports.drawings import drawings_on
from estimator.reports.saving import earlier_content, refused, save_workbook
from estimator.reports.workbook import workbook_of

_ANOTHER = "choose another name with --out"


def write_list(estimate: Estimate, path: Path, funds: Funds = NO_FUNDS) -> EarlierList:
    """Writes the list to ``path`` and returns the earlier one that stood there.

    Raises Refused, and leaves the file as it is, where that is open in another program, damaged,
    not a list of ours, or holds what cannot be carried over.
    """
    content = earlier_content(path)
    earlier = NO_EARLIER_LIST if content is None else _read(content, path)
    save_workbook(workbook_of(estimate, funds, earlier), path, content)
    return earlier


def _read(content: bytes, path: Path) -> EarlierList:
    try:
        book, reckoned = _loaded(content), _loaded(content, reckoned=True)
        record = record_in(book)
        drawings = drawings_on(content)
    except Exception:
        # What a damaged or strange file makes the spreadsheet library raise has no end (syntax,
        # index, key, attribute, zlib, struct errors); whatever it is, the file is not ours to lose.
        wrong = "is there already and cannot be read as a spreadsheet"
        right = f"open it in a spreadsheet program and save it anew if it is a list, or {_ANOTHER}"
        raise refused(path, wrong, right) from None
    if record is None:
        raise refused(path, "is there already and is no shopping list of ours", _ANOTHER)
    _refuse_drawings(drawings, record, path)
    try:
        return earlier_list(book, reckoned, record)
    except Wrong as wrong_list:
        raise refused(path, wrong_list.wrong, wrong_list.right) from None


def _loaded(content: bytes, *, reckoned: bool = False) -> Workbook:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return load_workbook(io.BytesIO(content), data_only=reckoned)


def _refuse_drawings(drawings: dict[str, int], record: Record, path: Path) -> None:
    """People's pictures and charts cannot be carried: no sheet may hold more than ours."""
    for sheet, count in drawings.items():
        if count > record.pictures.get(sheet, 0):
            wrong = f"has pictures or charts on the sheet '{sheet}', which cannot be carried over"
            raise refused(path, wrong, f"move them to another file, or {_ANOTHER}")
