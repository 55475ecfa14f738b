"""The checker of outlines is checked itself: each fault it knows is made once, and it sees it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from estimator.buying.laying import Laid
from estimator.buying.lots import Lot
from estimator.layout import Blank, Layout, Placement, Style
from estimator.measure import Length
from estimator.needs.cut_piece import CutPiece
from estimator.working import Reckoning, Source
from tests.verify_outlines import faults_in, outlines, overlap

USABLE = Length(48)


def piece(width: int, long: int, quantity: int, **more: object) -> CutPiece:
    size = Length(width), Length(long)
    wide, length = (Reckoning.start("cut", one) for one in size)
    made = CutPiece(Source("skirt", "gore"), "gore", quantity, size, wide, length)
    return replace(made, **more)  # type: ignore[arg-type]


def laid(count: int, wide: int, long: int, *apart: int, lots: int = 1) -> Laid:
    lot = Lot(0, count, "gores", Blank("gores", wide, long, lots), tuple(map(Length, apart)))
    places = tuple(Placement(0, wide * number, 0, wide, long) for number in range(lots))
    return Laid((lot,), (Layout(48, long, places, (), 1, Style.CLOSE),), 1)


# Five gores of 12 and 6 take 5 x 9 + 3 = 48; four with a square side two pairs of 18.
BOTH = piece(12, 30, 5, narrow=Length(6))
IN_A_ROW = laid(5, 48, 30, 9)
LEFT = piece(12, 30, 4, narrow=Length(6), square="left")
RIGHT = replace(LEFT, square="right")
IN_PAIRS = laid(4, 36, 30, 6, 12)
# A rectangle of 14 by 7 on the bias: 21 / 1.4142 = 14.85
SKEW = piece(15, 15, 3, on_bias=(Length(14), Length(7)))
SKEWED = laid(1, 15, 15, lots=3)


@pytest.mark.parametrize(
    ("pieces", "found"),
    [([BOTH], IN_A_ROW), ([LEFT], IN_PAIRS), ([RIGHT], IN_PAIRS), ([SKEW], SKEWED)],
    ids=["two slants", "square at the left", "square at the right", "on the bias"],
)
def test_outlines_that_only_touch_are_no_fault(pieces: list[CutPiece], found: Laid) -> None:
    assert faults_in(pieces, found, USABLE) == []


def test_every_second_taper_stands_on_its_head() -> None:
    wide_at_the_cut_end = [
        sum(y == 0 for _, y in one.corners) == 2
        and max(x for x, y in one.corners if y == 0) - min(x for x, y in one.corners if y == 0)
        == 12
        for one in outlines([BOTH], IN_A_ROW)
    ]
    assert wide_at_the_cut_end == [True, False, True, False, True]


@pytest.mark.parametrize("apart", [(8,), (9, 8), (6, 12)])
def test_tapers_too_near_to_each_other_are_seen(apart: tuple[int, ...]) -> None:
    faults = faults_in([BOTH], laid(5, 48, 30, *apart), USABLE)
    assert any("over gore" in fault for fault in faults)


@pytest.mark.parametrize("gore", [LEFT, RIGHT])
@pytest.mark.parametrize("apart", [(5, 12), (6, 11), (12, 6), (9,)])
def test_square_sides_laid_into_each_other_are_seen(gore: CutPiece, apart: tuple[int, ...]) -> None:
    faults = faults_in([gore], laid(4, 36, 30, *apart), USABLE)
    assert any("over gore" in fault for fault in faults)


def test_gores_with_a_square_side_laid_as_if_both_slanted_are_seen() -> None:
    faults = faults_in([replace(BOTH, square="left")], IN_A_ROW, USABLE)
    assert any("over gore" in fault for fault in faults)


def test_a_narrow_end_wider_than_was_reckoned_is_seen() -> None:
    faults = faults_in([replace(BOTH, narrow=Length(7))], IN_A_ROW, USABLE)
    assert any("over gore" in fault for fault in faults)


def test_a_row_one_tick_wider_than_the_fabric_is_seen() -> None:
    faults = faults_in([BOTH], IN_A_ROW, Length(47))
    assert faults == ["gore at 36 across, 0 along: off the fabric"]


def test_a_taper_that_sticks_out_of_its_lot_is_seen() -> None:
    faults = faults_in([BOTH], laid(5, 47, 30, 9), USABLE)
    assert faults == ["gore at 36 across, 0 along: reaches beyond the place of its lot"]


def test_a_missing_taper_is_seen() -> None:
    assert faults_in([replace(BOTH, quantity=6)], IN_A_ROW, USABLE) == ["gore: wanted 6, placed 5"]


def test_a_taper_on_its_head_on_nap_is_seen() -> None:
    faults = faults_in([BOTH], IN_A_ROW, USABLE, nap=True)
    assert faults == [
        "gore at 9 across, 0 along: on its head, on a fabric with nap",
        "gore at 27 across, 0 along: on its head, on a fabric with nap",
    ]


def test_a_box_too_small_for_a_piece_on_the_bias_is_seen() -> None:
    faults = faults_in([SKEW], laid(1, 14, 14, lots=3), USABLE)
    assert any("reaches beyond the place of its lot" in fault for fault in faults)


def test_a_taper_on_the_bias_with_a_square_side_takes_its_two_sizes() -> None:
    # Across from its square corner to the far narrow one: (6 + 30) / 1.4142 = 25.46; along from
    # one end of the wide edge to the end of the square side: (12 + 30) / 1.4142 = 29.70
    for square in ("left", "right"):
        gore = piece(26, 30, 1, narrow=Length(6), square=square, on_bias=(Length(12), Length(30)))
        assert faults_in([gore], laid(1, 26, 30), USABLE) == []
        for wide, long in ((25, 30), (26, 29)):
            assert faults_in([gore], laid(1, wide, long), USABLE) != []


def test_convex_outlines_overlap_or_touch() -> None:
    def corners(*points: tuple[int, int]) -> tuple[tuple[Fraction, Fraction], ...]:
        return tuple((Fraction(x), Fraction(y)) for x, y in points)

    gore = corners((3, 0), (9, 0), (12, 30), (0, 30))
    assert not overlap(gore, tuple((x + 12, y) for x, y in gore))
    assert overlap(gore, tuple((x + 11, y) for x, y in gore))
    on_its_head = tuple((x + 9, 30 - y) for x, y in gore)
    assert not overlap(gore, on_its_head)
    assert overlap(gore, tuple((x - 1, y) for x, y in on_its_head))
    assert overlap(gore, corners((5, 10), (6, 10), (6, 11), (5, 11)))
