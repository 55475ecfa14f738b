"""Tapered pieces and boxes, against trigonometry in floats."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.edges import EdgeRef
from estimator.measure import INCH, Length
from estimator.needs.edge_lengths import EdgeLengths
from estimator.written import length
from tests.plans import HEADING, by, complaints, cut_pieces, cut_size, in_print, order

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
