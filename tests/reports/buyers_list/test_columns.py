"""The columns of the list: which come first."""

from __future__ import annotations

from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.buyers_list.columns import COLUMNS, LETTER_OF


def test_a_phone_shows_what_to_buy_without_being_pushed_about(sheet: Worksheet) -> None:
    # a phone is about 390 points wide, and a digit of a spreadsheet's usual font 7
    shown = ["Got it", "Item", "Buy", "Unit", "Colour, swatch"]
    assert [one.heading for one in COLUMNS[:5]] == shown
    assert sum(sheet.column_dimensions[LETTER_OF[one]].width for one in shown) * 7 <= 390
    assert sheet.freeze_panes == f"{LETTER_OF['Buy']}4"
