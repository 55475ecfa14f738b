"""Every reader against files that nobody should write: `python -m tests.benchmarks.fuzz`.

Sound plans, catalogs, tables of wearers and stashes, shows and workbooks are cut, crossed, filled
with hostile values, or damaged byte by byte, and read; of some the whole estimate is made. What is
sound is estimated and all else refused with complaints. The command prints how many files of each
kind were read, how many were refused, and the slowest; it ends with status 1 for an exception that
is no refusal, a file that took longer than the limit, or a file that was changed.
"""

from __future__ import annotations

import argparse
import csv
import hashlib
import io
import sys
import traceback
import zipfile
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from multiprocessing import Pool
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import process_time

from openpyxl import Workbook
from tabulate import tabulate

from estimator import Refused, estimate_files
from estimator.cast import cast_of
from estimator.readers.catalogs import read_catalog
from estimator.readers.plans import read_draft
from estimator.readers.stash_table import read_stash
from estimator.readers.wearers_table import read_wearers
from estimator.shipped import shipped

DEMO, TEMPLATES = shipped("catalog_demo"), shipped("templates")
PLANS = [
    path
    for path in sorted([*DEMO.glob("*.toml"), *TEMPLATES.glob("*.toml")])
    if not path.name.endswith(".show.toml")
]
TABLES = ("items.csv", "offers.csv", "wearers.csv", "stash.csv")
CLOAK, SHOW = "night_cloak.toml", "harvest_fair.show.toml"
LIMIT, LIMIT_OF_ESTIMATE = 2.0, 60.0
"""Seconds of work: a reader may take so long, and a whole estimate, of a plan that grew."""
ODD = [
    "", "0", "-1", "7", "1/0", "9**9**9", "(" * 300, "-" * 300, "1e308", "nan", "inf", "½", "１２",
    "9" * 400, "9/" * 90 + "1", "0." + "0" * 200 + "1", "1 in 1 in", "999999 yd", "1/64 in",
    "100 %", "99.999999 %", "1e9 %", "fold", "a: b", "99999 x a: b", "card of 1 mm",
    "pack of 999999", "pack of 999 x 1 mm", "spool of 999999 yd",
    "=1+1", "'=1", "\x00", "\ufeff", "\u202e",
    "😀" * 50, "02-Jan", "2024-01-02", "../../etc/passwd", "/dev/zero", "/dev/stdin",
    "wearers.csv", ".",
    "min(1 in)", "max()", "waist", "waist / 0", "waist * waist", "waist ** 9", "__import__('os')",
    "min(" * 60 + "1 in" + ")" * 60, "1 in" + " + 1 in" * 40, '"', "'''", "\\", "all", "A" * 5000,
]  # fmt: skip
ODD_TOML = [
    "0", "-1", "7", "9" * 40, "1e308", "nan", "-inf", "true", "2024-01-02", "12:30:00", "[]", "{}",
    "[" * 200 + "]" * 200, "[" * 5000, "{a=" * 200 + "1" + "}" * 200, '[["a: b"]]',
    "{ from = 'waist + 1 in' }", "{ from = '" + "(" * 90 + "' }", "'''\n'''", "0x7fffffffffffffff",
    "999", "5000", "2000000",
]  # fmt: skip
MEASURES = [
    '[measures]\nwaist = { from = "waist" }\n',
    '[measures]\nwaist = { from = "hip" }\nhip = { from = "waist" }\n',
    '[measures]\n' + "".join(f'm{n} = "{n + 1}"\n' for n in range(2_000)),
    '[measures]\nwaist = "9**9**9"\n',
    '[measures]\nwaist = "999999 yd"\n',
]  # fmt: skip


