"""From finished size to cut size. Seams are 5/8 in unless a plan says otherwise."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.written import length
from tests.plans import (
    HEADING,
    Size,
    by,
    complaints,
    cut_pieces,
    cut_size,
    cut_sizes,
    in_print,
    plan,
)


def cut_size_with(heading: str) -> Size:
    return cut_sizes(estimate(plan(heading + PANEL)))["panel"]


PANEL = """
[[piece]]
name = "panel"
cut = "print"
width = "20 1/4"
length = "26 3/8"
"""


def test_a_panel_takes_a_seam_allowance_on_each_side() -> None:
    # 20 1/4 + 2 x 5/8 by 26 3/8 + 2 x 5/8.
    assert cut_size(PANEL) == by("21 1/2", "27 5/8")


def test_a_cut_size_goes_up_to_the_next_sixteenth_and_a_mark_stays() -> None:
    # 20 7/32 + 1 1/4 = 21 15/32, up to 21 1/2; 26 3/8 + 1 1/4 is on the tape already.
    assert cut_size(PANEL.replace("20 1/4", "20 7/32")) == by("21 1/2", "27 5/8")


def test_the_mark_of_the_tape_is_a_setting_of_the_plan() -> None:
    to_the_quarter = HEADING.replace('"apron"', '"apron"\nmark = "1/4"')
    found = plan(to_the_quarter + PANEL)
    assert found.garment.rules.mark == length("1/4 in")
    assert cut_size_with(to_the_quarter) == by("21 1/2", "27 3/4")


def test_the_allowances_of_the_garment_hold_for_all_of_its_pieces() -> None:
    ruled = HEADING.replace('"apron"', '"apron"\nseam_allowance = "1/2"\nturn_under = "3/8"', 1)
    assert cut_size_with(ruled) == by("21 1/4", "27 3/8")


def test_a_seam_allowance_of_zero_is_an_allowance() -> None:
    assert cut_size_with(HEADING.replace('"apron"', '"apron"\nseam_allowance = "0"', 1)) == by(
        "20 1/4", "26 3/8"
    )


def test_metric_plans_take_metric_allowances() -> None:
    # 50.3 + 2 x 1.5 cm by 66.1 + 1.5 + 3 + 0.6 cm.
    metric = HEADING.replace('"apron"', '"apron"\nunit = "cm"').replace("45 in", "114 cm")
    panel = PANEL.replace("20 1/4", "50.3").replace("26 3/8", "66.1")
    found = estimate(plan(metric + panel + 'edges.bottom = "hem 3"\n'))
    assert cut_sizes(found)["panel"] == by("53.3 cm", "71.2 cm")


def test_a_panel_on_the_fold_is_laid_opened_out() -> None:
    # Half is 20 1/4 wide: (20 1/4 + 5/8) x 2 = 41 3/4; the fold takes no allowance.
    found = in_print(PANEL + 'edges = { left = "fold" }\n')
    assert cut_sizes(found)["panel"] == by("41 3/4", "27 5/8")
    assert cut_pieces(found)["panel"].finished == by("40 1/2", "26 3/8")


@pytest.mark.parametrize(
    ("edges", "told"),
    [
        ('left = "fold", right = "fold"', "two opposite edges lie on a fold; put one edge on"),
        ('top = "fold", bottom = "fold"', "two opposite edges lie on a fold; put one edge on"),
    ],
)
def test_two_opposite_edges_cannot_both_lie_on_a_fold(edges: str, told: str) -> None:
    (found,) = complaints(HEADING + PANEL + f"edges = {{ {edges} }}\n")
    assert told in found


def test_a_hem_deeper_than_its_piece_is_refused() -> None:
    assert complaints(HEADING + PANEL + 'edges.bottom = "hem 26 1/2"\n') == [
        "apron.toml, line 14 (piece 'panel'): the bottom hem is deeper than the finished piece "
        "is long; write a hem shallower than the piece"
    ]


def test_a_hem_as_deep_as_its_piece_is_not_refused() -> None:
    assert complaints(HEADING + PANEL + 'edges.bottom = "hem 26 3/8"\n') == []


def test_a_casing_wider_than_its_piece_is_refused() -> None:
    (found,) = complaints(HEADING + PANEL + 'edges.left = "casing 20 1/2"\n')
    assert "the left casing is deeper than the finished piece is wide" in found


@pytest.mark.parametrize(
    ("fold", "cut_wide"),
    [
        # 21 1/2 in as a plain panel, and:
        ('kind = "knife pleat", depth = "1 1/8", count = 4', "30 1/2"),  # 4 x 2 x 1 1/8
        ('kind = "box pleat", depth = "1 1/8", count = 3', "35"),  # 3 x 4 x 1 1/8
        ('kind = "tuck", depth = "1/8", count = 10', "24"),  # 10 x 2 x 1/8
        ('kind = "dart", depth = "3/4", count = 2', "23"),  # 2 x 3/4, its intake
        ('kind = "tuck", depth = "3/16"', "21 7/8"),  # one
    ],
)
def test_pleats_tucks_and_darts_add_what_they_take_up(fold: str, cut_wide: str) -> None:
    assert cut_size(PANEL + f"takes_up = [{{ {fold} }}]\n") == by(cut_wide, "27 5/8")


def test_tucks_along_the_length_lengthen_a_panel() -> None:
    # 27 5/8 + 3 x 2 x 1/2.
    tucks = 'takes_up = [{ kind = "tuck", depth = "1/2", count = 3, across = "length" }]\n'
    assert cut_size(PANEL + tucks) == by("21 1/2", "30 5/8")


def test_a_pleated_panel_finishes_at_its_finished_width() -> None:
    pleats = 'takes_up = [{ kind = "knife pleat", depth = "1", count = 5 }]\n'
    assert cut_pieces(in_print(PANEL + pleats))["panel"].finished == by("20 1/4", "26 3/8")


def strip(made: str, width: str, more: str = "") -> str:
    return (
        f'[[piece]]\nname = "strip"\ncut = "print"\nmade = "{made}"\nwidth = "{width}"\n'
        f'length = "33 1/2"\n{more}'
    )


def test_a_strap_is_cut_twice_its_width_and_two_allowances() -> None:
    # Common practice: 7/8 in finished is cut 2 x 7/8 + 2 x 5/8 = 3 in wide.
    assert cut_size(strip("tube", "7/8")) == by("3", "34 3/4")


def test_a_tie_is_cut_twice_its_width_and_two_allowances() -> None:
    # Common practice: 1 1/2 in finished is cut 3 + 1 1/4 = 4 1/4 in wide.
    assert cut_size(strip("tube", "1 1/2")) == by("4 1/4", "34 3/4")


def test_a_tie_with_a_turned_end_takes_the_turn_under_there() -> None:
    ends = 'edges = { top = "turned under", bottom = "raw" }\n'
    assert cut_size(strip("tube", "1 1/2", ends)) == by("4 1/4", "33 3/4")


def test_a_folded_band_is_cut_double_and_a_facing_single() -> None:
    # A facing 2 1/8 in wide: 5/8 at the seam, its other edge turned under 1/4.
    assert cut_size(strip("folded band", "2 1/8")) == by("5 1/2", "34 3/4")
    assert cut_size(strip("facing", "2 1/8")) == by("3", "34 3/4")


def test_the_free_edge_of_a_facing_may_be_serged_or_left_raw() -> None:
    assert cut_size(strip("facing", "2 1/8", 'edges = { right = "raw" }\n')) == by(
        "2 3/4", "34 3/4"
    )


@pytest.mark.parametrize(
    ("made", "side", "right"),
    [
        ("tube", "left", "leave the fold out: a tube is folded along its length by itself"),
        ("folded band", "right",
         "leave the fold out: a folded band is folded along its length by itself"),
        ("folded band", "top", "plan the whole, with twice the length, without the fold"),
        ("facing", "left", "plan the whole, with twice the width, without the fold"),
    ],
)  # fmt: skip
def test_a_made_up_piece_on_a_fold_says_how_it_is_planned(made: str, side: str, right: str) -> None:
    (found,) = complaints(HEADING + strip(made, "1", f'edges = {{ {side} = "fold" }}\n'))
    assert found.endswith(f"this piece cannot lie on a fold; {right}")


def test_sizes_given_cut_have_their_allowances_in_already() -> None:
    # Finished: 20 1/4 - 1 1/4 by 26 3/8 - 5/8 - 1 1/4.
    found = in_print(PANEL + 'sizes = "cut"\nedges.bottom = "hem 1"\n')
    assert cut_sizes(found)["panel"] == by("20 1/4", "26 3/8")
    assert cut_pieces(found)["panel"].finished == by("19", "24 1/2")


def test_a_cut_size_that_its_allowances_use_up_is_refused() -> None:
    (found,) = complaints(HEADING + PANEL.replace("20 1/4", "1 1/4") + 'sizes = "cut"\n')
    assert "its allowances leave nothing of the cut width; give a larger width" in found


LINED = """
[[fabric]]
name = "fusible"
role = "interfacing"
widths = ["20 in"]
selvedge = 0
"""


def test_interfacing_cut_to_the_finished_size_takes_no_allowance() -> None:
    cut = '["print", { fabric = "fusible", cut_to = "finished size" }]'
    found = in_print(LINED + PANEL.replace('"print"', cut).replace("20 1/4", "9 1/4"))
    outer, inner = (choice.chosen.pieces[0] for choice in found.fabrics)
    assert (outer.width.value, outer.length.value) == by("10 1/2", "27 5/8")
    assert (inner.width.value, inner.length.value) == by("9 1/4", "26 3/8")


def test_interfacing_of_a_folded_band_goes_into_one_half_of_it() -> None:
    cut = '["print", { fabric = "fusible", cut_to = "finished size" }]'
    found = in_print(LINED + strip("folded band", "2 1/8").replace('"print"', cut))
    inner = found.fabrics[1].chosen.pieces[0]
    assert (inner.width.value, inner.length.value) == by("2 1/8", "33 1/2")


def test_a_lining_may_state_its_own_size_quantity_and_edges() -> None:
    cut = """[
  "print",
  { fabric = "fusible", quantity = 3, length = "25", edges = { bottom = "hem 1" } },
]"""
    found = in_print(LINED + PANEL.replace('"print"', cut).replace("20 1/4", "9 1/4"))
    inner = found.fabrics[1].chosen.pieces[0]
    assert (inner.width.value, inner.length.value) == by("10 1/2", "26 7/8")
    assert inner.quantity == 3


def test_an_entry_of_cut_cannot_state_a_size_that_the_piece_has_not() -> None:
    cut = '[{ fabric = "print", waist = "28" }]'
    (found,) = complaints(HEADING + PANEL.replace('"print"', cut))
    assert "waist is not a size of this piece; state the sizes that the piece has" in found


def test_a_crosswise_piece_lies_with_its_length_across_the_fabric() -> None:
    found = in_print(PANEL + 'grain = "crosswise"\n')
    assert cut_sizes(found)["panel"] == by("27 5/8", "21 1/2")
    assert cut_pieces(found)["panel"].finished == by("26 3/8", "20 1/4")


@pytest.mark.parametrize(
    ("grain", "nap", "may_turn"),
    [("either", "no", True), ("either", "yes", False), ("lengthwise", "no", False),
     ("crosswise", "no", False)],
)  # fmt: skip
def test_a_piece_may_turn_where_both_its_grain_and_the_fabric_allow_it(
    grain: str, nap: str, may_turn: bool
) -> None:
    napped = HEADING + f'nap = "{nap}"\n'
    found = estimate(plan(napped + PANEL + f'grain = "{grain}"\n'))
    assert cut_pieces(found)["panel"].may_turn is may_turn


def test_copies_and_quantity_multiply() -> None:
    found = estimate(
        plan(HEADING.replace('"apron"', '"apron"\ncopies = 3') + PANEL + "quantity = 4\n")
    )
    assert cut_pieces(found)["panel"].quantity == 12


def test_the_working_of_a_cut_size_ends_in_the_cut_size() -> None:
    piece = cut_pieces(in_print(PANEL + 'edges.bottom = "hem 1 1/4"\n'))["panel"]
    assert [step.label for step in piece.length.steps] == [
        "finished length", "top seam allowance", "bottom hem"
    ]  # fmt: skip
    assert piece.length.steps[-1].result == piece.length.value


def test_a_dart_on_the_fold_is_one_on_each_half() -> None:
    front = """
[[piece]]
name = "front"
cut = "print"
width = "10"
length = "15"
edges = { left = "fold" }
takes_up = [{ kind = "dart", depth = "1" }]
"""
    # (10 + 5/8 + 1) x 2
    assert cut_sizes(in_print(front))["front"][0] == length("23 1/4")


def test_interfacing_cut_to_finished_size_has_none_of_the_pleats() -> None:
    panel = """
[[piece]]
name = "panel"
cut = { fabric = "print", cut_to = "finished size" }
width = "10"
length = "15"
takes_up = [{ kind = "knife pleat", depth = "1", count = 3 }]
"""
    assert cut_sizes(in_print(panel))["panel"] == by("10", "15")
