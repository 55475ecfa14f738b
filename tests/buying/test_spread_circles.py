"""Circles and parts of them on folded fabric: on the fold, in pairs, or seamed."""

from __future__ import annotations

from tests.needs.capes import cape, cut, pieces
from tests.plans import by, complaints

FOLDED = 'laid = "folded"'


def lots(text: str) -> list[tuple[str, int, int]]:
    return [
        (lot.name, lot.blank.quantity, lot.layers) for lot in cut(text).fabrics[0].chosen.laid.lots
    ]


def test_a_whole_circle_lies_with_its_half_on_the_fold_and_is_not_seamed() -> None:
    # 57 1/16 in across: 28 17/32 from the fold, of 30
    text = cape('"60 in"', "22", "25", "1", of_fabric=FOLDED)
    (whole,) = pieces(text)
    told = "a whole circle; cut radii 2 7/8 in and 28 9/16 in"
    assert (whole.name, whole.note) == ("cape", told)
    assert lots(text) == [("cape, on the fold", 1, 1)]
    (layout,) = cut(text).fabrics[0].chosen.laid.cuts
    assert (layout.placements[0].width, layout.length) == tuple(
        one.ticks for one in by("28 17/32", "57 1/16")
    )


def test_half_a_circle_lies_as_a_quarter_on_the_fold_and_is_not_seamed() -> None:
    # 32.003 in and 5/8 on its straight edges; 64 1/16 in across, 32 1/32 from the fold, of 36
    text = cape('"72 in"', "22", "25", "1/2", of_fabric=FOLDED)
    (half,) = pieces(text)
    assert (half.width.value, half.length.value) == by("64 1/16", "32 11/16")
    assert half.note == "half a circle; cut radii 6 3/8 in and 32 1/16 in"
    assert lots(text) == [("cape, on the fold", 1, 1)]


def test_two_circles_too_wide_for_a_layer_both_lie_on_the_fold_and_small_ones_in_a_pair() -> None:
    large = cape('"60 in"', "22", "25", "1", "quantity = 2", FOLDED)
    assert lots(large) == [("cape, on the fold", 2, 1)]
    small = cape('"60 in"', "22", "8", "1", "quantity = 2", FOLDED)
    assert lots(small) == [("cape, in pairs", 1, 2)]


def test_half_a_circle_along_the_fabric_is_no_quarter_on_the_fold() -> None:
    text = cape('"72 in"', "22", "25", "1/2", 'grain = "crosswise"', FOLDED)
    assert lots(text) == [("cape, a pair with one to spare", 1, 2)]


def test_three_quarters_on_folded_fabric_are_a_half_on_the_fold_and_a_quarter() -> None:
    # 29.669 in and 5/8: the half is 59 3/8 in across, the quarter 30 5/16
    text = cape('"62 in"', "22", "25", "3/4", of_fabric=FOLDED)
    half, _ = pieces(text)
    assert (half.width.value, half.length.value) == by("59 3/8", "30 5/16")
    assert lots(text) == [
        ("cape, half, on the fold", 1, 1),
        ("cape, quarter, a pair with one to spare", 1, 2),
    ]
    assert half.note == (
        "half a circle; cut radii 4 in and 29 11/16 in; seamed from a half and a quarter: the "
        'fabric, folded, is too narrow for it in one; laid = "open" would lay it in one'
    )


def test_a_circle_too_wide_for_the_fold_is_refused_with_what_open_fabric_would_do() -> None:
    (said,) = complaints(cape('"45 in"', "22", "25", "1", of_fabric=FOLDED))
    assert said.endswith(
        "'cape' is cut 57 1/16 in wide, and the widest 'wool' on offer (45 in) has 45 in to use; "
        'take a fabric with at least 57 1/16 in to use, or lay the fabric open (laid = "open"), '
        "where it is seamed"
    )
