"""What edges take beyond the finished size, and the slips of the pen that are refused."""

from __future__ import annotations

import pytest

from tests.plans import HEADING, by, complaints, cut_size, cut_sizes, in_print

PIECE = '[[piece]]\nname = "pocket"\ncut = "print"\nwidth = "{width}"\nlength = "10"\n{more}\n'


def pocket(more: str, width: str = "8") -> str:
    return PIECE.format(width=width, more=more)


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (
            'edges.left = "seam 30"',
            "its left edge takes 30 in of seam allowance, and the finished piece is 8 in wide; "
            "write an allowance narrower than the piece",
        ),
        (
            'edges.top = "faced 30"',
            "its top edge takes 30 in of faced allowance, and the finished piece is 10 in long; "
            "write an allowance narrower than the piece",
        ),
    ],
)
def test_an_allowance_wider_than_the_piece_itself_is_refused(more: str, told: str) -> None:
    (found,) = complaints(HEADING + pocket(more))
    assert told in found


def test_the_allowance_of_a_seam_table_is_held_against_both_its_pieces() -> None:
    other = pocket("", "12").replace("pocket", "panel")
    seam = '[[seam]]\nedges = ["pocket: left", "panel: left"]\nallowance = "11"\n'
    (found,) = complaints(HEADING + pocket("") + other + seam)
    assert "(piece 'pocket')" in found
    assert "its left edge takes 11 in of seam allowance" in found


def test_an_allowance_as_wide_as_the_piece_and_a_wide_one_on_a_strap_are_taken() -> None:
    assert cut_size(pocket('edges.left = "seam 8"')) == by("16 5/8", "11 1/4")
    # a strap of 1/4 in with 5/8 in a side is trimmed when it is sewn
    strap = pocket('made = "tube"', "1/4")
    assert cut_size(strap) == by("1 3/4", "11 1/4")


def test_a_circle_with_an_allowance_wider_than_its_waist_is_refused() -> None:
    cape = '[[piece]]\nname = "cape"\ncut = "print"\nshape = "sector"\nwaist = "12"\nlength = "9"\n'
    (found,) = complaints(HEADING + cape + 'share = "1/4"\nedges.left = "seam 13"\n')
    assert "its left edge takes 13 in of seam allowance, and the finished piece is 12 in" in found


PANEL = """
[[piece]]
name = "panel"
cut = "print"
width = "20 1/4"
length = "26 3/8"
"""


@pytest.mark.parametrize(
    ("finish", "cut_long"),
    [
        # 26 3/8 finished, 5/8 at the top, and at the bottom:
        ("seam", "27 5/8"),  # 5/8
        ("seam 3/8", "27 3/8"),  # 3/8
        ("seam 0", "27"),  # none
        ("faced", "27 5/8"),  # 5/8, as a seam
        ("facing 1/4", "27 1/4"),  # 1/4
        ("hem 1 1/4", "28 1/2"),  # 1 1/4 and 1/4 turned under
        ("hem 1 1/4 double", "29 1/2"),  # twice 1 1/4
        ("hem 1 1/4 + 1/2", "28 3/4"),  # 1 1/4 and 1/2
        ("hem 1 1/4 + 0", "28 1/4"),  # 1 1/4, its raw edge serged
        ("casing 7/8", "28 1/8"),  # 7/8 and 1/4
        ("casing 7/8 + 3/8", "28 1/4"),
        ("rolled hem", "27 1/4"),  # 2 x 1/8, turned twice
        ("narrow rolled hem 3/16", "27 3/8"),  # 2 x 3/16
        ("turned under", "27 1/4"),  # 1/4
        ("turned under 3/8", "27 3/8"),
        ("serged", "27 1/4"),  # 1/4, what the knife trims
        ("overlocked 3/8", "27 3/8"),
        ("raw", "27"),
    ],
)
def test_each_finish_of_an_edge_takes_its_own_allowance(finish: str, cut_long: str) -> None:
    assert cut_size(PANEL + f'edges = {{ bottom = "{finish}" }}\n') == by("21 1/2", cut_long)


def test_the_four_sides_take_what_each_says() -> None:
    # Across 20 1/4 + 0 + 1 1/4; along 26 3/8 + 3/8 + 2.
    edges = 'edges = { left = "raw", right = "hem 1", top = "seam 3/8", bottom = "hem 1 double" }\n'
    assert cut_size(PANEL + edges) == by("21 1/2", "28 3/4")


def test_a_seam_states_the_allowance_of_both_edges_it_joins() -> None:
    # Right 3/8 from the seam, left 5/8: 20 1/4 + 1 in.
    seam = '[[seam]]\nedges = ["panel: right", "back: left"]\nallowance = "3/8"\n'
    found = in_print(PANEL + PANEL.replace('"panel"', '"back"') + seam)
    assert cut_sizes(found) == {"panel": by("21 1/4", "27 5/8"), "back": by("21 1/4", "27 5/8")}


def test_an_edge_that_states_its_own_allowance_keeps_it() -> None:
    seam = '[[seam]]\nedges = ["panel: right", "panel: left"]\nallowance = "3/8"\n'
    assert cut_size(PANEL + 'edges.right = "seam 1"\n' + seam) == by("21 5/8", "27 5/8")
