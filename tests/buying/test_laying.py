"""Strips across the fabric or along it, whichever buys less."""

from __future__ import annotations

import pytest

from estimator import Estimate, estimate
from estimator.buying.one_width import WidthOption
from estimator.layout import Blank, Cloth
from estimator.measure import Length
from estimator.written import length
from tests.plans import HEADING, by, complaints, in_print, needed, plan
from tests.verify_layout import assert_sound

# A panel of 38 1/2 by 61 1/4 leaves 6 1/2 in of the 45 in print beside it.
PANEL = """
[[piece]]
name = "panel"
cut = "print"
width = "37 1/4"
length = "60"
[[piece]]
name = "frill"
cut = "print"
made = "joined strip"
length = "4"
ring = "{ring}"
"""


def frill(ring: str, more: str = "") -> Estimate:
    return in_print(PANEL.replace("{ring}", ring) + more)


def chosen(found: Estimate) -> WidthOption:
    return found.fabrics[0].chosen


def test_a_strip_lies_across_the_fabric_unless_the_plan_says_otherwise() -> None:
    # 55 in round is two widths, each a row of 5 1/4 in
    assert chosen(frill("55")).laid.cuts[0].length == (length("61 1/4") + 2 * length("5 1/4")).ticks


def test_a_strip_that_may_lie_either_way_goes_along_beside_the_panel() -> None:
    option = chosen(frill("55", 'grain = "either"\n'))
    assert option.laid.cuts[0].length == length("61 1/4").ticks
    (strip,) = (piece for piece in option.pieces if piece.name == "frill")
    assert (strip.width.value, strip.length.value) == by("5 1/4", "56 1/4")
    assert strip.note == "along the fabric"


def test_a_strip_along_is_joined_from_equal_lengths() -> None:
    # 110 + 2 x 1 1/4 is two lengths of 56 1/4, one under the other: longer than one panel
    option = chosen(frill("110", 'grain = "crosswise"\n'))
    (strip,) = (piece for piece in option.pieces if piece.name == "frill")
    assert strip.quantity * (strip.length.value - length("1 1/4")) >= length("110")
    assert strip.length.value <= length("111 1/4")


def test_a_strip_along_is_as_long_round_as_one_across() -> None:
    trim = (
        '[[trim]]\nname = "lace"\nalong = "frill: bottom"\noverlap = 0\nends = "raw"\nwaste = 0\n'
    )
    for grain in ("lengthwise", "crosswise", "either"):
        found = frill("55", f'grain = "{grain}"\n{trim}')
        assert needed(found, "lace") == length("55")


@pytest.mark.parametrize("wish", ["widths = 2", 'ring = "55"\nlast_width = "whole"'])
def test_whole_widths_lie_across_the_fabric(wish: str) -> None:
    text = PANEL.replace('ring = "{ring}"', wish) + 'grain = "either"\n'
    heading = '[garment]\nname = "a"\n[[fabric]]\nname = "print"\nwidths = ["45 in"]\n'
    (said,) = complaints(heading + text)
    assert "whole widths lie across the fabric" in said


@pytest.mark.parametrize("ring", ["9", "31 1/8", "55", "160", "300"])
def test_either_way_never_buys_more_and_can_be_cut(ring: str) -> None:
    across, either = chosen(frill(ring)), chosen(frill(ring, 'grain = "either"\n'))
    assert either.buy.amount <= across.buy.amount
    blanks: list[Blank] = [lot.blank for lot in either.laid.lots]
    assert_sound(Cloth(either.usable.ticks), blanks, either.laid.cuts[0])
    assert isinstance(either.buy.bought, Length)


def test_a_strip_along_the_fabric_is_not_longer_than_a_bolt() -> None:
    # 186 in round in one length is no way to cut it from bolts of 3 yd; in two it is
    strip = (
        '[[piece]]\nname = "frill"\ncut = "print"\nmade = "joined strip"\nlength = "4"\n'
        'ring = "186"\ngrain = "{grain}"\n'
    )
    heading = HEADING.replace('widths = ["45 in"]', 'widths = [{ width = "45 in", bolt = "3 yd" }]')
    for grain in ("either", "crosswise"):
        found = estimate(plan(heading + strip.format(grain=grain)))
        assert all(piece.length.value <= length("106") for piece in chosen(found).pieces)
