"""What the buyer is told of the width of the bolt."""

from __future__ import annotations

from estimator import estimate
from estimator.reports.bolt_widths import narrowest_text
from tests.plans import plan

CLOTH = """
[garment]
name = "apron"
straightening = "0"
selvedge = "0"
seam_allowance = "0"
[[fabric]]
name = "check"
widths = ["45 in"]
"""
PANELS = '[[piece]]\nname = "panel"\nquantity = 2\ncut = "check"\nwidth = "20"\nlength = "27"\n'
STRIP = (
    '[[piece]]\nname = "frill"\ncut = "check"\nmade = "joined strip"\nlength = "4"\nring = "80"\n'
)


def told(text: str) -> str:
    found = estimate(plan(text))
    return narrowest_text(found.fabrics[0], found)


def test_the_narrowest_bolt_and_what_to_buy_below_it() -> None:
    assert (
        told(CLOTH + PANELS)
        == "good down to 40 in usable, the narrowest found; at 39 in buy 1 1/2 yd"
    )


def test_a_bolt_on_which_a_piece_does_not_go_is_said() -> None:
    assert told(CLOTH + PANELS.replace('"20"', '"41"')) == (
        "good down to 41 in usable, the narrowest found; "
        "at 40 in the pieces do not go on it as they are cut here"
    )


def test_strips_that_take_the_whole_width_ask_for_the_bolt_to_be_measured() -> None:
    assert "measure the bolt" in told(CLOTH + STRIP)


def test_a_piece_from_selvedge_to_selvedge_is_not_called_a_strip() -> None:
    both = 'edges = { left = "selvedge", right = "selvedge" }\n'
    assert told(CLOTH + PANELS.replace('"20"', '"45"') + both) == (
        "pieces reach from selvedge to selvedge: measure the bolt before you buy"
    )
