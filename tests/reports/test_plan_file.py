"""A plan from a text file to a workbook and back: the same plan, and what was said in it."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from openpyxl import load_workbook

from estimator import Refused, read_plan
from estimator.readers.remarks import opening_remarks, remarks_in
from estimator.reports.plan_file import as_text, as_workbook
from estimator.reports.plan_text import plan_text
from tests.form.test_round_trip import Raw, plans
from tests.forms import SKIRT, Form, write_form
from tests.shipped_plans import ALL, SHOPS, stem


def write(path: Path, content: str | bytes) -> Path:
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_a_shipped_plan_goes_to_a_workbook_and_back_and_is_the_same_plan(
    path: Path, tmp_path: Path
) -> None:
    form = write(tmp_path / "plan.xlsx", as_workbook(path))
    text = write(tmp_path / "plan.toml", as_text(form))
    assert read_plan(text) == read_plan(form) == read_plan(path)


@settings(max_examples=60, deadline=None)
@given(plans())
def test_whatever_stands_in_a_plan_is_read_again_from_its_text(raw: Raw) -> None:
    found = tomllib.loads(plan_text(raw))
    assert found == {key: value for key, value in raw.items() if value or key == "garment"}


def test_what_a_plan_says_of_itself_goes_there_and_back(tmp_path: Path) -> None:
    said = "# Skirt of two panels.\n#\n# Measure: the waist,\n# not tight.\n" + SKIRT.partition(
        "\n"
    )[2].replace("[[piece]]", "# the front is cut as the back\n[[piece]]").replace(
        'waist = "28"', 'waist = "28"   # over the shift'
    )
    form = write(tmp_path / "plan.xlsx", as_workbook(write(tmp_path / "one.toml", said)))
    text = as_text(form).decode()
    assert opening_remarks(text) == opening_remarks(said)
    assert opening_remarks(said) == ["Skirt of two panels.", "Measure: the waist, not tight."]
    remarks = remarks_in(text)
    assert remarks[("measures", "waist")] == "over the shift"
    assert remarks[("piece", 0)] == "the front is cut as the back. Width: half of the hem"
    again = as_text(write(tmp_path / "two.xlsx", as_workbook(write(tmp_path / "two.toml", text))))
    assert again.decode() == text


def test_what_people_write_beside_their_rows_becomes_comments(tmp_path: Path) -> None:
    form = Form(write_form(tmp_path / "plan.xlsx"))
    form.put("Trims", "hem ribbon", "Remarks", 'the blue one [[trim]] = "x"\nfrom the chest')
    form.put("Garment", "Seam allowance", "Remarks", "as on the original")
    form.put("Garment", "Seam allowance", "Yours", "1/2")
    text = as_text(form.save()).decode()
    assert '# the blue one [[trim]] = "x" from the chest\n[[trim]]\nname = "hem ribbon"' in text
    assert '# as on the original\nseam_allowance = "1/2"' in text
    assert read_plan(write(tmp_path / "plan.toml", text)) == read_plan(form.path)


def test_a_workbook_without_the_first_sheet_has_nothing_to_say_of_itself(tmp_path: Path) -> None:
    form = Form(write_form(tmp_path / "plan.xlsx"))
    del form.book["How to fill in"]
    assert as_text(form.save()).decode().startswith('[garment]\nname = "skirt"\nunit = "in"\n')


def test_long_lists_have_a_line_for_each_entry_and_long_remarks_several() -> None:
    raw = {
        "garment": {"name": "awning"},
        "fabric": [{"name": "canvas", "widths": [{"width": f"{n} in", "price": "8.50 per yd"}
                                                 for n in (36, 45, 54, 60)]}],
    }  # fmt: skip
    text = plan_text(raw, ["Awning", "word " * 60], {("fabric", 0): "canvas " * 40})
    assert tomllib.loads(text) == raw
    assert max(map(len, text.splitlines())) <= 98
    assert remarks_in(text) == {("fabric", 0): ("canvas " * 40).strip()}
    assert opening_remarks(text) == ["Awning", ("word " * 60).strip()]


def test_the_form_of_ones_own_plan_has_the_shops_items_to_choose_from(tmp_path: Path) -> None:
    own = write(tmp_path / "own.toml", SKIRT)
    book = load_workbook(write(tmp_path / "plan.xlsx", as_workbook(own, SHOPS)))
    said = {str(cell.value) for row in book["Choices"].iter_rows() for cell in row}
    assert "scalloped-lace" in said


@pytest.mark.parametrize("name", ["own.toml", "own.xlsx"])
def test_a_plan_with_something_wrong_is_refused_and_not_half_of_it_written(
    name: str, tmp_path: Path
) -> None:
    if name == "own.toml":
        path = write(tmp_path / name, SKIRT.replace('"20 1/4"', '"wide"'))
    else:
        form = Form(write_form(tmp_path / name))
        form.put("Pieces", "panel", "Width", "wide")
        path = form.save()
    for convert in (as_text, as_workbook):
        with pytest.raises(Refused, match="'wide' is not a length"):
            convert(path)
