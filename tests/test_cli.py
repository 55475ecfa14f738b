"""The commands as a newcomer meets them: what they print, and how they refuse."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator import cli
from tests.plans import HEADING
from tests.reports.filled_lists import fill_in, value_at
from tests.shipped_plans import SHOPS

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


@pytest.mark.parametrize("command", ["show", "widths", "layout", "working", "check"])
def test_every_command_that_reads_a_plan_prints_plain_text(
    run: Run, skirt: Path, command: str
) -> None:
    status, printed, complained = run(command, skirt)
    assert (status, complained) == (0, "")
    assert len(printed.splitlines()) >= 1
    assert "\x1b" not in printed


def test_show_prints_what_to_buy_and_what_was_taken_for_granted(run: Run, skirt: Path) -> None:
    _, printed, _ = run("show", skirt)
    # 81 in of hem + 1/2 in overlap, and 5 %: 85 9/16 in, which is 2.377 yd, so 2 1/2 yd
    line = next(line for line in printed.splitlines() if "hem ribbon" in line)
    assert "2 1/2" in line
    assert "seam allowance 5/8 in" in printed
    assert "Thread is not estimated" in printed


@pytest.mark.parametrize("command", ["show", "widths", "working"])
def test_json_is_for_another_program_to_read(run: Run, skirt: Path, command: str) -> None:
    status, printed, _ = run(command, skirt, "--json")
    assert status == 0
    assert json.loads(printed)


def test_the_working_ends_in_the_figure_that_is_on_the_list(run: Run, skirt: Path) -> None:
    _, printed, _ = run("working", skirt, "--about", "ribbon")
    assert "buy 2 1/2 yd" in printed
    assert "panel" not in printed.splitlines()[0]


def test_check_says_that_a_plan_is_in_order(run: Run, skirt: Path) -> None:
    _, printed, _ = run("check", skirt)
    assert "in order" in printed


def test_write_names_the_file_and_the_sum(run: Run, skirt: Path, tmp_path: Path) -> None:
    status, printed, _ = run("write", skirt)
    assert status == 0
    assert "skirt-list.xlsx" in printed
    assert (tmp_path / "skirt-list.xlsx").exists()


def test_write_says_what_a_budget_leaves_after_tax_and_contingency(run: Run, skirt: Path) -> None:
    text = SKIRT.replace('"apron"', '"apron"\ncurrency = "USD"').replace(
        'joined = "in the round"', 'joined = "in the round"\nprice = "4 per yd"'
    )
    skirt.write_text(text, encoding="utf-8")
    _, printed, _ = run("write", skirt, "--budget", "12", "--tax", "10 %", "--contingency", "5 %")
    # 2 1/2 yd at 4 are 10.00, and 1.00 tax; 5 % of 11.00 are 0.55; 11.55 of 12 leave 0.45
    assert "In all 11.55 USD, with tax 1.00 and contingency 0.55." in printed
    assert "0.45 USD of the budget are left." in printed
    _, printed, _ = run("write", skirt, "--budget", "8,50")
    assert "That is 1.50 USD more than the budget." in printed
    status, printed, complained = run("write", skirt, "--budget", "a lot", "--tax", "8")
    assert (status, printed) == (2, "")
    assert "--budget: 'a lot' is not an amount of money" in complained
    assert "--tax: '8' is not a share" in complained


def test_write_over_a_list_that_somebody_filled_in_says_that_it_is_kept(
    run: Run, skirt: Path, tmp_path: Path
) -> None:
    run("write", skirt)
    path = tmp_path / "skirt-list.xlsx"
    _, again, _ = run("write", skirt)
    assert "kept" not in again
    fill_in(path, {("hem ribbon", "Actual price"): 2.25})
    status, printed, _ = run("write", skirt)
    assert (status, "What had been filled in is kept." in printed) == (0, True)
    assert value_at(path, "hem ribbon", "Actual price") == 2.25


def test_the_list_is_printed_as_comma_separated_values(run: Run, skirt: Path) -> None:
    status, printed, _ = run("show", skirt, "--csv")
    assert status == 0
    assert [line.split(",")[1] for line in printed.splitlines()] == ["item", "print", "hem ribbon"]


@pytest.mark.parametrize("command", ["show", "widths", "layout", "working"])
def test_papers_read_in_the_units_asked_for(run: Run, skirt: Path, command: str) -> None:
    _, printed, _ = run(command, skirt, "--units", "metric")
    assert " cm" in printed
    status, printed, complained = run(command, skirt, "--units", "cubits")
    assert (status, printed) == (2, "")
    assert "metric" in complained
    assert "imperial" in complained


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


def _bad(tmp_path: Path, old: str, new: str) -> Path:
    path = tmp_path / "bad.toml"
    assert old in SKIRT
    path.write_text(SKIRT.replace(old, new), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("old", "new", "wrong", "right"),
    [
        ('width = "20 1/4"', "width = 20 1/4", "line 13", 'width = "20 1/4"'),
        ('cut = "print"', 'cut = "prnt"', "line 12", "did you mean 'print'?"),
        ('width = "20 1/4"', 'width = "61"', "line 9", "at least 62 1/4 in"),
        ("hem 1 1/4", "hem 27", "line 15", "shallower"),
        ('"26"', '"26 kg"', "line 14", "use in, ft, yd"),
        ('"26"', "2026-01-02", "line 14", "in quotes"),
        ("quantity", "quantitty", "line 11", "did you mean 'quantity'?"),
        ("panel: bottom", "panel: botom", "line 18", "did you mean 'bottom'?"),
        ('"26"', '"-26"', "line 14", "zero or more"),
    ],
)
def test_a_wrong_plan_is_refused_with_its_line_and_the_remedy(
    run: Run, tmp_path: Path, old: str, new: str, wrong: str, right: str
) -> None:
    status, printed, complained = run("write", _bad(tmp_path, old, new))
    assert status == 2
    assert printed == ""
    assert f"bad.toml, {wrong}" in complained
    assert right in complained
    assert "Traceback" not in complained
    assert [path.name for path in tmp_path.iterdir()] == ["bad.toml"]


def test_complaints_of_every_kind_come_together(run: Run, tmp_path: Path) -> None:
    text = SKIRT.replace("quantity", "quantitty") + (
        '[[notion]]\nname = "zip"\nlength = "15 1/2"\nsold = [{ put_up = "each", length = "12" }]\n'
        '[[piece]]\nname = "sash"\ncut = "print"\nwidth = "70"\nlength = "9"\n'
        '[[trim]]\nname = "cord"\nalong = "panl: top"\n'
    )
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    status, _, complained = run("check", path)
    assert status == 2
    for said in ("quantitty", "sash", "15 1/2", "panl"):
        assert said in complained
    assert "4 things to put right" in complained


@pytest.mark.parametrize("name", ["missing.toml", ".", "no/such/folder.toml"])
def test_a_plan_that_is_not_a_file_is_refused(run: Run, name: str) -> None:
    status, _, complained = run("show", name)
    assert status == 2
    assert name in complained


def test_a_catalog_that_is_not_a_folder_is_refused(run: Run, skirt: Path) -> None:
    status, _, complained = run("show", skirt, "--catalog", "nowhere")
    assert status == 2
    assert "does not exist" in complained


def test_an_output_that_cannot_be_written_is_refused(run: Run, skirt: Path) -> None:
    status, _, complained = run("write", skirt, "--out", "away/list.xlsx")
    assert status == 2
    assert "cannot be written" in complained


def test_two_garments_are_shopped_for_together(run: Run, skirt: Path, tmp_path: Path) -> None:
    twin = tmp_path / "twin.toml"
    twin.write_text(SKIRT.replace('"apron"', '"twin"').replace('"26"', '"24"'), encoding="utf-8")
    _, printed, _ = run("show", skirt, twin)
    assert "apron, twin" in printed.splitlines()[0]


@pytest.mark.parametrize("more", [(), ("--json",)], ids=["text", "json"])
def test_working_about_what_is_not_there_is_a_complaint(
    run: Run, skirt: Path, more: tuple[str, ...]
) -> None:
    assert run("working", skirt, "--about", "zebra", *more) == (
        2, "", "nothing in the plan has 'zebra' in its name; leave --about out to see all\n"
    )  # fmt: skip


def test_the_list_of_several_plans_is_not_written_over_that_of_the_first(
    run: Run, skirt: Path, tmp_path: Path
) -> None:
    twin = tmp_path / "twin.toml"
    twin.write_text(SKIRT.replace('"apron"', '"twin"'), encoding="utf-8")
    run("write", skirt)
    alone = (tmp_path / "skirt-list.xlsx").read_bytes()
    _, printed, _ = run("write", skirt, twin)
    assert printed.startswith("Wrote shopping-list.xlsx: ")
    assert (tmp_path / "skirt-list.xlsx").read_bytes() == alone


def test_names_too_long_for_any_disk_are_refused(run: Run, skirt: Path) -> None:
    long = "x" * 300
    for command in (["show", long], ["show", skirt, "-c", long], ["new", "tunic", long],
                    ["write", skirt, "--out", f"{long}.xlsx"]):  # fmt: skip
        status, printed, complained = run(*command)
        assert (status, printed, len(complained.splitlines())) == (2, "", 1)
        assert "(File name too long)" in complained


def printed_into(target: str, plan: Path) -> tuple[int, str]:
    """The exit status and complaints of a command whose words go down a shell's redirection."""
    done = subprocess.run(
        ["bash", "-c", f'set -o pipefail; "$0" -m estimator show "$1" {target}',
         sys.executable, plan],
        env={**os.environ, "PYTHONPATH": str(Path(__file__).parents[1])},
        stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True, check=False,
    )  # fmt: skip
    return done.returncode, done.stderr


