"""What is sewn to what: seams that cannot be, and edges that do not fit one another."""

from __future__ import annotations

from estimator.written import length
from tests.needs.sleeves_and_gores import SLEEVES
from tests.plans import HEADING, complaints, in_print, needed

TWO = """
[[piece]]
name = "skirt"
cut = "print"
width = "40 1/4"
length = "26"
[[piece]]
name = "band"
cut = "print"
width = "28 1/8"
length = "3"
"""


def seam(more: str, edges: str = '"skirt: top", "band: bottom"') -> str:
    return TWO + f"[[seam]]\nedges = [{edges}]\n{more}\n"


def test_a_seam_of_two_unlike_edges_is_remarked_on() -> None:
    assert in_print(seam("")).remarks == (
        "apron: the seam joins skirt: top (40 1/4 in) to band: bottom (28 1/8 in); "
        "say which edge is gathered, check the sizes, or name a part of a quantity.",
    )


def test_a_gathered_seam_may_join_edges_of_any_length() -> None:
    assert in_print(seam('gathered = "skirt: top"')).remarks == ()


def test_an_edge_a_tenth_longer_is_eased_in() -> None:
    # 28 1/8 x 1.1 is 30 15/16 in.
    eased = seam("").replace("40 1/4", "30 15/16")
    assert in_print(eased).remarks == ()
    assert len(in_print(eased.replace("30 15/16", "31")).remarks) == 1


def test_a_seam_with_a_piece_that_is_not_there_is_refused() -> None:
    assert complaints(HEADING + seam("", '"skirt: top", "bnad: bottom"')) == [
        "apron.toml, line 19: there is no piece 'bnad'; did you mean 'band'?"
    ]


def test_a_hemmed_edge_is_in_no_seam() -> None:
    hemmed = seam("").replace('length = "26"', 'length = "26"\nedges.top = "hem 1"')
    (found,) = complaints(HEADING + hemmed)
    assert "'skirt: top' has a hem and is joined in a seam too" in found
    assert "finish it with seam, or take it out of the seam" in found


def test_the_gathered_edge_is_one_of_the_two() -> None:
    (found,) = complaints(HEADING + seam('gathered = "skirt: left"'))
    assert "'skirt: left' is gathered, and is not an edge of this seam" in found
    assert "name one of 'skirt: top' and 'band: bottom'" in found


def test_a_strip_onto_an_edge_that_is_not_there_is_refused() -> None:
    frill = (
        '[[piece]]\nname = "frill"\ncut = "print"\nmade = "joined strip"\nlength = "3"\n'
        'onto = "skirt: botom"\n'
    )
    (found,) = complaints(HEADING + TWO + frill)
    assert "'skirt' has no edge 'botom'; did you mean 'bottom'?" in found


def test_a_trim_along_the_seam_of_a_strip_waits_for_the_strip() -> None:
    # The frill is 2 x 40 1/4 in, and nobody says that it is gathered: the longer side is taken.
    frill = (
        '[[piece]]\nname = "frill"\ncut = "print"\nmade = "joined strip"\nlength = "3"\n'
        'onto = "skirt: bottom"\nfullness = 2\n'
        '[[seam]]\nname = "frill seam"\nedges = ["skirt: bottom", "frill: top"]\n'
        '[[trim]]\nname = "braid"\nwaste = 0\noverlap = 0\nends = "raw"\nalong = "frill seam"\n'
    )
    assert needed(in_print(TWO + frill), "braid") == length("80 1/2")


def test_a_seam_of_unlike_edges_says_how_to_name_one_of_two() -> None:
    uneven = SLEEVES + (
        '[[piece]]\nname = "cuff"\ncut = "print"\nmade = "tube"\nwidth = "2"\nlength = "15"\n'
        '[[seam]]\nedges = ["sleeve: bottom", "cuff: left"]\n'
    )
    (said,) = in_print(uneven).remarks
    assert 'as in "1 x sleeve: bottom"' in said
