"""The program's begin and end: wrong plans, files that are not there, streams that break off."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.command_line import SKIRT, Run


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
