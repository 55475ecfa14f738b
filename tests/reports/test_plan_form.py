"""The form of a plan as a newcomer opens it: what stands on it, and what it lets them choose."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from estimator.catalog import NO_CATALOG, Kind
from estimator.files import read_catalog
from estimator.form.sheets import plan_sheets
from estimator.plan import Plan
from estimator.reports.plan_form import TO_CHANGE
from tests.forms import SKIRT, Form, form_bytes_of, write_form
from tests.shipped_plans import SHOPS


@pytest.fixture
def form(tmp_path: Path) -> Form:
    return Form(write_form(tmp_path / "skirt.xlsx"))


def texts(sheet: Worksheet) -> str:
    return "\n".join(str(c.value) for row in sheet.iter_rows() for c in row if c.value is not None)


def choices(form: Form, sheet: str, heading: str) -> str:
    """The formula of the drop-down list below a heading; nothing if there is none."""
    page = form.book[sheet]
    cell = page.cell(form.head(sheet) + 1, form.column(sheet, heading)).coordinate
    found = [one for one in page.data_validations.dataValidation if cell in one.sqref]
    assert len(found) == 1, "each cell says of itself what it takes"
    return found[0].formula1 if found[0].type == "list" else ""


def listed(form: Form, formula: str) -> list[str]:
    """The words to which a list that does not change refers."""
    sheet, _, cells = formula.replace("$", "").rpartition("!")
    return [row[0].value for row in form.book[sheet.strip("'")][cells]]


def test_the_first_sheet_tells_what_to_measure_and_how_to_fill_in(form: Form) -> None:
    assert form.book.sheetnames[0] == "How to fill in"
    said = texts(form.book["How to fill in"])
    assert said.startswith("Skirt of two panels.")
    for title in ("Garment", "Measures", "Pieces", "Cut differently", "Packs"):
        assert f"\n{title}: " in said


def test_what_is_to_be_changed_is_yellow_and_its_remark_stands_beside_it(form: Form) -> None:
    page, row = form.book["Pieces"], form.row("Pieces", "panel")
    wide = page.cell(row, form.column("Pieces", "Width"))
    assert wide.fill.fgColor.rgb[2:] == TO_CHANGE.fgColor.rgb[2:]
    assert page.cell(row, form.column("Pieces", "Length")).fill.fill_type is None
    assert page.cell(row, form.column("Pieces", "Remarks")).value == "Width: half of the hem"


def test_size_cells_are_text_so_that_a_half_does_not_become_a_date(form: Form) -> None:
    page, head = form.book["Pieces"], form.head("Pieces")
    for row in (head + 1, head + 10):
        assert page.cell(row, form.column("Pieces", "Width")).number_format == "@"
        assert page.cell(row, form.column("Pieces", "Quantity")).number_format == "General"


def test_each_sheet_explains_its_columns_and_has_an_example_of_most(form: Form) -> None:
    for sheet in plan_sheets():
        if sheet.upright:
            continue
        page, head = form.book[sheet.title], form.head(sheet.title)
        for column in sheet.all_columns:
            number = form.column(sheet.title, column.heading)
            assert (page.cell(head - 2, number).value or "") == column.words.meaning
        assert any((page.cell(head - 1, n).value or "").startswith("e.g. ") for n in range(1, 9))


def test_an_example_of_a_size_has_its_unit_for_the_form_may_be_in_another(form: Form) -> None:
    page, head = form.book["Pieces"], form.head("Pieces")
    examples = [page.cell(head - 1, form.column("Pieces", one)).value for one in ("Width", "Top")]
    assert examples == ["e.g. 20 1/4 in", "e.g. 6 in"]


def test_the_unit_of_sizes_is_told_on_each_sheet_and_follows_the_garments(form: Form) -> None:
    line = form.row("Garment", "Unit")
    for title in ("Pieces", "Trims", "Measures"):
        assert f"'Garment'!$B${line}=\"cm\"" in str(form.book[title]["A3"].value)


def test_words_that_a_key_may_have_can_be_chosen(form: Form) -> None:
    grain = listed(form, choices(form, "Pieces", "Grain"))
    assert grain == ["lengthwise", "crosswise", "either", "bias"]
    assert "rolled hem" in listed(form, choices(form, "Pieces", "Bottom edge"))
    assert listed(form, choices(form, "Fabrics", "Nap")) == ["yes", "no"]
    assert listed(form, choices(form, "Notions", "Kind")) == [
        "zip", "separating zip", "thread", "notion",
    ]  # fmt: skip


def test_fabrics_pieces_edges_and_seams_of_the_plan_itself_can_be_chosen(form: Form) -> None:
    assert "'Fabrics'!$A$" in choices(form, "Pieces", "Cut from")
    assert "'Pieces'!$A$" in choices(form, "Named edges", "Piece")
    edges, runs = choices(form, "Pieces", "Onto"), choices(form, "Trims", "Along")
    assert edges != runs
    names = texts(form.book["Choices"])
    first = form.head("Pieces") + 1
    assert f'=IF(\'Pieces\'!$A${first}="","",\'Pieces\'!$A${first}&": bottom")' in names
    assert f"'Seams'!$A${form.head('Seams') + 1}" in names
    assert form.book["Choices"].sheet_state == "hidden"


def test_items_of_a_catalog_can_be_chosen_each_where_its_kind_is_bought(tmp_path: Path) -> None:
    shop = read_catalog(SHOPS)
    form = Form(write_form(tmp_path / "skirt.xlsx", SKIRT, shop))
    fabrics = listed(form, choices(form, "Fabrics", "Buy"))
    assert fabrics == [name for name, item in shop.items.items() if item.kind is Kind.FABRIC]
    assert "dress-zip" in listed(form, choices(form, "Notions", "Buy"))


def test_every_table_of_a_plan_has_a_sheet_and_every_key_a_column_or_a_sheet() -> None:
    sheets = {sheet.keys: sheet for sheet in plan_sheets()}
    assert {keys[0] for keys in sheets if len(keys) == 1} == set(Plan.model_fields)
    inner = {(table, sheet.keys[-1]) for sheet in sheets.values() for table in sheet.parents}
    for (table, *further), sheet in sheets.items():
        field = Plan.model_fields[table]
        if further or sheet.of_measures:
            continue
        model = field.annotation if sheet.upright else field.annotation.__args__[0]
        columns = {column.path[0] for column in sheet.columns}
        for key in model.model_fields:
            assert key in columns or (table, key) in inner, f"{table}.{key}"


def test_no_two_columns_of_a_sheet_have_the_same_heading() -> None:
    for sheet in plan_sheets():
        headings = [column.heading.casefold() for column in sheet.all_columns]
        assert len(set(headings)) == len(headings), sheet.title


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert form_bytes_of(SKIRT, NO_CATALOG) == form_bytes_of(SKIRT, NO_CATALOG)


def test_a_saved_form_has_no_text_that_became_a_formula(tmp_path: Path) -> None:
    odd = SKIRT.replace('"panel"', '"=1+1"').replace('"panel: bottom"', '"=1+1: bottom"')
    book = load_workbook(write_form(tmp_path / "odd.xlsx", odd))
    assert book["Pieces"]["A7"].value == "=1+1"
    assert book["Pieces"]["A7"].data_type == "s"


def test_a_form_prints_what_is_in_common_use_and_what_the_plan_uses(tmp_path: Path) -> None:
    text = SKIRT.replace(
        'along = "panel: bottom"', 'along = "panel: bottom"\nrow_spacing = "2"\nrows = 3'
    )
    book = load_workbook(write_form(tmp_path / "form.xlsx", text))
    page = book["Trims"]
    head = next(row for row in page.iter_rows() if row[0].value == "Name")
    headings = [cell.value for cell in head]
    # what this plan uses beside the common columns stands next to them
    assert headings[: headings.index("Remarks") + 2][-2:] == ["Remarks", "Row spacing"]
    last = headings.index("Row spacing") + 1
    area = str(page.print_area)
    assert area.startswith("'Trims'!$A$1:$")
    assert page[area.rpartition(":")[2].replace("$", "")].column == last
    assert len(headings) > last
    # the one trim, and some lines to write on: not all that the screen has
    printed = page[area.rpartition(":")[2].replace("$", "")].row
    assert head[0].row + 5 < printed < page.max_row


def test_every_sheet_of_a_form_has_a_short_part_that_most_people_need(tmp_path: Path) -> None:
    book = load_workbook(write_form(tmp_path / "form.xlsx"))
    for sheet in plan_sheets():
        if not sheet.upright:
            common = [column.heading for column in sheet.all_columns if column.common]
            assert 2 <= len(common) <= 14, sheet.title
            assert book[sheet.title].print_area.startswith(f"'{sheet.title}'!$A$1:")