def test_a_full_disk_under_the_printed_list_is_one_complaint(skirt: Path) -> None:
    assert printed_into("> /dev/full", skirt) == (
        2, "what is printed cannot be written (No space left on device)\n"
    )  # fmt: skip


def test_a_reader_that_has_seen_enough_is_no_fault_to_speak_of(skirt: Path) -> None:
    assert printed_into("| true", skirt)[1] == ""


def test_one_slip_in_the_garment_table_is_one_complaint(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "slip.toml"
    path.write_text(
        '[garment]\nname = "x"\ncurrency = "EUR"\ncopys = 2\n'
        '[[notion]]\nname = "button"\nprice = "1 each"\n',
        encoding="utf-8",
    )
    _, _, complained = run("check", path)
    assert len(complained.splitlines()) == 1
    assert "did you mean 'copies'?" in complained


def test_one_deep_hem_is_one_complaint_though_a_seam_and_a_trim_meet_it(
    run: Run, tmp_path: Path
) -> None:
    path = _bad(tmp_path, "hem 1 1/4", "hem 27")
    text = path.read_text(encoding="utf-8")
    path.write_text(f'{text}[[seam]]\nedges = ["panel: left", "panel: right"]\n', encoding="utf-8")
    _, _, complained = run("check", path)
    assert len(complained.splitlines()) == 1


@pytest.mark.parametrize("command", ["show", "widths", "layout", "working", "check"])
def test_every_command_takes_a_plan_that_is_a_spreadsheet(run: Run, command: str) -> None:
    assert run("new", "gathered_skirt", "skirt.toml")[0] == 0
    status, said, complained = run("new", "gathered_skirt", "skirt.xlsx")
    assert (status, complained) == (0, "")
    assert said == "Wrote skirt.xlsx: change its sizes, then run: estimator show skirt.xlsx\n"
    _, wanted, _ = run(command, "skirt.toml")
    status, printed, complained = run(command, "skirt.xlsx")
    assert (status, complained) == (0, "")
    places = re.compile(r"skirt\.toml, line \d+|skirt\.xlsx, sheet [^()]*, cell [A-Z]+\d+|\.xlsx")
    assert places.sub("", printed) == places.sub("", wanted.replace(".toml:", ":"))


def test_a_list_is_written_for_a_plan_that_is_a_spreadsheet(run: Run, tmp_path: Path) -> None:
    run("new", "mob_cap", "cap.xlsx")
    assert run("write", "cap.xlsx")[0] == 0
    assert (tmp_path / "cap-list.xlsx").stat().st_size > 5_000


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
