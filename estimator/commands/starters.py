"""Commands that help to write a plan: the starter plans, and the schemas."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from estimator.commands.ends import complain, refusing, say, say_json
from estimator.commands.options import CatalogOption


def new(
    starter: Annotated[
        str, typer.Argument(metavar="[STARTER]", help="A starter plan; none lists them.")
    ] = "",
    file: Annotated[
        Path | None,
        typer.Argument(
            metavar="[FILE]",
            help="Where to put it; STARTER.toml if not said. FILE.xlsx is a spreadsheet.",
        ),
    ] = None,
    catalog: CatalogOption = None,
) -> None:
    """Copy a starter plan to fill in with your own sizes, or list the starter plans.

    With a FILE that ends in .xlsx it is a spreadsheet with headings, explanations and lists to
    choose from; with --catalog the shop's items are among them.

    \b
    Examples:
      estimator new
      estimator new gathered_skirt my-skirt.toml
      estimator new gathered_skirt my-skirt.xlsx --catalog shop
    """
    from estimator.shipped import first_comment, starter_plans

    starters = starter_plans()
    if not starter:
        say("Starter plans (copy one with: estimator new NAME):")
        for name, path in starters.items():
            say(f"  {name:18} {first_comment(path)}")
        return
    from estimator.faults import nearest
    from estimator.readers.workbooks import is_workbook
    from estimator.reports.plan_file import as_workbook
    from estimator.reports.saving import write_whole

    if starter not in starters:
        complain(f"there is no starter plan '{starter}'", nearest(starter, starters))
    path = file or Path(f"{starter}.toml")
    _refuse_to_write_over(path)
    source = starters[starter]
    content = refusing(
        lambda: as_workbook(source, catalog) if is_workbook(path) else source.read_bytes()
    )
    refusing(lambda: write_whole(path, content))
    say(f"Wrote {path}: change its sizes, then run: estimator show {path}")


def convert(
    plan: Annotated[
        Path, typer.Argument(metavar="PLAN", help="A plan of your own, or the folder of a catalog.")
    ],
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="Where to put it: FILE.xlsx or FILE.toml.")
    ],
    catalog: CatalogOption = None,
) -> None:
    """Write a text plan as a spreadsheet to fill in, or a filled-in spreadsheet as a text plan.

    It is the same plan, with its remarks. With --catalog the shop's items can be chosen in the
    spreadsheet. The folder of a catalog becomes a spreadsheet likewise.

    \b
    Examples:
      estimator convert my-skirt.toml my-skirt.xlsx --catalog shop
      estimator convert my-skirt.xlsx my-skirt.toml
      estimator convert shop shop.xlsx
    """
    from estimator.readers.workbooks import is_workbook
    from estimator.reports.catalog_form import catalog_as_workbook
    from estimator.reports.plan_file import as_text, as_workbook
    from estimator.reports.saving import write_whole

    if not is_workbook(file) and file.suffix.casefold() != ".toml":
        complain(
            "neither a spreadsheet nor a text plan is called so",
            "let it end in .xlsx or .toml",
            where=str(file),
        )
    _refuse_to_write_over(file)
    if plan.is_dir() and not is_workbook(file):
        complain("a catalog's tables are text already", "let it end in .xlsx", where=str(file))

    def content() -> bytes:
        if plan.is_dir():
            return catalog_as_workbook(plan)
        return as_workbook(plan, catalog) if is_workbook(file) else as_text(plan)

    written = refusing(content)
    refusing(lambda: write_whole(file, written))
    say(f"Wrote {file}: the same {'catalog' if plan.is_dir() else 'plan'} as {plan}.")


def _refuse_to_write_over(path: Path) -> None:
    from estimator.reports.saving import is_there

    if refusing(lambda: is_there(path)):
        complain("is there already", "choose another name", where=str(path))


def schema(of: Annotated[str, typer.Argument(metavar="plan|estimate")]) -> None:
    """Print the JSON schema of a plan, or of the estimate that show --json prints.

    \b
    Examples:
      estimator schema plan
      estimator schema estimate
    """
    from estimator.reports.schemas import SCHEMAS

    if of not in SCHEMAS:
        complain(f"there is no schema of '{of}'", f"write {' or '.join(SCHEMAS)}")
    say_json(SCHEMAS[of]())
