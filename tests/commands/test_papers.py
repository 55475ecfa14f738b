"""Commands that estimate plans: what each prints or writes."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.command_line import SKIRT, Run
from tests.reports.filled_lists import fill_in, value_at


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
