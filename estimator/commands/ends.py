"""Where every command begins and ends: files to an estimate, and what is said to the terminal."""

from __future__ import annotations

import contextlib
import json
import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar

import typer

from estimator.commands.options import Wish
from estimator.measure import Units

if TYPE_CHECKING:
    from estimator.estimated import Estimate

T = TypeVar("T")
WORTH_A_BAR = 8
"""With fewer garments the work is done before a bar is seen."""


def estimate_of_files(
    plans: list[Path],
    catalog: Path | None,
    stash: Path | None = None,
    shops: Wish | None = None,
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
                stash=stash,
                fewest_shops=None if shops is None else shops is Wish.FEWEST,
                thorough=thorough,
                units=units,
                processes=_processors(),
                memory=memory,
                begun=begun,
            )
        except Refused as refused:
            refuse(refused)


def _processors() -> int:
    """How many processors this program may use, where the system tells; else all there are."""
    mine = getattr(os, "sched_getaffinity", None)
    return len(mine(0)) if mine else os.cpu_count() or 1


def refusing(action: Callable[[], T]) -> T:
    """What the action returns; where it is refused, its complaints and the end of the program."""
    from estimator.faults import Refused

    try:
        return action()
    except Refused as refused:
        refuse(refused)


def complain(wrong: str, right: str, where: str = "") -> NoReturn:
    """Says what is wrong and what would be right, and ends the program."""
    from estimator.faults import Fault, Refused

    refuse(Refused([Fault(where, wrong, right)]))


def refuse(refused: Any) -> NoReturn:
    """Prints complaints to the error stream, and ends with status 2."""
    for fault in refused.faults:
        print(fault, file=sys.stderr)
    count = len(refused.faults)
    if count > 1:
        print(f"{count} things to put right; nothing was written.", file=sys.stderr)
    raise typer.Exit(2)


class CannotPrint(Exception):
    """What is printed has nowhere to go; the cause is the system's own error."""


def say(text: str) -> None:
    """Prints a text for a person; raises CannotPrint."""
    try:
        print(text.rstrip())
    except OSError as problem:
        raise CannotPrint from problem


def printed() -> None:
    """Sees that all is printed that was said; raises CannotPrint."""
    try:
        sys.stdout.flush()
    except OSError as problem:
        raise CannotPrint from problem


def say_json(value: Any) -> None:
    """Prints a value for another program; raises CannotPrint."""
    say(json.dumps(value, indent=2, ensure_ascii=False))
