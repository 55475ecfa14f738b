"""What edges take beyond the finished size, and the slips of the pen that are refused."""

from __future__ import annotations

import pytest

from tests.plans import HEADING, by, complaints, cut_size

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
