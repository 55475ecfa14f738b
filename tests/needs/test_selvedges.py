"""Pieces whose edge is the fabric's own: where they lie, what they take, and what cannot be."""

from __future__ import annotations

import pytest

from estimator import Estimate, estimate
from estimator.buying.one_width import WidthOption
from estimator.layout import Held
from estimator.reports.assumptions import assumptions
from estimator.written import length
from tests.plans import complaints, plan

# 45 in with a selvedge of 1/2 in on each side: 44 to use.
CLOTH = """
[garment]
name = "Ticket seller's overall"
unit = "in"
[[fabric]]
name = "drill"
{fabric}
"""
PIECE = """
[[piece]]
name = "{name}"
quantity = {quantity}
cut = "drill"
sizes = "cut"
width = "{width}"
length = "{long}"
"""


def text(*pieces: str, fabric: str = 'widths = ["45 in"]\nselvedge = "1/2"') -> str:
    return CLOTH.replace("{fabric}", fabric) + "".join(pieces)


def piece(name: str, quantity: int, width: str, long: str, more: str) -> str:
    return PIECE.format(name=name, quantity=quantity, width=width, long=long) + more


def made(*pieces: str, fabric: str = 'widths = ["45 in"]\nselvedge = "1/2"') -> Estimate:
    return estimate(plan(text(*pieces, fabric=fabric)))


def option(found: Estimate) -> WidthOption:
    return found.fabrics[0].chosen


def test_two_bands_on_the_selvedges_leave_the_middle_to_a_panel() -> None:
    # 45 in from edge to edge: bands of 5 in lie on 1/2 in of selvedge each, 35 in are left between
    found = option(
        made(
            piece("band", 2, "5", "60", 'edges.left = "selvedge"\n'),
            piece("panel", 1, "35", "60", ""),
        )
    )
    assert found.laid.cuts[0].length == length("60").ticks
    band = next(lot for lot in found.laid.lots if lot.name == "band")
    assert (band.blank.width, band.blank.held) == (length("4 1/2").ticks, Held.EITHER)


def test_a_panel_a_thread_wider_than_what_is_left_between_goes_below_them() -> None:
    found = option(
        made(
            piece("band", 2, "5", "60", 'edges.left = "selvedge"\n'),
            piece("panel", 1, "35 1/16", "60", ""),
        )
    )
    assert found.laid.cuts[0].length == length("120").ticks


def test_on_nap_the_left_edge_lies_at_the_near_selvedge_and_the_right_at_the_far_one() -> None:
    cloth = 'widths = ["45 in"]\nselvedge = "1/2"\nnap = true'
    found = option(
        made(
            piece("left front", 1, "20", "30", 'edges.left = "selvedge"\n'),
            piece("right front", 1, "20", "30", 'edges.right = "selvedge"\n'),
            fabric=cloth,
        )
    )
    assert [lot.blank.held for lot in found.laid.lots] == [Held.NEAR, Held.FAR]
    assert found.laid.cuts[0].length == length("30").ticks


@pytest.mark.parametrize("repeat", ['repeat = "7"', 'repeat_across = "7"'])
def test_what_is_matched_keeps_to_its_own_selvedge_and_is_not_turned_end_for_end(
    repeat: str,
) -> None:
    # at the other selvedge, and on its head, the print would meet its edges at other places
    cloth = f'widths = ["45 in"]\nselvedge = "1/2"\n{repeat}'
    found = made(
        piece("band", 2, "5", "60", 'edges.left = "selvedge"\n'),
        piece("panel", 1, "35", "60", ""),
        fabric=cloth,
    )
    chosen = option(found)
    band = next(lot for lot in chosen.laid.lots if lot.name == "band")
    assert band.blank.held is Held.NEAR
    told = "but for those on the selvedge, which lie where that is"
    assert any(told in line for line in assumptions(found)) == ("across" in repeat)


