"""Buttons, hooks and eyelets spread over an edge: spaces are one fewer than the buttons."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import estimate
from estimator.buying.types import Purchase
from estimator.measure import ZERO, Length
from estimator.needs.counts import spread_over
from estimator.written import length
from tests.plans import HEADING, bought, complaints, in_print, plan

FRONTS = '[[piece]]\nname = "front"\nquantity = 2\ncut = "print"\nwidth = "12"\nlength = "21"\n'


def notion(more: str) -> Purchase:
    return bought(in_print(f'{FRONTS}[[notion]]\nname = "buttons"\n{more}\n'), "buttons")


def test_buttons_at_most_three_inches_apart_down_a_front_of_21_in() -> None:
    # 21 / 3 = 7 spaces, and one more than the spaces: 8 buttons, 3 in apart.
    line = notion('along = "1 x front: right"\napart = "3"')
    assert line.needed == 8
    assert "8 in a row, 3 in apart" in line.notes


def test_a_space_a_hair_too_wide_takes_one_button_more() -> None:
    # 21 / 2 15/16 = 7.15, so 8 spaces and 9 buttons, 2 5/8 in apart.
    line = notion('along = "1 x front: right"\napart = "2 15/16"')
    assert line.needed == 9
    assert "9 in a row, 2 5/8 in apart" in line.notes


def test_the_first_and_last_button_stand_in_from_the_ends() -> None:
    # 21 - 2 x 1 1/2 = 18; 18 / 4 = 4 1/2, so 5 spaces of 3 3/5 in and 6 buttons.
    line = notion('along = "1 x front: right"\napart = "4"\nfrom_ends = "1 1/2"')
    assert line.needed == 6
    assert "6 in a row, 3 5/8 in apart" in line.notes


def test_a_stated_number_of_buttons_is_told_how_far_apart_they_stand() -> None:
    # 7 buttons over 21 in have 6 spaces of 3 1/2 in.
    line = notion('quantity = 7\nover = "21"')
    assert line.needed == 7
    assert "7 in a row, 3 1/2 in apart" in line.notes


def test_eyelets_stand_on_both_edges() -> None:
    # 21 / 1 1/2 = 14 spaces, 15 eyelets on each of two fronts, and 4 spare: 34 in 2 packs of 24.
    line = notion(
        'along = "front: right"\napart = "1 1/2"\nspare = 4\nsold = [{ put_up = "pack of 24" }]'
    )
    assert (line.needed, line.buy.bought) == (34, 2)
    assert [step.result for step in line.buy.steps] == [length("21 in"), 14, 15, 30, 34, 2]


def test_copies_take_their_buttons_and_the_spare_one_is_for_all() -> None:
    # 3 garments of 8 buttons, and one spare: 25.
    text = HEADING.replace('"apron"', '"apron"\ncopies = 3') + FRONTS
    text += '[[notion]]\nname = "buttons"\nalong = "1 x front: right"\napart = "3"\nspare = 1\n'
    assert bought(estimate(plan(text)), "buttons").needed == 25


def test_24_lignes_are_six_tenths_of_an_inch() -> None:
    # 40 lignes = 1 in (common practice): 24 are 0.6 in = 15.24 mm. A buttonhole is its diameter and
    # its thickness (common practice), 0.6 + 0.125 = 0.725 in, up to a sixteenth: 3/4 in.
    line = notion('quantity = 5\nsize = "24 lignes"')
    assert line.notes == (
        "size 24 lignes, about 5/8 in or 15 mm",
        "a buttonhole of 3/4 in, its diameter and thickness; try one first",
    )


@pytest.mark.parametrize("written", ["40 lignes", "1 in", "25.4 mm"])
def test_a_button_may_be_sized_in_lignes_inches_or_millimetres(written: str) -> None:
    line = notion(f'size = "{written}"\nthickness = "1/4"')
    assert line.notes[0] == "size 40 lignes, about 1 in or 25 mm"
    assert "1 1/4 in" in line.notes[1]


BONES = '[[boning]]\nname = "bones"\nlength = "10"\nquantity = 8\n'


def test_each_bone_has_two_tips() -> None:
    text = BONES + '[[notion]]\nname = "tips"\nends_of = "bones"\nspare = 2\n'
    assert bought(in_print(FRONTS + text), "tips").needed == 18


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ('quantity = 3\napart = "2"\nover = "20"', "its count is stated and reckoned as well"),
        ('apart = "2"', "apart goes with the edge or distance over which it is spread"),
        ('over = "2"\nalong = "front: right"', "a notion states along and over"),
        ('over = "2"\napart = "1"\nfrom_ends = "1"', "from_ends leaves nothing between"),
        ('over = "4 yd"\napart = "0.01"', "there would be 14401 in a row"),
        ('along = "frnt: right"\napart = "1"', "there is no piece 'frnt'; did you mean 'front'?"),
        ('ends_of = "bone"', "there are no bones 'bone'"),
    ],
)
def test_a_count_that_makes_no_sense_is_refused(more: str, told: str) -> None:
    (found,) = complaints(f'{HEADING}{FRONTS}[[notion]]\nname = "buttons"\n{more}\n')
    assert told in found


def test_a_distance_known_only_when_made_up_is_asked_for() -> None:
    band = '[[piece]]\nname = "band"\ncut = "print"\nmade = "facing"\nwidth = "2"\n'
    band += 'onto = "front: top"\n'
    text = '[[notion]]\nname = "hooks"\nalong = "band: left"\napart = "1"\n'
    (found,) = complaints(HEADING + FRONTS + band + text)
    assert "'band: left' has its length only once it is made up; state the distance" in found


SIZES = st.integers(1, 10**7).map(Length)


@given(SIZES, SIZES)
def test_no_space_is_wider_than_wished_and_one_button_fewer_would_make_it_so(
    whole: Length, apart: Length
) -> None:
    whole = max(whole, Length(apart.ticks // 1000 + 1))
    apart = max(apart, Length(whole.ticks // 1000 + 1))
    found = spread_over(whole, ZERO, apart, 1)
    spaces = found.count - 1
    assert apart * spaces >= whole
    assert apart * (spaces - 1) < whole
    assert found.apart * spaces >= whole
