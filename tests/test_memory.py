"""Layouts remembered from run to run: the same answers, sooner, and never a harm."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from estimator import Estimate, estimate_files
from estimator.buying import cut_lengths, known_layouts, laying, remnants
from estimator.memory import SWITCH, Kept, place, remembering
from tests.shipped_plans import DEMOS, SHOPS


def fresh(plan: Path, memory: Path | None) -> Estimate:
    """An estimate in which nothing is known but what stands in the file."""
    laying.laid_once.cache_clear()
    with remembering(memory):
        return estimate_files([plan], SHOPS)


@pytest.mark.parametrize("plan", DEMOS, ids=lambda path: path.stem)
def test_what_is_remembered_is_what_was_worked_out(plan: Path, tmp_path: Path) -> None:
    file = tmp_path / "layouts.sqlite"
    plain, first, second = fresh(plan, None), fresh(plan, file), fresh(plan, file)
    for found in (first, second):
        assert found.fabrics == plain.fabrics
        assert found.purchases == plain.purchases


def test_a_second_run_searches_for_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "layouts.sqlite"
    fresh(DEMOS[0], file)

    def searched(*_: object, **__: object) -> None:
        raise AssertionError("a layout was worked out again")

    monkeypatch.setattr(laying, "lay_out_in_cuts", searched)
    assert fresh(DEMOS[0], file).purchases


def test_what_goes_on_a_remnant_is_remembered_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file, plan = tmp_path / "layouts.sqlite", tmp_path / "cape.toml"
    plan.write_text(TWO_CLOTHS, encoding="utf-8")
    stash = tmp_path / "stash.csv"
    stash.write_text("item,width,length\nshell,45 in,40 in\n", encoding="utf-8")

    def found() -> Estimate:
        laying.laid_once.cache_clear()
        remnants.laid_on_remnant.cache_clear()
        with remembering(file):
            return estimate_files([plan], stash=stash)

    first = found()
    assert first.fabrics[0].chosen.stash

    def searched(*_: object, **__: object) -> None:
        raise AssertionError("a remnant was filled again")

    monkeypatch.setattr(remnants, "fullest", searched)
    assert found().fabrics == first.fabrics


TWO_CLOTHS = """
[garment]
name = "Cape"
[[fabric]]
name = "shell"
widths = ["45 in"]
[[fabric]]
name = "lining"
role = "lining"
widths = ["45 in"]
[[piece]]
name = "back"
cut = "shell"
width = "40"
length = "30"
[[piece]]
name = "facing"
cut = "lining"
width = "10"
length = "30"
"""


def test_after_a_change_only_the_fabric_that_it_touches_is_laid_out_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file, plan = tmp_path / "layouts.sqlite", tmp_path / "cape.toml"
    plan.write_text(TWO_CLOTHS, encoding="utf-8")
    fresh(plan, file)
    searched: set[str] = set()
    real = laying.lay_out_in_cuts

    def noted(cloth: Any, blanks: Any, longest: Any, **limits: Any) -> Any:
        searched.update(blank.name for blank in blanks)
        return real(cloth, blanks, longest, **limits)

    monkeypatch.setattr(laying, "lay_out_in_cuts", noted)
    plan.write_text(TWO_CLOTHS.replace('width = "10"', 'width = "11"'), encoding="utf-8")
    fresh(plan, file)
    assert searched == {"facing"}


def test_another_engine_remembers_nothing_of_the_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "layouts.sqlite"
    fresh(DEMOS[0], file)
    monkeypatch.setattr(known_layouts, "_engine", lambda: "another")
    asked: list[str] = []
    find = Kept.find

    def noted(self: Kept, key: str) -> str | None:
        found = find(self, key)
        asked.append("known" if found else "new")
        return found

    monkeypatch.setattr(Kept, "find", noted)
    fresh(DEMOS[0], file)
    assert asked[0] == "new"


@pytest.mark.parametrize("held", [b"", b"this is no database", b"SQLite format 3\0" + b"x" * 500])
def test_a_damaged_file_is_done_without(tmp_path: Path, held: bytes) -> None:
    file = tmp_path / "layouts.sqlite"
    file.write_bytes(held)
    assert fresh(DEMOS[0], file).purchases == fresh(DEMOS[0], None).purchases


@pytest.mark.parametrize("row", ["[1,1,[]", "{}", "[1, 1, [[1]]]", "null", '"text"'])
def test_a_damaged_row_is_done_without(row: str, tmp_path: Path) -> None:
    file = tmp_path / "layouts.sqlite"
    plain = fresh(DEMOS[0], file)
    with closing(sqlite3.connect(file)) as data, data:
        data.execute("UPDATE known SET text = ?", (row,))
    assert fresh(DEMOS[0], file).purchases == plain.purchases


def test_what_was_worked_out_for_another_way_of_buying_is_not_remembered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "layouts.sqlite"
    fresh(DEMOS[0], file)
    other = tmp_path / "cut_lengths.py"
    other.write_text(Path(cut_lengths.__file__).read_text(encoding="utf-8") + "#\n")
    monkeypatch.setattr(cut_lengths, "__file__", str(other))
    known_layouts._engine.cache_clear()
    searched: list[object] = []
    real = laying.lay_out_in_cuts
    monkeypatch.setattr(
        laying, "lay_out_in_cuts", lambda *a, **k: searched.append(a) or real(*a, **k)
    )
    assert fresh(DEMOS[0], file).purchases
    assert searched
    known_layouts._engine.cache_clear()


def test_a_folder_that_cannot_be_made_is_done_without(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert fresh(DEMOS[0], tmp_path / "file" / "layouts.sqlite").purchases


def test_what_was_asked_for_longest_ago_is_forgotten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("estimator.memory.MOST", 2)
    for run, key in enumerate(("first", "second", "third")):
        kept = Kept(tmp_path / "layouts.sqlite")
        kept.keep(key, str(run))
        kept.close()
    kept = Kept(tmp_path / "layouts.sqlite")
    assert [kept.find(key) for key in ("first", "second", "third")] == [None, "1", "2"]


def test_the_user_says_where_or_whether(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setitem(os.environ, SWITCH, "off")
    assert place() is None
    monkeypatch.setitem(os.environ, SWITCH, str(tmp_path))
    assert place() == tmp_path / "layouts.sqlite"
    monkeypatch.delitem(os.environ, SWITCH)
    assert place().name == "layouts.sqlite"
