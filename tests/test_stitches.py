"""ISO 4915 stitches. Ratios are textbook tables, from memory; the formulas are textbooks' too."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.measure import Length
from estimator.quoting import NotReadable
from estimator.stitches import (
    STITCHES,
    Machine,
    ratio_from_geometry,
    read_density,
    read_stitches,
)
from estimator.written import length


@pytest.mark.parametrize(
    ("number", "ratio", "cones"),
    [("301", "2.5", 0), ("401", "5.5", 2), ("504", "14", 3), ("514", "18", 4), ("602", "25", 4)],
)
def test_each_stitch_takes_its_thread_and_a_cone_for_each_needle_and_looper(
    number: str, ratio: str, cones: int
) -> None:
    stitch = STITCHES[number]
    assert stitch.ratio == Fraction(ratio)
    assert len(stitch.shares) == cones
    assert bool(cones) is (stitch.machine is not Machine.LOCKSTITCH)


@pytest.mark.parametrize("number", ["401", "504", "514", "602"])
def test_needles_and_loopers_share_all_of_the_thread(number: str) -> None:
    assert sum(share for _, share in STITCHES[number].shares) == 1


def test_a_loopers_share_of_a_three_thread_overedge_is_two_fifths() -> None:
    # A fifth through the needle, the rest through two loopers (textbook tables, from memory).
    assert dict(STITCHES["504"].shares) == {
        "needle": Fraction(1, 5),
        "upper looper": Fraction(2, 5),
        "lower looper": Fraction(2, 5),
    }


@pytest.mark.parametrize(
    ("written", "numbers"),
    [
        ("301", ["301"]),
        ("Lockstitch", ["301"]),
        ("301 + overlock", ["301", "504"]),
        ("four-thread overedge", ["514"]),
        ("", []),
        (602, ["602"]),
    ],
)
def test_a_stitch_is_named_by_its_number_or_in_words(written: object, numbers: list[str]) -> None:
    assert [one.number for one in read_stitches(written)] == numbers


@pytest.mark.parametrize("written", ["999", "zigzag", "301 +", "+"])
def test_a_stitch_that_is_none_is_refused(written: str) -> None:
    with pytest.raises(NotReadable, match="is not a stitch"):
        read_stitches(written)


@pytest.mark.parametrize("written", ["10", "0 per in", "10 per yard", "per in", "1e9 per in", ""])
def test_stitches_are_so_many_in_an_inch_or_a_centimetre(written: str) -> None:
    with pytest.raises(NotReadable, match="does not say how many stitches"):
        read_density(written)


def test_four_per_centimetre_are_ten_and_a_bit_per_inch() -> None:
    # 4 x 2.54 = 10.16
    assert read_density("4 per cm") == read_density("10.1 per in") * Fraction("10.16") / Fraction(
        "10.1"
    )


def test_the_geometry_of_a_lockstitch_and_a_chainstitch() -> None:
    # T = 2 mm, S = 4 per cm: 2 + 2 x 0.2 x 4 = 3.6 and 4 + 1.6 = 5.6; of an overedge none is known.
    thick, per_cm = length("2 mm"), read_density("4 per cm")
    assert ratio_from_geometry(STITCHES["301"], thick, per_cm) == Fraction("3.6")
    assert ratio_from_geometry(STITCHES["401"], thick, per_cm) == Fraction("5.6")
    assert ratio_from_geometry(STITCHES["504"], thick, per_cm) is None


@given(st.integers(1, 200_000), st.integers(0, 200_000), st.integers(1, 99), st.integers(0, 99))
def test_a_thicker_seam_or_shorter_stitches_never_take_less(
    thin: int, more: int, few: int, extra: int
) -> None:
    def ratio(thick: int, many: int) -> Fraction:
        density = read_density(f"{many} per in")
        found = ratio_from_geometry(STITCHES["301"], Length(thick), density)
        assert found is not None
        return found

    assert ratio(thin + more, few + extra) >= ratio(thin, few) > 2
