"""Elastics from a body measure, an opening or an edge; by kind, in casings, and shirring."""

import pytest

from estimator import estimate
from estimator.reports.assumptions import assumptions
from estimator.written import length
from tests.plans import HEADING, bought, complaints, in_print, needed, plan

TROUSERS = """
[[piece]]
name = "front"
quantity = 2
cut = "print"
width = "15"
length = "40"
edges = { top = "casing 1", leg = { length = "11 1/2", finish = "raw" } }
[[piece]]
name = "back"
quantity = 2
cut = "print"
width = "16"
length = "40"
edges = { leg = { length = "13", finish = "raw" } }
"""


def elastic(more: str) -> str:
    return f'{TROUSERS}[[elastic]]\nname = "waist"\nwaste = 0\n{more}\n'


@pytest.mark.parametrize(
    ("more", "cut"),
    [
        # The waist is 28 in; 1 in overlaps after the stretch.
        ('measure = "28"', "26.2"),  # no kind: 10 %, 25.2 + 1
        ('measure = "28"\nkind = "woven"', "26.2"),
        ('measure = "28"\nkind = "braided"', "24.8"),  # 15 %, 23.8 + 1
        ('measure = "28"\nkind = "knitted"\nstretch = "25 %"', "22"),  # as stated: 21 + 1
        # A finished opening of 26 in, knitted: 26 x 0.85 = 22.1.
        ('opening = "26"\nkind = "knitted"', "23.1"),
        # Round a leg opening: 11 1/2 + 13 = 24 1/2 in, x 0.9 = 22.05, + 1; and two legs.
        ('along = ["front: leg", "back: leg"]', "46.1"),
        # Each of two front legs by itself, open: 11 1/2 x 0.9 = 10.35 and two seams of 5/8 in.
        ('along = "front: leg"\njoined = "open"', "23.2"),
        # Shirring: nine rows of 38 in as they are drawn up, with 2 in to knot at each end: 9 x 42.
        ('opening = "38"\nkind = "shirring"\nrows = 9', "378"),
        ('opening = "38"\nkind = "shirring"\nrows = 9\nstretch = "20 %"', "309.6"),  # 9 x 34.4
    ],
)
def test_elastic_is_cut_by_its_kind_and_joined_after_that(more: str, cut: str) -> None:
    assert needed(in_print(elastic(more)), "waist") == length(f"{cut} in")


def test_what_a_garment_says_of_stretch_goes_before_what_is_usual() -> None:
    heading = HEADING.replace('"apron"', '"apron"\nelastic_stretch = "20 %"')
    found = estimate(plan(heading + elastic('measure = "28"\nkind = "braided"')))
    assert needed(found, "waist") == length("23.4 in")  # 22.4 + 1


def test_the_usual_stretch_stands_on_the_list() -> None:
    found = in_print(elastic('measure = "28"\nkind = "braided"'))
    assert (
        "apron: waist is cut 15 % shorter than the body measure, as is usual of braided elastic, "
        "then overlapped 1 in."
    ) in assumptions(found)


def test_elastic_goes_into_a_casing_that_is_deep_and_long_enough() -> None:
    # Two fronts of 15 in are a casing of 30 in, 1 in deep.
    cased = 'casing = "front: top"\nmeasure = "28"\n'
    assert bought(in_print(elastic(cased + 'width = "1"')), "waist").needed == length("26.2 in")
    (deep,) = complaints(HEADING + elastic(cased + 'width = "1 1/4"'))
    assert "elastic 1 1/4 in wide will not go into a casing of 1 in" in deep
    (rows,) = complaints(HEADING + elastic(cased + 'width = "3/8"\nrows = 3'))
    assert "3 rows of elastic 3/8 in wide will not go into a casing of 1 in" in rows
    # 34 x 0.9 = 30.6 in, its overlap not reckoned.
    (long,) = complaints(HEADING + elastic(cased.replace("28", "34")))
    assert "the casing is 30 in long, and the elastic in it 30 5/8 in without" in long
    (none,) = complaints(HEADING + elastic('casing = "back: top"\nmeasure = "28"'))
    assert "'back: top' has no casing; write edges = { top = \"casing 1\" } in the piece" in none


@pytest.mark.parametrize(
    ("more", "bought_as"),
    [
        # A round of 33 in is 29.7 in long at rest, in 30 in of casing; 1 in overlaps beyond that.
        ("", "30.7"),
        ('shrinkage = "5 %"\noverlap = "0.7"', "32"),  # (29.7 + 0.7) / 0.95
        ('joined = "open"', "30.95"),  # two seams of 5/8 in take its ends
    ],
)
def test_the_overlap_and_the_shrinkage_of_an_elastic_need_no_casing(
    more: str, bought_as: str
) -> None:
    cased = f'casing = "front: top"\nmeasure = "33"\n{more}'
    assert needed(in_print(elastic(cased)), "waist") == length(f"{bought_as} in")


def test_an_elastic_that_just_fills_its_casing_at_rest_goes_into_it() -> None:
    # 30 / (1 - 0.2) = 37 1/2 in; one of 37 5/8 in is 30.1 in long
    fits = 'casing = "front: top"\nstretch = "20 %"\nmeasure = "{}"'
    assert needed(in_print(elastic(fits.format("37 1/2"))), "waist") == length("31 in")
    (refused,) = complaints(HEADING + elastic(fits.format("37 5/8")))
    assert "the casing is 30 in long" in refused


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ("", "an elastic states one of measure, opening and along"),
        ('measure = "28"\nopening = "26"', "an elastic states more than one of measure, opening"),
        ('measure = "28"\nstretch = "100 %"', "leaves nothing; write less than 100 %"),
        ('measure = "28"\nkind = "rubber"', "kind cannot be 'rubber'"),
        ('along = "front: lag"', "'front' has no edge 'lag'; did you mean 'leg'?"),
    ],
)
def test_an_elastic_that_makes_no_sense_is_refused(more: str, told: str) -> None:
    assert any(told in one for one in complaints(HEADING + elastic(more)))


def test_an_elastic_on_each_of_two_pieces_is_told_and_how_one_goes_over_both() -> None:
    each = in_print(elastic('along = "front: leg"\njoined = "open"'))
    assert (
        "apron: waist is one on each of 2 × front: leg; for one over all of them, name each in the "
        'plan, as in along = ["1 x front: leg", "1 x front: leg"].'
    ) in assumptions(each)
    # 2 x 11 1/2 x 0.9 = 20.7 in and two seams of 5/8 in once
    both = in_print(elastic('along = ["1 x front: leg", "1 x front: leg"]\njoined = "open"'))
    assert needed(both, "waist") == length("21.95 in")
    assert not any("waist is one" in line for line in assumptions(both))


def test_an_elastic_round_each_of_two_legs_is_told() -> None:
    legs = in_print(elastic('along = ["front: leg", "back: leg"]'))
    assert any(
        "waist is one over each front: leg and back: leg, 2 of it;" in line
        for line in assumptions(legs)
    )
