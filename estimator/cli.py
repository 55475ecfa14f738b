"""Commands of the terminal. No arithmetic: files in, one estimate, papers out."""

from __future__ import annotations

import contextlib
import json
import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NoReturn, TextIO, TypeVar

import typer

if TYPE_CHECKING:
    from estimator.estimate import Estimate

T = TypeVar("T")
WORTH_A_BAR = 8
"""With fewer garments the work is done before a bar is seen."""

app = typer.Typer(
    name="estimator",
    help=(
        "Works out what to buy for a garment: fabric, lining, trim, elastic and notions.\n\n"
        "You write a plan of the finished sizes; estimator works out the cut sizes, lays the "
        "pieces out on each width of fabric, adds allowances, and rounds up to what shops sell."
    ),
    epilog="Begin with: estimator new   (it lists the starter plans)",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)

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
ThoroughOption = Annotated[
    bool, typer.Option("--thorough", help="Search longer for layouts that buy less.")
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON for another program.")]


@app.command()
def show(
    plans: Plans,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
) -> None:
    """Print what to buy: the shopping list, how each fabric lies, and what was taken for granted.

    \b
    Examples:
      estimator show skirt.toml
      estimator show dress.toml --catalog shop
      estimator show dress.toml apron.toml --catalog shop     (bought together)
    """
    found = _estimated(plans, catalog, thorough=thorough)
    if as_json:
        from estimator.reports.as_json import estimate_json

        _print_json(estimate_json(found))
        return
    from estimator.reports.terminal import estimate_text

    _print(estimate_text(found))


@app.command()
def write(
    plans: Plans,
    catalog: CatalogOption = None,
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
) -> None:
    """Write the shopping list as a spreadsheet that a buyer can take to the shop.

    A list that somebody has filled in is never written over.

    \b
    Examples:
      estimator write skirt.toml
      estimator write dress.toml --catalog shop --out dress-list.xlsx
    """
    found = _estimated(plans, catalog, thorough=thorough)
    path = out or Path(f"{plans[0].stem if len(plans) == 1 else 'shopping'}-list.xlsx")
    from estimator.reports.saving import save_workbook
    from estimator.reports.shopping_list import totals
    from estimator.reports.workbook import workbook_of

    _refusing(lambda: save_workbook(workbook_of(found), path))
    _print(f"Wrote {path}: {' '.join(totals(found))}")


@app.command()
def widths(
    plans: Plans,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
) -> None:
    """Compare fabric widths: length to buy, cost and waste at each, and which is cheapest and why.

    \b
    Example:
      estimator widths dress.toml --catalog shop
    """
    found = _estimated(plans, catalog, thorough=thorough)
    if as_json:
        from estimator.reports.as_json import widths_json

        _print_json(widths_json(found))
        return
    from estimator.reports.terminal import widths_text

    _print(widths_text(found))


@app.command()
def layout(plans: Plans, catalog: CatalogOption = None, thorough: ThoroughOption = False) -> None:
    """Print the cut list, and each cutting layout row by row, so that a person can chalk it.

    \b
    Example:
      estimator layout dress.toml --catalog shop
    """
    from estimator.reports.terminal import layout_text

    _print(layout_text(_estimated(plans, catalog, thorough=thorough)))


@app.command()
def working(
    plans: Plans,
    catalog: CatalogOption = None,
    about: Annotated[
        str, typer.Option("--about", metavar="WORD", help="Only what has this in its name.")
    ] = "",
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
) -> None:
    """Show the working behind each quantity and each cut size, line by line as on paper.

    \b
    Examples:
      estimator working dress.toml --catalog shop
      estimator working dress.toml --catalog shop --about lace
    """
    found = _estimated(plans, catalog, thorough=thorough)
    from estimator.reports.terminal import working_text

    text = working_text(found, about)
    if not text and about:
        _complain(f"nothing in the plan has '{about}' in its name", "leave --about out to see all")
    if as_json:
        from estimator.reports.as_json import working_json

        _print_json(working_json(found, about))
        return
    _print(text)


@app.command()
def check(plans: Plans, catalog: CatalogOption = None) -> None:
    """Check plans, and say everything that is wrong with them; write nothing.

    \b
    Example:
      estimator check dress.toml --catalog shop
    """
    found = _estimated(plans, catalog)
    for order in found.job.garments:
        _print(f"{order.places.file}: {order.plan.garment.name} is in order.")
    _print(f"Things to buy: {len(found.purchases)}.")
    for remark in found.remarks:
        _print(f"Look at this: {remark}")


@app.command()
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
        _print("Starter plans (copy one with: estimator new NAME):")
        for name, path in starters.items():
            _print(f"  {name:18} {first_comment(path)}")
        return
    from estimator.faults import nearest
    from estimator.reports.saving import is_there, write_whole

    if starter not in starters:
        _complain(f"there is no starter plan '{starter}'", nearest(starter, starters))
    path = file or Path(f"{starter}.toml")
    if _refusing(lambda: is_there(path)):
        _complain("is there already", "choose another name", where=str(path))
    content = _refusing(lambda: _starter(starters[starter], path, catalog))
    _refusing(lambda: write_whole(path, content))
    _print(f"Wrote {path}: change its sizes, then run: estimator show {path}")


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


def _estimated(plans: list[Path], catalog: Path | None, *, thorough: bool = False) -> Estimate:
    """Everything that a command needs: the files read, and the estimate of them together."""
    from estimator.faults import Refused
    from estimator.files import estimate_files
    from estimator.memory import place, remember_until_the_end

    memory = place()
    remember_until_the_end(memory)
    with contextlib.ExitStack() as until_done:

        def begun(count: int) -> Callable[[int], None]:
            """Shows how far the work on many garments is, to a person who looks on."""
            if count < WORTH_A_BAR or not sys.stderr.isatty():
                return lambda _done: None
            bar = typer.progressbar(length=count, label="Estimating", file=sys.stderr)
            return until_done.enter_context(bar).update

        try:
            return estimate_files(
                plans,
                catalog,
                thorough=thorough,
                processes=os.cpu_count() or 1,
                memory=memory,
                begun=begun,
            )
        except Refused as refused:
            _refuse(refused)


def _refusing(action: Callable[[], T]) -> T:
    from estimator.faults import Refused

    try:
        return action()
    except Refused as refused:
        _refuse(refused)


def _complain(wrong: str, right: str, where: str = "") -> NoReturn:
    from estimator.faults import Fault, Refused

    _refuse(Refused([Fault(where, wrong, right)]))


def _refuse(refused: Any) -> NoReturn:
    """Prints complaints to the error stream, and ends with status 2."""
    for fault in refused.faults:
        print(fault, file=sys.stderr)
    count = len(refused.faults)
    if count > 1:
        print(f"{count} things to put right; nothing was written.", file=sys.stderr)
    raise typer.Exit(2)


def _print(text: str) -> None:
    print(text.rstrip())


def _print_json(value: Any) -> None:
    print(json.dumps(value, indent=2, ensure_ascii=False))


def main() -> None:
    """The console command.

    A reader that has seen enough (``| head``) is no fault; a disk that is full is one.
    """
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
    try:
        try:
            app()
        finally:
            sys.stdout.flush()
    except BrokenPipeError:
        _let_go_of(sys.stdout)
        sys.exit(1)
    except KeyboardInterrupt:
        print("stopped; nothing was written.", file=sys.stderr)
        sys.exit(130)
    except OSError as problem:
        _let_go_of(sys.stdout)
        with contextlib.suppress(OSError):
            print(f"what is printed cannot be written ({problem.strerror})", file=sys.stderr)
        sys.exit(2)


def _let_go_of(stream: TextIO) -> None:
    """What could not be written is dropped, or Python tries once more as it ends."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
