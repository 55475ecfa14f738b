"""Runs of trim and elastic, from the edges that they follow."""

from __future__ import annotations

import pytest

from estimator import estimate
from estimator.edges import EdgeRef
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.runs import trim_runs
from estimator.needs.types import Material
from estimator.written import length
from tests.plans import HEADING, bought, catalog, complaints, in_print, needed, order, plan

# Six panels of 17 1/2 in and two sleeves of 11 3/8 in. A turned end takes 1/4 in.
SKIRT = """
[[piece]]
name = "skirt"
quantity = 6
cut = "print"
width = "17 1/2"
length = "26"
[[piece]]
name = "sleeve"
quantity = 2
cut = "print"
width = "11 3/8"
length = "9"
edges = { cap = { length = "13 1/4" } }
"""
LACE = SKIRT + '[[trim]]\nname = "lace"\nwaste = 0\n'


def test_six_panels_of_17_1_2_in_make_a_lower_edge_of_105_in() -> None:
    # Common practice.
    edges = EdgeLengths(order(HEADING + SKIRT), {})
    assert edges.all(EdgeRef("skirt", "bottom")).value == length("105 in")


def test_a_lining_of_two_panels_of_38_in_is_76_in_round() -> None:
    # Common practice.
    lining = SKIRT.replace("17 1/2", "38").replace("quantity = 6", "quantity = 2")
    edges = EdgeLengths(order(HEADING + lining), {})
    assert edges.all(EdgeRef("skirt", "bottom")).value == length("76 in")


def test_scallops_round_a_hem_are_whole_and_one_is_overlapped() -> None:
    # Common practice: 1 3/4 in scallops round 105 in are 60 whole ones; one more
    # overlaps: 61 scallops, 106 3/4 in.
    found = in_print(LACE + 'along = "skirt: bottom"\nrepeat = "1 3/4"\njoined = "in the round"\n')
    assert needed(found, "lace") == length("1 3/4") * 61 == length("106 3/4")


def test_a_scallop_begun_is_a_whole_scallop_before_one_is_overlapped() -> None:
    # 105 / 2 in is 52 1/2, so 53 scallops, and one: 108 in; not 105 + 2 up to 108 by luck:
    # with 1 7/8 in, 105 is exactly 56, and one: 106 7/8.
    round_hem = 'along = "skirt: bottom"\njoined = "in the round"\n'
    assert needed(in_print(LACE + round_hem + 'repeat = "2"\n'), "lace") == length("108")
    assert needed(in_print(LACE + round_hem + 'repeat = "1 7/8"\n'), "lace") == length("106 7/8")


@pytest.mark.parametrize(
    ("more", "run"),
    [
        ("", "105 1/2"),  # two ends of 1/4 turned under
        ('ends = "turned under"', "105 1/2"),
        ('ends = "raw"', "105"),
        ('ends = "in a seam"', "106 1/4"),  # two ends of 5/8
        ('joined = "in the round"', "105 1/2"),  # 1/2 overlapped
        ('joined = "in the round"\noverlap = "7/8"', "105 7/8"),
        ('joined = "in the round"\noverlap = 0', "105"),
        ('repeat = "2"\nends = "raw"', "106"),
        ('repeat = "2"', "106 1/2"),
        ("rows = 3", "316 1/2"),  # 3 x 105 1/2
        ("quantity = 2", "211"),
        ("fullness = 2", "210 1/2"),  # the ends are not doubled
        ('fullness = 1.5\njoined = "in the round"', "158"),
        ('fullness = 1.5\nrepeat = "2"\njoined = "in the round"', "160"),  # 157 1/2, 158, 160
    ],
)
def test_a_trim_along_a_hem_takes_its_ends_its_rows_and_its_fullness(more: str, run: str) -> None:
    assert needed(in_print(LACE + f'along = "skirt: bottom"\n{more}\n'), "lace") == length(run)


