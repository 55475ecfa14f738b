"""A filling that got stuck, completed beyond the end of its box.

The pieces that found no room are mostly small ones. Laid where they reach least far, longest first,
they often end not much beyond the box: too long for the length that was asked about, yet shorter
than the best layout known.
"""

from __future__ import annotations

from collections.abc import Sequence

from estimator.layout.box import Box, Lie, Put, keeps_to
from estimator.layout.question import Held
from estimator.layout.skyline import Segment, merged


def completed(box: Box, puts: Sequence[Put]) -> list[Put]:
    """All pieces of the box: `puts` where they are, the others on top of them, past its end."""
    counts = list(box.counts)
    outline: list[Segment] = [(0, 0, box.across)]
    for put in puts:
        counts[put.kind] -= 1
        outline = covered(outline, put)
    every = list(puts)
    missing = sorted(
        (min(lie.along for lie in box.lies[kind]), kind)
        for kind, count in enumerate(counts)
        for _ in range(count)
    )
    for _, kind in reversed(missing):
        held = box.held[kind]
        put = min((_lowest(outline, kind, lie, held) for lie in box.lies[kind]), key=_reach)
        every.append(put)
        outline = covered(outline, put)
    return every


def _reach(put: Put) -> tuple[int, int, int]:
    return put.along + put.lie.along, put.along, put.across


def _lowest(outline: Sequence[Segment], kind: int, lie: Lie, held: Held) -> Put:
    """The place, at the left end of some segment or at an edge, where a piece reaches least far."""
    starts = {start for start, _, _ in outline if start <= lie.latest_across}
    if held is not Held.FREE:
        starts = {start for start in (0, lie.latest_across) if keeps_to(held, start, lie)}
    level, start = min((_level_under(outline, start, lie.across), start) for start in starts)
    return Put(kind, start, level, lie)


def _level_under(outline: Sequence[Segment], start: int, width: int) -> int:
    end = start + width
    return max(level for left, level, wide in outline if left < end and start < left + wide)


def covered(outline: Sequence[Segment], put: Put) -> list[Segment]:
    """The outline with a piece on it, which lies below none of the others."""
    start, end, top = put.across, put.across + put.lie.across, put.along + put.lie.along
    out: list[Segment] = []
    for left, level, width in outline:
        right = left + width
        if left < start:
            out.append((left, level, min(right, start) - left))
        if left <= start < right:
            out.append((start, top, end - start))
        if right > end:
            first = max(left, end)
            out.append((first, level, right - first))
    return list(merged(out))
