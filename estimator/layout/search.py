"""The search for better rows, for a close layout that buys less, and for the proof that none does.

It asks of one length after another whether the pieces fit: lengths at which the purchase would
fall, between the bound and the best layout so far. A wider beam follows when a narrow one has found
all it can. A length at which nothing can fit raises the bound. The search ends when bound and
layout buy the same, or when the work allowed is done; more work only ever adds to what less would
have found.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import count

from estimator.layout.beam import Beam, Taste
from estimator.layout.box import Box, Put, box_for, spots_from, unit_of
from estimator.layout.effort import EVERYDAY, Budget, Effort, times_for
from estimator.layout.fill import Fill
from estimator.layout.fits import cannot_fit
from estimator.layout.kinds import Kind, Spot
from estimator.layout.overflow import completed
from estimator.layout.question import Cloth, Held
from estimator.layout.refill import kept, line_of
from estimator.layout.row_search import RowSearch
from estimator.layout.rows import length_of
from estimator.layout.rungs import longest_buying_less, longest_buying_same
from estimator.layout.shelves import Shelf

FINENESS = 400
"""Where every tick counts, lengths nearer to each other than 1/400 are not asked apart."""
MOST_PIECES = 400
"""With more pieces than this only rows are looked for: they waste little then."""
FIRST_BEAM = 2
BEAM_GROWTH = 3
TASTES = (Taste(0.05, 0.1), Taste(0.02, 0.05))
PROOFS, PROOFS_IN_CLOSED_FORM = 2, 10
"""Lengths that are tried to be proved too short, at one time."""
ATTEMPTS_A_ROUND = 8
"""Wide beams tried between two looks for better rows."""
MOST_KINDS_PROVED = 50
"""With more kinds, scales hardly prove more than the area does, and take long."""
NEAR = (20, 21)
"""Rows this much longer than a close layout are given up."""
REACH = (11, 12)
"""A wide beam asks for a length this share of the way from the bound to the best so far."""
BOLD_ATTEMPTS, BOLD = 2, (3, 100)
"""The first few ask for no more than 3 % above the bound."""
SCALES = 2
"""Best scales worked out from each side of a box to prove that it is too short."""


@dataclass(frozen=True, slots=True)
class Found:
    """The best rows, the places of a close layout if one buys less than they, and the bound."""

    rows: tuple[Shelf, ...]
    spots: tuple[Spot, ...] | None
    bound: int


class Search:
    """One search; `bound` is a bound known already, `rows_only` looks for no close layout."""

    def __init__(
        self, cloth: Cloth, kinds: Sequence[Kind], bound: int, effort: Effort, rows_only: bool
    ) -> None:
        self._cloth = cloth
        self._kinds = kinds
        self._unit = unit_of(kinds, cloth)
        self._bound = bound
        self._rows_only = rows_only or sum(kind.quantity for kind in kinds) > MOST_PIECES
        self._rows = RowSearch(cloth, kinds)
        self._length = length_of(self._rows.best, cloth.repeat)
        self._spots: tuple[Spot, ...] | None = None
        everyday = min(effort.work, EVERYDAY.work)
        self._more = effort.work - everyday
        self._budget = Budget(everyday * times_for(len(kinds)))
        if any(kind.held is not Held.FREE for kind in kinds):
            # a wide beam knows of no edges; the narrow ones go on in its place
            self._budget.work += self._more
            self._more = 0

    def run(self) -> Found:
        """Search until nothing less can be bought, nothing is left to ask, or the work is done."""
        self._raise_bound(self._length - 1, 0)
        if self._settled and self._budget.work:
            self._look_for_rows()  # as little is bought already; there may be fewer cuts
        self._search_everyday()
        if self._more > 0 and not self._settled:
            self._budget = Budget(self._more)
            self._search_on()
        return Found(self._rows.best, self._spots, self._bound)

    def _search_everyday(self) -> None:
        """Rows, narrow beams and proofs in turn, each round with beams wider than before."""
        width, unproved = FIRST_BEAM, -1
        open_ended = True
        while open_ended and not self._settled and not self._budget.spent:
            self._look_for_rows()
            open_ended = not self._rows.exhausted if self._rows_only else self._search_with(width)
            if self._length != unproved and not self._settled:
                self._raise_bound(self._length - 1, SCALES)
                unproved = self._length
            width *= BEAM_GROWTH

    def _search_on(self) -> None:
        """Wide beams, one after another, with more rows and proofs in between."""
        unproved = self._length
        for number in count(1):
            if self._settled or self._budget.spent:
                return
            again = self._rows_only or number % ATTEMPTS_A_ROUND == 0
            if again and (self._rows_only or self._rows_are_near):
                self._look_for_rows()
                if self._rows_only and self._rows.exhausted:
                    return
            if again and self._length != unproved and len(self._kinds) <= MOST_KINDS_PROVED:
                unproved = self._length
                self._raise_bound(unproved - 1, SCALES)
            if not self._rows_only and not self._attempt(number):
                return

    @property
    def _rows_are_near(self) -> bool:
        """Whether better rows might still do as well as a close layout."""
        length = length_of(self._rows.best, self._cloth.repeat)
        return length * NEAR[0] <= self._length * NEAR[1]

    def _within_reach(self, number: int) -> int | None:
        """A length a little below the best one; the first attempts ask for a good one at once."""
        ceiling = longest_buying_less(self._cloth, self._length)
        if ceiling < self._bound:
            return None
        aim = self._bound + (ceiling - self._bound) * REACH[0] // REACH[1]
        if number <= BOLD_ATTEMPTS:
            aim = min(aim, self._bound + self._bound * BOLD[0] // BOLD[1])
        return longest_buying_same(self._cloth, aim, ceiling)

    def _attempt(self, number: int) -> bool:
        """Fill a box with a wide beam, all of it or beyond a line, each time with other whims.

        False if there is no shorter length to ask for.
        """
        # a wide beam needs arrays, which take longer to import than most searches last
        from estimator.layout.wide_beam import LEANINGS, WideBeam

        target = self._within_reach(number)
        box = self._box(target) if target is not None else None
        if box is None:
            return False
        line = line_of(number, box.along)
        stay = kept(box, self._spots or (), self._kinds, self._unit, line)
        beam = WideBeam(box, LEANINGS[number % len(LEANINGS)], number, self._budget)
        puts = beam.search(stay)
        if puts is not None:
            self._keep_if_it_buys_less(puts)
        elif beam.stuck:
            self._keep_if_it_buys_less(completed(box, beam.stuck))
        return True

    def _look_for_rows(self) -> None:
        """Better rows; they take the place of a close layout that buys no less."""
        self._rows.more(self._budget)
        length = length_of(self._rows.best, self._cloth.repeat)
        if self._cloth.buys(length) <= self._cloth.buys(self._length):
            self._length, self._spots = length, None

    @property
    def _settled(self) -> bool:
        return self._cloth.buys(self._bound) >= self._cloth.buys(self._length)

    def _box(self, target: int) -> Box | None:
        return box_for(self._kinds, self._cloth, target, self._unit)

    def _between(self, floor: int, parts: int) -> int | None:
        """A length worth reaching, a share of the way from `floor` to the best length so far."""
        ceiling = longest_buying_less(self._cloth, self._length)
        if ceiling <= floor or (ceiling - floor) * FINENESS < self._length:
            return None
        aim = floor + max(1, (ceiling - floor) // parts)
        return longest_buying_same(self._cloth, aim, ceiling)

    def _raise_bound(self, first: int, scales: int) -> None:
        """Prove as many lengths as possible too short: `first` if it can be, else by halving."""
        ceiling = self._length
        aim = first
        for _ in range(PROOFS if scales else PROOFS_IN_CLOSED_FORM):
            if self._settled or self._budget.spent:
                return
            top = longest_buying_less(self._cloth, ceiling)
            near = (top - self._bound) * FINENESS < self._length
            if top < self._bound or (near and aim != first):
                return
            target = longest_buying_same(self._cloth, min(aim, top), top)
            box = self._box(target)
            if box is None or (box.true and cannot_fit(box, self._budget, scales=scales)):
                self._bound = self._after(target)
            else:
                ceiling = target
            aim = (self._bound + ceiling) // 2

    def _after(self, target: int) -> int:
        """The first length above `target` at which a layout can end at all."""
        return (target // self._unit + 1) * self._unit

    def _search_with(self, width: int) -> bool:
        """Look for close layouts with a beam of one width; False if a wider one finds no more."""
        floor = self._bound - 1
        narrow = False
        while not self._settled:
            target = self._between(floor, 2)
            if target is None:
                break
            box = self._box(target)
            puts, too_narrow = self._fill(box, width) if box else (None, False)
            narrow = narrow or too_narrow
            if puts is not None:
                self._keep_if_it_buys_less(puts)
            elif self._budget.spent:
                break
            else:
                floor = target
        return narrow

    def _fill(self, box: Box, width: int) -> tuple[list[Put] | None, bool]:
        """The pieces in the box, from its end or from its side; and whether a beam was narrow."""
        narrow = False
        sides = (Fill(box),) if box.holds else (Fill(box), Fill(box.on_its_side()))
        for taste in TASTES:
            for on_side, fill in enumerate(sides):
                beam = Beam(fill, width, taste, self._budget)
                puts = beam.search()
                narrow = narrow or beam.narrow
                if puts is not None:
                    return [_stood_up(put) for put in puts] if on_side else puts, narrow
                if not on_side and beam.stuck:
                    self._keep_if_it_buys_less(completed(box, beam.stuck))
                if self._budget.spent:
                    return None, narrow
        return None, narrow

    def _keep_if_it_buys_less(self, puts: Sequence[Put]) -> None:
        spots = spots_from(puts, self._kinds, self._cloth, self._unit)
        length = max(spot.along + spot.length for spot in spots)
        if self._cloth.buys(length) < self._cloth.buys(self._length):
            self._spots, self._length = spots, length


def _stood_up(put: Put) -> Put:
    """A piece of a box that lay on its side, in the box as it stands."""
    return Put(put.kind, put.along, put.across, put.lie.on_its_side())
