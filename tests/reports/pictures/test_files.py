"""Pictures as files of their own."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from estimator import Refused
from estimator.reports.pictures.files import all_pictures, save_pictures
from tests.plans import in_print
from tests.reports.pictures.drawn import read

PANEL = '[[piece]]\nname = "panel"\ncut = ["print"]\nwidth = "8"\nlength = "9"\n'


def test_each_picture_is_written_as_svg_and_as_png_and_may_be_written_again(tmp_path: Path) -> None:
    found = in_print(PANEL)
    folder = tmp_path / "drawn"
    for _ in range(2):
        assert save_pictures(found, folder) == len(list(all_pictures(found))) == 1
    assert sorted(file.name for file in folder.iterdir()) == [
        "layout-1-1-1.png",
        "layout-1-1-1.svg",
    ]
    assert read((folder / "layout-1-1-1.svg").read_text(encoding="utf-8"))
    with Image.open(folder / "layout-1-1-1.png") as image:
        assert image.format == "PNG"


@pytest.mark.parametrize("name", ["layout-1-1-1.svg", "layout-1-1-1.png"])
def test_a_file_of_another_making_is_never_written_over(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="is no picture of ours"):
        save_pictures(in_print(PANEL), tmp_path)
    assert [file.name for file in tmp_path.iterdir()] == [name]
    assert (tmp_path / name).read_text(encoding="utf-8") == "mine"


def test_a_folder_that_cannot_be_made_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    for folder in (tmp_path / "file", tmp_path / "no" / "such"):
        with pytest.raises(Refused, match="cannot be made"):
            save_pictures(in_print(PANEL), folder)
