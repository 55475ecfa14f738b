"""The first sheet of a plan's form: how it is filled in, for somebody who never did so."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.form.sheets import HOW_TO, plan_sheets
from estimator.form.words import ABOUT
from estimator.measure import Unit

Part = tuple[str, tuple[str, ...]]
"""A heading, and the paragraphs below it."""


def how_to_fill_in(opening: Sequence[str], unit: Unit) -> list[Part]:
    """What the first sheet says: what to measure, what each sheet is for, how sizes are written."""
    about = [
        f"{sheet.title}: {told}"
        for sheet in plan_sheets()
        if (told := ABOUT.get(".".join(sheet.keys)) or ABOUT.get(sheet.keys[-1]))
    ]
    parts: list[Part] = []
    if opening:
        parts.append((opening[0], tuple(opening[1:])))
    parts += [
        (
            HOW_TO,
            (
                "Change the yellow cells to your own sizes: the rest follows. Then change, add or "
                "empty any other row that you like; a row without anything in it is passed over.",
                "Each sheet says above its headings what belongs in a column, with an example. "
                "Choose a cell, and it tells the same; many have a list to choose from. "
                "Write below the headings; what stands above them is not read.",
                "Save the file as an Excel workbook (.xlsx), and run: estimator check FILE.xlsx. "
                "It says what is wrong, with the sheet and the cell, and what would be right. "
                "Then run: estimator write FILE.xlsx for the shopping list.",
                "To fill in on paper, print the sheets that you need: of each the columns up to "
                "Remarks are printed, and beyond those only what is in use.",
            ),
        ),
        (
            "Sizes",
            (
                "Sizes are finished sizes, as on the wearer. Seams, hems, gathers and pleats are "
                "added for you.",
                f"A size without a unit is in {_NAMES[unit]}: the line Unit of the sheet Garment "
                "says so. A size may have its own unit: 1 yd 4 in, 44.5 cm, 12 mm.",
                "Write fractions as on the tape: 17 1/2. The cells for sizes are text, so that 1/2 "
                "does not become a date. Percentages carry their sign: 5 %.",
                "A size that comes from a measure begins with the word from: from waist / 2 + 1 in."
                " Plain arithmetic with + - * / and brackets is read; formulas of the spreadsheet "
                "are not: write their result.",
                "An edge is named by its piece: skirt panel: bottom. That is on every one of the "
                "piece; 1 x skirt panel: bottom is on one of them.",
                "Several names in one cell have ; between them: print; lining.",
            ),
        ),
        ("The sheets", tuple(about)),
        (
            "Your own remarks",
            (
                "The column Remarks on each sheet is for you, and is not read; what is written "
                "under Note stands on the list and on the measure sheet. Sheets of your own may "
                "have any name that begins with Notes.",
            ),
        ),
    ]
    return parts


_NAMES = {Unit.IN: "inches", Unit.CM: "centimetres", Unit.MM: "millimetres"}
