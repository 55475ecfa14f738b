"""A whole show against the number of its garments: `python -m tests.benchmarks.whole_show`.

Five costumes of 33 pieces in two fabrics, each garment for a wearer with measures of her own; laid
out together and each alone, over so many processes. Prints seconds for 10, 60 and 240 garments,
without and with a stash of remnants, then again with what was remembered, and after one wearer's
measures have changed.
"""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from time import perf_counter

from tabulate import tabulate

from estimator import estimate_files
from estimator.buying.laying import laid_once
from estimator.buying.remnants import laid_on_remnant
from estimator.memory import remembering

COSTUMES = 5
REMNANTS = 36
PIECES = [
    ("skirt panel", 4, "hip / 4 + {} in", "skirt length", "lengthwise"),
    ("front", 2, "chest / 4 + 1 in", "18 in", "lengthwise"),
    ("back", 2, "chest / 4 + 1 in", "17 in", "lengthwise"),
    ("sleeve", 2, "arm * 0.7", "arm", "lengthwise"),
    ("cuff", 4, "9 in", "3 in", "either"),
    ("collar", 2, "16 in", "3 1/2 in", "either"),
    ("pocket", 4, "7 in", "8 in", "either"),
    ("facing", 3, "4 in", "20 in", "lengthwise"),
    ("yoke", 2, "chest / 3", "5 in", "lengthwise"),
    ("belt loop", 6, "2 in", "3 in", "either"),
    ("flap", 2, "7 in", "{} in", "lengthwise"),
]
LINED = {"front", "back", "sleeve"}


def costume(number: int) -> str:
    """A plan whose sizes are reckoned from its wearer's measures."""
    lines = [f'[garment]\nname = "Costume {number}"\nunit = "in"\ncurrency = "USD"']
    for name, role, price in (("shell", "main", "6"), ("lining", "lining", "4.5")):
        widths = f'widths = [{{ width = "45 in", price = "{price} per yd" }}, '
        widths += f'{{ width = "60 in", price = "{price}9 per yd" }}]'
        lines.append(f'[[fabric]]\nname = "{name}"\nrole = "{role}"\n{widths}')
    for name, quantity, wide, long, grain in PIECES:
        cut = '["shell", "lining"]' if name in LINED else '"shell"'
        lines.append(
            f'[[piece]]\nname = "{name}"\nquantity = {quantity}\ncut = {cut}\ngrain = "{grain}"\n'
            f'width = {{ from = "{wide.format(number + 1)}" }}\n'
            f'length = {{ from = "{long.format(number + 2)}" }}'
        )
    return "\n".join(lines)


def write_show(folder: Path, garments: int, seed: int) -> Path:
    """A show of so many garments, and the files that it names."""
    chance = Random(seed)
    rows = ["wearer,unit,waist,hip,skirt length,chest,arm"]
    for number in range(garments):
        taken = [chance.randint(low, high) / 2 for low, high in
                 ((48, 80), (70, 100), (48, 70), (64, 96), (40, 54))]  # fmt: skip
        rows.append(f"wearer {number},in,{','.join(map(str, taken))}")
    (folder / "wearers.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
    show = ['[show]\nname = "Benchmark"\nwearers = "wearers.csv"']
    for number in range(COSTUMES):
        (folder / f"costume{number}.toml").write_text(costume(number), encoding="utf-8")
        names = [f'"wearer {one}"' for one in range(number, garments, COSTUMES)]
        show.append(f'[[garment]]\nplan = "costume{number}.toml"\nwearers = [{", ".join(names)}]')
    path = folder / "benchmark.show.toml"
    path.write_text("\n".join(show), encoding="utf-8")
    return path


def write_stash(folder: Path, seed: int) -> Path:
    """A table of remnants of both fabrics, from a pocket's worth up to three yards."""
    chance = Random(seed)
    rows = ["item,width,usable,length"]
    for _ in range(REMNANTS):
        item, width = chance.choice(("shell", "shell", "lining")), chance.choice((45, 60))
        usable = chance.randint(2 * width // 3, width - 1)
        rows.append(f"{item},{width} in,{usable} in,{chance.randint(9, 108)} in")
    path = folder / "stash.csv"
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return path


def seconds(
    show: Path, stash: Path | None, processes: int, memory: Path | None
) -> tuple[float, float]:
    """How long the estimate takes with nothing known but what is in the file, by the clock and in
    the work of all processes: on a machine that is busy with other things, the second tells more.
    """
    laid_once.cache_clear()
    laid_on_remnant.cache_clear()
    started, worked = perf_counter(), _work()
    with remembering(memory):
        estimate_files([show], stash=stash, processes=processes, memory=memory)
    return perf_counter() - started, _work() - worked


def _work() -> float:
    taken = os.times()
    return taken.user + taken.system + taken.children_user + taken.children_system


def change_a_wearer(folder: Path) -> None:
    """Half an inch on one wearer's hip."""
    file = folder / "wearers.csv"
    rows = file.read_text(encoding="utf-8").split("\n")
    cells = rows[3].split(",")
    cells[3] = str(float(cells[3]) + 0.5)
    rows[3] = ",".join(cells)
    file.write_text("\n".join(rows), encoding="utf-8")


def _pieces() -> int:
    return sum(quantity * (1 + (name in LINED)) for name, quantity, *_ in PIECES)


def main() -> None:
    options = argparse.ArgumentParser(description="A whole show against its number of garments.")
    options.add_argument("--garments", type=int, nargs="*", default=[10, 60, 240])
    options.add_argument("--processes", type=int, default=os.cpu_count() or 1)
    options.add_argument("--seed", type=int, default=1)
    chosen = options.parse_args()
    rows = []
    for garments in chosen.garments:
        for with_stash in (False, True):
            with TemporaryDirectory() as name:
                folder = Path(name)
                show = write_show(folder, garments, chosen.seed)
                stash = write_stash(folder, chosen.seed) if with_stash else None
                memory = folder / "layouts.sqlite"
                first = seconds(show, stash, chosen.processes, memory)
                again = seconds(show, stash, chosen.processes, memory)
                change_a_wearer(folder)
                changed = seconds(show, stash, chosen.processes, memory)
            taken = [f"{clock:.1f} ({work:.1f})" for clock, work in (first, again, changed)]
            rows.append([garments, garments * _pieces(), "yes" if with_stash else "no", *taken])
    print(f"{chosen.processes} processes; seconds by the clock, and of work in all processes")
    heads = ["garments", "pieces", "stash", "seconds", "again", "after one change"]
    print(tabulate(rows, heads, disable_numparse=True, stralign="right"))


if __name__ == "__main__":
    main()
