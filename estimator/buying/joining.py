"""Runs that may be joined, put on cards: cut where a card ends, with an overlap at each join.

A rule and not an exact search: sets of put-ups are tried, the cheapest first, and the first on
which all runs find a place is taken. Runs that may not be joined are placed first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from estimator.buying.fillings import Filling, Holder, Load, sets_of_put_ups

MOST_SETS_TRIED = 2_000


@dataclass(frozen=True, slots=True)
class JoinableRun:
    """A run of whole units; each join makes it ``overlap`` longer and lies at a ``repeat``."""

    length: int
    joins: int = 0
    overlap: int = 0
    repeat: int = 1


@dataclass(frozen=True, slots=True)
class JoinedFilling:
    """A filling some of whose runs are joined: ``joins`` in all, which take ``overlaps`` more."""

    filling: Filling
    joins: int
    overlaps: int


def joined_filling(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], below: int | None
) -> JoinedFilling | None:
    """The cheapest set of put-ups found that takes all runs joined, if it costs under ``below``."""
    limit = _no_dearer_than(runs, holders) if below is None else below
    if limit is None:
        return None
    room = sum(run.length for run in runs)
    most = 2 * len(runs) + -(-room // min(holder.holds for holder in holders))
    sets = sets_of_put_ups(holders, limit, room, most) or []
    for cost, chosen in sets[:MOST_SETS_TRIED]:
        found = _laid_on(runs, holders, chosen, cost)
        if found is not None:
            return found
    return None


def _no_dearer_than(runs: Sequence[JoinableRun], holders: Sequence[Holder]) -> int | None:
    """A cost under which all runs go on put-ups of one kind; None where they go on none."""
    found = []
    room = sum(run.length for run in runs)
    for number, holder in enumerate(holders):
        least = -(-room // (holder.holds * holder.pieces))
        for count in range(least, 2 * least + len(runs) + 1):
            chosen = tuple(count if n == number else 0 for n in range(len(holders)))
            if _laid_on(runs, holders, chosen, 0) is not None:
                found.append(max(count, holder.least) * holder.cost + 1)
                break
    return min(found, default=None)


def _laid_on(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], chosen: Sequence[int], cost: int
) -> JoinedFilling | None:
    """The runs on a set of put-ups, or None where they find no place."""
    kinds = [
        number for number, count in enumerate(chosen) for _ in range(count * holders[number].pieces)
    ]
    room = [holders[number].holds for number in kinds]
    on: list[list[int]] = [[] for _ in kinds]
    joins = overlaps = 0
    for run in sorted(runs, key=lambda run: (run.joins > 0, -run.length)):
        pieces = _pieces(run, room)
        if pieces is None:
            return None
        for card, piece in pieces:
            on[card].append(piece)
        joins += len(pieces) - 1
        overlaps += (len(pieces) - 1) * run.overlap
    loads: list[Load] = [
        (number, tuple(card)) for number, card in zip(kinds, on, strict=True) if card
    ]
    bought = tuple(
        max(count, holder.least) if count else 0
        for count, holder in zip(chosen, holders, strict=True)
    )
    return JoinedFilling(Filling(tuple(loads), (), bought, cost), joins, overlaps)


def _pieces(run: JoinableRun, room: list[int]) -> list[tuple[int, int]] | None:
    """The pieces of a run and their cards, taken from ``room``; None where they do not fit."""
    left, before = run.length, list(room)
    pieces: list[tuple[int, int]] = []
    while True:
        homes = [card for card, free in enumerate(room) if free >= left]
        if homes:
            home = min(homes, key=lambda card: (room[card], card))
            room[home] -= left
            return [*pieces, (home, left)]
        home = max(range(len(room)), key=lambda card: (room[card], -card), default=-1)
        piece = room[home] // run.repeat * run.repeat if home >= 0 else 0
        if len(pieces) == run.joins or piece <= 2 * run.overlap:
            room[:] = before
            return None
        room[home] -= piece
        pieces.append((home, piece))
        left += run.overlap - piece
