"""How many runs a trim has and how long each is: over all pieces, on each, and round rings."""

from __future__ import annotations

from estimator.written import length
from tests.needs.sleeves_and_gores import GORES, SLEEVES
from tests.plans import bought, in_print, needed


def test_a_round_over_panels_is_one_round_and_on_each_sleeve_is_two() -> None:
    trim = '[[trim]]\nname = "lace"\nalong = "sleeve: bottom"\njoined = "in the round"\nwaste = 0\n'
    # 29 + 1/2 in overlap together; twice 14 1/2 + 1/2 by themselves
    assert needed(in_print(SLEEVES + trim), "lace") == length("29 1/2")
    assert needed(in_print(SLEEVES + trim + 'run = "each"\n'), "lace") == length("30")


def test_each_ring_of_a_joined_strip_has_its_own_round_of_trim() -> None:
    rings = """
[[piece]]
name = "ring"
quantity = 2
cut = "print"
made = "joined strip"
length = "7"
ring = "31"
[[trim]]
name = "lace"
along = "ring: bottom"
joined = "in the round"
waste = 0
"""
    assert needed(in_print(rings), "lace") == length("63")


def test_a_band_sewn_to_a_front_and_two_backs_is_one_seam() -> None:
    bodice = """
[[piece]]
name = "front"
cut = "print"
width = "16"
length = "15"
[[piece]]
name = "back"
quantity = 2
cut = "print"
width = "8"
length = "15"
[[piece]]
name = "band"
cut = "print"
made = "tube"
width = "2"
length = "32"
[[seam]]
name = "waist"
edges = ["band: left", ["front: bottom", "back: bottom"]]
[[trim]]
name = "tape"
along = "waist"
ends = "raw"
waste = 0
"""
    found = in_print(bodice)
    assert found.remarks == ()
    assert needed(found, "tape") == length("32")


def trim(more: str) -> str:
    return f'[[trim]]\nname = "piping"\nwaste = 0\n{more}\n'


def test_six_side_seams_do_not_meet_end_to_end() -> None:
    found = in_print(GORES + trim('along = "side"'))
    assert needed(found, "piping") == 6 * length("30 3/4")


def test_a_trim_up_the_side_and_round_the_corner_is_one_run_on_each_piece() -> None:
    found = in_print(GORES + trim('along = ["gore: left", "gore: bottom"]\nends = "raw"'))
    assert needed(found, "piping") == 6 * length("39 1/4")


def test_a_trim_on_a_ring_closes_on_itself_unless_it_is_said_to_be_open() -> None:
    ring = """
[[piece]]
name = "ring"
cut = "print"
made = "joined strip"
length = "5"
ring = "40"
"""
    # 14 repeats of 3 in reach 42, and one is overlapped; open: 42 and two ends of 1/4
    assert needed(in_print(ring + trim('along = "ring: top"\nrepeat = "3"')), "piping") == length(
        "45"
    )
    opened = trim('along = "ring: top"\nrepeat = "3"\njoined = "open"')
    assert needed(in_print(ring + opened), "piping") == length("42 1/2")


def test_rings_beside_other_edges_are_runs_by_themselves() -> None:
    rings = """
[[piece]]
name = "ring"
quantity = 2
cut = "print"
made = "joined strip"
length = "5"
ring = "40"
"""
    found = in_print(rings + GORES + trim('along = ["ring: top", "gore: top"]\nends = "raw"'))
    # two rings of 40 1/2 in, and 54 in over the gores
    assert needed(found, "piping") == length("135")


def test_what_is_taken_as_sewn_together_is_said() -> None:
    said = in_print(GORES + trim('along = "gore: bottom"')).granted
    assert any("6 × gore: bottom, sewn to one another" in line for line in said)
    assert in_print(GORES + trim('along = "gore: bottom"\nrun = "together"')).granted == ()


def test_the_longer_side_of_a_seam_is_followed_where_neither_is_gathered() -> None:
    two = """
[[piece]]
name = "a"
cut = "print"
width = "12"
length = "5"
[[piece]]
name = "b"
cut = "print"
width = "20"
length = "5"
[[seam]]
name = "join"
edges = ["a: top", "b: bottom"]
"""
    assert needed(in_print(two + trim('along = "join"\nends = "raw"')), "piping") == length("20")


TIERS = "".join(
    f'[[piece]]\nname = "tier {name}"\ncut = "print"\nmade = "joined strip"\nlength = "9"\n'
    f'ring = "{ring}"\n'
    for name, ring in (("one", "30"), ("two", "31"), ("three", "31"))
)


def told_of_lace(along: str) -> tuple[str, ...]:
    lace = f'[[trim]]\nname = "lace"\nalong = {along}\nrepeat = "2"\n'
    return bought(in_print(TIERS + lace), "lace").notes


def test_where_rounds_are_eased_in_differently_each_is_told_by_its_edge() -> None:
    # 30 in are 15 scallops of 2 in; 31 in are 16 with 1 in too much.
    first, others = '"tier one: bottom"', '"tier two: bottom", "tier three: bottom"'
    assert told_of_lace(f"[{first}]") == ()
    assert told_of_lace(f"[{others}]") == ("lace: ease 1 in of it in, for whole repeats",)
    assert told_of_lace(f"[{first}, {others}]") == (
        "lace along the bottom of tier two and the bottom of tier three: ease 1 in of it in, for "
        "whole repeats",
    )


def test_rows_that_are_eased_in_differently_are_told_by_how_far_inside_they_lie() -> None:
    # Six gores from 6 to 18 in over 30: 108 in below, 54 scallops of 2 in; 3 1/2 in inside that
    # 6 x (18 - 1.4) = 99.6 in, 50 scallops with 0.4 in too much, 3/8 in to the sixteenth.
    gores = (
        '[[piece]]\nname = "gore"\nquantity = 6\ncut = "print"\nshape = "taper"\n'
        'top = "6"\nbottom = "18"\nlength = "30"\n'
    )
    rows = 'joined = "in the round"\nrepeat = "2"\nrows = 2\nrow_spacing = "3 1/2"'
    found = in_print(gores + trim('along = "gore: bottom"\n' + rows))
    assert bought(found, "piping").notes == (
        "piping along the bottom of gore, 3 1/2 in inside it: ease 3/8 in of it in, for whole "
        "repeats",
    )
