"""How short the true outlines may be laid: checked on cloth where they lie without any waste."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.buying.outline_bound import outline_bound
from estimator.written import length
from tests.plans import plan

PLAN = """
[garment]
name = "Gull costume"
seam_allowance = "0"
straightening = "0"

[[fabric]]
name = "drill"
selvedge = "0"
widths = ["{width}"]

[[piece]]
name = "gore"
quantity = {gores}
cut = ["drill"]
shape = "taper"
top = "4"
bottom = "12"
slant = "left side"
length = "40"

[[piece]]
name = "panel"
quantity = {panels}
cut = ["drill"]
width = "{panel}"
length = "40"
"""


def bound(width, gores, panels, panel):
    text = PLAN.format(width=width, gores=gores, panels=panels, panel=panel)
    (choice,) = estimate(plan(text)).fabrics
    return outline_bound(choice.chosen.pieces, choice.chosen.breadth)


@pytest.mark.parametrize("rows", [1, 2, 5])
def test_outlines_that_lie_without_waste_are_bounded_by_that_length(rows):
    # a pair with the square sides outside takes 4 + 12, a panel the other 28 of 44
    least = length("40") * rows
    assert bound("44 in", 2 * rows, rows, "28") == least.ticks


def test_panels_too_wide_to_lie_beside_each_other_add_up_beside_tapers():
    # the area of four 27 in panels and two gores over 50 in is 99.2 in; no two panels lie in a row
    assert bound("50 in", 2, 4, "27") >= length("159 15/16").ticks


def test_where_a_taper_is_wide_it_takes_no_place_beside_a_panel():
    # 44 - 35 leaves 9: of the gores, 4 to 12 wide, the lower three eighths lie beside no panel
    plain = length("40").ticks * 10
    assert plain < bound("44 in", 2, 10, "35") <= plain + 2 * length("40").ticks
