"""The layout engine beside its rivals on the same work: `python -m tests.benchmarks.layout`.

Garment-like cuttings, bought by the eighth of a yard, and rectangles cut up without waste, whose
shortest length is known. Rivals, run anew each time: plain shelves (first fit, longest first),
a general-purpose rectangle packer (the best of its algorithms and sort orders), and a constraint
solver (one worker, fixed seed, a limit in seconds). Times are of one core; no layout of ours hangs
on them, only on counted work. The whole run takes about half an hour; for a short one:

    python -m tests.benchmarks.layout --cuttings 24 --rectangles 6 --seconds 1
"""

from __future__ import annotations

import argparse
import platform
import sys
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from statistics import mean, median
from time import perf_counter

from tabulate import tabulate

from estimator.layout import EVERYDAY, THOROUGH, Blank, Cloth, Effort, lay_out, lay_out_in_cuts
from estimator.layout.kinds import kinds_of
from estimator.layout.rows import in_order, length_of
from estimator.layout.shelves import FIRST_FIT, pack
from tests.benchmarks.garments import FAMILIES, Cutting, copies_of_kinds, eighths, garment_cuttings
from tests.benchmarks.rectangles import CutUp, cut_up
from tests.benchmarks.rival import best_of_rectpack
from tests.benchmarks.solver import SEED, shortest
from tests.verify_layout import assert_sound

BOLT_OF_PIECES = 25
"""A bolt is as long as so many of the longest piece."""

Answer = tuple[int, int]
"""Length of a layout and a bound that was proved with it (0: none), in ticks."""
Method = Callable[[Cloth, Sequence[Blank]], Answer]


@dataclass(slots=True)
class Score:
    """What one method has made of all the work so far."""

    lengths: list[int] = field(default_factory=list)
    bounds: list[int] = field(default_factory=list)
    seconds: list[float] = field(default_factory=list)


def plain_shelves(cloth: Cloth, blanks: Sequence[Blank]) -> Answer:
    shelves = pack(kinds_of(blanks), cloth, FIRST_FIT)
    return length_of(in_order(shelves, cloth.repeat), cloth.repeat), 0


def rectangle_packer(cloth: Cloth, blanks: Sequence[Blank]) -> Answer:
    return best_of_rectpack(cloth, blanks), 0


def solver(seconds: float) -> Method:
    def solve(cloth: Cloth, blanks: Sequence[Blank]) -> Answer:
        known, _ = plain_shelves(cloth, blanks)
        solved = shortest(cloth, blanks, known=known, seconds=seconds)
        return solved.length, solved.bound

    return solve


def engine(effort: Effort, *, rows_only: bool = False) -> Method:
    def lay(cloth: Cloth, blanks: Sequence[Blank]) -> Answer:
        layout = lay_out(cloth, blanks, effort=effort, rows_only=rows_only)
        assert_sound(cloth, blanks, layout)
        return layout.length, layout.bound

    return lay


def measure(
    methods: dict[str, Method], work: Iterable[tuple[str, Cloth, Sequence[Blank]]]
) -> dict[str, Score]:
    scores = {name: Score() for name in methods}
    for number, (name, cloth, blanks) in enumerate(work, 1):
        print(f"\r{number:4} {name:40}", end="", file=sys.stderr, flush=True)
        for method, score in scores.items():
            started = perf_counter()
            length, bound = methods[method](cloth, blanks)
            score.seconds.append(perf_counter() - started)
            score.lengths.append(length)
            score.bounds.append(bound)
    print("\r" + " " * 50 + "\r", end="", file=sys.stderr, flush=True)
    return scores


def garments_table(scores: dict[str, Score], cuttings: Sequence[Cutting]) -> str:
    """Eighths of a yard bought by each method, in all and by family; share proved; seconds."""
    best_bounds = [max(column) for column in zip(*(s.bounds for s in scores.values()), strict=True)]
    rows = []
    for name, score in scores.items():
        bought = [eighths(length) for length in score.lengths]
        proved = sum(
            eighths(bound) == eighths(length)
            for bound, length in zip(score.bounds, score.lengths, strict=True)
        )
        by_family = [
            sum(b for b, c in zip(bought, cuttings, strict=True) if c.name.startswith(family))
            for family in FAMILIES
        ]
        rows.append(
            [
                name,
                sum(bought),
                *by_family,
                f"{100 * (sum(bought) / sum(map(eighths, best_bounds)) - 1):.2f}",
                f"{100 * proved / len(cuttings):.0f}",
                f"{median(score.seconds):.3f}",
                f"{max(score.seconds):.2f}",
            ]
        )
    rows.append(["best bound", sum(map(eighths, best_bounds))])
    heads = ["eighths bought", "all", *FAMILIES, "% over bound", "% proved", "median s", "most s"]
    return tabulate(rows, heads, disable_numparse=True, stralign="right")


