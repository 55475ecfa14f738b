"""A strip of limited length takes as much of the pieces as is found, never more than goes on."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth, fullest
from estimator.layout.in_cuts import renamed
from tests.verify_layout import assert_sound

blanks = st.builds(
    Blank,
    name=st.just("piece"),
    width=st.integers(5, 60),
    length=st.integers(5, 60),
    quantity=st.integers(1, 4),
    may_turn=st.booleans(),
)


@given(
    st.lists(blanks, min_size=1, max_size=5),
    st.integers(10, 60),
    st.integers(10, 80),
    st.sampled_from([0, 0, 7]),
    st.booleans(),
)
def test_what_lies_on_the_strip_is_sound_and_no_longer_than_it(
    asked: list[Blank], width: int, longest: int, repeat: int, rows_only: bool
) -> None:
    cloth = Cloth(width, repeat)
    layout = fullest(cloth, asked, longest, rows_only=rows_only)
    fits = [
        one
        for one in asked
        if (one.width <= width and one.length <= longest)
        or (one.may_turn and one.length <= width and one.width <= longest)
    ]
    assert (layout is None) == (not fits)
    if layout is None:
        return
    held = Counter(place.blank for place in layout.placements)
    assert layout.length <= longest
    numbers = sorted(held)
    assert all(held[number] <= asked[number].quantity for number in numbers)
    own = [replace(asked[number], quantity=held[number]) for number in numbers]
    places = {number: place for place, number in enumerate(numbers)}
    assert_sound(cloth, own, renamed(layout, places))


def test_the_two_large_pieces_that_fill_a_strip_go_before_many_small_ones() -> None:
    # 20 x 30 holds two of 20 x 15, or six of 10 x 10 that the cloth could hold as well
    layout = fullest(Cloth(20), [Blank("small", 10, 10, 5), Blank("large", 20, 15, 2)], 30)
    assert layout is not None
    assert Counter(place.blank for place in layout.placements) == {1: 2}


def test_a_piece_longer_than_the_strip_lies_across_where_it_may() -> None:
    layout = fullest(Cloth(40), [Blank("tie", 5, 36, 2, may_turn=True)], 12)
    assert layout is not None
    assert [place.turned for place in layout.placements] == [True, True]
    assert fullest(Cloth(40), [Blank("tie", 5, 36, 2)], 12) is None


def test_rows_on_a_repeat_take_whole_repeats_but_the_last() -> None:
    # heights of 10 on a repeat of 12: two rows end at 22, a third would end at 34
    layout = fullest(Cloth(20, repeat=12), [Blank("panel", 20, 10, 3)], 33)
    assert layout is not None
    assert (len(layout.placements), layout.length) == (2, 22)
