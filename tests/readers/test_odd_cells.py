"""Whatever is typed into a form, it is estimated or refused with complaints that name the cell."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Refused, estimate
from estimator.faults import Fault, NamesAnUnread
from estimator.job import GarmentOrder, Job
from estimator.readers.plan_tables import draft_of
from estimator.readers.plan_workbook import tables_from_sheets
from estimator.readers.workbooks import Cell, CellSheet
from tests.form.test_round_trip import sheets_of
from tests.shipped_plans import STARTERS

ODD = [
    "0", "-1", "1 kg", "99999 yd", "hem", "fold", "a: b", "2 x a: b", "from", "from 1/0", "from x",
    "{", "{}", "[]", "[[]]", "{ a = 1 }", '{ from = "waist" }', ";", '"', '";"', "½", "2026-01-02",
    "yes", "taper", "sector", "joined strip", "100 %", "Name", "Remarks", "\u0000", "x" * 5000,
    0, -1, 7, 2.5, 1e300, -0.0, 10**18,
]  # fmt: skip


@cache
def forms() -> list[list[CellSheet]]:
    return [sheets_of(tomllib.loads(path.read_text(encoding="utf-8"))) for path in STARTERS]


def faults_of(sheets: list[CellSheet]) -> tuple[Fault, ...]:
    """What a form is refused for; any exception but a refusal is a failure."""
    try:
        draft = draft_of(tables_from_sheets(sheets, "plan.xlsx"))
        faults = draft.faults
        try:
            estimate(Job((GarmentOrder(draft.plan, places=draft.places, unread=draft.unread),)))
        except NamesAnUnread:
            assert faults
    except Refused as refused:
        return refused.faults
    return faults


def with_cell(sheet: CellSheet, at: tuple[int, int], cell: Cell | None) -> CellSheet:
    cells: Mapping[tuple[int, int], Cell] = {
        **{key: value for key, value in sheet.cells.items() if key != at},
        **({at: cell} if cell else {}),
    }
    return CellSheet(sheet.file, sheet.title, cells)


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_an_odd_cell_in_a_form_is_estimated_or_complained_of(data: st.DataObject) -> None:
    sheets = list(data.draw(st.sampled_from(forms())))
    number = data.draw(st.sampled_from([n for n, one in enumerate(sheets) if one.cells]))
    wide = max(column for _, column in sheets[number].cells)
    deep = max(row for row, _ in sheets[number].cells)
    at = data.draw(st.integers(1, deep + 1)), data.draw(st.integers(1, wide + 1))
    written = data.draw(st.none() | st.sampled_from(ODD))
    cell = None if written is None else Cell(written)
    sheets[number] = with_cell(sheets[number], at, cell)
    assert all(fault.wrong and fault.right for fault in faults_of(sheets))


@settings(max_examples=20, deadline=None)
@given(st.data())
def test_a_form_without_one_of_its_sheets_is_estimated_or_complained_of(
    data: st.DataObject,
) -> None:
    sheets = list(data.draw(st.sampled_from(forms())))
    del sheets[data.draw(st.integers(0, len(sheets) - 1))]
    assert all(fault.wrong and fault.right for fault in faults_of(sheets))
