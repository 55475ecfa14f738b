"""The program as a person at a terminal calls it, and a short plan for it to read."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from estimator import cli
from tests.plans import HEADING

SKIRT = (
    HEADING
    + """
[[piece]]
name = "panel"
quantity = 4
cut = "print"
width = "20 1/4"
length = "26"
edges = { bottom = "hem 1 1/4" }
[[trim]]
name = "hem ribbon"
along = "panel: bottom"
joined = "in the round"
"""
)


Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Runs a command in an empty folder: its exit status, what it printed, what it complained."""
    monkeypatch.chdir(tmp_path)

    def command(*words: object) -> tuple[int, str, str]:
        monkeypatch.setattr("sys.argv", ["estimator", *map(str, words)])
        try:
            cli.main()
            status = 0
        except SystemExit as end:
            status = int(end.code or 0)
        said = capsys.readouterr()
        return status, said.out, said.err

    return command


@pytest.fixture
def skirt(tmp_path: Path) -> Path:
    path = tmp_path / "skirt.toml"
    path.write_text(SKIRT, encoding="utf-8")
    return path
