"""Arguments and options that several commands take."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from estimator.measure import Units


class Wish(StrEnum):
    """What is asked of the shops."""

    LEAST = "least"
    FEWEST = "fewest"


Plans = Annotated[list[Path], typer.Argument(metavar="PLAN...", help="Garment plans to shop for.")]
CatalogOption = Annotated[
    Path | None,
    typer.Option(
        "--catalog",
        "-c",
        metavar="SHOP",
        help="Folder with items.csv and offers.csv, or a workbook with sheets items and offers.",
    ),
]
StashOption = Annotated[
    Path | None,
    typer.Option("--stash", metavar="FILE", help="Table of what is in hand, used first."),
]
ShopsOption = Annotated[
    Wish | None,
    typer.Option("--shops", help="Spend least, or go to the fewest shops."),
]
ThoroughOption = Annotated[
    bool, typer.Option("--thorough", help="Search longer for layouts that buy less.")
]
UnitsOption = Annotated[
    Units | None,
    typer.Option("--units", help="Print in these, whatever the plan is written in."),
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON for another program.")]
