"""One for each, or one for all: cuffs and sleeves, rounds and rings, zips of two lengths."""

from __future__ import annotations

from estimator import Job, estimate
from estimator.measure import Length
from estimator.written import length
from tests.plans import (
    HEADING,
    bought,
    by,
    catalog,
    complaints,
    cut_pieces,
    cut_sizes,
    in_print,
    needed,
    plan,
)
from tests.plans import order as garment

SLEEVES = """
[[piece]]
name = "sleeve"
quantity = 2
cut = "print"
width = "14 1/2"
length = "21"
"""


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


def test_two_zips_of_one_kind_for_two_openings_are_two_lines() -> None:
    zips = """
[[notion]]
name = "{name}"
colour = "navy"
length = "{opening}"
sold = [{{ put_up = "each", length = "7" }}, {{ put_up = "each", length = "16" }}]
"""
    text = HEADING + zips.format(name="back", opening="6 1/2")
    text += zips.format(name="side", opening="15 1/2") + SLEEVES
    found = estimate(plan(text))
    assert bought(found, "back").notes == ("7 in long", "shorten to 6 1/2 in")
    assert bought(found, "side").notes == ("16 in long", "shorten to 15 1/2 in")


def test_lines_of_one_name_have_keys_of_their_own() -> None:

    text = HEADING + SLEEVES
    other = text.replace('"apron"', '"smock"').replace('"45 in"', '"54 in"')
    found = estimate(Job((garment(text), garment(other), garment(other.replace("54", "60")))))
    keys = [line.key for line in found.purchases]
    assert len(keys) == 3
    assert len(set(keys)) == 3


def test_a_dart_on_the_fold_is_one_on_each_half() -> None:
    front = """
[[piece]]
name = "front"
cut = "print"
width = "10"
length = "15"
edges = { left = "fold" }
takes_up = [{ kind = "dart", depth = "1" }]
"""
    # (10 + 5/8 + 1) x 2
    assert cut_sizes(in_print(front))["front"][0] == length("23 1/4")


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


def test_a_misspelt_side_is_refused_and_told_the_nearest() -> None:
    text = HEADING + SLEEVES + 'edges = { botom = "hem 1" }\n'
    (said,) = complaints(text)
    assert "'botom' is no side of a piece" in said
    assert "did you mean 'bottom'?" in said


def test_scallops_are_counted_as_they_are_bought_before_they_shrink() -> None:
    trim = """
[[trim]]
name = "lace"
length = "157"
joined = "in the round"
repeat = "1 3/4"
shrinkage = "3 %"
waste = 0
"""
    # 157 / 0.97 = 161.86 is 92.5 scallops of 1 3/4, so 93, and one overlapped: 94
    assert needed(in_print(SLEEVES + trim), "lace") == 94 * length("1 3/4")


def test_rows_start_on_the_repeat_that_the_print_has_after_washing() -> None:
    text = HEADING.replace('"45 in"]', '"45 in"]\nrepeat = "10"\nshrinkage = "5 %"') + SLEEVES
    # each sleeve is 22 1/4 long and 15 3/4 wide; three side by side would need 47 1/4, so one pair
    tall = text.replace('"14 1/2"', '"29"')
    (choice,) = estimate(plan(tall)).fabrics
    starts = [row.start for row in choice.chosen.laid.cuts[0].rows]
    assert starts == [0, 3 * length("9 1/2").ticks]


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


def test_what_a_plan_notes_of_a_thing_stands_beside_it() -> None:
    text = SLEEVES + 'note = "cut from the good end"\n[[notion]]\nname = "hook"\nnote = "black"\n'
    found = in_print(text)
    assert cut_pieces(found)["sleeve"].note == "cut from the good end"
    assert bought(found, "hook").notes == ("black",)


def test_a_print_that_is_not_matched_has_its_repeat_written_as_zero() -> None:
    text = HEADING.replace('"45 in"]', '"45 in"]\nrepeat = "0"') + SLEEVES
    (choice,) = estimate(plan(text)).fabrics
    assert choice.need.terms.repeat is None
    assert isinstance(choice.chosen.needed, Length)


GORES = """
[[piece]]
name = "gore"
quantity = 6
cut = "print"
width = "9"
length = "30 1/4"
[[seam]]
name = "side"
edges = ["gore: left", "gore: right"]
"""


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


def test_four_facings_onto_six_edges_share_them() -> None:
    # 6 x 9 / 4 = 13 1/2, and two ends of 5/8
    facing = 'made = "facing"\nwidth = "2"\nonto = "gore: top"\nquantity = 4\ncut = "print"\n'
    sizes = cut_sizes(in_print(GORES + f'[[piece]]\nname = "facing"\n{facing}'))
    assert sizes["facing"][1] == length("14 3/4")


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


def test_interfacing_cut_to_finished_size_has_none_of_the_pleats() -> None:
    panel = """
[[piece]]
name = "panel"
cut = { fabric = "print", cut_to = "finished size" }
width = "10"
length = "15"
takes_up = [{ kind = "knife pleat", depth = "1", count = 3 }]
"""
    assert cut_sizes(in_print(panel))["panel"] == by("10", "15")


def test_the_order_of_the_plans_changes_no_key() -> None:
    cloth = {"item": "lawn", "kind": "fabric", "colour": "rose"}
    shop = catalog([cloth], [{"item": "lawn", "width": "45 in"}])
    plans = [
        garment(
            f'[garment]\nname = "{name}"\n[[fabric]]\nname = "{name} cloth"\nbuy = "lawn"\n'
            f'[[piece]]\nname = "p"\ncut = "{name} cloth"\nwidth = "9"\nlength = "9"\n'
        )
        for name in ("smock", "apron")
    ]
    keys = {estimate(Job(tuple(some), shop)).purchases[0].key for some in (plans, reversed(plans))}
    assert keys == {"lawn / rose / apron cloth + smock cloth"}


def test_a_seam_of_unlike_edges_says_how_to_name_one_of_two() -> None:
    uneven = SLEEVES + (
        '[[piece]]\nname = "cuff"\ncut = "print"\nmade = "tube"\nwidth = "2"\nlength = "15"\n'
        '[[seam]]\nedges = ["sleeve: bottom", "cuff: left"]\n'
    )
    (said,) = in_print(uneven).remarks
    assert 'as in "1 x sleeve: bottom"' in said


def test_a_cuff_takes_half_of_the_sleeve_that_is_gathered_onto_it() -> None:
    # 14 1/2 / 2 = 7 1/4, and two ends of 5/8
    half = cuffs(2, "sleeve: bottom") + "fullness = 0.5\n"
    assert cut_sizes(in_print(SLEEVES + half))["cuff"] == by("5 1/4", "8 1/2")


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
