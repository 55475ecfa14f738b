"""Which runs of a trim are cut from which of the lengths bought: what fillings tell in numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from estimator.buying.fillings import Filling
from estimator.buying.joining import JoinedFilling
from estimator.buying.types import Buy, Filled
from estimator.measure import Length, whole_ticks
from estimator.needs.types import Run
from estimator.put_up import PutUp
from estimator.working import Source

Runs = tuple[tuple[Source, Length], ...]
"""What is cut from one length, in turn: for what, and how long."""


def runs_in_turn(runs: Sequence[Run]) -> Runs:
    """All runs, each as often as it is wanted."""
    return tuple(
        (run.source, one.value) for run in runs for one, count in run.in_turn for _ in range(count)
    )


def cut_from(
    runs: Sequence[Run],
    filling: Filling,
    joined: JoinedFilling | None,
    fineness: int,
) -> tuple[tuple[Runs, ...], Runs]:
    """The runs on each load of a filling, and those from the roll.

    A filling counts in parts of a tick, ``fineness`` of them. Where runs are joined it is told
    whose piece each is; whole runs of one length are given out in the plan's order.
    """
    if joined is not None:

        def pieces(lengths: Sequence[int], owners: Sequence[int]) -> Runs:
            return tuple(
                (runs[owner].source, whole_ticks(Fraction(length, fineness)))
                for length, owner in zip(lengths, owners, strict=True)
            )

        on_loads = zip(filling.loads, joined.owners, strict=True)
        return (
            tuple(pieces(load, owners) for (_, load), owners in on_loads),
            pieces(filling.rolled, joined.owners_rolled),
        )
    waiting: dict[int, list[Run]] = {}
    for run in reversed(runs):
        waiting.setdefault(int(run.length.exact * fineness), []).extend([run] * run.count)

    def named(lengths: Sequence[int]) -> Runs:
        found = [waiting[length].pop() for length in lengths]
        return tuple((run.source, run.length.value) for run in found)

    return tuple(named(load) for _, load in filling.loads), named(filling.rolled)


def on_put_ups(buy: Buy, put_up: PutUp, loads: Sequence[Runs]) -> Buy:
    """A purchase of put-ups with the runs on each of their lengths; some may stay whole."""
    holds = put_up.holds
    assert isinstance(holds, Length), "a put-up of a trim holds a length"
    assert isinstance(buy.bought, int), "put-ups are counted"
    lengths = buy.bought * put_up.pieces
    idle: list[Runs] = [()] * (lengths - len(loads))
    return replace(buy, filled=tuple(Filled(holds, runs) for runs in (*loads, *idle)))


def off_the_roll(buy: Buy, runs: Runs) -> Buy:
    """A purchase from the roll with the runs that are cut from it."""
    assert isinstance(buy.bought, Length), "what comes off the roll is bought by its length"
    return replace(buy, filled=(Filled(buy.bought, runs),))
