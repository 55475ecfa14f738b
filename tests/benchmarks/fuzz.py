"""Every reader against files that nobody should write: `python -m tests.benchmarks.fuzz`.

Sound plans, catalogs, tables of wearers and stashes, shows, workbooks and filled-in forms are made
hostile, and read; of some the whole estimate is made. What is sound is estimated and all else
refused with complaints. The command prints how many files of each kind were read, how many every
reader refused, and the slowest; it ends with status 1 for an exception that is no refusal, a file
that took longer than the limit, or a file that was changed.
"""

from __future__ import annotations

import argparse
import hashlib
import sys
import traceback
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from multiprocessing import Pool
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import process_time

from tabulate import tabulate

from estimator import Refused, estimate_files
from estimator.cast import cast_of
from estimator.readers.catalogs import read_catalog
from estimator.readers.plans import read_draft
from estimator.readers.stash_table import read_stash
from estimator.readers.wearers_table import read_wearers
from tests.benchmarks.hostile import CLOAK, DEMO, SHOW, hostile

LIMIT, LIMIT_OF_ESTIMATE = 2.0, 60.0
"""Seconds of work: a reader may take so long, and a whole estimate, of a plan that grew."""


def readers(kind: str, folder: Path, target: Path) -> list[Callable[[], object]]:
    """What reads a file of this kind."""
    catalog = read_catalog(DEMO)
    found: dict[str, list[Callable[[], object]]] = {
        "plan": [lambda: read_draft(target)],
        "show": [lambda: cast_of(target)],
        "catalog": [lambda: read_catalog(folder)],
        "wearers": [lambda: read_wearers(target)],
        "stash": [lambda: read_stash(target, catalog)],
        "form": [lambda: read_draft(target), lambda: read_catalog(target)],
        "workbook": [
            lambda: read_draft(target),
            lambda: read_catalog(target),
            lambda: read_wearers(target),
            lambda: read_stash(target, catalog),
        ],
    }
    return found[kind]


def whole_estimate(kind: str, folder: Path, target: Path) -> Callable[[], object]:
    """What makes an estimate with a file of this kind."""
    found: dict[str, Callable[[], object]] = {
        "plan": lambda: estimate_files([target], folder),
        "form": lambda: estimate_files([target], folder),
        "workbook": lambda: estimate_files([folder / CLOAK], folder, stash=target),
        "stash": lambda: estimate_files([folder / CLOAK], folder, stash=target),
        "catalog": lambda: estimate_files([folder / CLOAK], folder),
    }
    return found.get(kind, lambda: estimate_files([folder / SHOW]))


@dataclass
class Report:
    """What one file came to; `refused` says that no reader of its kind took it."""

    kind: str
    number: int
    refused: bool = True
    seconds: float = 0.0
    estimate: float = 0.0
    faults: list[str] = field(default_factory=list)


KINDS = ("plan", "catalog", "wearers", "stash", "show", "workbook", "form")


def tried(task: tuple[int, int]) -> Report:
    """One hostile file, read; told by its number and the seed of all of them."""
    seed, number = task
    chance = Random(f"{seed} {number}")
    kind = KINDS[number % len(KINDS)]
    report = Report(kind, number)
    with TemporaryDirectory() as name:
        folder = Path(name)
        target = hostile(folder, kind, chance)
        before = _state(folder)
        # a whole show takes longer: few of them
        whole = chance.random() < (0.02 if kind in ("show", "wearers") else 0.2)
        reading = readers(kind, folder, target)
        for read in [*reading, *([whole_estimate(kind, folder, target)] if whole else [])]:
            started = process_time()
            try:
                read()
                if read in reading:
                    report.refused = False
            except Refused as refused:
                if not refused.faults or not all(one.wrong and one.right for one in refused.faults):
                    report.faults.append("refused without saying what would be right")
            except BaseException:
                report.faults.append(traceback.format_exc(limit=-4))
            took, limit = process_time() - started, LIMIT if read in reading else LIMIT_OF_ESTIMATE
            if read in reading:
                report.seconds = max(report.seconds, took)
            else:
                report.estimate = took
            if took > limit:
                report.faults.append(f"took {took:.2f} s")
        if _state(folder) != before:
            report.faults.append("changed a file")
        if report.faults:
            kept = Path("/tmp") / f"fuzz-{seed}-{number}{target.suffix}"
            kept.write_bytes(target.read_bytes())
            report.faults.append(f"kept as {kept}")
    return report


def _state(folder: Path) -> dict[str, bytes]:
    return {path.name: hashlib.sha256(path.read_bytes()).digest() for path in folder.iterdir()}


def main() -> None:
    options = argparse.ArgumentParser(description="Every reader against hostile files.")
    options.add_argument("--count", type=int, default=20_000)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--first", type=int, default=0)
    options.add_argument("--processes", type=int, default=2)
    chosen = options.parse_args()
    numbers = range(chosen.first, chosen.first + chosen.count)
    read: Counter[str] = Counter()
    refused: Counter[str] = Counter()
    slowest: dict[str, Report] = {}
    longest: dict[str, float] = {}
    bad = 0
    with Pool(chosen.processes) as pool:
        for one in pool.imap_unordered(tried, ((chosen.seed, n) for n in numbers), chunksize=20):
            read[one.kind] += 1
            refused[one.kind] += one.refused
            if one.kind not in slowest or one.seconds > slowest[one.kind].seconds:
                slowest[one.kind] = one
            longest[one.kind] = max(longest.get(one.kind, 0.0), one.estimate)
            if one.faults:
                bad += 1
                print(f"{one.kind} {one.number}:", *one.faults, sep="\n", flush=True)
    rows = [
        [
            kind,
            read[kind],
            refused[kind],
            f"{slowest[kind].seconds:.2f}",
            slowest[kind].number,
            f"{longest[kind]:.2f}",
        ]
        for kind in KINDS
        if kind in slowest
    ]
    heads = ["kind", "files", "refused", "slowest, s", "its number", "slowest estimate, s"]
    print(tabulate(rows, heads))
    print(f"{sum(read.values())} files, {bad} of them with a fault")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
