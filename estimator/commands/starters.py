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
    from estimator.reports.saving import is_there, write_whole

    if starter not in starters:
        complain(f"there is no starter plan '{starter}'", nearest(starter, starters))
    path = file or Path(f"{starter}.toml")
    if refusing(lambda: is_there(path)):
        complain("is there already", "choose another name", where=str(path))
    content = refusing(lambda: _starter(starters[starter], path, catalog))
    refusing(lambda: write_whole(path, content))
    say(f"Wrote {path}: change its sizes, then run: estimator show {path}")


def _starter(starter: Path, path: Path, catalog: Path | None) -> bytes:
    """A starter plan as a file of the kind that its new name says."""
    from estimator.readers.workbooks import is_workbook

    if not is_workbook(path):
        return starter.read_bytes()
    from estimator.catalog import NO_CATALOG
    from estimator.readers.catalogs import read_catalog
    from estimator.readers.plan_toml import parsed
    from estimator.readers.remarks import opening_remarks, remarks_in
    from estimator.reports.plan_form import plan_form
    from estimator.reports.saving import workbook_bytes

    text = starter.read_text(encoding="utf-8")
    shop = read_catalog(catalog) if catalog else NO_CATALOG
    tables = parsed(text, str(starter))
    return workbook_bytes(plan_form(tables, opening_remarks(text), remarks_in(text), shop))


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
