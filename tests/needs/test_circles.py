"""Circles and parts of circles, by the box round them, against trigonometry in floats."""

import math
import re

import pytest

from estimator import estimate
from estimator.edges import EdgeRef
from estimator.measure import INCH, Length
from estimator.needs.edge_lengths import EdgeLengths
from estimator.written import length
from tests.plans import HEADING, by, complaints, cut_size, in_print, order, plan

MARK = 1 / 16


def sector(waist: str, long: str, share: str, more: str = "") -> str:
    return (
        f'[[piece]]\nname = "skirt"\ncut = "print"\nshape = "sector"\nwaist = "{waist}"\n'
        f'length = "{long}"\nshare = "{share}"\n{more}'
    )


def in_inches(text: str) -> tuple[float, float]:
    width, long = cut_size(text)
    return width.ticks / INCH.ticks, long.ticks / INCH.ticks


def edge(text: str, piece: str, name: str) -> Length:
    return EdgeLengths(order(HEADING + text), {}).one(EdgeRef(piece, name))


@pytest.mark.parametrize(
    ("share", "across", "along"),
    [
        # In radii r = waist / (2 pi share) + length + hem, and straight seams of 5/8 in.
        ("1", 2.0, 2.0),
        ("3/4", 2.0, 2.0),
        ("1/2", 2.0, 1.0),
        ("1/4", 1.0, 1.0),
    ],
)
def test_a_circle_skirt_lies_in_the_box_round_it(share: str, across: float, along: float) -> None:
    waist, long = 13.5, 7.25
    parts = {"1": 1.0, "3/4": 0.75, "1/2": 0.5, "1/4": 0.25}[share]
    radius = waist / (2 * math.pi * parts) + long + 2 * 0.125
    width, cut_long = in_inches(sector("13 1/2", "7 1/4", share, 'edges.bottom = "rolled hem"\n'))
    seam_across, seam_along = (across == 1) * 0.625, (along == 1) * 0.625
    assert width == pytest.approx(across * radius + seam_across, abs=MARK)
    assert cut_long == pytest.approx(along * radius + seam_along, abs=MARK)
    assert width >= across * radius + seam_across - 1e-9
    assert cut_long >= along * radius + seam_along - 1e-9


def test_the_hem_of_a_circle_skirt_is_the_arc_of_its_outer_radius() -> None:
    # Waist 27 in, half a circle, 20 in long: 27 + pi x 20.
    hem = edge(sector("27", "20", "1/2"), "skirt", "bottom")
    assert hem.ticks / INCH.ticks == pytest.approx(27 + math.pi * 20, abs=1e-5)
    assert edge(sector("27", "20", "1/2"), "skirt", "top") == length("27 in")
    assert edge(sector("27", "20", "1/2"), "skirt", "left") == length("20 in")


@pytest.mark.parametrize(
    ("edges", "taken"),
    [
        ("", 0),  # a circle without a word of its sides has no slit
        ('edges.left = "faced"\nedges.right = "faced"\n', 1.25),
        ('edges.left = "hem 1"\nedges.right = "hem 1"\n', 2.5),  # each 1 in and 1/4 in
        ('edges.left = "hem 1"\n', 1.875),  # the other side is a seam of 5/8 in
        ('edges.left = "raw"\nedges.right = "raw"\n', 0),
        ('[[seam]]\nedges = ["skirt: left", "skirt: right"]\nallowance = "1"\n', 2),
        ('[[seam]]\nedges = ["skirt: left", "skirt: right"]\n', 1.25),
    ],
)
def test_what_the_sides_of_a_slit_take_is_cut_onto_a_whole_circle(edges: str, taken: float) -> None:
    # The round at any radius r is 2 pi r, less what both sides of the slit take: for a waist of
    # 28 in the radius is (28 + taken) / 2 pi, and 12 in and a seam lie beyond it.
    width, cut_long = (size.ticks / INCH.ticks for size in cut_size(sector("28", "12", "1", edges)))
    exact = 2 * ((28 + taken) / (2 * math.pi) + 12.625)
    assert width == cut_long == pytest.approx(exact, abs=MARK)
    assert width >= exact - 1e-9


def test_a_waist_smaller_than_its_allowance_is_refused() -> None:
    # A whole circle with a 3 in waist has a radius under 1/2 in.
    (found,) = complaints(HEADING + sector("3", "7", "1"))
    assert "the allowance at the waist is wider than its radius; give a larger waist" in found


def test_a_quarter_lies_with_its_shallower_allowance_across_the_fabric() -> None:
    # Waist 11 in: radius 11 x 2 / pi = 7.003, and 20 5/8 in to the hem: 27.628 in. The hem of the
    # open edge takes 1 + 1/4 along, the seam 5/8 across.
    size = cut_size(sector("11", "20", "1/4", 'edges.left = "hem 1"\n'))
    assert size == by("28 5/16", "28 15/16")


def test_half_a_circle_makes_room_for_the_deeper_of_its_straight_edges() -> None:
    # Waist 22 in: radius 22 / pi = 7.003, so the hem is at 27.628 in.
    size = cut_size(sector("22", "20", "1/2", 'edges.left = "hem 1"\ngrain = "crosswise"\n'))
    assert size == by("28 15/16", "55 5/16")


