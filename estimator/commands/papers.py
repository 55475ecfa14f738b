"""Commands that estimate plans: the papers on the terminal, in files, and the stash after them."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Annotated

import typer

from estimator.commands.ends import complain, estimate_of_files, refusing, say, say_json
from estimator.commands.options import (
    CatalogOption,
    JsonOption,
    Plans,
    ShopsOption,
    StashOption,
    ThoroughOption,
    UnitsOption,
)


def show(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    as_json: JsonOption = False,
    as_csv: Annotated[
        bool, typer.Option("--csv", help="Print the list as comma-separated values.")
    ] = False,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Print what to buy: the shopping list, how each fabric lies, and what was taken for granted.

    \b
    Examples:
      estimator show skirt.toml
      estimator show dress.toml --catalog shop
      estimator show dress.toml apron.toml --catalog shop     (bought together)
    """
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    if as_json:
        from estimator.reports.as_json import estimate_json

        say_json(estimate_json(found))
        return
    if as_csv:
        from estimator.reports.as_csv import list_csv

        say(list_csv(found))
        return
    from estimator.reports.terminal import estimate_text

    say(estimate_text(found))


def write(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    out: Annotated[
        Path | None,
        typer.Option(
            "--out",
            "-o",
            metavar="FILE",
            help="Where to write; PLAN-list.xlsx if not said, shopping-list.xlsx for several.",
        ),
    ] = None,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
    budget: Annotated[
        str, typer.Option("--budget", metavar="AMOUNT", help="Money set aside, as in 120.")
    ] = "",
    tax: Annotated[
        str, typer.Option("--tax", metavar="SHARE", help="Tax on top of prices, as in '8.25 %'.")
    ] = "",
    contingency: Annotated[
        str, typer.Option("--contingency", metavar="SHARE", help="For what goes wrong: '10 %'.")
    ] = "",
) -> None:
    """Write the shopping list as a spreadsheet that a buyer can take to the shop.

    Written over a list that somebody has filled in, it keeps what they wrote, and marks what has
    changed since.

    \b
    Examples:
      estimator write skirt.toml
      estimator write dress.toml --catalog shop --out dress-list.xlsx
      estimator write dress.toml --catalog shop --budget 120 --tax "8.25 %" --contingency "10 %"
    """
    from estimator.bill import read_funds

    stated = refusing(lambda: read_funds(budget, tax, contingency))
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    funds = stated.or_else(found.job.funds)
    path = out or Path(f"{plans[0].stem if len(plans) == 1 else 'shopping'}-list.xlsx")
    from estimator.reports.buyers_list.file import write_list
    from estimator.reports.shopping_list import totals

    earlier = refusing(lambda: write_list(found, path, funds))
    kept = " What had been filled in is kept." if earlier.has_writing else ""
    say(f"Wrote {path}: {' '.join(totals(found, funds))}{kept}")


def page(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    out: Annotated[
        Path | None,
        typer.Option("--out", "-o", metavar="FILE", help="Where to write; PLAN.html if not said."),
    ] = None,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Write list, drawn layouts, cut list and working as one HTML page, for screen or print.

    \b
    Examples:
      estimator page skirt.toml
      estimator page dress.toml --catalog shop --out dress.html
    """
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    path = out or Path(f"{plans[0].stem if len(plans) == 1 else 'shopping'}.html")
    from estimator.reports.page import page_text
    from estimator.reports.saving import save_page
    from estimator.reports.shopping_list import totals

    refusing(lambda: save_page(page_text(found), path))
    say(f"Wrote {path}: {' '.join(totals(found, found.job.funds))}")


def widths(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Compare fabric widths: length to buy, cost and waste at each, and which is cheapest and why.

    \b
    Example:
      estimator widths dress.toml --catalog shop
    """
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    if as_json:
        from estimator.reports.as_json import widths_json

        say_json(widths_json(found))
        return
    from estimator.reports.terminal import widths_text

    say(widths_text(found))


def layout(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    pictures: Annotated[
        Path | None,
        typer.Option(metavar="FOLDER", help="Also draw each layout to scale, as SVG and PNG."),
    ] = None,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Print the cut list, and each cutting layout row by row, so that a person can chalk it.

    \b
    Examples:
      estimator layout dress.toml --catalog shop
      estimator layout dress.toml --catalog shop --pictures drawn
    """
    from estimator.reports.terminal import layout_text

    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    if pictures is None:
        say(layout_text(found))
        return
    from estimator.reports.pictures.files import save_pictures

    folder = pictures
    count = refusing(lambda: save_pictures(found, folder))
    say(layout_text(found))
    say(f"Drew {count} picture{'s' if count != 1 else ''} in {folder}, each as SVG and as PNG.")


def working(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    about: Annotated[
        str, typer.Option("--about", metavar="WORD", help="Only what has this in its name.")
    ] = "",
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Show the working behind each quantity and each cut size, line by line as on paper.

    \b
    Examples:
      estimator working dress.toml --catalog shop
      estimator working dress.toml --catalog shop --about lace
    """
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough, units=units)
    from estimator.reports.terminal import working_text

    text = working_text(found, about)
    if not text and about:
        complain(f"nothing in the plan has '{about}' in its name", "leave --about out to see all")
    if as_json:
        from estimator.reports.as_json import working_json

        say_json(working_json(found, about))
        return
    say(text)


def check(plans: Plans, catalog: CatalogOption = None, stash: StashOption = None) -> None:
    """Check plans, and say everything that is wrong with them; write nothing.

    \b
    Example:
      estimator check dress.toml --catalog shop
    """
    found = estimate_of_files(plans, catalog, stash)
    for order in found.job.garments:
        say(f"{order.places.file}: {order.plan.garment.name} is in order.")
    say(f"Things to buy: {len(found.purchases)}.")
    for remark in found.remarks:
        say(f"Look at this: {remark}")


def book_out(
    plans: Plans,
    catalog: CatalogOption = None,
    stash: StashOption = None,
    shops: ShopsOption = None,
    mark: Annotated[
        str, typer.Option("--mark", help="The check mark of the stash on the list followed.")
    ] = "",
    on: Annotated[
        datetime | None,
        typer.Option("--on", formats=["%Y-%m-%d"], help="The day of booking; today if not said."),
    ] = None,
    thorough: ThoroughOption = False,
) -> None:
    """Book out what a list took from the stash, and book in what is left over from buying it.

    The stash file is written anew; as it was, it is kept beside it as a dated copy.

    \b
    Example:
      estimator book-out play.show.toml --mark 3f09a1c2
    """
    found = estimate_of_files(plans, catalog, stash, shops, thorough=thorough)
    from estimator.reports.stash_file import book_out as booked

    for line in refusing(lambda: booked(found, (on or datetime.now()).date(), mark)):
        say(line)
