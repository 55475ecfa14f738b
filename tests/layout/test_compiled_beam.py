"""What the compiled beam does to an outline is what is done to a skyline, segment by segment."""

from __future__ import annotations

from itertools import product

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.layout import compiled_beam, skyline
from estimator.layout.beam_room import ACROSS, ALONG, AT, SEGMENTS, TO_LEFT, WAY, X, Y
from estimator.layout.compiled_beam import (
    compiled,
    merged,
    outline_with,
    without_dead_ends,
    work_out,
)

TOP = 12
SPARE_COLUMNS = 4


@st.composite
def outlines(draw):
    """Segments (start, level, width) of a box 12 high, no two neighbours level, none empty."""
    pairs = draw(st.lists(st.tuples(st.integers(0, TOP), st.integers(1, 5)), min_size=1))
    segments, at = [], 0
    for level, width in pairs:
        segments.append((at, level, width))
        at += width
    return skyline.merged(segments)


def written(segments):
    """Starts and levels of the segments between their two walls, with room for more."""
    across = segments[-1][0] + segments[-1][2]
    room = [0] * SPARE_COLUMNS
    starts = [0, *(start for start, _, _ in segments), across, *room]
    levels = [TOP, *(level for _, level, _ in segments), TOP, *room]
    return np.array(starts, dtype=np.int64), np.array(levels, dtype=np.int64)


def read(starts, levels, segments):
    """The segments between the walls; the walls themselves have to stand where they did."""
    assert levels[0] == levels[segments + 1] == TOP
    return tuple(
        (int(starts[at]), int(levels[at]), int(starts[at + 1] - starts[at]))
        for at in range(1, segments + 1)
    )


@given(st.lists(st.tuples(st.integers(0, TOP), st.integers(0, 5)), min_size=1))
@settings(max_examples=200, deadline=None)
def test_level_neighbours_are_made_one_and_empty_segments_dropped(pairs):
    segments, at = [], 0
    for level, width in pairs:
        segments.append((at, level, width))
        at += width
    starts, levels = written(segments)
    assert read(starts, levels, merged(starts, levels, len(segments))) == skyline.merged(segments)


@given(outlines(), st.data())
@settings(max_examples=200, deadline=None)
def test_a_piece_put_into_a_gap_raises_what_it_lies_on(outline, data):
    index = data.draw(st.integers(0, len(outline) - 1))
    start, level, width = outline[index]
    piece, high = data.draw(st.integers(1, width)), data.draw(st.integers(level, TOP))
    to_left = data.draw(st.booleans())
    rest = (width - piece, level)
    beside = [(piece, high), rest] if to_left else [rest, (piece, high)]
    first, second = ((start, beside[0][1], beside[0][0]), (start + beside[0][0], *beside[1][::-1]))
    wanted = skyline.merged((*outline[:index], first, second, *outline[index + 1 :]))

    starts, levels = written(outline)
    ways, step, gap = np.zeros((6, 1), np.int64), np.zeros(6, np.int64), np.zeros(3, np.int64)
    ways[ACROSS, 0], ways[ALONG, 0] = piece, high - level
    step[WAY], step[X], step[Y] = 0, start if to_left else start + width - piece, level
    step[TO_LEFT] = to_left
    gap[SEGMENTS], gap[AT] = len(outline), index + 1
    into = np.zeros_like(starts), np.zeros_like(levels)
    assert read(*into, outline_with(step, ways, gap, starts, levels, *into)) == wanted


@given(outlines(), st.integers(1, 6), st.integers(1, 6))
@settings(max_examples=300, deadline=None)
def test_dead_ends_are_given_up_with_the_area_that_they_hold(outline, narrowest, shortest):
    starts, levels = written(outline)
    segments, lost = without_dead_ends(starts, levels, len(outline), narrowest, shortest)
    done = read(starts, levels, segments), lost
    assert done == skyline.without_dead_ends(outline, TOP, narrowest, shortest)


@given(
    st.lists(
        st.tuples(st.integers(1, 80), st.integers(1, 80), st.booleans(), st.integers(0, 3)),
        min_size=1,
        max_size=4,
    )
)
@settings(max_examples=200, deadline=None)
def test_what_no_sum_of_the_pieces_fills_stays_empty(kinds):
    room = 200
    own = [(one, other) if two_ways else (one,) for one, other, two_ways, _ in kinds]
    first = np.cumsum([0, *(len(sizes) for sizes in own)])
    table = np.zeros(room + 1, dtype=np.int64)
    most = np.array([kind[3] for kind in kinds])
    work_out(table, np.array([size for sizes in own for size in sizes]), first, most)

    # every choice: each piece in one of its ways, or left out
    pieces = [(0, *sizes) for sizes, count in zip(own, most, strict=True) for _ in range(count)]
    sums = {0}
    for piece in pieces:
        sums = {made + size for made, size in product(sums, piece)}
    for size in range(room + 1):
        assert table[size] == size - max(made for made in sums if made <= size)


def test_where_no_folder_may_be_written_the_loops_are_compiled_for_one_run(monkeypatch):
    njit = compiled_beam.njit

    def nowhere_to_keep(*functions, **how):
        if how.get("cache"):
            raise RuntimeError("cannot cache function: no locator available")
        return njit(*functions, **how)

    monkeypatch.setattr(compiled_beam, "njit", nowhere_to_keep)

    @compiled
    def twice(length):
        return length + length

    assert twice(21) == 42
    assert twice.signatures
