"""The measure sheet: what a maker shares of a garment that she has measured."""

from __future__ import annotations

from fractions import Fraction

from estimator import Job, estimate
from estimator.estimated import Estimate
from estimator.measure import Unit
from estimator.reports.measure_sheet import SEEN, measure_tables
from estimator.reports.tables import Table
from estimator.reports.workbook import workbook_of
from estimator.written import length
from tests.plans import HEADING, in_print, order

DRESS = """
[measures]
waist = "30"
[[piece]]
name = "panel"
quantity = 4
cut = "print"
width = "19 3/4"
length = "27"
edges = { bottom = "hem 1 1/4 + 1/2", left = "selvedge", slit = { length = "5", finish = "faced" } }
takes_up = [{ kind = "tuck", depth = "1/2", count = 2, across = "length" }]
note = "Seen: two tucks. Guessed: the depth of the hem."
[[piece]]
name = "gore"
cut = "print"
shape = "taper"
top = "7"
bottom = "15"
length = "27"
[[piece]]
name = "cape"
cut = "print"
shape = "sector"
share = "1/2"
waist = "9"
length = "11"
edges = { bottom = "rolled hem" }
[[piece]]
name = "ruffle"
cut = "print"
made = "joined strip"
onto = "panel: bottom"
fullness = 1.5
length = "8"
[[piece]]
name = "cuff"
quantity = 2
cut = "print"
made = "folded band"
width = "2"
onto = "1 x panel: top"
grain = "crosswise"
[[piece]]
name = "bodice front"
cut = "print"
shape = "box"
width = "9 1/2"
length = "15"
edges = { left = "fold" }
[[seam]]
name = "waist seam"
edges = [["1 x panel: left", "gore: left"], "1 x panel: right"]
gathered = "1 x panel: right"
[[trim]]
name = "lace"
along = ["panel: bottom", "waist seam"]
rows = 2
fullness = 1.5
colour = "cream"
[[elastic]]
name = "wrist elastic"
measure = "6 1/2"
quantity = 2
joined = "in the round"
note = "Guessed from a photograph."
[[piece]]
name = "waistband"
cut = "print"
width = "40"
length = "3"
edges = { top = "casing 1" }
[[elastic]]
name = "waist elastic"
opening = "24"
casing = "waistband: top"
width = "3/4"
[[trim]]
name = "ribbon"
through = "lace"
"""


def tables() -> list[Table]:
    return list(measure_tables(in_print(DRESS)))


def row(name: str) -> dict[str, object]:
    (found,) = (
        dict(zip((column.heading for column in table.columns), values, strict=True))
        for table in tables()
        for values in table.rows
        if values[0] == name
    )
    return found


def test_every_piece_stands_with_its_finished_size_and_how_it_is_made() -> None:
    panel = row("panel")
    assert (panel["How many"], panel["Fabric"]) == (4, "print")
    assert (panel["Finished width"], panel["Finished length"]) == (length("19 3/4"), length("27"))
    assert panel["How it is made"] == (
        "a rectangle; 2 tucks of 1/2 in across it; bottom: hem 1 1/4 in + 1/2 in; "
        "left: selvedge; slit: 5 in, faced"
    )


def test_sizes_that_follow_from_others_are_told_as_they_are_sewn() -> None:
    # 4 panels of 19 3/4 are 79 in, and half as much again 118 1/2
    ruffle = row("ruffle")
    assert (ruffle["Finished width"], ruffle["Finished length"]) == (length("118 1/2"), length("8"))
    assert ruffle["How it is made"] == ("joined strip; gathered onto panel: bottom, fullness 1.5")
    # each cuff goes onto one panel, and a crosswise piece keeps its own width
    cuff = row("cuff")
    assert (cuff["Finished width"], cuff["Finished length"]) == (length("2"), length("19 3/4"))
    assert cuff["How it is made"] == ("folded band; grain crosswise; as long as 1 x panel: top")


