"""Runs that may be joined, put on cards: cut where a card ends, with an overlap at each join.

A rule and not an exact search: sets of put-ups are tried, the cheapest first, and the first on
which all runs find a place is taken. Runs that may not be joined are placed first. Beside a roll
what finds no place on the put-ups is cut from it, be it a run or the end of one.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from estimator.buying.fillings import Filling, Holder, Load, Roll, sets_of_put_ups

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

    ``owners`` are the numbers of the runs whose pieces lie on each load, as they lie on it, and
    ``owners_rolled`` of those from the roll.
    """

    filling: Filling
    joins: int
    overlaps: int
    owners: tuple[tuple[int, ...], ...]
    owners_rolled: tuple[int, ...] = ()


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


def joined_beside_roll(
    runs: Sequence[JoinableRun], holders: Sequence[Holder], roll: Roll, below: int
) -> JoinedFilling | None:
    """The cheapest set of put-ups found, with what goes on none of them from the roll."""
    room = sum(run.length for run in runs)
    most = 2 * len(runs) + -(-room // min(holder.holds for holder in holders))
    best: JoinedFilling | None = None
    compared = 0
    for cost, chosen in sets_of_put_ups(holders, below, 0, most) or []:
        held = sum(n * one.holds * one.pieces for n, one in zip(chosen, holders, strict=True))
        least = cost + (roll.share(room - held) if room > held else 0)
        if not held or least >= (best.filling.cost if best else below):
            continue
        compared += len(runs) * sum(chosen)
        if compared > MOST_COMPARED:
            break
        found = _laid_on(runs, holders, chosen, cost, roll)
        if found and found.filling.cost < (best.filling.cost if best else below):
            best = found
    return best


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
    runs: Sequence[JoinableRun],
    holders: Sequence[Holder],
    chosen: Sequence[int],
    cost: int,
    roll: Roll | None = None,
) -> JoinedFilling | None:
    """The runs on a set of put-ups, or None where they find no place; on a roll there is always."""
    kinds = [
        number for number, count in enumerate(chosen) for _ in range(count * holders[number].pieces)
    ]
    kinds.sort(key=lambda number: (-holders[number].holds, number))
    room = [holders[number].holds for number in kinds]
    tried = [_placed(runs, room, rule, roll is not None) for rule in (_whole_first, _in_turn)]
    laid = min(filter(None, tried), key=_rolled, default=None)
    if laid is None:
        return None
    rolled = [(piece, run.number) for run, pieces in laid for card, piece in pieces if card == ROLL]
    cost += roll.cost(_rolled(laid)) if roll and rolled else 0
    on: list[list[int]] = [[] for _ in kinds]
    whose: list[list[int]] = [[] for _ in kinds]
    joins = overlaps = 0
    for run, pieces in laid:
        for card, piece in pieces:
            if card != ROLL:
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
    filling = Filling(tuple(loads), tuple(piece for piece, _ in rolled), bought, cost)
    return JoinedFilling(filling, joins, overlaps, owners, tuple(number for _, number in rolled))


ROLL = -1
"""Stands for the roll where others have the number of a card."""


Pieces = list[tuple[int, int]]
"""The pieces of one run, in order: the number of the card, and the length on it."""
Laid = list[tuple[JoinableRun, Pieces]]
Rule = Callable[[JoinableRun, list[int], int], int]
"""Which card a run is begun on that goes on none whole; -1 for none."""


def _rolled(laid: Laid) -> int:
    """How much is cut from the roll."""
    return sum(piece for _, pieces in laid for card, piece in pieces if card == ROLL)


def _placed(
    runs: Sequence[JoinableRun], room: Sequence[int], rule: Rule, has_roll: bool
) -> Laid | None:
    """Each run in pieces on the cards: those first that may not be joined, and the longest.

    What finds no place is cut from the roll, or there is none and it is no way.
    """
    free = list(room)
    laid: Laid = []
    for run in sorted(runs, key=lambda run: (run.joins > 0, -run.length)):
        pieces: Pieces = []
        left = run.length
        while True:
            home = rule(run, free, left)
            if home >= 0 and free[home] >= left:
                free[home] -= left
                laid.append((run, [*pieces, (home, left)]))
                break
            # as much is left as twice the overlap: no shorter piece is worth a join
            most = min(free[home], left - run.overlap) if home >= 0 else 0
            piece = most // run.repeat * run.repeat
            if len(pieces) == run.joins or piece <= 2 * run.overlap:
                if not has_roll:
                    return None
                laid.append((run, [*pieces, (ROLL, left)]))
                break
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
