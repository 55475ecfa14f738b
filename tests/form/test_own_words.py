"""What is wrong with a form is said in the words that stand on it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from estimator.faults import Path as PlanPath
from estimator.faults import Wrong
from estimator.form.own_words import in_form_words
from tests.forms import Form, complaints, write_form

Change = Callable[[Form], object]


def said(at: PlanPath, wrong: str, right: str) -> tuple[str, str]:
    told = in_form_words(at, Wrong(wrong, right))
    return told.wrong, told.right


@pytest.mark.parametrize(
    ("change", "complaint"),
    [
        (lambda form: form.yours("Seam allowance", "wide"), "Seam allowance: 'wide' is not a"),
        (lambda form: form.yours("Elastic stretch", "x"), "write a percentage, as in 5 %"),
        (
            lambda form: form.put("Pieces", "panel", "Cut from", None),
            "Cut from is missing; fill in Cut from",
        ),
        (lambda form: form.put("Pieces", "panel", "Top edge", "hm 1"), "Top edge: 'hm 1' is not"),
        (
            lambda form: form.put("Pieces", "panel", "Width", "waist"),
            "Width: 'waist' is not a length; write from waist",
        ),
        (
            lambda form: form.put("Pieces", "panel", "Width", "waist + 10"),
            "write from waist + 10 in",
        ),
        (
            lambda form: form.put("Fabrics", "print", "Widths", "44,5 cm, 58 in"),
            "'44,5 cm, 58 in' is several widths; write 44,5 cm; 58 in under Widths",
        ),
        (
            lambda form: form.put("Trims", "hem ribbon", "Along", "panel: bottom, panel: left"),
            "'panel: bottom, panel: left' names several edges; "
            "write panel: bottom; panel: left under Along",
        ),
        (
            lambda form: form.put("Pieces", "panel", "Cut from", "print, print"),
            "the plan has no fabric 'print, print'; write print; print under Cut from",
        ),
        (
            lambda form: form.put("Pieces", "panel", "Onto", "x"),
            "write it like skirt panel: bottom or 2 x skirt panel: bottom",
        ),
        (
            lambda form: form.add("Trims", Name="braid"),
            "write skirt panel: bottom under Along, or 40 under Length, and not both",
        ),
        (
            lambda form: form.add("Packs", Table="trim", Name="hem ribbon", Pack="x"),
            "Pack: 'x' is not a put-up",
        ),
        (
            lambda form: form.add("Seams", One_side="panel: left"),
            "a seam joins two edges; write skirt: top under One side and band: left under Other",
        ),
        (
            lambda form: form.put("Fabrics", "print", "Widths", None),
            "add a name under Buy for an item of a catalog, or 45 in; 60 in under Widths",
        ),
        (
            lambda form: form.add("Named edges", Piece="panel", Edge="slit"),
            "or a row for slit on the sheet Named edges with 10 under Length and faced under Fin",
        ),
        (
            lambda form: form.add("Cut differently", Piece="panel", Fabric="print", Cut_to="fin"),
            "Cut to cannot be 'fin'",
        ),
        (
            lambda form: form.add("Boning", Name="bones"),
            "one of along, length and Casing for; write 9 under Length for each channel",
        ),
    ],
    ids=["a line of the garment", "a share", "an empty cell", "a finish", "a measure",
         "a sum", "widths with commas", "edges with commas", "fabrics with commas", "an edge",
         "two ways",
         "a pack", "a seam", "a fabric", "a named edge", "a lining", "a key named in passing"],
)  # fmt: skip
def test_a_complaint_about_a_form_speaks_of_its_headings_and_sheets(
    change: Change, complaint: str, tmp_path: Path
) -> None:
    form = Form(write_form(tmp_path / "form.xlsx"))
    change(form)
    found = complaints(form.save())
    assert [one for one in found if complaint in one], found
    assert not any(mark in one for one in found for mark in (' = "', "[[", "_", "{"))


def test_what_a_person_wrote_stays_as_they_wrote_it() -> None:
    for own in ('along = "x"', "seam_allowance", '{ from = "waist" }', '"quoted" text', "[[seam]]"):
        wrong, right = said(("trim", 0, "along"), f"there is no '{own}' here", f"is it '{own}'?")
        assert (wrong, right) == (f"there is no '{own}' here", f"is it '{own}'?")


def test_a_size_that_comes_from_measures_is_written_without_braces() -> None:
    right = 'write { from = "waist" }'
    assert said(("piece", 0, "width"), "width: no", right) == ("Width: no", "write from waist")


def test_an_edge_that_is_to_be_finished_has_a_column_of_its_own() -> None:
    right = 'write edges = { bottom = "casing 1" } in the piece'
    told = "write casing 1 under Bottom edge in the piece"
    assert said(("elastic", 0, "casing"), "no", right) == ("no", told)


def test_inch_marks_are_no_quotation_marks() -> None:
    right = 'a length is written like 17 1/2, 17½", 1 yd 4 in or "44.5 cm"'
    told = 'a length is written like 17 1/2, 17½", 1 yd 4 in or 44.5 cm'
    assert said(("piece", 0, "width"), "no", right) == ("no", told)


def test_a_key_of_another_sheet_is_told_by_the_heading_there() -> None:
    # the trim's own sheet has no such column; that of the garment has
    assert said(("trim", 0), "no", "state trim_waste")[1] == "state Trim waste"
    assert said((), "no", "state no_such_key")[1] == "state no_such_key"
