"""The README's own words, tried: every command that it shows, as printed there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from estimator.files import estimate_files

HOUSE = Path(__file__).resolve().parent.parent
README = (HOUSE / "README.md").read_text(encoding="utf-8")


def _blocks(kind: str) -> list[str]:
    return re.findall(rf"^```{kind}\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)


def _after_the_set_up() -> list[str]:
    return [line for block in _blocks("sh")[2:] for line in block.splitlines() if line]


def test_the_first_two_blocks_are_one_command_each_and_set_themselves_up() -> None:
    for block in _blocks("sh")[:2]:
        assert len(block.splitlines()) == 1
        assert block.startswith("python3 -m venv .venv && ")


@pytest.fixture(scope="module")
def checkout(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("checkout")
    for name in ("catalog_demo", "templates"):
        shutil.copytree(HOUSE / name, folder / name)
    return folder


def _run(command: str, folder: Path, memory: Path) -> subprocess.CompletedProcess[str]:
    bin_folder = str(Path(sys.executable).parent)
    path = os.pathsep.join([bin_folder, os.environ.get("PATH", "")])
    return subprocess.run(
        ["bash", "-c", command],
        cwd=folder,
        env={**os.environ, "PATH": path, "ESTIMATOR_MEMORY": str(memory)},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.long
def test_every_other_command_of_the_readme_works_as_printed(
    checkout: Path, demo_memory: Path
) -> None:
    commands = _after_the_set_up()
    assert len(commands) >= 8
    for command in commands:
        done = _run(command, checkout, demo_memory)
        assert done.returncode == 0, f"{command}\n{done.stderr}"
        assert done.stdout.strip(), command
        assert not done.stderr, command


def test_the_demo_list_is_written_by_the_command_after_the_set_up(
    checkout: Path, demo_memory: Path
) -> None:
    command = _blocks("sh")[0].strip().split("&& .venv/bin/")[-1]
    done = _run(command, checkout, demo_memory)
    assert done.returncode == 0, done.stderr
    assert (checkout / "market-dress-list.xlsx").stat().st_size > 5_000


def test_the_plan_in_the_readme_works_as_it_stands(tmp_path: Path) -> None:
    plan = tmp_path / "apron.toml"
    plan.write_text(_blocks("toml")[0], encoding="utf-8")
    estimate = estimate_files([plan])
    assert [line.title for line in estimate.purchases] == ["check", "fusible", "rickrack", "button"]
    assert estimate.unpriced == 1


def test_the_stays_in_the_readme_work_as_they_stand(tmp_path: Path) -> None:
    # eyelets: 14 - 2 x 1/2 = 13 spaces, 14 on each of two backs, and 2 to spare: 30
    plan = tmp_path / "stays.toml"
    (text,) = (block for block in _blocks("toml") if "[[lacing]]" in block)
    plan.write_text(text, encoding="utf-8")
    estimate = estimate_files([plan])
    needed = {line.title: line.needed for line in estimate.purchases}
    assert needed["eyelets"] == 30
    assert needed["bone tips"] == 12
    assert "hand wash (silk in lining)" in " ".join(estimate.advice)


def test_the_python_example_of_the_readme_runs(checkout: Path, demo_memory: Path) -> None:
    shutil.copy(HOUSE / "templates" / "gathered_skirt.toml", checkout / "skirt.toml")
    (checkout / "example.py").write_text(_blocks("python")[0], encoding="utf-8")
    done = _run("python example.py", checkout, demo_memory)
    assert done.returncode == 0, done.stderr
    assert "yd" in done.stdout


def test_the_engines_example_in_the_readme_runs_and_proves_its_length(
    checkout: Path, demo_memory: Path
) -> None:
    # two panels of 203 lie beside each other on 440, in two rows of 265; the sash of 40 x 420,
    # turned across, needs a third row
    (checkout / "engine.py").write_text(_blocks("python")[1], encoding="utf-8")
    done = _run("python engine.py", checkout, demo_memory)
    assert done.returncode == 0, done.stderr
    length, bound = map(int, done.stdout.split()[:2])
    assert length == 2 * 265 + 40
    assert bound <= length
