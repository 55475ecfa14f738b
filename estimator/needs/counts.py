"""How many of a notion: as stated, spread along edges, or two for each bone.

Spaces are one fewer than the buttons that stand between two ends.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from estimator.edges import EdgeRef
from estimator.faults import NamesAnUnread, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length, Unit, decimal_text, tape_text, whole_ticks
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.makeup import takes_a_length
from estimator.plan import Notion
from estimator.quoting import quoted
from estimator.rules import house_rules
from estimator.working import Operation, Step
from estimator.written import length

MOST_IN_A_ROW = 10_000
BUTTON_IMPERIAL, BUTTON_METRIC = length("1/8 in"), length("0.3 cm")
"""The thickness of a flat button, where none is stated (common practice)."""


@dataclass(frozen=True, slots=True)
class Counted:
    """How many of a notion one garment has, why, and what the list says of them."""

    count: int
    steps: tuple[Step, ...]
    notes: tuple[str, ...] = ()

    def for_the_job(self, notion: Notion, order: GarmentOrder) -> tuple[Step, ...]:
        """The steps for all copies, and the spare ones."""
        steps, count = list(self.steps), self.count
        if order.copies > 1:
            count *= order.copies
            steps.append(Step("garments", Operation.TIMES, order.copies, count))
        spares = spares_of(notion, order)
        if spares:
            count += spares
            steps.append(Step("spare", Operation.ADD, spares, count))
        return tuple(steps)


def spares_of(notion: Notion, order: GarmentOrder) -> int:
    """How many are taken to spare with an order: those of a plan once for all that it makes."""
    return notion.spare if order.with_spares else 0


@dataclass(frozen=True, slots=True)
class Spread:
    """So many along one edge, the first and the last so far from its ends."""

    count: int
    apart: Length
    span: Length


def spread_over(whole: Length, from_ends: Length, apart: Length | None, count: int) -> Spread:
    """Evenly along a length: at most ``apart``, or else so many as ``count``.

    Raises Wrong where the ends leave nothing, or there are too many.
    """
    span = whole - from_ends * 2
    if span < ZERO or (apart is not None and not span):
        raise Wrong("from_ends leaves nothing between", "write a smaller from_ends", ("from_ends",))
    if apart is not None:
        count = ceil(span / apart) + 1
        if count > MOST_IN_A_ROW:
            raise Wrong(f"there would be {count} in a row", "set them farther apart", ("apart",))
    spaces = max(count - 1, 1)
    return Spread(count, whole_ticks(Fraction(span.ticks, spaces)), span)


def count_of(notion: Notion, order: GarmentOrder) -> Counted:
    """How many one garment takes. Raises Wrong for edges and bones that are not there."""
    size = size_notes(notion, order.tape)
    if notion.ends_of is not None:
        counted = _ends_of_bones(notion.ends_of, order)
    elif notion.along is not None or notion.over is not None:
        counted = _spread(notion, order)
    else:
        start = Step(notion.name, Operation.START, notion.quantity, notion.quantity)
        counted = Counted(notion.quantity, (start,))
    return Counted(counted.count, counted.steps, (*size, *counted.notes))


def thickness_of(notion: Notion, unit: Unit) -> Length:
    """A button's thickness, or that of a flat one."""
    return notion.thickness or (BUTTON_METRIC if unit.metric else BUTTON_IMPERIAL)


def thickness_granted(notion: Notion, unit: Unit) -> str:
    """Says how thick a button is taken to be; nothing where its plan says it."""
    if notion.size is None or notion.thickness is not None:
        return ""
    thick = tape_text(thickness_of(notion, unit), unit)
    return f"{notion.name}: taken as flat, {thick} thick, for buttonholes and loops."


def size_notes(notion: Notion, unit: Unit) -> tuple[str, ...]:
    """A button's size in lignes and on the tape, and its buttonhole: diameter and thickness."""
    if notion.size is None:
        return ()
    lignes = decimal_text(notion.size / Unit.LIGNE.length, 1)
    hole = (notion.size + thickness_of(notion, unit)).up_to(house_rules(unit).mark)
    on_tape = " or ".join(tape_text(notion.size, one) for one in (Unit.IN, Unit.MM))
    return (
        f"size {lignes} lignes, about {on_tape}",
        f"a buttonhole of {tape_text(hole, unit)}, its diameter and thickness; try one first",
    )


def _ends_of_bones(name: str, order: GarmentOrder) -> Counted:
    bones = {one.name: one for one in order.plan.boning if one.casing_for is None}
    if name not in bones:
        if name in order.unread:
            raise NamesAnUnread(name)
        raise Wrong(f"there are no bones {quoted(name)}", nearest(name, bones), ("ends_of",))
    bone = bones[name]
    quantity = bone.quantity
    if bone.along is not None:
        quantity *= EdgeLengths(order, {}).how_many(bone.along)
    start = Step(name, Operation.START, quantity, quantity)
    both = Step("two ends each", Operation.TIMES, 2, quantity * 2)
    return Counted(quantity * 2, (start, both))


def _spread(notion: Notion, order: GarmentOrder) -> Counted:
    edges = EdgeLengths(order, {})
    found: list[tuple[str, Length, int]] = []
    if notion.over is not None:
        found.append(("distance as stated", notion.over, 1))
    found += [_edge(ref, edges) for ref in notion.along or ()]
    unit = order.tape
    steps: list[Step] = []
    notes, count = [], 0
    for label, whole, number in found:
        spread = spread_over(whole, notion.from_ends or ZERO, notion.apart, notion.quantity)
        of_edge = spread.count * number
        count += of_edge
        steps += _spread_steps(notion, label, whole, number, spread)
        if spread.count > 1:
            notes.append(f"{spread.count} in a row, {tape_text(spread.apart, unit)} apart")
    if len(found) > 1:
        steps.append(Step("on all edges", Operation.IN_ALL, len(found), count))
    return Counted(count, tuple(steps), tuple(dict.fromkeys(notes)))


def _edge(ref: EdgeRef, edges: EdgeLengths) -> tuple[str, Length, int]:
    edges.check(ref)
    if takes_a_length(edges.piece(ref.piece)):
        raise Wrong(
            f"{quoted(ref)} has its length only once it is made up",
            'state the distance, as in over = "21"',
            ("along",),
        )
    return f"{ref}, one", edges.one(ref), edges.how_many(ref)


def _spread_steps(
    notion: Notion, label: str, whole: Length, number: int, spread: Spread
) -> list[Step]:
    if notion.apart is None:
        steps = [Step(f"{notion.name} on {label}", Operation.START, spread.count, spread.count)]
    else:
        steps = [Step(label, Operation.START, whole, whole)]
        if spread.span != whole:
            ends = whole - spread.span
            steps.append(Step("from both ends", Operation.TAKE, ends, spread.span))
        spaces = spread.count - 1
        steps.append(
            Step("whole spaces, at most so far apart", Operation.DIVIDE, notion.apart, spaces)
        )
        steps.append(Step("one more than the spaces", Operation.ADD, 1, spread.count))
    if number > 1:
        steps.append(Step("so many pieces", Operation.TIMES, number, spread.count * number))
    return steps
