"""The loops of a wide beam, compiled: fillings of one box, grown piece by piece beside each other.

A filling grows at its lowest gap, or at the next lowest one, the lowest being left empty: a piece
goes to the higher wall of the gap. Each piece in each of the two gaps of each filling is scored,
and the best of all lead to the fillings that are followed next.

Sizes, areas and waste are whole numbers; a score is one quotient of two of them, which every
machine rounds alike, and ties go by position: so every machine chooses the same.

All that is compiled stands in this module: compiled code is kept until its own file changes,
whatever happens to a file from which it has taken functions. Nor does it know types of our own,
which a later version might name otherwise. The inner functions take arrays by themselves: each
array taken out of a tuple is counted as one more user of it, which takes longer than the rest.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numpy as np
from numba import njit

from estimator.layout.beam_room import (
    ACROSS,
    ALONG,
    AT,
    DESCENDANTS,
    FILLING,
    GAP,
    GAPS,
    KIND,
    LATEST_ACROSS,
    LATEST_ALONG,
    MARK,
    SEGMENTS,
    TO_LEFT,
    WASTED,
    WAY,
    WORTH,
    WORTH_IN,
    Scores,
    Whole,
    X,
    Y,
)

TRIED = 4, 3
"""Steps tried for each filling wanted; some lead to one already there, or waste too much."""
FILLED, STUCK, SPENT = 2, 1, 0
"""How a beam ends: all pieces in, no room for another one, or the work allowed is done."""
WORK_OF_A_STEP, WORK_OF_A_FILLING = 8, 4
NEVER = 2**62
"""Longer than any cloth: the size of a piece that is not there."""
MIX = -7046029254386353131, -4417276706812531889, -4658895280553007687
"""Odd numbers that mix the bits of a mark."""
SHIFT = 29

Compiled = TypeVar("Compiled", bound=Callable[..., Any])


def compiled(function: Compiled) -> Compiled:
    """The function compiled when it is first called, and kept from one run to the next."""
    try:
        return cast(Compiled, njit(cache=True)(function))
    except RuntimeError:  # there is no folder that may be written: compile it for this run alone
        return cast(Compiled, njit(function))


@compiled
def _copy(row: Whole, into: Whole, begin: int, end: int, further: int) -> None:
    """Copy some entries of a row to those so much further in another: much faster than slices."""
    for at in range(begin, end):
        into[at + further] = row[at]


@compiled
def _most(counts: Whole, fillings: int) -> Whole:
    """How many pieces of each kind are left where most are."""
    most = np.zeros(counts.shape[1], np.int64)
    for filling in range(fillings):
        for kind in range(len(most)):
            most[kind] = max(most[kind], counts[filling, kind])
    return most


@compiled
def _unfilled(table: Whole, room: int) -> int:
    """What must stay empty of a room; 0 where no sums are worked out."""
    return table[room] if room < len(table) else 0


@compiled
def work_out(table: Whole, sizes: Whole, first: Whole, most: Whole) -> None:
    """What must stay empty of each room, for `most[k]` pieces of kind k at most.

    A piece of kind k takes one of the sizes from `first[k]` up to `first[k + 1]`. The sums that
    can be made are bits: adding a piece is a shift.
    """
    room = len(table) - 1
    words = np.zeros(room // 64 + 1, np.uint64)
    words[0] = np.uint64(1)
    for kind in range(len(most)):
        if most[kind] == 0:
            continue
        own = sizes[first[kind] : first[kind + 1]]
        for _ in range(min(most[kind], room // own.min())):
            changed = False
            # from the top down, so that each piece is added once
            for at in range(len(words) - 1, -1, -1):
                more = words[at]
                for size in own:
                    source = at - (size >> 6)
                    shift = size & 63
                    if source >= 0:
                        more |= words[source] << np.uint64(shift)
                    if source > 0 and shift:
                        more |= words[source - 1] >> np.uint64(64 - shift)
                changed |= more != words[at]
                words[at] = more
            if not changed:
                break
    best = 0
    for size in range(room + 1):
        if (words[size >> 6] >> np.uint64(size & 63)) & np.uint64(1):
            best = size
        table[size] = size - best


@compiled
def merged(starts: Whole, levels: Whole, segments: int) -> int:
    """Make level neighbours one and drop empty segments, in place; how many are left."""
    across, top = starts[segments + 1], levels[segments + 1]
    kept = 0
    for at in range(1, segments + 1):
        if starts[at + 1] == starts[at] or (kept and levels[kept] == levels[at]):
            continue
        kept += 1
        starts[kept], levels[kept] = starts[at], levels[at]
    starts[kept + 1], levels[kept + 1] = across, top
    return kept


@compiled
def _foreseen(
    empty_across: Whole, empty_along: Whole, starts: Whole, levels: Whole, segments: int
) -> int:
    """Area that must go to waste because no sum of pieces fills it: in gaps, or up to the top.

    The same place may be counted in both, so only the greater holds.
    """
    top = levels[0]
    in_gaps = above = 0
    for at in range(1, segments + 1):
        width = starts[at + 1] - starts[at]
        depth = min(levels[at - 1], levels[at + 1]) - levels[at]
        if depth > 0:
            in_gaps += _unfilled(empty_across, width) * depth
        above += width * _unfilled(empty_along, top - levels[at])
    return max(in_gaps, above)


@compiled
def _foreseen_beside(
    empty_across: Whole,
    empty_along: Whole,
    starts: Whole,
    levels: Whole,
    segments: int,
    gap: int,
    narrowest: int,
) -> int:
    """What the other segments look like wasting, both ways together: for comparison, no bound."""
    top = levels[0]
    waste = 0
    for at in range(1, segments + 1):
        if at == gap:
            continue
        width = starts[at + 1] - starts[at]
        depth = min(levels[at - 1], levels[at + 1]) - levels[at]
        if depth > 0:
            waste += (width if width < narrowest else _unfilled(empty_across, width)) * depth
        waste += width * _unfilled(empty_along, top - levels[at])
    return waste


@compiled
def without_dead_ends(
    starts: Whole, levels: Whole, segments: int, narrowest: int, shortest: int
) -> tuple[int, int]:
    """Give up, in place, where no piece fits any more; the segments left, and the area lost.

    That is where less than `shortest` is left below the top, and gaps narrower than `narrowest`.
    """
    top = levels[0]
    last = top - shortest
    lost = 0
    for at in range(1, segments + 1):
        if last < levels[at] < top:
            lost += (starts[at + 1] - starts[at]) * (top - levels[at])
            levels[at] = top
    again = True
    while again:
        again = False
        segments = merged(starts, levels, segments)
        for at in range(1, segments + 1):
            width = starts[at + 1] - starts[at]
            wall = min(levels[at - 1], levels[at + 1])
            if width < narrowest and wall > levels[at]:
                up_to = top if wall > last else wall
                lost += width * (up_to - levels[at])
                levels[at] = up_to
                again = True
    return segments, lost


@compiled
def _of_kinds_left(ways: Whole, kinds: Whole, counts: Whole, into: Whole) -> int:
    """Write those ways, in their order, of whose kind a piece is left; how many."""
    number = 0
    for way in ways:
        if counts[kinds[way]] > 0:
            into[number] = way
            number += 1
    return number


@compiled
def _score(
    asked: tuple[int, ...],
    ways: Whole,
    mine: Whole,
    empty_across: Whole,
    empty_along: Whole,
    starts: Whole,
    levels: Whole,
    segments: int,
    at: int,
    wasted: int,
    worth: int,
    scores: Scores,
    steps: Whole,
    kept: int,
    gap: int,
) -> tuple[int, int]:
    """Score each way in a gap, the least waste a worth being best; steps kept, and ways tried.

    What the gap had been foreseen to waste is worked out anew for each piece put into it.
    """
    _, top, _, lead, flush_counts = asked
    narrowest = ways[ACROSS, mine[0]]
    here, low, width = starts[at], levels[at], starts[at + 1] - starts[at]
    if width < narrowest:
        return kept, 0
    wall_left, wall_right = levels[at - 1], levels[at + 1]
    to_left = wall_left >= wall_right
    near, far = max(wall_left, wall_right), min(wall_left, wall_right)
    # the neighbour at the near wall may get walled in by the piece
    if to_left:
        beside_width, beyond = here - starts[at - 1], levels[max(at - 2, 0)]
    else:
        last = min(at + 2, segments + 1)
        beside_width, beyond = starts[last] - starts[at + 1], levels[last]
    beside_waste = beside_width
    if beside_width >= narrowest:
        beside_waste = _unfilled(empty_across, beside_width)
    base = wasted + _foreseen_beside(
        empty_across, empty_along, starts, levels, segments, at, narrowest
    )
    above = _unfilled(empty_along, top - low)
    tried = 0
    for way in mine:
        wide = ways[ACROSS, way]
        if wide > width:
            break
        if ways[LATEST_ACROSS, way] < here or ways[LATEST_ALONG, way] < low:
            continue
        tried += 1
        rest, reach = width - wide, low + ways[ALONG, way]
        up_to = min(reach, far)
        waste = base + wide * _unfilled(empty_along, top - reach)
        if rest < narrowest:
            waste += rest * (up_to - low + _unfilled(empty_along, top - up_to))
        else:
            waste += _unfilled(empty_across, rest) * (up_to - low) + rest * above
        waste += beside_waste * max(0, min(beyond, reach) - near)
        flush = int(reach == near) + int(rest == 0) * (1 + int(reach == far))
        score = float(waste + lead - flush_counts * flush) / float(worth + ways[WORTH, way])
        if kept == DESCENDANTS and score >= scores[kept - 1]:
            continue
        to = min(kept, DESCENDANTS - 1)
        while to > 0 and scores[to - 1] > score:
            scores[to] = scores[to - 1]
            for fact in range(steps.shape[1]):
                steps[to, fact] = steps[to - 1, fact]
            to -= 1
        # a piece that may not start so far across goes to the left, where it does fit
        left = to_left or here + rest > ways[LATEST_ACROSS, way]
        scores[to] = score
        steps[to, GAP], steps[to, WAY], steps[to, TO_LEFT] = gap, way, int(left)
        steps[to, X], steps[to, Y] = here if left else here + rest, low
        kept = min(kept + 1, DESCENDANTS)
    return kept, tried


@compiled
def _look(
    asked: tuple[int, ...],
    ways: Whole,
    mine: Whole,
    empty_across: Whole,
    empty_along: Whole,
    facts: Whole,
    starts: Whole,
    levels: Whole,
    gaps: Whole,
    scores: Scores,
    steps: Whole,
) -> tuple[int, int]:
    """Note the gaps of a filling and its best steps; how many steps, and of how many ways.

    `starts`, `levels` and `gaps` have a row for each gap; the outline is in the first one.
    """
    _, top, spare, _, _ = asked
    segments, wasted = facts[SEGMENTS], facts[WASTED]
    found = kept = places = 0
    while True:
        at = 1
        for other in range(2, segments + 1):
            if levels[found, other] < levels[found, at]:
                at = other
        low, width = levels[found, at], starts[found, at + 1] - starts[found, at]
        if low >= top:
            break
        up_to = min(levels[found, at - 1], levels[found, at + 1])
        kept, tried = _score(
            asked, ways, mine, empty_across, empty_along, starts[found], levels[found], segments,
            at, wasted, facts[WORTH_IN], scores, steps, kept, found,
        )  # fmt: skip
        places += tried
        if tried:
            gaps[found, SEGMENTS], gaps[found, WASTED], gaps[found, AT] = segments, wasted, at
            found += 1
            if found == GAPS:
                break
            _copy(starts[found - 1], starts[found], 0, segments + 2, 0)
            _copy(levels[found - 1], levels[found], 0, segments + 2, 0)
        wasted += width * (up_to - low)
        if wasted > spare:
            break
        levels[found, at] = up_to
        segments = merged(starts[found], levels[found], segments)
    return kept, places


@compiled
def outline_with(
    step: Whole,
    ways: Whole,
    gap: Whole,
    before_starts: Whole,
    before_levels: Whole,
    starts: Whole,
    levels: Whole,
) -> int:
    """Write the outline with a piece put into its gap, merged; how many segments it has."""
    at, segments = gap[AT], gap[SEGMENTS]
    reach = step[Y] + ways[ALONG, step[WAY]]
    _copy(before_starts, starts, 0, at + 1, 0)
    _copy(before_levels, levels, 0, at, 0)
    if step[TO_LEFT]:
        starts[at + 1] = starts[at] + ways[ACROSS, step[WAY]]
        levels[at], levels[at + 1] = reach, step[Y]
    else:
        starts[at + 1] = step[X]
        levels[at], levels[at + 1] = step[Y], reach
    _copy(before_starts, starts, at + 1, segments + 2, 1)
    _copy(before_levels, levels, at + 1, segments + 2, 1)
    return merged(starts, levels, segments + 1)


@compiled
def _least_left(ways: Whole, left: Whole, counts: Whole) -> tuple[int, int]:
    """The narrowest width and the shortest length of the pieces left."""
    narrowest = shortest = NEVER
    for way in left:
        if counts[ways[KIND, way]] > 0:
            narrowest = min(narrowest, ways[ACROSS, way])
            shortest = min(shortest, ways[ALONG, way])
    return narrowest, shortest


@compiled
def _is_new(
    mark: int, starts: Whole, levels: Whole, segments: int, met: Whole, met_in: Whole, level: int
) -> bool:
    """Whether a filling is the first of its level with such an outline and such pieces left."""
    for at in range(1, segments + 1):
        mark = (mark ^ (starts[at] * MIX[0] + levels[at] * MIX[1])) * MIX[2]
        mark ^= mark >> SHIFT
    last = len(met) - 1
    place = mark & last
    while met_in[place] == level + 1:
        if met[place] == mark:
            return False
        place = (place + 1) & last
    met_in[place], met[place] = level + 1, mark
    return True


@compiled
def grow(
    asked: tuple[int, ...],
    by_way: tuple[Whole, ...],
    room: tuple[Whole, ...],
    scores: Scores,
    marks: Whole,
    sums: bool,
    widths: Whole,
    work: int,
) -> tuple[int, int, int]:
    """Grow the one filling in the room by `len(widths)` pieces, following `widths[n]` fillings.

    Returns how it ended, how many pieces are in `taken` (the best filling is the first of its
    level), and how much of the work is left. `sums`: foresee waste that no sum of pieces fills.
    `asked`, `by_way` and `room` are the tuples of `beam_room`, as plain ones.
    """
    across, top, spare = asked[:3]
    ways, first, by_width = by_way
    starts, levels, counts, facts, gap_starts, gap_levels, gap_facts, steps, taken, met, met_in = (
        room
    )
    empty_across = np.zeros(across + 1 if sums else 0, np.int64)
    empty_along = np.zeros(top + 1 if sums else 0, np.int64)
    left, mine = np.empty_like(by_width), np.empty_like(by_width)
    now, fillings = 0, 1
    for level in range(len(widths)):
        if work <= 0:
            return SPENT, level, work
        most = _most(counts[now], fillings)
        if sums:
            work_out(empty_across, ways[ACROSS], first, most)
            work_out(empty_along, ways[ALONG], first, most)
        ways_left = _of_kinds_left(by_width, ways[KIND], most, left)
        found = 0
        for filling in range(fillings):
            number = _of_kinds_left(left[:ways_left], ways[KIND], counts[now, filling], mine)
            segments = facts[now, filling, SEGMENTS]
            _copy(starts[now, filling], gap_starts[filling, 0], 0, segments + 2, 0)
            _copy(levels[now, filling], gap_levels[filling, 0], 0, segments + 2, 0)
            kept, places = _look(
                asked, ways, mine[:number], empty_across, empty_along, facts[now, filling],
                gap_starts[filling], gap_levels[filling], gap_facts[filling], scores[found:],
                steps[found:],
            )  # fmt: skip
            for step in range(found, found + kept):
                steps[step, FILLING] = filling
            found += kept
            work -= places + WORK_OF_A_FILLING
        ordered = np.argsort(scores[:found], kind="mergesort")
        then, after = 1 - now, 0
        for index in ordered[: widths[level] * TRIED[0] // TRIED[1]]:
            work -= WORK_OF_A_STEP
            taking = steps[index]
            filling, gap, way = taking[FILLING], taking[GAP], taking[WAY]
            kind = ways[KIND, way]
            here_starts, here_levels = starts[then, after], levels[then, after]
            segments = outline_with(
                taking, ways, gap_facts[filling, gap], gap_starts[filling, gap],
                gap_levels[filling, gap], here_starts, here_levels,
            )  # fmt: skip
            _copy(counts[now, filling], counts[then, after], 0, counts.shape[2], 0)
            counts[then, after, kind] -= 1
            narrowest, shortest = _least_left(ways, left[:ways_left], counts[then, after])
            segments, lost = without_dead_ends(
                here_starts, here_levels, segments, narrowest, shortest
            )
            wasted = gap_facts[filling, gap, WASTED] + lost
            foreseen = _foreseen(empty_across, empty_along, here_starts, here_levels, segments)
            mark = facts[now, filling, MARK] + marks[kind]
            if wasted + foreseen > spare or not _is_new(
                mark, here_starts, here_levels, segments, met, met_in, level
            ):
                continue
            fact = facts[then, after]
            fact[SEGMENTS], fact[WASTED], fact[MARK] = segments, wasted, mark
            fact[WORTH_IN] = facts[now, filling, WORTH_IN] + ways[WORTH, way]
            taken[0, level, after], taken[1, level, after] = filling, way
            taken[2, level, after], taken[3, level, after] = taking[X], taking[Y]
            after += 1
            if after == widths[level]:
                break
        if after == 0:
            return STUCK, level, work
        fillings, now = after, then
    return FILLED, len(widths), work
