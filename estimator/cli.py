"""The commands of the terminal, by their names, and the way the program begins and ends."""

from __future__ import annotations

import contextlib
import os
import sys
from typing import NoReturn, TextIO

import typer

from estimator.commands import papers, starters
from estimator.commands.ends import CannotPrint, printed

STOPPED = 130
"""The exit status of what was interrupted, by custom 128 and the number of the signal."""

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

for command in (
    papers.show,
    papers.write,
    papers.page,
    papers.widths,
    papers.layout,
    papers.working,
    papers.check,
    papers.book_out,
    starters.schema,
    starters.new,
    starters.convert,
):
    app.command()(command)


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
            printed()
    except KeyboardInterrupt:
        _stopped()
    except SystemExit as end:
        if end.code != STOPPED:
            raise
        _stopped()
    except (CannotPrint, BrokenPipeError) as problem:
        _cannot_print(problem.__cause__ or problem)
    except OSError as problem:
        print(f"this machine cannot go on ({problem}); nothing was written", file=sys.stderr)
        sys.exit(2)


def _cannot_print(problem: BaseException) -> NoReturn:
    _let_go_of(sys.stdout)
    if isinstance(problem, BrokenPipeError):
        sys.exit(1)
    with contextlib.suppress(OSError):
        why = getattr(problem, "strerror", problem)
        print(f"what is printed cannot be written ({why})", file=sys.stderr)
    sys.exit(2)


def _stopped() -> NoReturn:
    """Somebody has interrupted the work; typer makes an end with this status of that."""
    print("stopped; nothing was written.", file=sys.stderr)
    sys.exit(STOPPED)


def _let_go_of(stream: TextIO) -> None:
    """What could not be written is dropped, or Python tries once more as it ends."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
