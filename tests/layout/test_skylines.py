"""Many skylines at once do to each what is done to a single one."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import skyline
from estimator.layout.skylines import Skylines, flat, joined, merged, split, without_dead_ends

TOP = 12


@st.composite
def outlines(draw):
    """Segments (start, level, width) of a box 12 high, no two neighbours level, none empty."""
    pairs = draw(st.lists(st.tuples(st.integers(0, TOP), st.integers(1, 5)), min_size=1))
    segments, at = [], 0
    for level, width in pairs:
        segments.append((at, level, width))
        at += width
    return skyline.merged(segments)


def widened(outline, across):
    """The outline in a box `across` wide: what is missing is as high as the box."""
    end = outline[-1][0] + outline[-1][2]
    return skyline.merged((*outline, (end, TOP, across - end)))


def together(several):
    across = max(outline[-1][0] + outline[-1][2] for outline in several) + 1
    return joined([one_row(widened(outline, across), across) for outline in several])


def one_row(outline, across):
    starts = [0, *(start for start, _, _ in outline), across]
    levels = [TOP, *(level for _, level, _ in outline), TOP]
    return Skylines(np.array([starts]), np.array([levels]))


def apart(skylines):
    """Each row as the segments that it tells of."""
    rows = []
    for starts, levels in zip(*(array.tolist() for array in skylines), strict=True):
        ends = [*starts[2:], skylines.across]
        rows.append(
            skyline.merged(
                [
                    (start, level, end - start)
                    for start, level, end in zip(starts[1:], levels[1:], ends, strict=True)
                ]
            )
        )
    return rows


@given(st.lists(outlines(), min_size=1, max_size=5))
@settings(max_examples=150, deadline=None)
def test_skylines_of_all_lengths_stand_in_one_table_and_stay_what_they_were(several):
    across = max(outline[-1][0] + outline[-1][2] for outline in several) + 1
    table = together(several)
    assert apart(table) == [widened(outline, across) for outline in several]
    assert apart(merged(table)) == apart(table)


@given(st.lists(outlines(), min_size=1, max_size=5), st.data())
@settings(max_examples=200, deadline=None)
def test_a_piece_put_into_each_skyline_raises_what_it_lies_on(several, data):
    table = together(several)
    rows = apart(table)
    at, starts, left, right, wanted = [], [], [], [], []
    for row in rows:
        index = data.draw(st.integers(0, len(row) - 1))
        start, level, width = row[index]
        piece, high = data.draw(st.integers(1, width)), data.draw(st.integers(level, TOP))
        at.append(index + 1)
        starts.append(start + piece)
        left.append(high)
        right.append(level)
        beside = ((start, high, piece), (start + piece, level, width - piece))
        wanted.append(skyline.merged((*row[:index], *beside, *row[index + 1 :])))
    done = merged(split(table, *map(np.array, (at, starts, left, right))))
    assert apart(done) == wanted
    inner = done.levels[:, 1:-1]
    assert (np.diff(done.starts, axis=1) >= 0).all()
    assert ((inner != done.levels[:, 2:]) | (inner == TOP)).all()


@given(st.lists(outlines(), min_size=1, max_size=5), st.data())
@settings(max_examples=300, deadline=None)
def test_dead_ends_are_given_up_in_each_as_in_one_by_itself(several, data):
    table = together(several)
    narrowest = [data.draw(st.integers(1, 6)) for _ in several]
    shortest = [data.draw(st.integers(1, 6)) for _ in several]
    done, lost = without_dead_ends(table, np.array(narrowest), np.array(shortest))
    for row, after, gone, narrow, short in zip(
        apart(table), apart(done), lost.tolist(), narrowest, shortest, strict=True
    ):
        assert (after, gone) == skyline.without_dead_ends(row, TOP, narrow, short)


def test_an_empty_box_is_one_segment_between_two_walls():
    assert apart(flat(7, TOP)) == [((0, 0, 7),)]
