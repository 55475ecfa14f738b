"""Lacing, boning and button loops: how long each is, from the opening, channel or button."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from estimator.edges import EdgeRef
from estimator.faults import Faults, NamesAnUnread, Path, Wrong, nearest
from estimator.job import GarmentOrder
from estimator.measure import ZERO, tape_text, whole_ticks
from estimator.needs.bias import root_up
from estimator.needs.counts import count_of, spread_over, thickness_of
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.makeup import takes_a_length
from estimator.needs.types import BuyingTerms, Run
from estimator.plan import Boning, ByLength, Lacing, Loops
from estimator.quoting import quoted
from estimator.working import SHRINKS, Operation, Reckoning, Step


@dataclass(frozen=True, slots=True)
class Closure:
    """One length that a closure takes, ``count`` times in a garment, and what the list says."""

    length: Reckoning
    count: int
    notes: tuple[str, ...] = ()

    def runs(
        self, entry: ByLength, shrinkage: Fraction, order: GarmentOrder, path: Path
    ) -> tuple[Run, ...]:
        """Its runs in the whole job, as lengths that are bought."""
        bought = self.length.divided_by(SHRINKS, 1 - shrinkage)
        return (Run(order.source(entry.name, path), bought, self.count * order.copies),)

    def steps(self, entry: ByLength, order: GarmentOrder) -> tuple[Step, ...]:
        """The working of its number in the whole job."""
        steps = [Step(entry.name, Operation.START, self.count, self.count)]
        if order.copies > 1:
            in_all = self.count * order.copies
            steps.append(Step("garments", Operation.TIMES, order.copies, in_all))
        return tuple(steps)


def check_closures(order: GarmentOrder, faults: Faults) -> None:
    """Adds a complaint for every edge, bone and button that a closure names and is not there."""
    edges = EdgeLengths(order, {})
    tables: tuple[tuple[str, tuple[Lacing | Boning | Loops, ...]], ...] = (
        ("lacing", order.plan.lacing),
        ("boning", order.plan.boning),
        ("loops", order.plan.loops),
    )
    for key, entries in tables:
        for number, entry in enumerate(entries):
            with faults.at(order.places, (key, number)):
                along = None if isinstance(entry, Loops) else entry.along
                if along is None or _has_length(along, edges):
                    closure_of(entry, edges)


def _has_length(ref: EdgeRef, edges: EdgeLengths) -> bool:
    edges.check(ref)
    return not takes_a_length(edges.piece(ref.piece))


def closure_of(entry: Lacing | Boning | Loops, edges: EdgeLengths) -> Closure:
    """What one closure takes. Raises Wrong for what it names and is not there."""
    match entry:
        case Lacing():
            return _lacing(entry, edges)
        case Boning(casing_for=None):
            return _bones(entry, edges)
        case Boning():
            return _casing(entry, edges)
        case Loops():
            return _loops(entry, edges)


def _opening(entry: Lacing | Boning, edges: EdgeLengths) -> tuple[Reckoning, int]:
    """The length of an opening or channel, and on how many pieces it is."""
    if entry.along is not None:
        one = Reckoning.start(f"{entry.along}, one", edges.one(entry.along))
        return one, edges.how_many(entry.along)
    assert entry.length is not None, "the plan asks for along or length"
    return Reckoning.start("finished length as stated", entry.length), 1


def _lacing(entry: Lacing, edges: EdgeLengths) -> Closure:
    """Crossed lacing: straight across at the first pair of n, then twice over each of n - 1 spaces.

    gap + 2 (n - 1) √(gap² + space²) + two ends to tie (geometry of the crossing).
    """
    garment, tape = edges.order.plan.garment, edges.order.tape
    opening, number = _opening(entry, edges)
    spread = spread_over(opening.value, entry.from_ends or ZERO, entry.apart, entry.pairs or 1)
    spaces = spread.count - 1
    tie = garment.rules.tie if entry.tie is None else entry.tie
    gap = Reckoning.start("straight across the gap at the first pair", entry.gap)
    notes = [f"through {spread.count} pairs of eyelets"]
    if spaces:
        upright = spread.span.ticks
        cross = whole_ticks(Fraction(root_up((entry.gap.ticks * spaces) ** 2 + upright**2), spaces))
        apart = tape_text(spread.apart, tape)
        crossing = (
            f"{2 * spaces} crossings of {tape_text(cross, tape)}, the root of "
            f"gap² + space²: {tape_text(entry.gap, tape)} and {apart}"
        )
        gap = gap.plus(crossing, cross * (2 * spaces))
        notes.append(f"{apart} apart on each side")
    lace = gap.plus("two ends to tie", tie * 2)
    return Closure(lace, entry.quantity * number, (", ".join(notes),))


def _bones(entry: Boning, edges: EdgeLengths) -> Closure:
    channel, number = _opening(entry, edges)
    rules = edges.order.plan.garment.rules
    clear = rules.bone_clear if entry.clear is None else entry.clear
    bone = channel.minus("clear of both ends of its channel", clear * 2)
    if bone.exact <= 0:
        raise Wrong("clear leaves nothing of the bone", "write a smaller clear", ("clear",))
    cut = tape_text(bone.value, edges.order.tape)
    count = entry.quantity * number
    in_all = count * edges.order.copies
    return Closure(bone, count, (f"{in_all} bones, each {cut} long with its tips on",))


def sold_ready_cut(entry: Boning, terms: BuyingTerms) -> bool:
    """Whether bones are sold singly in lengths of their own, and not to be cut from one.

    Raises Wrong where they are sold in both ways, or in lengths that nobody states.
    """
    singly = [offer for offer in terms.offers if isinstance(offer.put_up.holds, int)]
    if not singly:
        if entry.shorter is not None:
            raise Wrong(
                f"shorter is for bones that are sold ready cut, and {quoted(entry.name)} are cut "
                "from a length",
                'leave it out, or write sold = [{ put_up = "each", length = "9 in" }]',
                ("shorter",),
            )
        return False
    if entry.casing_for is not None or len(singly) < len(terms.offers):
        raise Wrong(
            f"{quoted(entry.name)} would be sold ready cut and by the length",
            "offer them in one way; a casing is sold by the length",
        )
    if any(offer.length is None for offer in singly):
        raise Wrong(
            f"{quoted(entry.name)} are sold {singly[0].put_up.sold_text}, and nothing says how "
            "long one is",
            'write sold = [{ put_up = "each", length = "9 in" }], or offer them by the length',
        )
    return True


def counted_bones(entry: Boning, order: GarmentOrder) -> Closure:
    """Bones that are sold ready cut: how long each is at most, and how many a garment has.

    Raises Wrong for a channel whose length is known only once its piece is made up.
    """
    edges = EdgeLengths(order, {})
    if entry.along is not None and not _has_length(entry.along, edges):
        raise Wrong(
            f"{quoted(entry.along)} has its length only once it is made up",
            'state that of each channel, as in length = "9"',
            ("along",),
        )
    return _bones(entry, edges)


def _casing(entry: Boning, edges: EdgeLengths) -> Closure:
    """A casing covers the whole channel of each bone, and its ends are turned under."""
    plan = edges.order.plan
    bones = {one.name: one for one in plan.boning if one.casing_for is None}
    name = entry.casing_for or ""
    if name not in bones:
        if name in edges.order.unread:
            raise NamesAnUnread(name)
        raise Wrong(f"there are no bones {quoted(name)}", nearest(name, bones), ("casing_for",))
    channel, number = _opening(bones[name], edges)
    turned = channel.plus("two ends turned under", plan.garment.rules.turn_under * 2)
    return Closure(turned, bones[name].quantity * number)


def _loops(entry: Loops, edges: EdgeLengths) -> Closure:
    """A loop goes round the button's rim on edge: twice diameter and thickness, and two allowances.

    A button of diameter D and thickness H passes where a loop's round is 2 (D + H): twice its
    buttonhole (common practice).
    """
    order = edges.order
    buttons = {one.name: one for one in order.plan.notion}
    if entry.buttons not in buttons:
        if entry.buttons in order.unread:
            raise NamesAnUnread(entry.buttons)
        wrong = f"there is no notion {quoted(entry.buttons)}"
        raise Wrong(wrong, nearest(entry.buttons, buttons), ("buttons",))
    button = buttons[entry.buttons]
    if button.size is None:
        raise Wrong(
            f"the loops hang on the size of {quoted(button.name)}, which states none",
            'add size = "24 lignes" to the notion',
            ("buttons",),
        )
    garment = order.plan.garment
    loop = Reckoning.start("diameter of the button", button.size)
    loop = loop.plus("its thickness", thickness_of(button, garment.unit))
    loop = loop.times("round the button", 2)
    loop = loop.plus("two ends caught in a seam", garment.rules.seam_allowance * 2)
    return Closure(loop, count_of(button, order).count * entry.quantity)