def test_a_trim_follows_several_edges_together_or_each() -> None:
    # Together: 105 + 2 x 11 3/8 in and one pair of ends; each: 6 and 2 runs with ends of their own.
    along = 'along = ["skirt: bottom", "sleeve: bottom"]\n'
    together = in_print(LACE + along)
    each = in_print(LACE + along + 'run = "each"\n')
    assert needed(together, "lace") == length("128 1/4")
    assert needed(each, "lace") == length("18") * 6 + length("11 7/8") * 2


def test_each_run_is_rounded_to_whole_repeats_by_itself() -> None:
    # 11 3/8 in is 6 scallops of 2 in, 12 in and one overlapped: 14 in a sleeve.
    cuffs = 'along = "sleeve: bottom"\nrun = "each"\nrepeat = "2"\njoined = "in the round"\n'
    assert needed(in_print(LACE + cuffs), "lace") == length("28")


def test_a_trim_along_some_of_the_pieces_follows_only_those() -> None:
    assert needed(in_print(LACE + 'along = "4 x skirt: bottom"\n'), "lace") == length("70 1/2")
    each = 'along = "4 x skirt: bottom"\nrun = "each"\n'
    assert needed(in_print(LACE + each), "lace") == length("72")


def test_an_edge_may_be_named_by_a_table() -> None:
    along = 'along = { piece = "sleeve", edge = "cap", count = 1 }\nends = "raw"\n'
    assert needed(in_print(LACE + along), "lace") == length("13 1/4")


def test_a_trim_along_a_named_edge_takes_its_stated_length() -> None:
    assert needed(in_print(LACE + 'along = "sleeve: cap"\nends = "raw"\n'), "lace") == length(
        "26 1/2"
    )


def test_a_trim_of_a_stated_length_takes_its_ends_as_well() -> None:
    assert needed(in_print(LACE + 'length = "40 1/4"\n'), "lace") == length("40 3/4")


def test_a_trim_along_a_seam_is_as_long_as_the_ungathered_edge() -> None:
    # 105 in of skirt are gathered to two sleeves' 22 3/4 in (of all seams the oddest).
    seam = '[[seam]]\nname = "odd"\nedges = ["skirt: top", "sleeve: bottom"]\n'
    gathered = seam + 'gathered = "skirt: top"\n'
    lace = '[[trim]]\nname = "lace"\nwaste = 0\nends = "raw"\nalong = "odd"\n'
    assert needed(in_print(SKIRT + gathered + lace), "lace") == length("22 3/4")
    assert needed(in_print(SKIRT + seam + lace), "lace") == length("105")


def test_a_trim_changes_when_its_panel_does() -> None:
    along = 'along = "skirt: bottom"\nends = "raw"\n'
    assert needed(in_print(LACE.replace("17 1/2", "18 1/4") + along), "lace") == length("109 1/2")


def test_trims_of_one_item_are_totalled_before_rounding() -> None:
    # 2 x 22 3/4 in and 13 1/4 in are 58 3/4 in: 1 3/4 yd. Rounded alone: 1 3/8 and 1/2 yd.
    shop = catalog(
        [{"item": "wave-lace", "kind": "trim"}],
        [{"item": "wave-lace", "price": "2.40", "per": "yd", "currency": "USD"}],
    )
    cuffs = LACE + 'buy = "wave-lace"\nalong = "sleeve: bottom"\nends = "raw"\nrows = 2\n'
    cap = (
        '[[trim]]\nname = "cap lace"\nbuy = "wave-lace"\nwaste = 0\nends = "raw"\n'
        'along = "1 x sleeve: cap"\n'
    )
    found = estimate(plan(HEADING + cuffs + cap), shop)
    assert needed(found, "lace") == needed(found, "cap lace") == length("58 3/4")
    assert bought(found, "lace").buy.bought == length("1 3/4 yd")


def test_copies_multiply_every_run() -> None:
    thrice = HEADING.replace('"apron"', '"apron"\ncopies = 3')
    found = estimate(plan(thrice + LACE + 'along = "skirt: bottom"\nends = "raw"\n'))
    assert needed(found, "lace") == length("315")


