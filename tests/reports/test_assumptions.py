"""What was taken for granted: said on the list, so that a reader can question it."""

from __future__ import annotations

from estimator import Estimate, estimate
from estimator.reports.assumptions import assumptions
from tests.plans import plan

PLAN = """
[garment]
name = "Yoke"
unit = "in"
[[fabric]]
name = "check"
widths = ["45 in"]
repeat = "3"
[[piece]]
name = "front"
cut = "check"
width = "9 1/2"
length = "15"
edges = {{ {left} neckline = {{ length = "15" }} }}
[[trim]]
name = "edging"
along = "front: neckline"
ends = "raw"
"""


def found(left: str) -> Estimate:
    return estimate(plan(PLAN.format(left=left)))


def test_a_named_edge_of_a_piece_on_the_fold_is_said_to_be_whole() -> None:
    # sizes are those of the half, an edge is measured on the finished piece: 15 in and not 30
    folded, flat = found('left = "fold",'), found("")
    said = "Yoke: front is on the fold; its neckline of 15 in is the whole of it, over both halves."
    assert said in assumptions(folded)
    assert said not in assumptions(flat)
    needed = [one.purchases[1].needed for one in (folded, flat)]
    assert needed[0] == needed[1]


def test_a_matched_print_is_said_to_match_at_the_cut_edges() -> None:
    (line,) = (one for one in assumptions(found("")) if "repeat" in one and "check" in one)
    assert (
        "cut edges start on the repeat of 3 in: where allowances differ, shift the pattern to match"
        in line
    )
