"""Proofs that some pieces cannot lie in a box, by conservative scales in both directions.

Take any scale across and any scale along the box: if every piece is replaced by one of its two
values, the pieces still go into a box of the two lines' worths (Fekete and Schepers, 2004). So if
the products of the values come to more than the product of the worths, nothing fits.

Scales along the box come in closed form at first: pieces that are too long to leave room for others
are stretched, short ones are dropped, or lengths are counted in whole parts of the box (G. S.
Lueker, 1983; Fekete and Schepers, New classes of fast lower bounds for bin packing problems,
Mathematical Programming 91, 2001). Then the best scale along for the scale across is worked out,
then the best across for that one, and so on.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from estimator.layout.box import Box
from estimator.layout.effort import STATES_A_PLACE, Budget
from estimator.layout.knapsack import Item, Line
from estimator.layout.scales import Scale, best_scale

MOST_PARTS = 12
"""Lengths are counted in up to so many parts of the box."""
MOST_ROUNDS = 80
"""Selections added to one linear programme at most."""


def cannot_fit(box: Box, budget: Budget, *, scales: int) -> bool:
    """True if it is proved that the pieces do not fit into the box; False says nothing.

    `scales` is how many best scales are worked out from each side, one for the other; with 0 only
    the closed forms are tried, which costs next to nothing.
    """
    sideways = box.on_its_side()
    if box.spare < 0 or any(
        _boxes_in_closed_form(here, _plain(here)) > 1 for here in (box, sideways)
    ):
        return True
    for here in (box, sideways):
        values, worth = _along(here), here.along
        for _ in range(scales):
            line = _line_across(here)
            scale = best_scale(line, values, MOST_ROUNDS, worth)
            budget.work -= line.work // STATES_A_PLACE
            if scale is None or budget.spent:
                break
            if scale.total > scale.worth * worth or _boxes_in_closed_form(here, scale) > 1:
                return True
            values, worth = [list(own) for own in scale.values], scale.worth
            here = here.on_its_side()
    return False


def boxes_needed(box: Box) -> int:
    """How many boxes like this one the pieces take at least.

    What all pieces come to on a pair of scales is shared out: no box takes more than its own worth.
    """
    if not box.true:
        return 1
    sideways = box.on_its_side()
    scales = [(box, _plain(box)), (sideways, _plain(sideways))]
    best = best_scale(_line_across(box), _along(box), MOST_ROUNDS)
    if best is not None:
        scales.append((box, best))
    return max(1, *(_boxes_in_closed_form(here, across) for here, across in scales))


def _plain(box: Box) -> Scale:
    """The sizes across themselves, of which a box is worth its own."""
    values = tuple(tuple(lie.across for lie in lies) for lies in box.lies)
    return Scale(values, box.across, 0)


def _along(box: Box) -> list[list[int]]:
    return [[lie.along for lie in lies] for lies in box.lies]


def _line_across(box: Box) -> Line:
    items = [
        Item(count, tuple(lie.across for lie in lies))
        for count, lies in zip(box.counts, box.lies, strict=True)
    ]
    return Line(box.across, items)


def _boxes_in_closed_form(box: Box, across: Scale) -> int:
    """How many boxes the pieces take by the best closed-form scale along, given one across."""
    lengths = sorted({lie.along for lies in box.lies for lie in lies})
    one_way: Counter[int] = Counter()
    either_way: list[tuple[int, int, int, int, int]] = []
    for count, own, lies in zip(box.counts, across.values, box.lies, strict=True):
        if len(lies) == 1:
            one_way[lies[0].along] += count * own[0]
        else:
            either_way.append((count, own[0], lies[0].along, own[1], lies[1].along))
    most = 0
    for table, worth in closed_forms(lengths, box.along):
        total = sum(value * table[along] for along, value in one_way.items())
        for count, value, along, turned_value, turned_along in either_way:
            upright, turned = value * table[along], turned_value * table[turned_along]
            total += count * (upright if upright < turned else turned)
        most = max(most, -(-total // (across.worth * worth)))
    return most


def closed_forms(lengths: Sequence[int], room: int) -> Iterator[tuple[dict[int, int], int]]:
    """Scales of these lengths, as a value for each and what a line of `room` is worth."""
    for least in lengths:
        if 2 * least > room:
            break
        yield (
            {
                size: room if size > room - least else size if size >= least else 0
                for size in lengths
            },
            room,
        )
        # whole multiples of `least`: a line holds so many of them and no more (Carlier, Clautiaux
        # and Moukrim, 2007): a long piece leaves room for what it leaves
        whole = room // least
        yield (
            {
                size: (
                    2 * (whole - (room - size) // least)
                    if 2 * size > room
                    else whole
                    if 2 * size == room
                    else 2 * (size // least)
                )
                for size in lengths
            },
            2 * whole,
        )
    for parts in range(1, MOST_PARTS + 1):
        yield (
            {
                size: size * parts
                if size * (parts + 1) % room == 0
                else size * (parts + 1) // room * room
                for size in lengths
            },
            room * parts,
        )
