"""What each cuff, band and facing takes of the edges that it is sewn onto."""

from __future__ import annotations

from estimator.written import length
from tests.needs.sleeves_and_gores import GORES, SLEEVES
from tests.plans import by, cut_sizes, in_print


def cuffs(quantity: int, onto: str) -> str:
    return f"""
[[piece]]
name = "cuff"
quantity = {quantity}
cut = "print"
made = "folded band"
width = "2"
onto = "{onto}"
"""


def test_two_cuffs_onto_two_sleeves_take_one_sleeve_each() -> None:
    # 2 x 2 + 2 x 5/8 wide; 14 1/2 + 2 x 5/8 long
    sizes = cut_sizes(in_print(SLEEVES + cuffs(2, "sleeve: bottom")))
    assert sizes["cuff"] == by("5 1/4", "15 3/4")


def test_one_band_onto_the_edges_of_two_pieces_takes_both() -> None:
    sizes = cut_sizes(in_print(SLEEVES + cuffs(1, "sleeve: bottom")))
    assert sizes["cuff"] == by("5 1/4", "30 1/4")


def test_a_stated_number_of_edges_is_taken_by_each_piece() -> None:
    sizes = cut_sizes(in_print(SLEEVES + cuffs(2, "2 x sleeve: bottom")))
    assert sizes["cuff"] == by("5 1/4", "30 1/4")


def test_an_underlap_lengthens_the_band_beyond_its_edge() -> None:
    band = cuffs(1, "sleeve: bottom") + 'underlap = "1 3/8"\n'
    assert cut_sizes(in_print(SLEEVES + band))["cuff"] == by("5 1/4", "31 5/8")


def test_four_facings_onto_six_edges_share_them() -> None:
    # 6 x 9 / 4 = 13 1/2, and two ends of 5/8
    facing = 'made = "facing"\nwidth = "2"\nonto = "gore: top"\nquantity = 4\ncut = "print"\n'
    sizes = cut_sizes(in_print(GORES + f'[[piece]]\nname = "facing"\n{facing}'))
    assert sizes["facing"][1] == length("14 3/4")


def test_a_cuff_takes_half_of_the_sleeve_that_is_gathered_onto_it() -> None:
    # 14 1/2 / 2 = 7 1/4, and two ends of 5/8
    half = cuffs(2, "sleeve: bottom") + "fullness = 0.5\n"
    assert cut_sizes(in_print(SLEEVES + half))["cuff"] == by("5 1/4", "8 1/2")
