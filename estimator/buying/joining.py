"""Runs that may be joined, put on cards: cut where a card ends, with an overlap at each join.

A rule and not an exact search: sets of put-ups are tried, the cheapest first, and the first on
which all runs find a place is taken. Runs that may not be joined are placed first.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from estimator.buying.fillings import Filling, Holder, Load, sets_of_put_ups

MOST_COMPARED = 1_000_000
"""Limit on the work: so many times a run is compared with a card."""


@dataclass(frozen=True, slots=True)
class JoinableRun:
    """A run of whole units; each join makes it ``overlap`` longer and lies at a ``repeat``.

    ``number`` is its caller's, and told of each of its pieces.
    """

    length: int
    joins: int = 0
    overlap: int = 0
    repeat: int = 1
    number: int = 0


@dataclass(frozen=True, slots=True)
class JoinedFilling:
    """A filling some of whose runs are joined: ``joins`` in all, which take ``overlaps`` more.

    ``owners`` are the numbers of the runs whose pieces lie on each load, as they lie on it.
    """

    filling: Filling
    joins: int
    overlaps: int
    owners: tuple[tuple[int, ...], ...]


def joined_filling(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], below: int | None
) -> JoinedFilling | None:
    """The cheapest set of put-ups found that takes all runs joined, if it costs under ``below``."""
    room = sum(run.length for run in runs)
    best = _on_one_kind(runs, holders, room)
    if best is None:
        return None
    limit = best.filling.cost if below is None else min(below, best.filling.cost)
    most = 2 * len(runs) + -(-room // min(holder.holds for holder in holders))
    compared = 0
    for cost, chosen in sets_of_put_ups(holders, limit, room, most) or []:
        compared += len(runs) * sum(chosen)
        if compared > MOST_COMPARED:
            break
        found = _laid_on(runs, holders, chosen, cost)
        if found is not None:
            return found
    return best if below is None or best.filling.cost < below else None


def _on_one_kind(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], room: int
) -> JoinedFilling | None:
    """The cheapest way on put-ups of one kind; None where the runs go on none of them."""
    found = []
    for number, holder in enumerate(holders):
        least = count = -(-room // (holder.holds * holder.pieces))
        compared = len(runs) * count
        while count <= 2 * least + len(runs) and compared <= MOST_COMPARED:
            chosen = tuple(count if n == number else 0 for n in range(len(holders)))
            laid = _laid_on(runs, holders, chosen, max(count, holder.least) * holder.cost)
            if laid is not None:
                found.append(laid)
                break
            count += max(1, count // 50)
            compared += len(runs) * count
    return min(found, key=lambda one: one.filling.cost, default=None)


def _laid_on(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], chosen: Sequence[int], cost: int
) -> JoinedFilling | None:
    """The runs on a set of put-ups, or None where they find no place."""
    kinds = [
        number for number, count in enumerate(chosen) for _ in range(count * holders[number].pieces)
    ]
    kinds.sort(key=lambda number: (-holders[number].holds, number))
    room = [holders[number].holds for number in kinds]
    laid = _placed(runs, room, _whole_first) or _placed(runs, room, _in_turn)
    if laid is None:
        return None
    on: list[list[int]] = [[] for _ in kinds]
    whose: list[list[int]] = [[] for _ in kinds]
    joins = overlaps = 0
    for run, pieces in laid:
        for card, piece in pieces:
            on[card].append(piece)
            whose[card].append(run.number)
        joins += len(pieces) - 1
        overlaps += (len(pieces) - 1) * run.overlap
    loads: list[Load] = [
        (number, tuple(card)) for number, card in zip(kinds, on, strict=True) if card
    ]
    bought = tuple(
        max(count, holder.least) if count else 0
        for count, holder in zip(chosen, holders, strict=True)
    )
    owners = tuple(tuple(card) for card in whose if card)
    return JoinedFilling(Filling(tuple(loads), (), bought, cost), joins, overlaps, owners)


Pieces = list[tuple[int, int]]
"""The pieces of one run, in order: the number of the card, and the length on it."""
Rule = Callable[[JoinableRun, list[int], int], int]
"""Which card a run is begun on that goes on none whole; -1 for none."""


def _placed(
    runs: Sequence[JoinableRun], room: Sequence[int], rule: Rule
) -> list[tuple[JoinableRun, Pieces]] | None:
    """Each run in pieces on the cards: those first that may not be joined, and the longest."""
    free = list(room)
    laid = []
    for run in sorted(runs, key=lambda run: (run.joins > 0, -run.length)):
        pieces: Pieces = []
        left = run.length
        while True:
            home = rule(run, free, left)
            if home < 0:
                return None
            if free[home] >= left:
                free[home] -= left
                laid.append((run, [*pieces, (home, left)]))
                break
            piece = free[home] // run.repeat * run.repeat
            if len(pieces) == run.joins or piece <= 2 * run.overlap:
                return None
            free[home] -= piece
            pieces.append((home, piece))
            left += run.overlap - piece
    return laid


def _whole_first(_run: JoinableRun, free: list[int], left: int) -> int:
    """The fullest card that holds all that is left of a run, else the emptiest."""
    homes = [card for card, room in enumerate(free) if room >= left]
    if homes:
        return min(homes, key=lambda card: (free[card], card))
    return max(range(len(free)), key=lambda card: (free[card], -card), default=-1)


def _in_turn(run: JoinableRun, free: list[int], left: int) -> int:
    """The first card with room for more than an overlap: one card is used up after another."""
    if not run.joins:
        return _whole_first(run, free, left)
    for card, room in enumerate(free):
        if room >= left or room // run.repeat * run.repeat > 2 * run.overlap:
            return card
    return -1