def test_a_band_cut_crosswise_has_its_top_on_the_selvedge() -> None:
    found = option(
        made(piece("frill", 1, "60", "8", 'grain = "crosswise"\nedges.bottom = "selvedge"\n'))
    )
    (frill,) = found.pieces
    assert (frill.width.value, frill.length.value) == (length("8"), length("60"))
    assert frill.selvedges == ("right",)


def test_widths_joined_by_their_selvedges_are_as_wide_as_the_fabric() -> None:
    # two panels of 45 in, each join takes 5/8 in twice: 2 x 45 - 2 x 1 1/4 = 87 1/2 in round
    ring = (
        '[[piece]]\nname = "skirt"\ncut = "drill"\nmade = "joined strip"\nwidths = 2\n'
        'length = "30"\nedges = { left = "selvedge", right = "selvedge" }\n'
    )
    found = option(made(ring))
    (skirt,) = found.pieces
    assert skirt.width.value == length("45")
    assert skirt.finished[0] == length("87 1/2")
    assert found.laid.cuts[0].length == 2 * length("31 1/4").ticks


def skirt(ring: str) -> str:
    return (
        '[[piece]]\nname = "skirt"\ncut = "drill"\nmade = "joined strip"\nlength = "30"\n'
        f'ring = "{ring}"\nedges = {{ left = "selvedge", right = "selvedge" }}\n'
    )


@pytest.mark.parametrize(
    ("ring", "last", "kept"),
    [
        # two joins take 2 1/2 in, and the first width 45: 45 of 87 1/2 in are left, and so on
        ("87", "44 1/2", ("left",)),  # as wide as the cloth to use and one selvedge
        ("87 1/16", "45", ("left", "right")),
        ("87 1/4", "45", ("left", "right")),
        ("87 1/2", "45", ("left", "right")),  # two whole widths, and nothing over
    ],
)
def test_a_last_width_too_wide_for_one_selvedge_keeps_both(
    ring: str, last: str, kept: tuple[str, ...]
) -> None:
    found = option(made(skirt(ring)))
    whole, end = found.pieces
    assert (whole.width.value, whole.selvedges) == (length("45"), ("left", "right"))
    assert (end.width.value, end.selvedges) == (length(last), kept)
    assert end.finished[0] == length(ring)


def test_what_a_last_width_left_whole_has_over_goes_into_its_joins() -> None:
    # 87 1/4 + 2 1/2 - 45 = 44 3/4 in of 45; of one width alone 43 1/2 + 1 1/4 = 44 3/4 as well
    for ring, told in (("87 1/4", "2 widths joined, the last "), ("43 1/2", "in one width, ")):
        end = option(made(skirt(ring))).pieces[-1]
        assert end.note == f"{told}left whole: 1/4 in more in the joins"
    assert "left whole" not in option(made(skirt("87 1/2"))).pieces[-1].note


def test_a_fabric_measured_narrower_has_no_more_selvedge_than_that_leaves() -> None:
    cloth = 'widths = [{ width = "45 in", usable = "44 1/2" }]\nselvedge = "1/2"'
    found = option(made(piece("band", 1, "5", "30", 'edges.left = "selvedge"\n'), fabric=cloth))
    assert found.breadth.selvedge == length("1/4")


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (
            'edges.bottom = "selvedge"\n',
            "its bottom edge lies across the fabric, and a selvedge runs along it; "
            'write grain = "crosswise", or seam for this edge',
        ),
        (
            'grain = "crosswise"\nedges.left = "selvedge"\n',
            "its left edge lies across the fabric, and a selvedge runs along it; "
            'write grain = "lengthwise", or seam for this edge',
        ),
        (
            'edges.neckline = { length = "9", finish = "selvedge" }\n',
            "its edge 'neckline' is on the selvedge, and where it lies is not known; "
            "put the selvedge on a side (top, bottom, left, right), or write another finish",
        ),
        (
            'edges.left = "selvedge"\nedges.top = "selvedge"\n',
            "its left and its top edge are both on the selvedge, and they meet; "
            "keep the selvedge on one of them",
        ),
        (
            'edges.left = "selvedge"\nedges.right = "selvedge"\n',
            "'pocket' has both its sides on the selvedge and is cut 20 in wide; 'drill' "
            "45 in wide is 45 in from edge to edge; give one of its sides a seam, or make it as "
            'wide as the fabric (made = "joined strip", widths = 1)',
        ),
    ],
)
def test_edges_that_cannot_be_on_the_selvedge_are_refused(more: str, told: str) -> None:
    (found,) = complaints(text(piece("pocket", 1, "20", "10", more)))
    assert told in found