def test_trims_by_the_length_take_a_twentieth_for_waste() -> None:
    # 105 in x 1.05.
    found = in_print(LACE.replace("waste = 0\n", "") + 'along = "skirt: bottom"\nends = "raw"\n')
    assert needed(found, "lace") == length("110 1/4")


@pytest.mark.parametrize(
    ("along", "told"),
    [
        ("skrt: bottom", "there is no piece 'skrt'; did you mean 'skirt'?"),
        ("skirt: botom", "'skirt' has no edge 'botom'; did you mean 'bottom'?"),
        ("7 x skirt: bottom", "'skirt: bottom' is meant 7 times, but the piece 6 times; "
         "write at most 6"),
        ("hem seam", "there is no seam 'hem seam'; "
         'name an edge, as in "skirt panel: bottom"'),
    ],
)  # fmt: skip
def test_a_trim_along_what_does_not_exist_is_refused(along: str, told: str) -> None:
    assert complaints(HEADING + LACE + f'along = "{along}"\n') == [
        f"apron.toml, line 25 (trim 'lace'): {told}"
    ]


def test_a_named_edge_without_a_length_says_how_to_state_it() -> None:
    text = LACE.replace('{ length = "13 1/4" }', '"raw"') + 'along = "sleeve: cap"\n'
    (found,) = complaints(HEADING + text)
    assert "'cap' is no side of a piece, and has no length of its own" in found
    assert 'cap = { length = "10", finish = "faced" }' in found


def elastic(more: str) -> str:
    return SKIRT + f'[[elastic]]\nname = "waist"\nmeasure = "28 1/2"\nwaste = 0\n{more}\n'


@pytest.mark.parametrize(
    ("more", "cut"),
    [
        # 28 1/2 in less a tenth is 25.65 in.
        ("", "26.65"),  # 1 in overlapped, after the stretch
        ('stretch = "20 %"', "23.8"),  # 22.8 + 1
        ('stretch = 0\noverlap = "3/4"', "29.25"),
        ('joined = "open"', "26.9"),  # two ends of 5/8 in seams
        ("rows = 2", "53.3"),
        ('quantity = 2\nstretch = "20 %"', "47.6"),
    ],
)
def test_elastic_is_cut_short_by_its_stretch_and_then_overlapped(more: str, cut: str) -> None:
    assert needed(in_print(elastic(more)), "waist") == length(f"{cut} in")


def test_elastic_has_an_overlap_of_its_own_in_the_garment() -> None:
    heading = HEADING.replace('"apron"', '"apron"\noverlap = "0"\nelastic_overlap = "3/4"')
    assert needed(estimate(plan(heading + elastic("stretch = 0"))), "waist") == length("29 1/4")


def test_a_body_measure_may_be_a_named_one() -> None:
    text = elastic("stretch = 0\noverlap = 0").replace('"28 1/2"', '{ from = "waist" }')
    found = in_print(text + '[measures]\nwaist = "31 1/4"\n')
    assert needed(found, "waist") == length("31 1/4")


def test_elastic_stands_with_the_elastics() -> None:
    assert bought(in_print(elastic("")), "waist").group.value == "Elastics"


def test_the_working_of_a_run_shows_each_step_in_order() -> None:
    text = LACE + 'along = "skirt: bottom"\nfullness = 1.5\nrepeat = "2"\njoined = "in the round"\n'
    whole = order(HEADING + text)
    edges = EdgeLengths(whole, {})
    source = whole.source("lace", ("trim", 0))
    (run,) = trim_runs(whole.plan.trim[0], Material(length("2")), edges, source)
    assert [step.label for step in run.length.steps] == [
        "skirt: bottom, one", "so many pieces, sewn to one another", "fullness", "whole repeats",
        "one repeat overlapped where the round joins",
    ]  # fmt: skip
    assert run.source.place == "apron.toml, line 22"


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
    assert needed(in_print(SKIRT + trim), "lace") == 94 * length("1 3/4")
