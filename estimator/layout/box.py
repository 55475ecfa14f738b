"""The question that a search for a close layout answers: do the pieces fit into a box this long?

The cloth cut off at a target length is a box, and nothing tells its two sides apart: it may be
filled from the cut end or, laid on its side, from a selvedge. Sizes are in units, the greatest
common measure of all sizes, so that sums of pieces stay small numbers.

With a repeat each piece takes whole repeats, and the box ends where the last of them may end. That
a piece itself must end within the target is what `latest` says: the last place where it may start.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import gcd
from typing import NamedTuple

from estimator.layout.kinds import Kind, Spot
from estimator.layout.shelves import next_repeat


class Lie(NamedTuple):
    """One way in which a piece may lie, with the last places where it may start."""

    across: int
    along: int
    latest_across: int
    latest_along: int


class Put(NamedTuple):
    """A piece of a kind put into a box, in units."""

    kind: int
    across: int
    along: int
    lie: Lie


@dataclass(frozen=True, slots=True)
class Box:
    """A box `across` by `along` units for `counts[k]` pieces of kind k, which lie as `lies[k]`."""

    across: int
    along: int
    counts: tuple[int, ...]
    lies: tuple[tuple[Lie, ...], ...]

    @property
    def spare(self) -> int:
        """Area of the box less that of the pieces: what may go to waste."""
        used = sum(
            count * min(lie.across * lie.along for lie in lies)
            for count, lies in zip(self.counts, self.lies, strict=True)
        )
        return self.across * self.along - used

    def on_its_side(self) -> Box:
        """The same question with the two directions exchanged."""
        return Box(
            self.along,
            self.across,
            self.counts,
            tuple(
                tuple(
                    Lie(lie.along, lie.across, lie.latest_along, lie.latest_across) for lie in lies
                )
                for lies in self.lies
            ),
        )


def unit_of(kinds: Iterable[Kind], repeat: int) -> int:
    """The greatest common measure of all sizes and the repeat, in ticks."""
    return gcd(repeat, *(size for kind in kinds for size in (kind.width, kind.length)))


def box_for(
    kinds: Sequence[Kind], cloth_width: int, repeat: int, target: int, unit: int
) -> Box | None:
    """The box of cloth up to `target` ticks; None if some piece has no way to lie in it."""
    across, within, period = cloth_width // unit, target // unit, repeat // unit
    every = []
    for kind in kinds:
        sizes = [(kind.width // unit, kind.length // unit)]
        if kind.may_turn:
            sizes.append((kind.length // unit, kind.width // unit))
        lies = tuple(
            Lie(wide, next_repeat(long, period), across - wide, _last_start(within - long, period))
            for wide, long in sizes
            if wide <= across and long <= within
        )
        if not lies:
            return None
        every.append(lies)
    counts = tuple(kind.quantity for kind in kinds)
    end = max((lie.latest_along + lie.along for lies in every for lie in lies), default=0)
    return Box(across, end, counts, tuple(every))


def _last_start(room: int, period: int) -> int:
    return room // period * period if period else room


def spots_from(
    puts: Iterable[Put], kinds: Sequence[Kind], repeat: int, unit: int
) -> tuple[Spot, ...]:
    """The pieces in ticks, each moved towards the cut end as far as it will go."""
    settled: list[Spot] = []
    for put in sorted(puts, key=lambda one: (one.along, one.across)):
        kind = kinds[put.kind]
        upright = put.lie.across * unit == kind.width
        width, length = (kind.width, kind.length) if upright else (kind.length, kind.width)
        across = put.across * unit
        under = (
            below.along + below.length
            for below in settled
            if below.across < across + width and across < below.across + below.width
        )
        along = next_repeat(max(under, default=0), repeat)
        settled.append(Spot(put.kind, across, along, width, length))
    return tuple(settled)
