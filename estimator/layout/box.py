"""The question that a search for a close layout answers: do the pieces fit into a box this long?

The cloth cut off at a target length is a box, and nothing tells its two sides apart: it may be
filled from the cut end or, laid on its side, from a selvedge. Sizes are in units, the greatest
common measure of all sizes, so that sums of pieces stay small numbers.

With a repeat each piece takes whole repeats, and the box ends where the last of them may end. That
a piece itself must end within the target is what `latest` says: the last place where it may start.
The same holds across. A piece held at the far edge takes all the repeats that it lies on.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import gcd
from typing import NamedTuple

from estimator.layout.across import last_start, next_repeat
from estimator.layout.kinds import Kind, Spot
from estimator.layout.question import Cloth, Held


class Lie(NamedTuple):
    """One way in which a piece may lie, with the last places where it may start."""

    across: int
    along: int
    latest_across: int
    latest_along: int
    turned: bool = False

    def on_its_side(self) -> Lie:
        """The same with the two directions exchanged."""
        return Lie(self.along, self.across, self.latest_along, self.latest_across, self.turned)


class Put(NamedTuple):
    """A piece of a kind put into a box, in units."""

    kind: int
    across: int
    along: int
    lie: Lie


@dataclass(frozen=True, slots=True)
class Box:
    """A box `across` by `along` units for `counts[k]` pieces of kind k, which lie as `lies[k]`.

    Pieces of kind k lie at the near (start 0) or far edge of the box if `held[k]` says so. `true`
    tells whether pieces that go on the cloth always go into the box, so that a proof holds.
    """

    across: int
    along: int
    counts: tuple[int, ...]
    lies: tuple[tuple[Lie, ...], ...]
    held: tuple[Held, ...]
    true: bool

    @property
    def spare(self) -> int:
        """Area of the box less that of the pieces: what may go to waste."""
        used = sum(
            count * min(lie.across * lie.along for lie in lies)
            for count, lies in zip(self.counts, self.lies, strict=True)
        )
        return self.across * self.along - used

    @property
    def holds(self) -> bool:
        """Whether some pieces have to lie at an edge."""
        return any(held is not Held.FREE for held in self.held)

    def on_its_side(self) -> Box:
        """The same question with the two directions exchanged; holds at edges are forgotten."""
        return Box(
            self.along,
            self.across,
            self.counts,
            tuple(tuple(lie.on_its_side() for lie in lies) for lies in self.lies),
            tuple(Held.FREE for _ in self.held),
            self.true,
        )


def keeps_to(held: Held, start: int, lie: Lie) -> bool:
    """Whether a piece that lies so and starts there, across the box, is held where it must be."""
    if held is Held.FREE:
        return True
    near, far = start == 0, start == lie.latest_across
    return near if held is Held.NEAR else far if held is Held.FAR else near or far


def unit_of(kinds: Iterable[Kind], cloth: Cloth) -> int:
    """The greatest common measure of all sizes and repeats, in ticks."""
    sizes = (size for kind in kinds for size in (kind.width, kind.length))
    return gcd(cloth.repeat, cloth.repeat_across, *sizes)


def box_for(kinds: Sequence[Kind], cloth: Cloth, target: int, unit: int) -> Box | None:
    """The box of cloth up to `target` ticks; None if some piece has no way to lie in it."""
    across, within = cloth.width // unit, target // unit
    period, period_across = cloth.repeat // unit, cloth.repeat_across // unit
    edge = next_repeat(across, period_across)
    every = []
    for kind in kinds:
        sizes = [(kind.width // unit, kind.length // unit, False)]
        if kind.may_turn:
            sizes.append((kind.length // unit, kind.width // unit, True))
        lies = []
        for wide, long, turned in sizes:
            if wide > across or long > within:
                continue
            latest_across = last_start(across - wide, period_across)
            at_far_edge = kind.held in (Held.FAR, Held.EITHER)
            lies.append(
                Lie(
                    edge - latest_across if at_far_edge else next_repeat(wide, period_across),
                    next_repeat(long, period),
                    latest_across,
                    last_start(within - long, period),
                    turned,
                )
            )
        if not lies:
            return None
        every.append(tuple(lies))
    ends_across = (lie.latest_across + lie.across for lies in every for lie in lies)
    ends_along = (lie.latest_along + lie.along for lies in every for lie in lies)
    held = tuple(kind.held for kind in kinds)
    far = Held.FAR in held or Held.EITHER in held
    return Box(
        across=max(ends_across) if period_across and not far else edge,
        along=max(ends_along),
        counts=tuple(kind.quantity for kind in kinds),
        lies=tuple(every),
        held=held,
        true=not (far and period_across),
    )


def spots_from(
    puts: Iterable[Put], kinds: Sequence[Kind], cloth: Cloth, unit: int
) -> tuple[Spot, ...]:
    """The pieces in ticks, each moved towards the cut end as far as it will go."""
    settled: list[Spot] = []
    for put in sorted(puts, key=lambda one: (one.along, one.across)):
        kind = kinds[put.kind]
        width, length = kind.width, kind.length
        if put.lie.turned:
            width, length = length, width
        across = put.across * unit
        if kind.held is Held.FAR or (kind.held is Held.EITHER and across):
            across = cloth.width - width
        under = (
            below.along + below.length
            for below in settled
            if below.across < across + width and across < below.across + below.width
        )
        along = next_repeat(max(under, default=0), cloth.repeat)
        settled.append(Spot(put.kind, across, along, width, length))
    return tuple(settled)
