"""Every demo garment and every starter plan, through every command."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from estimator import cli
from estimator.shipped import shipped

DEMO = shipped("catalog_demo")
PLANS = [*sorted(DEMO.glob("*.toml")), *sorted(shipped("templates").glob("*.toml"))]
COMMANDS = ["show", "widths", "layout", "working", "check", "write", "page"]


def _run(
    words: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> str:
    monkeypatch.setattr("sys.argv", ["estimator", *words])
    status: int | str | None = 0
    try:
        cli.main()
    except SystemExit as end:
        status = end.code
    said = capsys.readouterr()
    assert (status or 0, said.err) == (0, "")
    return said.out


def _words(command: str, plan: Path, folder: Path) -> list[str]:
    words = [command, str(plan)]
    if plan.parent == DEMO:
        words += ["--catalog", str(DEMO)]
    out = {"write": "list.xlsx", "page": "list.html"}.get(command)
    return [*words, "--out", str(folder / out)] if out else words


@pytest.mark.parametrize("plan", PLANS, ids=lambda path: path.stem)
def test_a_plan_that_is_shipped_goes_through_every_command(
    plan: Path,
    demo_memory: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("ESTIMATOR_MEMORY", str(demo_memory))
    for command in COMMANDS:
        assert _run(_words(command, plan, tmp_path), capsys, monkeypatch).strip()
    assert (tmp_path / "list.xlsx").stat().st_size > 5_000
    assert (tmp_path / "list.html").stat().st_size > 5_000
    for command in ("show", "widths", "working"):
        words = [*_words(command, plan, tmp_path), "--json"]
        assert json.loads(_run(words, capsys, monkeypatch))