def rectangles_table(scores: dict[str, Score], cuts: Sequence[CutUp]) -> str:
    """Mean gap to the known shortest length, by number of pieces; seconds."""
    sizes = [(2, 50), (51, 100), (101, 10_000)]
    rows = []
    for name, score in scores.items():
        gaps = [100 * (n / c.length - 1) for n, c in zip(score.lengths, cuts, strict=True)]
        by_size = [
            [g for g, c in zip(gaps, cuts, strict=True) if low <= len(c.blanks) <= high]
            for low, high in sizes
        ]
        rows.append(
            [
                name,
                f"{mean(gaps):.2f}",
                *(f"{mean(own):.2f}" if own else "-" for own in by_size),
                f"{median(score.seconds):.2f}",
                f"{max(score.seconds):.2f}",
            ]
        )
    heads = ["gap to shortest, %", "all", "16-50", "51-100", "101-200", "median s", "most s"]
    return tabulate(rows, heads, disable_numparse=True, stralign="right")


def rectangles(count: int) -> list[CutUp]:
    """Guillotine and pinwheel cuts in turn, of 16 to 200 pieces."""
    sizes = (16, 25, 36, 49, 60, 73, 86, 97, 120, 150, 175, 197)
    return [
        cut_up(number, sizes[number // 2 % len(sizes)], guillotine=number % 2 == 0)
        for number in range(count)
    ]


def curve_table(counts: Sequence[int]) -> str:
    rows = []
    for count in counts:
        made = copies_of_kinds(count)
        started = perf_counter()
        layout = lay_out(made.cloth, made.blanks)
        seconds = perf_counter() - started
        assert_sound(made.cloth, made.blanks, layout)
        over = 100 * (layout.length / layout.bound - 1)
        rows.append([count, f"{seconds:.2f}", f"{1e6 * seconds / count:.0f}", f"{over:.2f}"])
    heads = ["pieces of 50 kinds", "seconds", "microseconds a piece", "% over bound"]
    return tabulate(rows, heads, disable_numparse=True, stralign="right")


def bolt_table(counts: Sequence[int]) -> str:
    """What it takes to part the pieces over cuts, each no longer than a bolt of so many rows."""
    rows = []
    for count in counts:
        made = copies_of_kinds(count)
        longest = BOLT_OF_PIECES * max(blank.length for blank in made.blanks)
        started = perf_counter()
        found = lay_out_in_cuts(made.cloth, made.blanks, longest)
        seconds = perf_counter() - started
        over = 100 * (sum(cut.length for cut in found.layouts) / found.bound - 1)
        timed = [f"{seconds:.2f}", f"{1e6 * seconds / count:.0f}", f"{over:.2f}"]
        rows.append([count, len(found.layouts), found.fewest, *timed])
    heads = ["on bolts, pieces of 50 kinds", "cuts", "fewest", "seconds", "microseconds a piece"]
    return tabulate(rows, [*heads, "% over bound"], disable_numparse=True, stralign="right")


def main() -> None:
    options = argparse.ArgumentParser(description="The layout engine beside its rivals.")
    options.add_argument("--cuttings", type=int, default=204, help="garment-like cuttings (204)")
    options.add_argument("--rectangles", type=int, default=60, help="rectangles cut up (60)")
    options.add_argument("--seconds", type=float, default=5, help="solver's limit each; 0: not run")
    options.add_argument("--seed", type=int, default=1, help="seed of the garment-like cuttings")
    options.add_argument("--no-thorough", action="store_true", help="leave the long search out")
    options.add_argument("--curve", type=int, nargs="*", default=[100, 300, 1_000, 3_000, 10_000])
    chosen = options.parse_args()
    print(f"Python {platform.python_version()}, {platform.machine()}, solver seed {SEED}")

    methods: dict[str, Method] = {
        "plain shelves": plain_shelves,
        "rectangle packer": rectangle_packer,
    }
    if chosen.seconds:
        methods[f"solver, {chosen.seconds:g} s"] = solver(chosen.seconds)
    ours: dict[str, Method] = {
        "rows alone": engine(Effort(0), rows_only=True),
        "everyday": engine(EVERYDAY),
    }
    if not chosen.no_thorough:
        ours["thorough"] = engine(THOROUGH)

    if chosen.cuttings:
        cuttings = garment_cuttings(chosen.cuttings, chosen.seed)
        scores = measure({**methods, **ours}, ((c.name, c.cloth, c.blanks) for c in cuttings))
        pieces = mean(sum(b.quantity for b in c.blanks) for c in cuttings)
        print(f"\n{len(cuttings)} garment-like cuttings, {pieces:.0f} pieces each on average")
        print(garments_table(scores, cuttings))
    if chosen.rectangles:
        cuts = rectangles(chosen.rectangles)
        quick = {name: method for name, method in methods.items() if not name.startswith("solver")}
        scores = measure({**quick, **ours}, ((c.name, Cloth(c.width), c.blanks) for c in cuts))
        print(f"\n{len(cuts)} rectangles cut up, no piece may turn")
        print(rectangles_table(scores, cuts))
    if chosen.curve:
        print("\n" + curve_table(chosen.curve))
        print("\n" + bolt_table(chosen.curve))


if __name__ == "__main__":
    main()
