"""Proofs that pieces do not fit are never given for pieces that do."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import Blank, Cloth
from estimator.layout.box import box_for
from estimator.layout.effort import Budget
from estimator.layout.fits import cannot_fit, closed_forms
from estimator.layout.kinds import kinds_of
from estimator.layout.knapsack import Item, Line
from estimator.layout.scales import best_scale
from tests.benchmarks.rectangles import cut_up

ENOUGH = 10_000_000


def proved_not_to_fit(blanks, width, length, repeat=0, scales=3):
    box = box_for(kinds_of(blanks), Cloth(width, repeat), length, 1)
    return box is None or cannot_fit(box, Budget(ENOUGH), scales=scales)


@given(
    seed=st.integers(0, 10_000),
    pieces=st.integers(2, 20),
    guillotine=st.booleans(),
    size=st.sampled_from([(12, 17), (30, 50), (101, 67)]),
    may_turn=st.booleans(),
)
@settings(max_examples=120, deadline=None)
def test_pieces_cut_from_a_box_are_never_proved_not_to_fit_into_it(
    seed, pieces, guillotine, size, may_turn
):
    width, length = size
    cut = cut_up(
        seed,
        pieces,
        guillotine=guillotine,
        width=width,
        length=length,
        may_turn=may_turn,
        slimmest=1,
    )
    assert not proved_not_to_fit(cut.blanks, width, length)


def test_one_tick_less_than_the_box_they_were_cut_from_is_proved_too_little():
    cut = cut_up(3, 12, guillotine=True, width=30, length=50, slimmest=1)
    assert proved_not_to_fit(cut.blanks, 30, 49)


def test_two_lengths_that_leave_no_room_for_each_other_need_the_best_scale():
    #  three of 5 x 5 and three of 6 x 4 on 10: no two sixes lie beside each other, nor a six and a
    #  five, so the sixes are 12 high and the fives 10: 22; their area asks for 15
    blanks = [Blank("five", 5, 5, 3), Blank("six", 6, 4, 3)]
    assert proved_not_to_fit(blanks, 10, 21)
    assert not proved_not_to_fit(blanks, 10, 22)


def test_with_a_repeat_pieces_that_would_fit_between_repeats_do_not():
    blanks = [Blank("panel", 10, 11, 3)]
    assert not proved_not_to_fit(blanks, 10, 33)
    assert proved_not_to_fit(blanks, 10, 50, repeat=20)
    assert not proved_not_to_fit(blanks, 10, 51, repeat=20)


@given(st.lists(st.integers(1, 40), min_size=1, max_size=12), st.integers(1, 60))
@settings(max_examples=300, deadline=None)
def test_no_line_holds_pieces_that_a_closed_form_says_are_worth_more_than_it(sizes, room):
    fitting = [size for size in sizes if size <= room]
    for table, worth in closed_forms(sorted(set(fitting)), room):
        best = {0: 0}
        for size in fitting:
            for used, value in list(best.items()):
                at = used + size
                if at <= room:
                    best[at] = max(best.get(at, 0), value + table[size])
        assert max(best.values()) <= worth


@given(
    st.lists(
        st.tuples(st.integers(1, 3), st.integers(1, 20), st.integers(0, 50)),
        min_size=1,
        max_size=7,
    ),
    st.integers(1, 40),
)
@settings(max_examples=300, deadline=None)
def test_the_best_selection_in_a_line_is_that_of_trying_all_of_them(kinds, room):
    every = {(0, 0)}
    for count, size, value in kinds:
        every |= {
            (used + n * size, worth + n * value)
            for used, worth in every
            for n in range(1, count + 1)
            if used + n * size <= room
        }
    line = Line(room, [Item(count, (size,)) for count, size, _ in kinds])
    best, pieces = line.best([[value] for *_, value in kinds])
    assert best == max(worth for _, worth in every)
    assert sum(kinds[item][2] for item, _ in pieces) == best
    assert sum(kinds[item][1] for item, _ in pieces) <= room


def test_the_best_scale_of_thirds_counts_them_as_thirds():
    # pieces of 34 of 100, each 60 long: two in a line, so five of them take 150 and not 102
    scale = best_scale(Line(100, [Item(5, (34,))]), [[60]], 50)
    assert scale is not None
    assert scale.length == 150


def test_lines_that_take_too_many_pieces_are_left_unproved_and_not_gone_through():
    # 9000 pockets in a box a hundred yards long: a line of it takes hundreds of them
    blanks = [Blank("pocket", 60, 70, quantity=9_000)]
    box = box_for(kinds_of(blanks), Cloth(440), 91_000, 10)
    budget = Budget(ENOUGH)
    assert not cannot_fit(box, budget, scales=2)
    assert ENOUGH - budget.work < 10_000
