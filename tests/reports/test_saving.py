"""Files are written whole or not at all, and what is not ours or is in use is left alone."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from estimator import Refused, estimate
from estimator.reports.buyers_list.file import write_list
from estimator.reports.saving import save_workbook, write_whole
from estimator.reports.workbook import workbook_of
from tests.plans import HEADING, plan

APRON = HEADING + '[[piece]]\nname = "skirt"\ncut = "print"\nwidth = "31"\nlength = "23"\n'


def write(path: Path, text: str = APRON) -> None:
    write_list(estimate(plan(text)), path)


def test_an_interruption_while_writing_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "list.html"
    path.write_bytes(b"old")

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_whole(path, b"new")
    assert [(one.name, one.read_bytes()) for one in tmp_path.iterdir()] == [("list.html", b"old")]


def test_the_same_plan_gives_the_same_bytes(tmp_path: Path) -> None:
    write(tmp_path / "one.xlsx")
    write(tmp_path / "two.xlsx")
    assert (tmp_path / "one.xlsx").read_bytes() == (tmp_path / "two.xlsx").read_bytes()


def test_a_list_that_nobody_touched_is_written_anew(tmp_path: Path) -> None:
    path = tmp_path / "list.xlsx"
    write(path)
    write(path, APRON.replace('"31"', '"37"'))
    cells = [cell.value for row in load_workbook(path)["Cut list"].iter_rows() for cell in row]
    assert 38.25 in cells


@pytest.mark.parametrize("lock", ["~$list.xlsx", ".~lock.list.xlsx#"])
def test_a_list_that_is_open_in_a_spreadsheet_program_is_kept(tmp_path: Path, lock: str) -> None:
    # The first is the mark of one family of programs, the second of another; common practice.
    path = tmp_path / "list.xlsx"
    write(path)
    before = path.read_bytes()
    (tmp_path / lock).write_text("somebody")
    with pytest.raises(Refused, match=r"is open .*; close it there") as refused:
        write(path)
    assert lock in str(refused.value)
    assert path.read_bytes() == before
    (tmp_path / lock).unlink()
    write(path)


def test_a_list_that_somebody_saves_while_it_is_written_again_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "list.xlsx"
    write(path)
    read = path.read_bytes()
    path.write_bytes(read + b"\0")
    with pytest.raises(Refused, match="saved by somebody else just now"):
        save_workbook(workbook_of(estimate(plan(APRON))), path, read)
    assert path.read_bytes() == read + b"\0"


def test_a_spreadsheet_of_somebody_else_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "accounts.xlsx"
    Workbook().save(path)
    before = path.read_bytes()
    with pytest.raises(Refused, match="no shopping list of ours"):
        write(path)
    assert path.read_bytes() == before


def test_a_damaged_file_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "list.xlsx"
    path.write_bytes(b"not a spreadsheet")
    with pytest.raises(Refused, match=r"cannot be read as a spreadsheet; .*--out"):
        write(path)
    assert path.read_bytes() == b"not a spreadsheet"


@pytest.mark.parametrize(
    ("part", "content"),
    [
        ("xl/workbook.xml", b"<workbook"),
        ("xl/worksheets/sheet1.xml", b"<worksheet><sheetData><row><c r='?'/></row></sheetData>"),
        ("xl/styles.xml", b"<styleSheet/>"),
        ("[Content_Types].xml", b""),
    ],
)
def test_a_list_with_a_damaged_part_is_kept(tmp_path: Path, part: str, content: bytes) -> None:
    sound, path = tmp_path / "sound.xlsx", tmp_path / "list.xlsx"
    write(sound)
    with zipfile.ZipFile(sound) as old, zipfile.ZipFile(path, "w") as new:
        assert part in old.namelist()
        for name in old.namelist():
            new.writestr(name, content if name == part else old.read(name))
    before = path.read_bytes()
    with pytest.raises(Refused, match="cannot be read as a spreadsheet"):
        write(path)
    assert path.read_bytes() == before


def test_a_name_too_long_for_any_disk_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match=r"cannot be written \(File name too long\)"):
        write(tmp_path / f"{'x' * 300}.xlsx")
    with pytest.raises(Refused, match=r"cannot be written \(File name too long\)"):
        write_whole(tmp_path / ("x" * 300), b"plan")


@pytest.mark.parametrize("name", ["list", "list.csv", "list.ods"])
def test_a_name_that_is_no_spreadsheet_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(Refused, match=r"\.xlsx"):
        write(tmp_path / name)


def test_a_folder_that_is_not_there_is_refused_and_nothing_is_left(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="cannot be written"):
        write(tmp_path / "away" / "list.xlsx")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_in_the_place_of_the_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "list.xlsx").mkdir()
    with pytest.raises(Refused, match="folder"):
        write(tmp_path / "list.xlsx")


def test_when_the_disk_is_full_the_old_file_stays_and_no_scrap_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "plan.toml"
    path.write_text("old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(Refused, match="No space left"):
        write_whole(path, b"new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_what_a_link_leads_to_is_written_and_who_may_read_it_stays(tmp_path: Path) -> None:
    real, link = tmp_path / "shared" / "stash.csv", tmp_path / "stash.csv"
    real.parent.mkdir()
    real.write_bytes(b"old")
    real.chmod(0o640)
    link.symlink_to(real)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert real.read_bytes() == b"new"
    assert real.stat().st_mode & 0o777 == 0o640
