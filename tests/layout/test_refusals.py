"""What cannot be cut is refused before anything is laid out, and the refusal names the blank."""

from __future__ import annotations

import pytest

from estimator.layout import Blank, Cloth, DoesNotFit, lay_out

CLOTH = Cloth(width=100)
POCKET = Blank("pocket", 20, 15)


@pytest.mark.parametrize(
    ("blank", "reason"),
    [
        (Blank("curtain", 101, 50), "curtain is 101 ticks wide as it must lie, the cloth 100"),
        (Blank("curtain", 130, 101, 1, True), "curtain is 101 ticks wide in either turn"),
        (Blank("ghost", 0, 50), "ghost is 0 ticks wide"),
        (Blank("ghost", 50, -1), "ghost is -1 ticks long"),
        (Blank("ghost", 50, 50, 0), "ghost is wanted 0 times"),
    ],
    ids=["too wide", "too wide in both turns", "no width", "negative length", "no quantity"],
)
def test_a_blank_that_cannot_be_cut_is_refused_by_its_index_and_name(blank, reason):
    with pytest.raises(DoesNotFit, match=reason) as refusal:
        lay_out(CLOTH, [POCKET, blank])
    assert refusal.value.blank == 1


def test_a_blank_that_is_too_wide_is_laid_when_it_may_turn():
    layout = lay_out(CLOTH, [Blank("sash", 300, 20, 1, may_turn=True)])
    assert layout.length == 300 or layout.placements[0].turned
    assert layout.placements[0].width == 20


def test_a_blank_exactly_as_wide_as_the_cloth_is_laid():
    assert lay_out(CLOTH, [Blank("band", 100, 7)]).length == 7


@pytest.mark.parametrize("cloth", [Cloth(width=0), Cloth(width=100, repeat=-1)])
def test_cloth_without_a_width_or_with_a_negative_repeat_is_refused(cloth):
    with pytest.raises(ValueError, match=r"cloth is 0 ticks|repeat is -1"):
        lay_out(cloth, [POCKET])


def test_nothing_to_cut_takes_no_cloth():
    assert lay_out(CLOTH, []).length == 0
