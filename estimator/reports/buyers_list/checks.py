"""What may be written into the cells of the list, and how they look once it is."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from openpyxl.formatting.rule import FormulaRule
from openpyxl.styles import Border, Font, Side
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

from estimator.reports.buyers_list.columns import (
    BUDGET,
    CHARGE_MARK,
    CONTINGENCY,
    DONE,
    LETTER_OF,
    OPEN,
    PARTS,
    SPENT,
    TAX,
)
from estimator.reports.cells import HAIR
from estimator.reports.printing import Rows

_MOST = 1_000_000


def add_checks(sheet: Worksheet, rows: Rows, row_of: Mapping[str, int]) -> None:
    """Ticks and parts are chosen; quantities, prices and the budget are amounts, taxes shares."""
    first, last = rows
    columns = {
        "Got it": _choice([OPEN, DONE], f"Choose {OPEN} or {DONE}."),
        "Part of the shop": _choice(list(PARTS.values()), "Choose a part of the shop."),
        "Buy": _amount("Write how much to buy, as a number: 2.5 or 2 1/2."),
        "Price": _amount("Write the price of one unit, as a number."),
        "Actual quantity": _amount("Write how much you bought, as a number: 2.5 or 2 1/2."),
        "Actual price": _amount("Write what one unit cost you, as a number."),
    }
    for heading, check in columns.items():
        letter = LETTER_OF[heading]
        check.add(f"{letter}{first}:{letter}{last}")
        sheet.add_data_validation(check)
    if TAX not in row_of:
        return
    share = _between(0, 1, "Write a share, as in 8 %.")
    share.add(f"{LETTER_OF['Price']}{row_of[TAX]}")
    share.add(f"{LETTER_OF['Price']}{row_of[CONTINGENCY]}")
    sheet.add_data_validation(share)
    budget = _amount("Write an amount of money, as a number.")
    budget.add(f"{LETTER_OF['Cost']}{row_of[BUDGET]}")
    budget.add(f"{LETTER_OF['Cost']}{row_of[SPENT]}")
    for key, row in row_of.items():
        if key.startswith(CHARGE_MARK):
            budget.add(f"{LETTER_OF['Paid']}{row}")
    sheet.add_data_validation(budget)


def add_marks(sheet: Worksheet, rows: Rows) -> None:
    """What is got is struck through, unless more of it is needed; parts are set apart."""
    first, last = rows
    rule: Any = FormulaRule
    printed = f"A{first}:{LETTER_OF['Since the last list']}{last}"
    since, part = LETTER_OF["Since the last list"], LETTER_OF["Part of the shop"]
    got = f'AND($A{first}="{DONE}",ISERROR(SEARCH("more",${since}{first})))'
    struck = rule(formula=[got], font=Font(color="7F7F7F", strike=True))
    apart = rule(
        formula=[f"${part}{first}<>${part}{first - 1}"],
        border=Border(top=Side(style="thin", color="000000"), bottom=HAIR.bottom),
    )
    sheet.conditional_formatting.add(printed, struck)
    sheet.conditional_formatting.add(printed, apart)


def _choice(choices: list[str], told: str) -> DataValidation:
    listed = ",".join(choices)
    return _told(DataValidation(type="list", formula1=f'"{listed}"', allow_blank=True), told)


def _amount(told: str) -> DataValidation:
    return _between(0, _MOST, told)


def _between(least: int, most: int, told: str) -> DataValidation:
    check = DataValidation(
        type="decimal",
        operator="between",
        formula1=str(least),
        formula2=str(most),
        allow_blank=True,
    )
    return _told(check, told)


def _told(check: DataValidation, told: str) -> DataValidation:
    check.showErrorMessage = True
    check.errorTitle, check.error = "That does not go here", told
    return check