def chalked(text: str, waist: float, long: float, hem: float, parts: float) -> None:
    """The radii of a note against those that trigonometry in floats gives."""
    ((piece,),) = (fabric.chosen.pieces for fabric in in_print(text).fabrics)
    told = re.search(r"cut radii (.+? in) and (.+? in)", piece.note)
    assert told is not None
    inner, outer = (length(one).ticks / INCH.ticks for one in told.groups())
    radius = waist / (2 * math.pi * parts)
    assert radius - 5 / 8 - MARK < inner <= radius - 5 / 8
    assert radius + long + hem <= outer < radius + long + hem + MARK


@pytest.mark.parametrize(("share", "parts"), [("1", 1), ("3/4", 0.75), ("1/2", 0.5), ("1/4", 0.25)])
def test_a_part_of_a_circle_tells_the_radii_to_chalk_it_by(share: str, parts: float) -> None:
    hemmed = 'seams = "none"\nedges.bottom = "hem 1"\n'
    chalked(sector("13 1/2", "7 1/4", share, hemmed), 13.5, 7.25, 1.25, parts)


def test_a_seamed_circle_tells_the_radii_of_its_halves() -> None:
    seamed = sector("22", "25", "1", 'edges.bottom = "raw"\n')
    chalked(seamed, 22, 25, 0, 1)
    assert "seamed from 2 halves" in in_print(seamed).fabrics[0].chosen.pieces[0].note


def test_the_radii_of_a_circle_on_a_finer_mark_are_never_printed_small() -> None:
    # 22 / pi = 7.0028 less 5/8 is 6.378, and 25 in more is 32.003: on marks of 1/32 these are
    # 6 3/8 and 32 1/32, which a tape in sixteenths reads as more than 32
    in_one = 'edges.bottom = "raw"\ngrain = "either"\n'
    fine = HEADING.replace('name = "apron"', 'name = "apron"\nmark = "1/32"')
    found = estimate(plan(fine + sector("22", "25", "1/2", in_one)))
    assert "cut radii 6 3/8 in and 32 1/16 in" in found.fabrics[0].chosen.pieces[0].note


@pytest.mark.parametrize(("share", "seams"), [("1/4", 0.625), ("1/2", 0.625), ("3/4", 0), ("1", 0)])
def test_a_godet_comes_to_a_point(share: str, seams: float) -> None:
    # Its radius is its length of 12 in, and there is no waist to take an allowance off it.
    godet = sector("0", "12", share, 'edges.bottom = "raw"\n')
    ways = 1 if share == "1/4" else 2
    along = 1 if share in ("1/4", "1/2") else 2
    assert in_inches(godet) == (12 * ways + (seams if ways == 1 else 0), 12 * along + seams)
    (piece,) = in_print(godet).fabrics[0].chosen.pieces
    assert "; cut radius 12 in" in piece.note
    # its hem is 2 pi x 12 x share
    around = edge(godet, "skirt", "bottom").ticks / INCH.ticks
    parts = {"1/4": 0.25, "1/2": 0.5, "3/4": 0.75, "1": 1.0}[share]
    assert around == pytest.approx(2 * math.pi * 12 * parts, abs=1e-5)


def test_nothing_is_sewn_along_the_point_of_a_godet() -> None:
    trim = '[[trim]]\nname = "braid"\nalong = "skirt: top"\n'
    (told,) = complaints(HEADING + sector("0", "12", "1/4") + trim)
    assert told.endswith(
        "'skirt' comes to a point at its top, and has no edge there; name another of its edges"
    )


def test_a_waist_narrower_than_its_seam_says_how_it_may_be_planned() -> None:
    (found,) = complaints(HEADING + sector("1/4", "12", "1/4"))
    assert 'edges = { top = "raw" } for one without an allowance, or waist = "0"' in found
    bare = sector("1/4", "12", "1/4", 'edges = { top = "raw" }\n')
    assert in_inches(bare)[0] > 12


@pytest.mark.parametrize(
    ("share", "right"),
    [
        ("1/4", 'plan the whole, share = "1/2" with twice the waist, without the fold: it is laid '
         "on the fold by itself where the fabric is folded"),
        ("1/2", 'plan the whole, share = "1" with twice the waist, without the fold: it is laid '
         "on the fold by itself where the fabric is folded"),
        ("3/4", "leave the fold out: three quarters of a circle are cut in one, or seamed"),
        ("1", "leave the fold out: a whole circle is laid on the fold by itself where the fabric "
         "is folded"),
    ],
)  # fmt: skip
def test_half_of_a_part_of_a_circle_is_planned_whole(share: str, right: str) -> None:
    (found,) = complaints(HEADING + sector("9", "7", share, 'edges = { left = "fold" }\n'))
    assert found.endswith(f"this piece cannot lie on a fold; {right}")


@pytest.mark.parametrize("share", ["1/2", "1"])
def test_the_whole_of_a_circle_lies_on_the_fold_by_itself(share: str) -> None:
    folded = HEADING.replace('selvedge = "0"', 'selvedge = "0"\nlaid = "folded"')
    found = estimate(plan(folded + sector("9", "7", share)))
    assert found.fabrics[0].chosen.pieces[0].folds
    assert [lot.half for lot in found.fabrics[0].chosen.laid.lots] == [True]
