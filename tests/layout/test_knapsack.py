"""The best selection of one line, beside every selection gone through one by one."""

from __future__ import annotations

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout.knapsack import Item, Line

ITEMS = st.lists(
    st.tuples(st.integers(1, 40), st.integers(1, 9), st.integers(0, 30)), min_size=1, max_size=3
)


@given(ITEMS, st.integers(5, 60))
@settings(max_examples=200, deadline=None)
def test_no_selection_of_many_copies_is_worth_more_than_the_best(items, room):
    line = Line(room, [Item(count, (size,)) for count, size, _ in items])
    worth, pieces = line.best([[value] for *_, value in items])
    taken = [sum(index == item for index, _ in pieces) for item in range(len(items))]
    assert all(took <= count for took, (count, *_) in zip(taken, items, strict=True))
    assert sum(took * size for took, (_, size, _) in zip(taken, items, strict=True)) <= room
    assert worth == sum(took * value for took, (*_, value) in zip(taken, items, strict=True))
    every = product(*(range(min(count, room // size) + 1) for count, size, _ in items))
    assert worth == max(
        sum(took * value for took, (*_, value) in zip(takes, items, strict=True))
        for takes in every
        if sum(took * size for took, (_, size, _) in zip(takes, items, strict=True)) <= room
    )


def test_a_line_of_three_hundred_copies_is_filled_in_few_steps():
    line = Line(3_001, [Item(300, (10,)), Item(4, (7,))])
    worth, _ = line.best([[10], [7]])
    assert worth == 3_001  # 298 of ten and 3 of seven
    assert line.work < 10_000  # one by one it takes ten times as many
