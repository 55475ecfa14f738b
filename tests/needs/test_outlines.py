"""Tapered pieces and boxes, against trigonometry in floats."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.edges import EdgeRef
from estimator.measure import INCH, Length
from estimator.needs.edge_lengths import EdgeLengths
from estimator.written import length
from tests.plans import HEADING, by, complaints, cut_pieces, cut_size, in_print, needed, order

MARK = 1 / 16


def gore(top: str, bottom: str, long: str, more: str = "") -> str:
    return (
        f'[[piece]]\nname = "gore"\ncut = "print"\nshape = "taper"\ntop = "{top}"\n'
        f'bottom = "{bottom}"\nlength = "{long}"\n{more}'
    )


def in_inches(text: str) -> tuple[float, float]:
    width, long = cut_size(text)
    return width.ticks / INCH.ticks, long.ticks / INCH.ticks


def test_a_slanted_seam_widens_a_gore_by_the_allowance_over_the_cosine() -> None:
    # From 6 to 14 in over 3 in each side leans 4 over 3, cos = 3/5: 5/8 / (3/5) = 1 1/24 a side.
    # The bottom seam carries the taper on: 8 x 5/8 / 3 = 1 2/3. 14 + 1 2/3 + 2 1/12 = 17 3/4.
    assert cut_size(gore("6", "14", "3")) == by("17 3/4", "4 1/4")


def test_a_gore_without_a_slant_is_a_rectangle() -> None:
    assert cut_size(gore("9 1/4", "9 1/4", "20 3/8")) == by("10 1/2", "21 5/8")


def test_a_gore_may_be_wider_at_the_top() -> None:
    upright = cut_size(gore("6", "14", "30 3/8"))
    assert cut_size(gore("14", "6", "30 3/8")) == upright


@given(
    top=st.integers(4, 100), spread=st.integers(0, 120), long=st.integers(80, 200),
    hem=st.integers(1, 12),
)  # fmt: skip
def test_a_gore_holds_its_allowances_and_no_more_than_a_mark_above(
    top: int, spread: int, long: int, hem: int
) -> None:
    # Eighths of an inch; the panel's top and sides are 5/8 in seams, its hem has 1/4 turned under.
    bottom = top + spread
    width, cut_long = in_inches(
        gore(f"{top}/8", f"{bottom}/8", f"{long}/8", f'edges.bottom = "hem {hem}/8"\n')
    )
    slant = math.atan2(spread / 16, long / 8)
    exact = bottom / 8 + (hem / 8 + 0.25) * 2 * math.tan(slant) + 2 * 0.625 / math.cos(slant)
    assert -1e-9 <= width - exact < MARK + 1e-9
    assert cut_long == pytest.approx(long / 8 + 0.625 + hem / 8 + 0.25, abs=MARK)


def test_a_gore_on_the_fold_is_given_by_its_half() -> None:
    # Half goes from 5 to 9 in, the whole from 10 to 18, and only one side of the half has a seam.
    whole = cut_size(gore("10", "18", "24 1/2"))
    found = in_print(gore("5", "9", "24 1/2", 'edges.left = "fold"\n'))
    piece = cut_pieces(found)["gore"]
    assert (piece.width.value, piece.length.value) == whole
    assert piece.finished == by("18", "24 1/2")


def test_the_hem_of_a_gore_on_the_fold_is_that_of_the_whole() -> None:
    half = gore("5", "9", "24 1/2", 'edges.left = "fold"\n')
    assert edge(half, "gore", "bottom") == length("18 in")
    assert edge(half, "gore", "top") == length("10 in")


def test_a_gore_cannot_lie_on_the_fold_by_its_top() -> None:
    (found,) = complaints(HEADING + gore("5", "9", "24", 'edges.top = "fold"\n'))
    assert "a taper lies on the fold by a side; put left or right on the fold" in found


def test_the_slanted_side_of_a_gore_is_longer_than_its_height() -> None:
    # Leaning 4 in over 3: the side is 5 in.
    assert edge(gore("6", "14", "3"), "gore", "left") == length("5 in")
    assert edge(gore("6", "14", "3"), "gore", "bottom") == length("14 in")


def edge(text: str, piece: str, name: str) -> Length:
    return EdgeLengths(order(HEADING + text), {}).one(EdgeRef(piece, name))


def test_a_square_side_takes_its_plain_allowance_and_the_slanted_one_the_cosine() -> None:
    # From 6 to 10 in over 3 in, all on one side: leaning 4 over 3, cos = 3/5. The bottom seam
    # carries the taper on by 4 x 5/8 / 3 = 5/6; the slant takes 5/8 / (3/5) = 1 1/24, the square
    # side 5/8: 10 + 5/6 + 1 1/24 + 5/8 = 12 1/2. The top seam takes 5/6 off:
    # 6 - 5/6 + 1 1/24 + 5/8 = 6 5/6.
    for side, square in (("right", "left"), ("left", "right")):
        found = cut_pieces(in_print(gore("6", "10", "3", f'slant = "{side} side"\n')))["gore"]
        assert (found.width.value, found.length.value) == by("12 1/2", "4 1/4")
        assert found.narrow == length("6 7/8")
        assert found.note == f"tapered, its {square} side square; cut 6 7/8 in at its narrow end"


def test_each_side_of_a_gore_takes_the_allowance_of_its_own_edge() -> None:
    # The square side hemmed 1 + 1/4 deep: 10 + 5/6 + 1 1/24 + 1 1/4 = 13 1/8. The slanted one:
    # 10 + 5/6 + 5/8 + 1 1/4 / (3/5) = 13 13/24.
    square = gore("6", "10", "3", 'slant = "right side"\nedges.left = "hem 1"\n')
    slanted = gore("6", "10", "3", 'slant = "right side"\nedges.right = "hem 1"\n')
    assert cut_size(square) == by("13 1/8", "4 1/4")
    assert cut_size(slanted) == by("13 9/16", "4 1/4")


def test_a_square_side_is_as_long_as_the_gore_and_the_slanted_one_longer() -> None:
    # All of the spread on one side: leaning 4 in over 3, it is 5 in long.
    text = gore("6", "10", "3", 'slant = "left side"\n')
    assert edge(text, "gore", "left") == length("5 in")
    assert edge(text, "gore", "right") == length("3 in")


def test_a_gore_on_the_fold_has_its_whole_slant_on_the_other_side() -> None:
    # Half goes from 5 to 9 in, leaning 4 in over 3, whether or not the plan says which side slants.
    half = gore("5", "9", "3", 'edges.left = "fold"\n')
    said = gore("5", "9", "3", 'edges.left = "fold"\nslant = "right side"\n')
    assert edge(half, "gore", "right") == edge(said, "gore", "right") == length("5 in")
    assert edge(half, "gore", "left") == length("3 in")
    assert cut_size(half) == cut_size(said)


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ('edges.left = "fold"\nslant = "left side"\n', "the left side slants, and a fold is "
         'straight; write slant = "right side", or another finish for the left edge'),
        ('edges.right = "selvedge"\n', "the right side slants, and a selvedge is straight; "
         'write slant = "left side", or another finish for the right edge'),
    ],
)  # fmt: skip
def test_a_slanted_side_is_no_straight_edge_of_the_fabric(more: str, told: str) -> None:
    (found,) = complaints(HEADING + gore("5", "9", "24", more))
    assert found.endswith(told)


def test_a_square_side_may_be_the_selvedge() -> None:
    # From 6 to 10 over 3, and nothing for the selvedge: 10 + 5/6 + 1 1/24 = 11 7/8
    text = gore("6", "10", "3", 'slant = "right side"\nedges.left = "selvedge"\n')
    assert cut_size(text) == by("11 7/8", "4 1/4")


def test_slant_is_for_tapers_only() -> None:
    box = 'shape = "box"\nwidth = "14 3/4"\nlength = "23"\nslant = "left side"\n'
    (found,) = complaints(f'{HEADING}[[piece]]\nname = "sleeve"\ncut = "print"\n{box}')
    assert "slant goes with shape = 'taper'; leave slant out" in found


def test_a_box_is_a_rectangle_drawn_round_a_shape() -> None:
    size = 'shape = "box"\nwidth = "14 3/4"\nlength = "23"\n'
    found = in_print(f'[[piece]]\nname = "sleeve"\ncut = "print"\n{size}')
    piece = cut_pieces(found)["sleeve"]
    assert (piece.width.value, piece.length.value) == by("16", "24 1/4")
    assert piece.boxed
    assert found.fabrics[0].chosen.boxed


def test_tapers_and_circles_are_given_finished() -> None:
    (found,) = complaints(HEADING + gore("5", "9", "24", 'sizes = "cut"\n'))
    assert "a taper is given finished, so that its slant can be reckoned" in found


@pytest.mark.parametrize(("top", "bottom"), [("0", "6"), ("6", "0")])
def test_a_gusset_is_cut_at_its_point_as_wide_as_its_side_seams(top: str, bottom: str) -> None:
    # 3 in each side leans over 4: cos = 4/5. Two seams of 5/8 in over it are 1 9/16 in; at the
    # wide end 6 in more.
    gusset = gore(top, bottom, "4", 'edges = { top = "raw", bottom = "raw" }\n')
    assert cut_size(gusset) == by("7 9/16", "4")
    (piece,) = in_print(gusset).fabrics[0].chosen.pieces
    assert "cut 1 9/16 in at its narrow end" in piece.note


def test_a_gusset_without_allowances_comes_to_a_point_in_the_cloth() -> None:
    edges = ", ".join(f'{side} = "raw"' for side in ("top", "bottom", "left", "right"))
    (piece,) = in_print(gore("0", "6", "4", f"edges = {{ {edges} }}\n")).fabrics[0].chosen.pieces
    assert piece.narrow == length("0 in")


def test_a_taper_has_a_width_at_one_end_at_least() -> None:
    (told,) = complaints(HEADING + gore("0", "0", "4"))
    assert told.endswith(
        "this taper comes to a point at both ends; write a top or a bottom of more than zero"
    )


def test_the_point_of_a_gusset_is_no_edge_and_takes_no_thread() -> None:
    thread = '[[thread]]\nname = "thread"\nwaste = 0\nsold = [{ put_up = "spool of 250 yd" }]\n'
    trim = '[[trim]]\nname = "braid"\nalong = "gore: bottom"\n'
    (found,) = complaints(HEADING + gore("6", "0", "4") + trim)
    assert "'gore' comes to a point at its bottom, and has no edge there" in found
    sewn = needed(in_print(gore("6", "0", "4") + thread), "thread")
    # Half a seam along the top of 6 in and two sides of 5 in, in 2 1/2 times its length of thread.
    assert sewn == length("20 in")