def odd_toml(text: str, chance: Random) -> str:
    """A text file of tables with some of its lines changed, lost, repeated or crossed."""
    lines = text.split("\n")
    for _ in range(chance.choice((1, 1, 1, 2, 4, 12))):
        place = chance.randrange(len(lines))
        way = chance.randrange(9)
        if way < 4 and "=" in lines[place]:
            key, _, value = lines[place].partition("=")
            if way < 2:
                lines[place] = f"{key}= {chance.choice(ODD_TOML)}"
            elif '"' in value:
                parts = value.split('"')
                parts[chance.randrange(len(parts) // 2) * 2 + 1] = chance.choice(ODD)
                lines[place] = key + "=" + '"'.join(parts)
        elif way == 4:
            del lines[place]
        elif way == 5:
            lines[place:place] = [lines[place]] * chance.choice((1, 2, 40))
        elif way == 6:
            other = chance.randrange(len(lines))
            lines[place], lines[other] = lines[other], lines[place]
        elif way == 7:
            lines.insert(place, chance.choice(MEASURES))
        else:
            lines.insert(place, f"{chance.choice(ODD) or 'x'} = {chance.choice(ODD_TOML)}")
        lines = lines or [""]
    return "\n".join(lines)


def odd_csv(text: str, chance: Random) -> str:
    """A table with some cells changed, rows lost or repeated, or its commas exchanged."""
    rows = [row for row in csv.reader(io.StringIO(text)) if row]
    for _ in range(chance.choice((1, 1, 2, 5, 20))):
        row = rows[chance.randrange(len(rows))]
        way = chance.randrange(7)
        if way < 4:
            row[chance.randrange(len(row))] = chance.choice(ODD)
        elif way == 4:
            rows.extend([list(row) for _ in range(chance.choice((1, 3, 300)))])
        elif way == 5 and len(rows) > 1:
            rows.remove(row)
        else:
            row.insert(chance.randrange(len(row) + 1), chance.choice(ODD))
    held = io.StringIO()
    csv.writer(held, delimiter=chance.choice(",,,,;\t")).writerows(rows)
    return held.getvalue()


def odd_bytes(content: bytes, chance: Random) -> bytes:
    """Bytes changed, lost, doubled, or in another encoding."""
    way = chance.randrange(6)
    if way == 0:
        return content.decode("utf-8", "replace").encode(
            chance.choice(("utf-16", "cp500")), "replace"
        )
    if way == 1:
        return content[: chance.randrange(len(content) + 1)]
    if way == 2:
        return content * chance.choice((2, 50))
    found = bytearray(content)
    for _ in range(chance.choice((1, 3, 30))):
        place = chance.randrange(len(found))
        found[place : place + chance.choice((0, 1, 1, 9))] = chance.randbytes(
            chance.choice((0, 1, 9))
        )
    return bytes(found)


def workbook(sheets: dict[str, list[list[str]]], chance: Random) -> bytes:
    """Tables as a workbook, some of its cells odd, and the archive perhaps damaged or a bomb."""
    book = Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row in rows:
            cells: list[object] = list(row)
            if chance.random() < 0.2 and cells:
                odd = chance.choice([*ODD, 3, 2.5, True, -1e300])
                if isinstance(odd, str):
                    odd = "".join(one for one in odd if one.isprintable())[:1_000]
                cells[chance.randrange(len(cells))] = odd
            sheet.append(cells)
        if chance.random() < 0.1:
            sheet.cell(chance.choice((40, 4_000, 1_048_576)), chance.choice((3, 300)), "far off")
        if chance.random() < 0.1:
            sheet.merge_cells("A1:C3")
    held = io.BytesIO()
    book.save(held)
    way = chance.randrange(8)
    if way == 0:
        return odd_bytes(held.getvalue(), chance)
    if way > 2:
        return held.getvalue()
    packed = io.BytesIO()
    with zipfile.ZipFile(held) as old, zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            content = old.read(name)
            if name.endswith("sheet1.xml"):
                content = (
                    content + b" " * 80_000_000
                    if way == 1 and chance.random() < 0.1
                    else odd_bytes(content, chance)
                )
            new.writestr(name, content)
    return packed.getvalue()


def rows_of(path: Path) -> list[list[str]]:
    return list(csv.reader(io.StringIO(path.read_text(encoding="utf-8"))))


def hostile(folder: Path, kind: str, chance: Random) -> Path:
    """Writes the file, or the folder, of one kind that is to be read."""
    for path in [*DEMO.iterdir(), *PLANS]:
        (folder / path.name).write_bytes(path.read_bytes())
    if kind == "workbook":
        names = chance.sample(TABLES, chance.randint(1, 4))
        own = {Path(name).stem: rows_of(DEMO / name) for name in names}
        target = folder / "book.xlsx"
        target.write_bytes(workbook(own, chance))
        return target
    if kind in ("plan", "show"):
        target = folder / (SHOW if kind == "show" else chance.choice(PLANS).name)
        text = target.read_text(encoding="utf-8")
        written = odd_toml(text, chance).encode("utf-8", "replace")
    else:
        target = folder / (chance.choice(TABLES[:2]) if kind == "catalog" else f"{kind}.csv")
        written = odd_csv(target.read_text(encoding="utf-8"), chance).encode("utf-8", "replace")
    target.write_bytes(odd_bytes(written, chance) if chance.random() < 0.15 else written)
    return target


def readers(kind: str, folder: Path, target: Path) -> list[Callable[[], object]]:
    """What reads a file of this kind."""
    catalog = read_catalog(DEMO)
    found: dict[str, list[Callable[[], object]]] = {
        "plan": [lambda: read_draft(target)],
        "show": [lambda: cast_of(target)],
        "catalog": [lambda: read_catalog(folder)],
        "wearers": [lambda: read_wearers(target)],
        "stash": [lambda: read_stash(target, catalog)],
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
        "workbook": lambda: estimate_files([folder / CLOAK], folder, stash=target),
        "stash": lambda: estimate_files([folder / CLOAK], folder, stash=target),
        "catalog": lambda: estimate_files([folder / CLOAK], folder),
    }
    return found.get(kind, lambda: estimate_files([folder / SHOW]))


@dataclass
class Report:
    """What one file came to."""

    kind: str
    number: int
    refused: int = 0
    seconds: float = 0.0
    estimate: float = 0.0
    faults: list[str] = field(default_factory=list)


KINDS = ("plan", "catalog", "wearers", "stash", "show", "workbook")


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
            except Refused as refused:
                report.refused = 1
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
