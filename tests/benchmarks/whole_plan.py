"""How long a newcomer waits: the help, and a plan of 30 pieces at four widths, in CPU seconds.

python -m tests.benchmarks.whole_plan
"""

from __future__ import annotations

import random
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

WIDTHS = (36, 45, 54, 60)


def thirty_pieces(seed: int) -> str:
    """A plan of 30 pieces of their own sizes, half of which may lie either way."""
    draw = random.Random(seed)
    widths = ", ".join(
        f'{{ width = "{width} in", price = "{width / 5} per yd" }}' for width in WIDTHS
    )
    tables = [
        f'[garment]\nname = "thirty pieces"\ncurrency = "USD"\n'
        f'[[fabric]]\nname = "print"\nwidths = [{widths}]\n'
    ]
    for number in range(30):
        grain = draw.choice(("lengthwise", "either"))
        tables.append(
            f'[[piece]]\nname = "piece {number}"\ncut = "print"\ngrain = "{grain}"\n'
            f'width = "{draw.randint(12, 100)}/4"\nlength = "{draw.randint(12, 140)}/4"\n'
        )
    return "\n".join(tables)


def cpu_seconds(*words: str) -> float:
    """The processor time of one command of the program, start to end."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-m", "estimator", *words], check=True, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    print(f"estimator --help: {cpu_seconds('--help'):.2f} s")
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(5):
            plan = Path(folder) / f"thirty-{seed}.toml"
            plan.write_text(thirty_pieces(seed), encoding="utf-8")
            print(f"30 pieces at {len(WIDTHS)} widths, seed {seed}: "
                  f"{cpu_seconds('widths', str(plan)):.2f} s")  # fmt: skip


if __name__ == "__main__":
    main()
