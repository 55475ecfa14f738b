"""A long layout in parts that fit a page, with no piece in two of them."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.layout import Layout

Band = tuple[int, int]
"""From where to where along the cloth, in ticks."""


def bands_of(cut: Layout, longest: int) -> tuple[Band, ...]:
    """Parts no longer than ``longest`` where the pieces allow it, each as long as it can be."""
    bands: list[Band] = []
    start = last = 0
    for place in (*_between_pieces(cut), cut.length):
        if place - start > longest and last > start:
            bands.append((start, last))
            start = last
        last = place
    return (*bands, (start, cut.length))


def _between_pieces(cut: Layout) -> Sequence[int]:
    """Where pieces begin and none goes on, in order along the cloth."""
    found = []
    reached = 0
    for place in sorted(cut.placements, key=lambda one: one.along):
        if place.along >= reached and place.along:
            found.append(place.along)
        reached = max(reached, place.along + place.length)
    return found
