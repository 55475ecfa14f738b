"""Widths joined to a ring: the last of them, and what the ring is gathered to."""

from __future__ import annotations

from estimator.written import length
from tests.plans import cut_pieces, cut_sizes, in_print, needed


def test_a_last_width_that_is_a_sliver_says_what_one_width_less_would_give() -> None:
    strip = """
[[piece]]
name = "frill"
cut = "print"
made = "joined strip"
length = "5"
ring = "44"
"""
    pieces = cut_pieces(in_print(strip))
    # one width of 45 in less one join of 1 1/4 in
    assert "43 3/4 in finished would take one width less" in pieces["frill, last width"].note
    assert pieces["frill, last width"].width.value < length("2")


def test_a_ring_with_a_fullness_is_what_its_strip_is_gathered_to() -> None:
    frill = """
[[piece]]
name = "frill"
cut = "print"
made = "joined strip"
joined = "open"
length = "4"
ring = "20"
fullness = 2
"""
    # 40 in one width, and two ends of 5/8
    assert cut_sizes(in_print(frill))["frill"][0] == length("41 1/4")


def test_a_last_width_that_is_left_whole_makes_the_ring_longer_and_its_trim_too() -> None:
    # 100 in round takes three widths of 45 less their joins of 1 1/4: 3 x 45 - 3 3/4 = 131 1/4
    strip = """
[[piece]]
name = "tier"
cut = "print"
made = "joined strip"
length = "9"
ring = "100"
last_width = "whole"
[[trim]]
name = "lace"
along = "tier: bottom"
overlap = 0
waste = 0
"""
    found = in_print(strip)
    piece = cut_pieces(found)["tier"]
    assert (piece.quantity, piece.width.value) == (3, length("45"))
    assert needed(found, "lace") == length("131 1/4")
