"""Trims and notions from what is in hand: put-ups that cost nothing and are limited in number."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.buying.least_taken import least_taken
from estimator.buying.ready_cut import fits
from estimator.buying.remnants import length_of
from estimator.buying.thread import on_one, wound_off
from estimator.buying.types import Buy, Need, Purchase, costs_less, nothing_bought
from estimator.measure import ZERO, Length, whole_ticks
from estimator.needs.types import CountNeed, LengthNeed, Run, ThreadNeed
from estimator.stash import Single, Taken
from estimator.working import Operation, Step

Lines = tuple[Purchase, ...]
Buying = Callable[[Need], Lines]
"""What is bought for a need; raises Wrong where it cannot be had."""

MOST_RUNS, MOST_SUMS = 2_000, 4_000
MOST_COUNTED = 200
"""Of more things in hand all are used, or none."""


def with_stock(need: Need, lines: Lines, singles: Sequence[Single], buying: Buying) -> Lines:
    """What to buy for a need beside what is in hand; ``lines`` where that saves nothing.

    ``lines`` is what ``buying`` makes of the whole need.
    """
    if isinstance(need, LengthNeed):
        found = _lengths(need, lines, singles, buying)
    elif isinstance(need, ThreadNeed):
        found = _spools(need, lines, singles, buying)
    elif need.opening is not None:
        found = _zips(need, lines, singles, buying)
    else:
        found = _counted(need, lines, singles, buying)
    whole = lines[0]
    return tuple(
        replace(
            line,
            sources=whole.sources,
            alike=whole.alike,
            takes=() if number else need.takes,
            others=line.others if line.buy.bought else (),
            need=need,
        )
        for number, line in enumerate(found)
    )


def _nothing(need: Need, lines: Lines) -> Purchase:
    needed: Length | int = ZERO if isinstance(need, LengthNeed) else 0
    first = lines[0]
    return replace(
        first, needed=needed, buy=nothing_bought(first.buy.offer), notes=need.notes, others=()
    )


def _bills(lines: Sequence[Purchase]) -> list[Buy]:
    return [line.buy for line in lines]


@dataclass(frozen=True, slots=True)
class _Filled:
    """A length in hand and the runs cut from it: their numbers among all runs, and their sum."""

    single: Single
    runs: tuple[int, ...]
    used: Fraction

    def taken(self, all_runs: Sequence[Run]) -> Taken:
        """What is cut off it; ``all_runs`` is each run of the need as often as it is wanted."""
        amount = whole_ticks(self.used)
        cut = tuple((all_runs[one].source, all_runs[one].length.value) for one in sorted(self.runs))
        return Taken(self.single, amount, length_of(self.single) - amount, cut)


def _lengths(need: LengthNeed, lines: Lines, singles: Sequence[Single], buying: Buying) -> Lines:
    """Whole runs on lengths in hand, and the others bought."""
    runs = [number for number, run in enumerate(need.runs) for _ in range(run.count)]
    if len(runs) > MOST_RUNS:
        return lines
    known: dict[frozenset[int], Lines] = {}

    def beside(used: tuple[_Filled, ...]) -> Lines:
        done = frozenset(number for one in used for number in one.runs)
        if done not in known:
            left = Counter(run for place, run in enumerate(runs) if place not in done)
            known[done] = (
                buying(replace(need, runs=tuple(_so_many(need.runs, left))))
                if left
                else (_nothing(need, lines),)
            )
        return known[done]

    fitting = [one for one in singles if one.thing.length and _of_that_width(need, one)]
    filled = _filled(need, runs, fitting)
    used = least_taken(filled, lambda some: _bills(beside(some)))
    found = beside(used)
    if not used or not costs_less(_bills(found), _bills(lines)):
        return lines
    each = [need.runs[number] for number in runs]
    return (replace(found[0], taken=tuple(one.taken(each) for one in used)), *found[1:])


def _of_that_width(need: LengthNeed, single: Single) -> bool:
    """A length in hand without a width is of the only width there is."""
    return single.thing.width in (None, *(offer.width for offer in need.terms.offers))


def _so_many(runs: Sequence[Run], left: Counter[int]) -> Iterator[Run]:
    return (replace(runs[number], count=count) for number, count in sorted(left.items()) if count)


def _filled(need: LengthNeed, runs: Sequence[int], singles: Sequence[Single]) -> list[_Filled]:
    """The lengths in hand, the shortest first, each with as much of the runs as it holds."""
    left = sorted(range(len(runs)), key=lambda place: -need.runs[runs[place]].length.exact)
    found = []
    for single in sorted(singles, key=lambda one: (length_of(one), one.row, one.nth)):
        lengths = [(place, need.runs[runs[place]].length.exact) for place in left]
        chosen, used = _fullest(lengths, length_of(single).ticks)
        if chosen:
            found.append(_Filled(single, chosen, used))
            left = [place for place in left if place not in set(chosen)]
    return found


def _fullest(
    lengths: Sequence[tuple[int, Fraction]], room: int
) -> tuple[tuple[int, ...], Fraction]:
    """The runs whose sum comes nearest to the room, of the sums that are looked at."""
    sums: dict[Fraction, tuple[int, ...]] = {Fraction(0): ()}
    for place, length in lengths:
        if length > room:
            continue
        for total, chosen in list(sums.items()):
            if total + length <= room and total + length not in sums and len(sums) < MOST_SUMS:
                sums[total + length] = (*chosen, place)
    best = max(sums)
    return sums[best], best


def _zips(need: CountNeed, lines: Lines, singles: Sequence[Single], buying: Buying) -> Lines:
    """Zips and bones in hand of a length that will do, those first that come nearest."""
    assert need.opening is not None, "a zip closes an opening"
    opening = need.opening.ticks
    fitting = sorted(
        (one for one in singles if one.thing.length and fits(need, length_of(one))),
        key=lambda one: (abs(length_of(one).ticks - opening), one.row, one.nth),
    )[: need.count]
    used = least_taken(
        fitting, lambda some: _bills(_beside_counted(need, lines, len(some), buying))
    )
    if not used:
        return lines
    found = _beside_counted(need, lines, len(used), buying)
    taken = tuple(Taken(one, length_of(one), ZERO) for one in used)
    return (replace(found[0], taken=taken), *found[1:])


def _spools(need: ThreadNeed, lines: Lines, singles: Sequence[Single], buying: Buying) -> Lines:
    """Full and part spools in hand, each for one needle or looper, before others are bought.

    A spool that says nothing of its length holds as much as the longest on offer.
    """
    longest = max(on_one(offer) for offer in need.terms.offers)
    spools = [
        (longest if one.thing.length is None else length_of(one), one)
        for one in singles
        for _ in range(1 if one.thing.length else min(one.thing.count, MOST_COUNTED))
    ]
    spools.sort(key=lambda one: (one[0], one[1].thing.count, one[1].row, one[1].nth))

    def beside(some: Sequence[tuple[Length, Single]]) -> Lines:
        return buying(replace(need, in_hand=tuple(length for length, _ in some)))

    used = least_taken(spools[:MOST_COUNTED], lambda some: _bills(beside(some)))
    if not used or not costs_less(_bills(beside(used)), _bills(lines)):
        return lines
    found = beside(used)
    wound = wound_off(replace(need, in_hand=tuple(length for length, _ in used)))
    begun = [
        length - amount
        for (length, one), amount in zip(used, wound, strict=True)
        if one.thing.length is None and ZERO < amount < length
    ]
    buy = replace(found[0].buy, left=(*found[0].buy.left, *begun))
    taken = tuple(_taken_off(used, wound))
    return (replace(found[0], buy=buy, taken=taken), *found[1:])


def _taken_off(used: Sequence[tuple[Length, Single]], wound: Sequence[Length]) -> Iterator[Taken]:
    """What is used of each spool; those that stand together as a count are told together."""
    whole: Counter[Single] = Counter()
    for (length, one), amount in zip(used, wound, strict=True):
        if one.thing.length is None:
            whole[one] += 1
        else:
            yield Taken(one, amount, length - amount)
    for one, count in whole.items():
        yield Taken(one, count, one.thing.count - count)


def _counted(need: CountNeed, lines: Lines, singles: Sequence[Single], buying: Buying) -> Lines:
    """Things in hand by count: as few as save as much as all of them."""
    rows = sorted(
        (one for one in singles if one.thing.length is None),
        key=lambda one: (one.thing.count, one.row),
    )
    most = min(need.count, sum(one.thing.count for one in rows))
    counts = range(1, most + 1) if most <= MOST_COUNTED else (most,)
    best, found = 0, lines
    for count in counts:
        bought = _beside_counted(need, lines, count, buying)
        if costs_less(_bills(bought), _bills(found)):
            best, found = count, bought
    if not best:
        return lines
    return (replace(found[0], taken=tuple(_from_rows(rows, best))), *found[1:])


def _from_rows(rows: Sequence[Single], count: int) -> Iterator[Taken]:
    for one in rows:
        amount = min(count, one.thing.count)
        if amount:
            yield Taken(one, amount, one.thing.count - amount)
        count -= amount


def _beside_counted(need: CountNeed, lines: Lines, count: int, buying: Buying) -> Lines:
    """What is bought where so many are in hand."""
    left = need.count - count
    if not count:
        return lines
    if not left:
        return (_nothing(need, lines),)
    step = Step("from the stash", Operation.TAKE, count, left)
    return buying(replace(need, count=left, steps=(*need.steps, step)))
