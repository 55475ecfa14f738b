"""Circles seamed from parts where the fabric is too narrow, against outlines drawn in floats."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.measure import INCH
from estimator.reports.fabric_papers import widths_table
from estimator.working import Operation
from estimator.written import length
from tests.needs.capes import cape, cut, pieces
from tests.plans import by, complaints, cut_sizes, needed

MARK = 1 / 16


def drawn(share: float, radius: float, first: float, second: float) -> tuple[float, float]:
    """The box round a sector whose first straight edge lies along the fabric, drawn point by point.

    The straight edges are moved outwards by their allowances, and the hem is carried on square to
    them.
    """
    turn = share * 2 * math.pi
    points = []
    for step in range(2001):
        angle = math.pi / 2 - turn * step / 2000
        points.append((radius * math.cos(angle), radius * math.sin(angle)))
    for angle, out, allowance in (
        (math.pi / 2, math.pi, first),
        (math.pi / 2 - turn, -turn, second),
    ):
        for along in (0.0, radius):
            points.append(
                (
                    along * math.cos(angle) + allowance * math.cos(out),
                    along * math.sin(angle) + allowance * math.sin(out),
                )
            )
    across, up = zip(*points, strict=True)
    return max(across) - min(across), max(up) - min(up)


def test_a_circle_too_wide_for_the_fabric_is_seamed_from_two_halves() -> None:
    # 22 / (2 pi) = 3.501, and 25 in long: the circle is 57.003 in across. Each half takes the seam
    # of its straight edges across and lies along the fabric.
    (half,) = pieces(cape('"45 in"', "22", "25", "1"))
    assert (half.name, half.quantity) == ("cape, half", 2)
    assert (half.width.value, half.length.value) == by("29 3/16", "57 1/16")
    assert half.note == (
        "half a circle, its straight edges along the fabric; cut radii 2 7/8 in and 28 9/16 in; "
        "seamed from 2 halves: the fabric is too narrow for it in one"
    )
    assert half.finished == by("11", "25")


@pytest.mark.parametrize("grain", ["lengthwise", "crosswise", "either"])
@pytest.mark.parametrize("share", ["1", "3/4", "1/2", "1/4"])
@pytest.mark.parametrize("width", ["72 in", "45 in", "40 in"])
def test_the_waist_edges_of_parts_make_the_waist_and_all_are_as_long_whichever_way_they_lie(
    width: str, share: str, grain: str
) -> None:
    parts = pieces(cape(f'"{width}"', "22", "25", share, f'grain = "{grain}"\n'))
    waists = [part.finished[0].ticks * part.quantity for part in parts if part.finished[0]]
    assert 0 <= sum(waists) - length("22").ticks < 4  # each up to a whole tick
    assert {part.finished[1] for part in parts} == {length("25")}


def test_a_circle_that_goes_on_the_fabric_is_cut_in_one() -> None:
    (whole,) = pieces(cape('"60 in"', "22", "25", "1"))
    assert (whole.name, whole.quantity, whole.note) == (
        "cape",
        1,
        "a whole circle; cut radii 2 7/8 in and 28 9/16 in",
    )


def test_three_quarters_are_seamed_from_a_half_and_a_quarter() -> None:
    # 22 / (1.5 pi) = 4.669, and 25 in: 29.669 in, and 5/8 where it is seamed
    half, quarter = pieces(cape('"45 in"', "22", "25", "3/4"))
    assert (half.name, half.quantity) == ("cape, half", 1)
    assert (half.width.value, half.length.value) == by("30 5/16", "59 3/8")
    assert (quarter.name, quarter.quantity) == ("cape, quarter", 1)
    assert (quarter.width.value, quarter.length.value) == by("30 5/16", "30 5/16")
    assert "seamed from a half and a quarter" in quarter.note


def test_half_a_circle_is_seamed_from_two_quarters_and_told_how_it_would_go_in_one() -> None:
    # 22 / pi = 7.003, and 25 in: 32.003 in, and 5/8 on either straight edge
    (quarter,) = pieces(cape('"45 in"', "22", "25", "1/2"))
    assert (quarter.name, quarter.quantity) == ("cape, quarter", 2)
    assert (quarter.width.value, quarter.length.value) == by("32 11/16", "32 11/16")
    assert quarter.note.endswith('; grain = "crosswise" would lay it in one')
    (whole,) = pieces(cape('"45 in"', "22", "25", "1/2", 'grain = "crosswise"'))
    assert (whole.width.value, whole.length.value) == by("32 11/16", "64 1/16")


@pytest.mark.parametrize("grain", ["lengthwise", "crosswise", "either"])
def test_on_a_fabric_with_nap_no_part_may_turn(grain: str) -> None:
    text = cape('"45 in"', "22", "25", "1", f'grain = "{grain}"', 'nap = "yes"')
    (half,) = pieces(text)
    assert (half.name, half.may_turn) == ("cape, half", False)
    assert (half.width.value, half.length.value) == by("29 3/16", "57 1/16")


def test_the_edges_of_the_plan_stay_at_the_ends_and_seams_come_between() -> None:
    # Open in front, hemmed 2 + 1/4: the left and the right half each have one hem and one seam.
    hems = 'edges.left = "hem 2"\nedges.right = "raw"'
    sizes = cut_sizes(cut(cape('"45 in"', "22", "25", "1", hems)))
    assert sizes == {
        "cape, left half": by("30 13/16", "57 1/16"),
        "cape, right half": by("29 3/16", "57 1/16"),
    }


def test_ends_that_are_alike_are_cut_as_one_piece() -> None:
    hems = 'edges.left = "hem 2"\nedges.right = "hem 2"\nseams = "least fabric"'
    # 26 in long: the hem is at 29.501 in, and the halves are 31.752 in across, too wide for 31 in;
    # the quarters take their hem along the fabric and the seam across
    found = pieces(cape('"31 in"', "22", "26", "1", hems))
    assert [(one.name, one.quantity) for one in found] == [
        ("cape, left and right quarter", 2),
        ("cape, inner quarter", 2),
    ]
    assert (found[0].width.value, found[0].length.value) == by("30 3/16", "31 13/16")


def test_each_fabric_is_seamed_as_its_own_width_asks() -> None:
    lining = '[[fabric]]\nname = "lining"\nwidths = ["36 in"]\nselvedge = "0"\n'
    text = cape('"60 in"', "22", "25", "1").replace('cut = "wool"', 'cut = ["wool", "lining"]')
    found = cut(text.replace("[[piece]]", lining + "[[piece]]"))
    names = [[piece.name for piece in choice.chosen.pieces] for choice in found.fabrics]
    assert names == [["cape"], ["cape, half"]]


def test_interfacing_cut_to_the_finished_size_takes_no_seams() -> None:
    text = cape('"45 in"', "22", "25", "1").replace(
        'cut = "wool"', 'cut = { fabric = "wool", cut_to = "finished size" }'
    )
    (half,) = pieces(text)
    assert (half.width.value, half.length.value) == by("28 9/16", "57 1/16")


def test_seams_leave_the_waist_the_hem_and_what_follows_them_as_they_are() -> None:
    lace = '[[trim]]\nname = "lace"\nalong = "cape: bottom"\nends = "raw"\nwaste = 0\n'
    wide, narrow = (cut(cape(f'"{width} in"', "22", "25", "1", lace)) for width in (60, 45))
    assert needed(wide, "lace") == needed(narrow, "lace")


def test_a_circle_without_seams_is_only_cut_from_fabric_that_takes_it() -> None:
    found = cut(cape('"45 in", "60 in"', "22", "25", "1", 'seams = "none"')).fabrics[0]
    assert found.chosen.width == length("60")
    assert [one.width for one in found.unfit] == [length("45")]


def test_a_refused_circle_says_what_a_seam_would_do() -> None:
    (said,) = complaints(cape('"45 in"', "22", "25", "1", 'seams = "none"'))
    assert said.endswith(
        "'cape' is cut 57 1/16 in wide, and the widest 'wool' on offer (45 in) has 45 in to use; "
        'take a fabric with at least 57 1/16 in to use, or leave seams = "none" out: seamed from '
        "2 halves, it takes 29 3/16 in"
    )


def test_a_circle_too_wide_even_in_parts_says_how_wide_they_are() -> None:
    (said,) = complaints(cape('"27 in"', "22", "25", "1"))
    assert said.endswith(
        "'cape, half' is cut 29 3/16 in wide, and the widest 'wool' on offer (27 in) has 27 in to "
        'use; take a fabric with at least 29 3/16 in to use, or cut it in gores (shape = "taper")'
    )


def test_seams_may_be_taken_where_they_save_fabric() -> None:
    # 59 3/8 in square in one; seamed, the half and the quarter stand side by side on 62 in, and
    # the panel of 30 by 28 goes above the quarter
    panel = '[[piece]]\nname = "panel"\ncut = "wool"\nwidth = "28 3/4"\nlength = "26 3/4"\n'
    text = cape('"62 in"', "22", "25", "3/4", "{seams}\n" + panel)
    assert (
        cut(text.replace("{seams}", "")).fabrics[0].chosen.laid.cuts[0].length > length("87").ticks
    )
    saved = cut(text.replace("{seams}", 'seams = "least fabric"')).fabrics[0].chosen
    assert saved.laid.cuts[0].length == length("59 3/8").ticks
    notes = {piece.name: piece.note for piece in saved.pieces}
    assert notes["cape, quarter"] == (
        "a quarter of a circle; cut radii 4 in and 29 11/16 in; seamed from a half and a quarter, "
        "which buys less"
    )


def test_a_circle_keeps_in_one_where_seams_save_nothing() -> None:
    (whole,) = pieces(cape('"60 in"', "22", "25", "1", 'seams = "least fabric"'))
    assert whole.name == "cape"


def test_the_widths_compared_say_on_which_the_circle_is_seamed() -> None:
    found = cut(cape('"45 in", "60 in"', "22", "25", "1"))
    said = {row[1]: str(row[-1]) for row in widths_table(found.fabrics[0], found).rows}
    assert "cape seamed from 2 halves" in said["45 in"]
    assert "seamed" not in said["60 in"]


def test_seams_are_for_circles_only() -> None:
    text = cape('"45 in"', "22", "25", "1", 'seams = "none"').replace('"sector"', '"box"')
    (said,) = complaints(text.replace('waist = "22"', 'width = "22"').replace('share = "1"', ""))
    assert "seams goes with shape = 'sector'; leave seams out" in said


@settings(max_examples=150)
@given(
    waist=st.integers(40, 400), long=st.integers(40, 400), share=st.sampled_from([1, 2, 3, 4]),
    width=st.integers(30, 700), left=st.integers(0, 20), right=st.integers(0, 20),
)  # fmt: skip
def test_every_part_lies_in_a_box_that_its_outline_fills(
    waist: int, long: int, share: int, width: int, left: int, right: int
) -> None:
    # Tenths of an inch; the share in quarters. Allowances between parts are 5/8 in.
    radius = waist / 10 / (2 * math.pi * share / 4) + long / 10
    own = f'edges.left = "seam {left / 10}"\nedges.right = "seam {right / 10}"\nseams = '
    of_circle = ["1/4", "1/2", "3/4", "1"][share - 1]
    fabric = f'"{width / 10} in"'
    own += '"as needed"\nedges.top = "raw"'
    text = cape(fabric, f"{waist / 10}", f"{long / 10}", of_circle, own)
    if complaints(text):
        quarter = radius + max(min(left / 10, 0.625), min(right / 10, 0.625))
        if share == 1:
            quarter = radius + min(left, right) / 10
        assert quarter + MARK > width / 10
        return
    found = pieces(text)
    if len(found) == 1 and not found[0].seamed:
        return
    quarters = 0
    for piece in found:
        size = piece.width.value.ticks / INCH.ticks, piece.length.value.ticks / INCH.ticks
        part = 0.25 if "quarter" in piece.name else 0.5
        quarters += piece.quantity * round(part * 4)
        fills = [
            drawn(part, radius, *ends)
            for a in (left / 10, 0.625, right / 10)
            for b in (left / 10, 0.625, right / 10)
            for ends in ((a, b), (b, a))
        ]
        assert any(
            all(
                0 <= got - least + 1e-6 <= MARK + 1e-5 for got, least in zip(size, box, strict=True)
            )
            for box in fills
        )
        assert size[0] <= width / 10 + 1e-9
    assert quarters == share


def test_the_working_of_a_part_shows_its_waist_and_its_seam() -> None:
    (half,) = pieces(cape('"45 in"', "22", "25", "1"))
    labels = [step.label for step in half.width.steps]
    assert labels == [
        "waist radius, waist / (2 π × share)",
        "finished length",
        "straight edge's seam allowance",
        "up to the mark of the tape",
    ]
    for before, step in pairwise(half.width.steps):
        if step.operation is Operation.ADD:
            assert step.result.ticks >= before.result.ticks + step.operand.ticks - 1
