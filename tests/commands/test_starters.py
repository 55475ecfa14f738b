"""Commands that help to write a plan: starters, spreadsheets, conversions and schemas."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.command_line import Run
from tests.shipped_plans import SHOPS


@pytest.mark.parametrize("of", ["plan", "estimate"])
def test_schemas_are_printed_for_another_program(run: Run, of: str) -> None:
    status, printed, _ = run("schema", of)
    assert status == 0
    assert json.loads(printed)["$schema"].startswith("https://json-schema.org/")


def test_a_schema_that_is_not_there_is_refused(run: Run) -> None:
    assert run("schema", "list") == (
        2,
        "",
        "there is no schema of 'list'; write plan or estimate\n",
    )


def test_new_lists_starters_and_copies_one_without_writing_over(run: Run, tmp_path: Path) -> None:
    _, listed, _ = run("new")
    assert "gathered_skirt" in listed
    assert run("new", "gathered_skirt", "mine.toml")[0] == 0
    assert run("show", "mine.toml")[0] == 0
    before = (tmp_path / "mine.toml").read_bytes()
    status, _, complained = run("new", "gathered_skirt", "mine.toml")
    assert status == 2
    assert "there already" in complained
    assert (tmp_path / "mine.toml").read_bytes() == before


def test_a_misspelt_starter_is_told_the_nearest_one(run: Run) -> None:
    status, _, complained = run("new", "gatherd_skirt")
    assert status == 2
    assert "did you mean 'gathered_skirt'?" in complained


def test_a_new_spreadsheet_lets_one_choose_from_a_catalog(run: Run, tmp_path: Path) -> None:
    assert run("new", "apron", "apron.xlsx", "--catalog", SHOPS)[0] == 0
    words = [
        cell.value for row in load_workbook(tmp_path / "apron.xlsx")["Choices"] for cell in row
    ]
    assert "cotton-poplin" in words


def test_a_plan_goes_to_a_spreadsheet_and_back_with_one_command_each(
    run: Run, tmp_path: Path
) -> None:
    assert run("new", "apron", "own.toml")[0] == 0
    assert run("convert", "own.toml", "own.xlsx", "--catalog", SHOPS)[:2] == (
        0, "Wrote own.xlsx: the same plan as own.toml.\n",
    )  # fmt: skip
    assert run("convert", "own.xlsx", "again.toml")[0] == 0
    printed = [run("show", name)[1] for name in ("own.toml", "own.xlsx", "again.toml")]
    assert printed[0] == printed[1] == printed[2]
    assert "cotton-poplin" in {
        cell.value for row in load_workbook(tmp_path / "own.xlsx")["Choices"] for cell in row
    }


def test_the_folder_of_a_catalog_becomes_a_spreadsheet_that_does_as_the_catalog(run: Run) -> None:
    assert run("new", "apron", "own.toml")[0] == 0
    assert run("convert", SHOPS, "shop.xlsx")[0] == 0
    assert run("show", "own.toml", "-c", "shop.xlsx") == run("show", "own.toml", "-c", SHOPS)
    status, _, complained = run("convert", SHOPS, "shop.toml")
    assert status == 2
    assert "let it end in .xlsx" in complained


@pytest.mark.parametrize(
    ("plan", "file", "complaint"),
    [
        ("cap.toml", "cap.toml", "cap.toml: is there already; choose another name"),
        ("cap.toml", "cap.ods", "cap.ods: neither a spreadsheet nor a text plan is called so"),
        ("nowhere.toml", "new.xlsx", "nowhere.toml: does not exist"),
        (str(SHOPS / "harvest_fair.show.toml"), "new.xlsx", "this is a show; convert the plans"),
    ],
    ids=["there already", "neither", "no such plan", "a show"],
)
def test_a_plan_that_cannot_be_converted_is_refused_with_a_remedy(
    plan: str, file: str, complaint: str, run: Run, tmp_path: Path
) -> None:
    assert run("new", "mob_cap", "cap.toml")[0] == 0
    status, _, complained = run("convert", plan, file)
    assert status == 2
    assert complaint in complained
    assert sorted(one.name for one in tmp_path.iterdir()) == ["cap.toml"]


def test_a_fault_in_the_catalog_is_told_before_a_new_plan_is_written(
    run: Run, tmp_path: Path
) -> None:
    status, _, complained = run("new", "apron", "apron.xlsx", "--catalog", "nowhere")
    assert status == 2
    assert complained.startswith("nowhere: does not exist")
    assert not (tmp_path / "apron.xlsx").exists()
