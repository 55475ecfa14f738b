"""What people may fill in, and what is asked of it."""

from __future__ import annotations

from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.buyers_list.columns import COLUMNS, LETTER_OF, NUMBER_OF
from tests.reports.filled_lists import at, free_row, sum_row


def test_only_what_people_fill_in_is_open_and_there_is_no_password(sheet: Worksheet) -> None:
    assert sheet.protection.sheet
    assert sheet.protection.password is None
    assert not sheet.protection.autoFilter  # False is: not forbidden
    assert not sheet.protection.sort
    open_ = {one.heading for one in COLUMNS if not at(sheet, "lawn", one.heading).protection.locked}
    assert open_ == {"Got it", "Actual quantity", "Actual price", "Your notes"}
    assert not at(sheet, "fusible", "Price").protection.locked
    own = {one.heading for one in COLUMNS
           if sheet.cell(free_row(sheet), NUMBER_OF[one.heading]).protection.locked}  # fmt: skip
    assert own == {"Cost", "Paid", "Difference", "Key"}


def test_every_cell_that_takes_a_number_or_a_choice_is_checked(sheet: Worksheet) -> None:
    checks = {
        str(span): (check.type, check.error)
        for check in sheet.data_validations.dataValidation
        for span in check.sqref.ranges
    }
    last = sum_row(sheet, "1 Fabrics") - 1
    for heading, kind in (
        ("Got it", "list"), ("Part of the shop", "list"), ("Actual quantity", "decimal"),
        ("Actual price", "decimal"), ("Price", "decimal"),
    ):  # fmt: skip
        found, told = checks[f"{LETTER_OF[heading]}4:{LETTER_OF[heading]}{last}"]
        assert found == kind
        assert told
    assert checks[f"{LETTER_OF['Price']}{sum_row(sheet, 'tax')}"][0] == "decimal"
    assert checks[f"{LETTER_OF['Cost']}{sum_row(sheet, 'budget')}"][0] == "decimal"
