"""Shelf packing keeps its proved guarantees on cuttings whose shortest layout is known.

Source: E. G. Coffman, M. R. Garey, D. S. Johnson, R. E. Tarjan, Performance bounds for
level-oriented two-dimensional packing algorithms, SIAM Journal on Computing 9 (1980): next-fit
decreasing height <= 2 OPT + hmax, first-fit decreasing height <= 1.7 OPT + hmax, where hmax is the
length of the longest piece.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Cloth, Effort, lay_out
from estimator.layout.kinds import kinds_of
from estimator.layout.rows import in_order, length_of
from estimator.layout.shelves import FIRST_FIT, Fit, Rule, Turn, pack
from tests.benchmarks.rectangles import cut_up
from tests.verify_layout import assert_sound

NEXT_FIT = Rule(Turn.UPRIGHT, Fit.NEXT, stacks=False)


@st.composite
def cut_rectangles(draw: st.DrawFn):
    return cut_up(
        draw(st.integers(0, 10_000)),
        draw(st.integers(2, 60)),
        guillotine=draw(st.booleans()),
        slimmest=draw(st.sampled_from([5, 20, 60])),
    )


@pytest.mark.parametrize(
    ("rule", "tenths"), [(NEXT_FIT, 20), (FIRST_FIT, 17)], ids=["next fit", "first fit"]
)
@given(cut=cut_rectangles())
@settings(max_examples=150, deadline=None)
def test_shelves_stay_within_the_guarantee_of_coffman_garey_johnson_and_tarjan(rule, tenths, cut):
    shelves = pack(kinds_of(cut.blanks), Cloth(cut.width), rule)
    longest = max(blank.length for blank in cut.blanks)
    assert 10 * length_of(in_order(shelves, 0), 0) <= tenths * cut.length + 10 * longest


@given(cut=cut_rectangles())
@settings(max_examples=40, deadline=None)
def test_the_bound_of_a_rectangle_cut_up_is_the_rectangle(cut):
    # no waste: the area over the width is the whole length, and nothing true can be above it
    layout = lay_out(Cloth(cut.width), cut.blanks, effort=Effort(300))
    assert_sound(Cloth(cut.width), cut.blanks, layout)
    assert layout.bound == cut.length <= layout.length