def test_a_taper_and_a_circle_tell_their_sizes_in_words() -> None:
    gore, cape = row("gore"), row("cape")
    assert gore["How it is made"] == "taper, 7 in at the top, 15 in at the bottom and 27 in long"
    assert cape["How it is made"] == (
        "1/2 of a circle, its inner edge 9 in, 11 in deep; bottom: rolled hem"
    )
    assert [gore["Finished width"], cape["Finished width"]] == [None, None]


def test_a_bias_strip_tells_how_wide_it_is_cut_and_no_finished_width() -> None:
    strip = '[[piece]]\nname = "strip"\ncut = "print"\nmade = "bias strip"\nwidth = "3"\n'
    table, *_ = measure_tables(in_print(DRESS + strip + 'onto = "1 x panel: top"\n'))
    (told,) = (values for values in table.rows if values[0] == "strip")
    assert told[3:6] == (
        None, length("19 3/4"), "bias strip, cut 3 in wide; as long as 1 x panel: top"
    )  # fmt: skip


def test_a_piece_on_the_fold_stands_with_the_half_that_was_measured() -> None:
    front = row("bodice front")
    assert front["Finished width"] == length("9 1/2")
    assert "half of it, from the fold at the left" in str(front["How it is made"])


def test_seams_trims_and_elastics_say_where_they_go() -> None:
    assert row("waist seam")["Where it goes"] == (
        "1 x panel: left and gore: left to 1 x panel: right; 1 x panel: right gathered"
    )
    lace = row("lace")
    assert lace["Kind"] == "cream trim"
    assert lace["Where it goes"] == (
        "along panel: bottom, waist seam; 2 rows; gathered, fullness 1 1/2"
    )
    assert row("wrist elastic")["Where it goes"] == (
        "for a measure of 6 1/2 in; joined in the round"
    )
    assert row("ribbon")["Where it goes"] == "through lace"
    assert row("waist elastic")["Where it goes"] == (
        "for an opening of 24 in; in the casing of waistband: top"
    )


def test_the_plans_notes_stand_there_and_a_column_is_left_for_what_was_seen() -> None:
    assert row("panel")["Remarks"] == "Seen: two tucks. Guessed: the depth of the hem."
    assert row("wrist elastic")["Remarks"] == "Guessed from a photograph."
    assert all(values[6] == "" for table in tables() for values in table.rows)
    assert all(table.columns[6].heading == SEEN for table in tables())


def test_measures_and_the_unit_stand_above_the_pieces() -> None:
    first = tables()[0]
    assert first.notes[0].startswith("Sizes are finished sizes in inches")
    assert first.notes[1] == "Measures: waist 30 in."
    assert first.unit is Unit.IN


def of_two(one: str, other: str) -> Estimate:
    return estimate(Job((order(one, wearer="Ada"), order(other, wearer="Bea"))))


def test_copies_of_one_size_are_told_once_and_each_size_by_itself() -> None:
    panel = HEADING + '[[piece]]\nname = "p"\ncut = "print"\nwidth = "20"\nlength = "30"\n'
    assert len(measure_tables(of_two(panel, panel))) == 1
    titles = [one.title for one in measure_tables(of_two(panel, panel.replace("20", "22")))]
    assert titles == ["Measure sheet: apron for Ada", "Measure sheet: apron for Bea"]


def test_the_written_workbook_has_the_measure_sheet_with_room_to_write() -> None:
    sheet = workbook_of(in_print(DRESS))["Measure sheet"]
    rows = {cell.value: cell.row for cell in sheet["A"] if cell.value}
    assert sheet.cell(rows["panel"], 4).value == float(Fraction(79, 4))
    assert (sheet.row_dimensions[rows["gore"]].height or 0) >= 24


def test_a_binding_cut_from_a_fabric_is_no_piece_to_measure() -> None:
    text = (
        '[[piece]]\nname = "panel"\ncut = "print"\nwidth = "20"\nlength = "30"\n'
        '[[trim]]\nname = "binding"\ncut_from = "print"\nwidth = "1/2"\nalong = "panel: bottom"\n'
    )
    pieces = measure_tables(in_print(text))[0]
    assert [row[0] for row in pieces.rows] == ["panel"]
