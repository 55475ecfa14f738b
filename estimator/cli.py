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

from estimator.measure import Units

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
    typer.Option("--catalog", "-c", metavar="FOLDER", help="Folder with items.csv and offers.csv."),
]
ThoroughOption = Annotated[
    bool, typer.Option("--thorough", help="Search longer for layouts that buy less.")
]
UnitsOption = Annotated[
    Units | None,
    typer.Option("--units", help="Print in these, whatever the plan is written in."),
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON for another program.")]


@app.command()
def show(
    plans: Plans,
    catalog: CatalogOption = None,
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
    found = _estimated(plans, catalog, thorough=thorough, units=units)
    if as_json:
        from estimator.reports.as_json import estimate_json

        _print_json(estimate_json(found))
        return
    if as_csv:
        from estimator.reports.as_csv import list_csv

        _print(list_csv(found))
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
    from estimator.buying.bill import read_funds

    funds = _refusing(lambda: read_funds(budget, tax, contingency))
    found = _estimated(plans, catalog, thorough=thorough, units=units)
    path = out or Path(f"{plans[0].stem if len(plans) == 1 else 'shopping'}-list.xlsx")
    from estimator.reports.list_file import write_list
    from estimator.reports.shopping_list import totals

    earlier = _refusing(lambda: write_list(found, path, funds))
    kept = " What had been filled in is kept." if earlier.has_writing else ""
    _print(f"Wrote {path}: {' '.join(totals(found, funds))}{kept}")


@app.command()
def page(
    plans: Plans,
    catalog: CatalogOption = None,
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
    found = _estimated(plans, catalog, thorough=thorough, units=units)
    path = out or Path(f"{plans[0].stem if len(plans) == 1 else 'shopping'}.html")
    from estimator.reports.page import page_text
    from estimator.reports.saving import save_page
    from estimator.reports.shopping_list import totals

    _refusing(lambda: save_page(page_text(found), path))
    _print(f"Wrote {path}: {' '.join(totals(found))}")


@app.command()
def widths(
    plans: Plans,
    catalog: CatalogOption = None,
    as_json: JsonOption = False,
    thorough: ThoroughOption = False,
    units: UnitsOption = None,
) -> None:
    """Compare fabric widths: length to buy, cost and waste at each, and which is cheapest and why.

    \b
    Example:
      estimator widths dress.toml --catalog shop
    """
    found = _estimated(plans, catalog, thorough=thorough, units=units)
    if as_json:
        from estimator.reports.as_json import widths_json

        _print_json(widths_json(found))
        return
    from estimator.reports.terminal import widths_text

    _print(widths_text(found))


@app.command()
def layout(
    plans: Plans,
    catalog: CatalogOption = None,
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

    found = _estimated(plans, catalog, thorough=thorough, units=units)
    if pictures is None:
        _print(layout_text(found))
        return
    from estimator.reports.pictures.files import save_pictures

    folder = pictures
    count = _refusing(lambda: save_pictures(found, folder))
    _print(layout_text(found))
    _print(f"Drew {count} picture{'s' if count != 1 else ''} in {folder}, each as SVG and as PNG.")


@app.command()
def working(
    plans: Plans,
    catalog: CatalogOption = None,
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
    found = _estimated(plans, catalog, thorough=thorough, units=units)
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
def schema(of: Annotated[str, typer.Argument(metavar="plan|estimate")]) -> None:
    """Print the JSON schema of a plan, or of the estimate that show --json prints.

    \b
    Examples:
      estimator schema plan
      estimator schema estimate
    """
    from estimator.reports.schemas import SCHEMAS

    if of not in SCHEMAS:
        _complain(f"there is no schema of '{of}'", f"write {' or '.join(SCHEMAS)}")
    _print_json(SCHEMAS[of]())


@app.command()
def new(
    starter: Annotated[
        str, typer.Argument(metavar="[STARTER]", help="A starter plan; none lists them.")
    ] = "",
    file: Annotated[
        Path | None,
        typer.Argument(metavar="[FILE]", help="Where to put it; STARTER.toml if not said."),
    ] = None,
) -> None:
    """Copy a starter plan to fill in with your own sizes, or list the starter plans.

    \b
    Examples:
      estimator new
      estimator new gathered_skirt my-skirt.toml
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
    _refusing(lambda: write_whole(path, starters[starter].read_bytes()))
    _print(f"Wrote {path}: change its sizes, then run: estimator show {path}")


def _estimated(
    plans: list[Path],
    catalog: Path | None,
    *,
    thorough: bool = False,
    units: Units | None = None,
) -> Estimate:
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
                units=units,
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
