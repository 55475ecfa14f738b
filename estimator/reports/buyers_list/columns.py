"""The columns of the shopping list in the workbook: what is read, and what the buyer fills in."""

from __future__ import annotations

from dataclasses import dataclass

from openpyxl.utils import get_column_letter

from estimator.needs.types import Group

LIST_SHEET = "Shopping list"
OPEN, DONE = "☐", "☑"


@dataclass(frozen=True, slots=True)
class ListColumn:
    """A heading, its width in digits, whether the buyer fills it in, and whether it is reckoned."""

    heading: str
    wide: float
    by_buyer: bool = False
    number: bool = False
    reckoned: bool = False


COLUMNS = (
    ListColumn("Got it", 5.5, by_buyer=True),
    ListColumn("Item", 17),
    ListColumn("Buy", 6.5, number=True),
    ListColumn("Unit", 9),
    ListColumn("Colour, swatch", 10.5),
    ListColumn("Width", 8),
    ListColumn("Part of the shop", 10),
    ListColumn("Shop, shelf", 12.5),
    ListColumn("Needed", 10.5, number=True),
    ListColumn("Price", 8, number=True),
    ListColumn("Cost", 8.5, number=True, reckoned=True),
    ListColumn("Actual quantity", 8.5, by_buyer=True, number=True),
    ListColumn("Actual price", 8, by_buyer=True, number=True),
    ListColumn("Paid", 8.5, number=True, reckoned=True),
    ListColumn("Difference", 10, number=True, reckoned=True),
    ListColumn("Instead", 18),
    ListColumn("Notes", 27),
    ListColumn("Your notes", 15, by_buyer=True),
    ListColumn("Since the last list", 9.5),
    ListColumn("Key", 30),
)
NUMBER_OF = {one.heading: number for number, one in enumerate(COLUMNS, start=1)}
LETTER_OF = {heading: get_column_letter(number) for heading, number in NUMBER_OF.items()}
LAST_PRINTED = NUMBER_OF["Since the last list"]
"""The key is for the next list and not for the shop."""

PARTS = {group: f"{number} {group.value}" for number, group in enumerate(Group, start=1)}
"""The parts of the shop, numbered so that sorting by them gives the way that a shop is walked."""

# Keys of the lines below the list. Names in plans hold no two blanks: no purchase has such a key.
SUM_MARK = "sum  "
TOTAL, TAX, CONTINGENCY, IN_ALL, BUDGET, SPENT, LEFT, OTHER, UNPRICED = (
    SUM_MARK + name
    for name in (
        "total",
        "tax",
        "contingency",
        "in all",
        "budget",
        "spent",
        "left",
        "other",
        "unpriced",
    )
)
CHARGE_MARK = SUM_MARK + "charge  "
"""Before the name of a shop: what a visit there costs."""
CARRIED = "Also written on the earlier list"