def sector(share: str, more: str) -> str:
    return (
        '[[piece]]\nname = "cape"\ncut = "drill"\nshape = "sector"\nwaist = "12"\nlength = "12"\n'
        f'share = "{share}"\n{more}\n'
    )


BOTH_SIDES = 'edges = { left = "selvedge", right = "selvedge" }'


@pytest.mark.parametrize("grain", ["lengthwise", "crosswise", "either"])
def test_a_quarter_of_a_circle_lies_with_one_straight_edge_on_the_selvedge(grain: str) -> None:
    # 12 / (pi / 2) + 12 + 5/8 = 20.265 in, and 5/8 more for the edge that lies across
    found = option(made(sector("1/4", f'edges.right = "selvedge"\ngrain = "{grain}"')))
    (lot,), (cape,) = found.laid.lots, found.pieces
    assert (cape.selvedges, lot.blank.held, lot.blank.may_turn) == (("left",), Held.EITHER, False)
    assert (cape.width.value, cape.length.value) == (length("20 5/16"), length("20 15/16"))


@pytest.mark.parametrize("grain", ["crosswise", "either"])
def test_half_a_circle_lies_with_both_straight_edges_on_the_selvedge(grain: str) -> None:
    found = option(made(sector("1/2", f'{BOTH_SIDES}\ngrain = "{grain}"')))
    assert found.pieces[0].selvedges == ("left",)
    assert found.laid.lots[0].blank.held is Held.EITHER


@pytest.mark.parametrize(
    ("share", "more", "told"),
    [
        (
            "1/4",
            'edges.bottom = "selvedge"',
            "its bottom edge is round, and a selvedge is straight; write another finish for this "
            "edge",
        ),
        (
            "1/4",
            BOTH_SIDES,
            "its straight edges are both on the selvedge, and they meet; keep the selvedge on one "
            "of them",
        ),
        (
            "1/2",
            'edges.left = "selvedge"',
            "its left edge is on the selvedge, and half a circle has its other straight edge in "
            "one line with that; put both edges on the selvedge, or neither",
        ),
        (
            "1/2",
            BOTH_SIDES,
            "its straight edges lie across the fabric, and a selvedge runs along it; "
            'write grain = "crosswise", or seam for these edges',
        ),
        (
            "3/4",
            'edges.right = "selvedge"',
            "its right edge is on the selvedge, and three quarters of a circle reaches beyond it; "
            "write seam for this edge, or plan quarters, each with one edge on the selvedge",
        ),
        (
            "1",
            BOTH_SIDES,
            "its left edge is on the selvedge, and a whole circle reaches beyond it; "
            "write seam for this edge, or plan quarters, each with one edge on the selvedge",
        ),
    ],
)
def test_parts_of_circles_that_cannot_be_on_the_selvedge_are_refused(
    share: str, more: str, told: str
) -> None:
    (found,) = complaints(text(sector(share, more)))
    assert told in found


def test_a_bias_strip_has_no_edge_on_the_selvedge() -> None:
    strip = '[[piece]]\nname = "binding"\ncut = "drill"\nmade = "bias strip"\nwidth = "2"\n'
    (found,) = complaints(text(strip + 'length = "60"\nedges.left = "selvedge"\n'))
    assert (
        "a bias strip lies at 45°, and its left edge on the selvedge, which runs along the grain; "
        "leave this edge out"
    ) in found
