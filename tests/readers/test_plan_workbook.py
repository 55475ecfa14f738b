"""Every complaint about a plan in a spreadsheet names its cell, and what would be right."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest

from estimator import estimate_files, read_plan
from estimator.measure import Unit
from estimator.written import length
from tests.forms import SKIRT, Form, complaints, write_form


@pytest.fixture
def form(tmp_path: Path) -> Form:
    return Form(write_form(tmp_path / "skirt.xlsx"))


def test_a_form_as_it_is_written_is_in_order(form: Form) -> None:
    assert complaints(form.save()) == []


@pytest.mark.parametrize(
    ("heading", "value", "complaint"),
    [
        ("Width", "20 kg", "'kg' in '20 kg' measures mass, not a length"),
        ("Width", datetime.datetime(2026, 1, 2), "is a date; a spreadsheet makes one of a fraction "
         "such as 1/2; format the cell as text and write 1/2 again"),
        ("Width", datetime.datetime(1932, 1, 1), "such as 1/32; format the cell as text"),
        ("Width", datetime.time(17, 30), "the cell holds a time of day"),
        ("Width", "=A7/4", "the cell holds a formula; write its result as a plain value"),
        ("Width", "#REF!", "the cell holds an error, #REF!; write the value again"),
        ("Width", "from wast / 2", "there is no measure 'wast'; did you mean 'waist'?"),
        ("Width", None, "'width' is missing"),
        ("Quantity", "many", "'many' is not a whole number; write a whole number, as in 4"),
        ("Bottom edge", "hemm 1", "is not a way to finish an edge; did you mean 'hem'?"),
        ("Cut from", "{ fabric", "cannot be read; write it like {"),
        ("Cut from", "prunt", "the plan has no fabric 'prunt'; did you mean 'print'?"),
        ("Made", "folded bnd", "Made cannot be 'folded bnd'; did you mean 'folded band'?"),
    ],
)  # fmt: skip
def test_a_complaint_names_sheet_and_cell(
    form: Form, heading: str, value: object, complaint: str
) -> None:
    where = form.put("Pieces", "panel", heading, value)
    (found, *others) = complaints(form.save())
    if value is not None:
        assert found.startswith(where)
        assert complaint in found
    else:
        # that a size is lacking is said of the whole piece
        assert found.startswith("sheet Pieces, cell A7 (piece 'panel')")
        assert "add width" in found
    assert others == []


def test_a_formula_in_a_note_is_refused_and_a_date_in_one_is_text(form: Form) -> None:
    form.put("Pieces", "panel", "Note", datetime.datetime(2026, 5, 3))
    assert read_plan(form.save()).piece[0].note == "2026-05-03"
    where = form.put("Pieces", "panel", "Note", "=TODAY()")
    (found,) = complaints(form.save())
    assert found.startswith(f"{where} (piece 'panel'): the cell holds a formula")


def test_all_complaints_come_together_in_the_order_of_the_sheets(form: Form) -> None:
    form.put("Pieces", "panel", "Width", "20 kg")
    form.put("Pieces", "panel", "Length", "=1+1")
    form.put("Trims", "hem ribbon", "Along", "panl: bottom")
    assert [one.split(" (")[0] for one in complaints(form.save())] == [
        "sheet Pieces, cell E7", "sheet Pieces, cell D7", "sheet Trims, cell B7",
    ]  # fmt: skip


def test_numbers_typed_as_numbers_are_sizes_in_the_unit_of_the_garment(form: Form) -> None:
    form.yours("Unit", "cm")
    form.put("Pieces", "panel", "Width", 20.25)
    form.put("Fabrics", "print", "Shrinkage", 0.05)
    cell = form.book["Fabrics"].cell(
        form.row("Fabrics", "print"), form.column("Fabrics", "Shrinkage")
    )
    cell.number_format = "0%"
    plan = read_plan(form.save())
    assert plan.garment.unit is Unit.CM
    assert plan.piece[0].width == length("20.25 cm")
    assert plan.fabric[0].shrinkage is not None
    assert plan.fabric[0].shrinkage * 20 == 1


def test_a_bare_share_is_refused_for_it_may_be_one_percent_or_all(form: Form) -> None:
    form.put("Fabrics", "print", "Shrinkage", 0.05)
    (found,) = complaints(form.save())
    assert found.endswith("'0.05' is not a share; write a percentage, as in 5 %")


def test_a_heading_that_is_not_known_gets_the_nearest(form: Form) -> None:
    page, head = form.book["Pieces"], form.head("Pieces")
    page.cell(head, form.column("Pieces", "Length")).value = "Lenght"
    assert any(
        one.startswith(f"sheet Pieces, cell E{head}: there is no column 'Lenght' on this sheet; "
                       "did you mean 'Length'?")
        for one in complaints(form.save())
    )  # fmt: skip


def test_the_plans_own_keys_do_as_headings_and_columns_may_change_places(form: Form) -> None:
    page, head = form.book["Pieces"], form.head("Pieces")
    wide, long = form.column("Pieces", "Width"), form.column("Pieces", "Length")
    page.cell(head, wide).value, page.cell(head, long).value = "length", "WIDTH"
    piece = read_plan(form.save()).piece[0]
    assert (piece.width, piece.length) == (length("26"), length("20 1/4"))


def test_a_line_of_the_garment_that_is_not_known_gets_the_nearest(form: Form) -> None:
    form.book["Garment"].cell(form.row("Garment", "Copies"), 1).value = "Copis"
    (found,) = complaints(form.save())
    assert found.endswith("there is no line 'Copis' on this sheet; did you mean 'Copies'?")


def test_a_sheet_that_is_not_known_is_refused_unless_it_is_ones_own_notes(form: Form) -> None:
    form.book["Trims"].title = "Trimms"
    form.book.create_sheet("Notes on fit")["A1"] = "let out at the waist"
    (found,) = complaints(form.save())
    assert "there is no sheet 'Trimms' in a plan; did you mean 'Trims'?" in found


def test_rows_below_a_sheets_headings_may_leave_gaps_and_remarks_are_not_read(form: Form) -> None:
    row = form.row("Pieces", "") + 3
    page = form.book["Pieces"]
    for heading, value in (("Name", "tie"), ("Cut from", "print"), ("Width", "2"),
                           ("Length", "30"), ("Remarks", "=not read")):  # fmt: skip
        page.cell(row, form.column("Pieces", heading)).value = value
    assert [one.name for one in read_plan(form.save()).piece] == ["panel", "tie"]


def test_a_cell_without_a_heading_is_not_passed_over(form: Form) -> None:
    page = form.book["Measures"]
    page.cell(form.row("Measures", "waist"), 9).value = "29"
    (found,) = complaints(form.save())
    assert found.startswith("sheet Measures, cell I7: this column has no heading")


def test_twins_are_told_with_the_cell_of_the_other(form: Form) -> None:
    form.add("Pieces", Name="Panel", Cut_from="print", Width="2", Length="3")
    (found,) = complaints(form.save())
    assert found == (
        "sheet Pieces, cell A8 (piece 'Panel'): a second piece is named 'Panel', as is the one in "
        "sheet Pieces, cell A7; give each its own name"
    )


@pytest.mark.parametrize(
    ("sheet", "row", "complaint"),
    [
        ("Named edges", {"Piece": "pannel", "Edge": "slit", "Length": "4"},
         "cell A7: there is no piece 'pannel'; did you mean 'panel'?"),
        ("Named edges", {"Edge": "slit", "Length": "4"},
         "cell A7: the row does not say to which piece it belongs; choose from panel"),
        ("Named edges", {"Piece": "panel", "Length": "4"}, "the row has no name of its own"),
        ("Cut differently", {"Piece": "panel", "Fabric": "prnt", "Length": "4"},
         "Fabric 'prnt' is not among those on the sheet of the piece; did you mean 'print'?"),
        ("Widths", {"Fabric": "print", "Width": "60 in", "Price": "3 per yd"},
         "Width '60 in' is not among those on the sheet of the fabric"),
        ("Packs", {"Name": "hem ribbon", "Pack": "card of 3 yd"},
         "the row does not say of which sheet the thing is; choose from "),
        ("Packs", {"Table": "trim", "Name": "hem ribon", "Pack": "card of 3 yd"},
         "there is no trim 'hem ribon'; did you mean 'hem ribbon'?"),
        ("Measures", {"Measure": "waist", "Size": "30"}, "a second measure is named 'waist'"),
    ],
)  # fmt: skip
def test_a_row_says_to_what_it_belongs(
    form: Form, sheet: str, row: dict[str, str], complaint: str
) -> None:
    form.add(sheet, **row)
    (found,) = complaints(form.save())
    assert found.startswith(f"sheet {sheet}, ")
    assert complaint in found


def test_a_row_of_its_own_tells_more_of_a_fabric_that_a_piece_is_cut_from(form: Form) -> None:
    form.add("Fabrics", Name="lining", Role="lining", Widths="45 in; 60 in")
    form.add("Widths", Fabric="lining", Width="60 in", Price="4.50 per yd")
    form.put("Pieces", "panel", "Cut from", "print; lining")
    form.add("Cut differently", Piece="panel", Fabric="lining", Length="25")
    form.add("Named edges", Piece="panel", Edge="slit", Length="4", Finish="faced")
    plan = read_plan(form.save())
    shell, lining = plan.piece[0].cut
    assert (shell.fabric, shell.length) == ("print", None)
    assert (lining.fabric, lining.length) == ("lining", length("25"))
    assert plan.piece[0].edges["slit"].length == length("4")
    narrow, wide = plan.fabric[1].widths
    assert narrow.price is None
    assert wide.price is not None


def test_text_that_looks_like_a_formula_stays_text(tmp_path: Path) -> None:
    odd = SKIRT.replace('"panel"', '"=1+1"').replace('"panel: bottom"', '"=1+1: bottom"')
    found = estimate_files([write_form(tmp_path / "odd.xlsx", odd)])
    assert found.job.garments[0].plan.piece[0].name == "=1+1"


def test_a_workbook_that_is_no_plan_is_refused(tmp_path: Path) -> None:
    form = Form(write_form(tmp_path / "skirt.xlsx"))
    del form.book["Garment"]
    assert complaints(form.save()) == [
        f"{form.path}: is no plan: it has no sheet Garment; "
        "begin with: estimator new NAME plan.xlsx"
    ]


def test_a_sheet_without_its_headings_is_refused(tmp_path: Path) -> None:
    form = Form(write_form(tmp_path / "skirt.xlsx"))
    form.book["Pieces"].delete_rows(1, form.head("Pieces"))
    assert complaints(form.save()) == [
        "sheet Pieces: has no row of headings; "
        "copy it from a new form: estimator new NAME plan.xlsx"
    ]
