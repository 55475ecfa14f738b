"""A strip of limited length filled with as much of the pieces as it takes.

The pieces go into straight rows, of which those of the greatest area are chosen that fit into the
length; then pieces left over are tried one by one, the largest first, in any layout that is short
enough. Not proven to be the most.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import islice

from estimator.layout.across import next_repeat
from estimator.layout.answer import Layout, Row
from estimator.layout.choose import lay_out
from estimator.layout.effort import Effort
from estimator.layout.in_cuts import best_cut, renamed, short_enough, told_of
from estimator.layout.kinds import kinds_of
from estimator.layout.question import Blank, Cloth, DoesNotFit, as_laid
from estimator.layout.row_search import fillers
from estimator.layout.rows import in_order, length_of, rows_layout, with_most_to_spare_last
from estimator.layout.shelves import RULES, Fit, Shelf, pack

QUICK, TRIAL = Effort(200), Effort(100)
MOST_TRIED = 12
"""Pieces tried one by one beyond the rows."""
MANY_TIMES = 64
"""The pieces that are looked at would fill the strip about so many times over."""
FULL_ROWS = tuple(rule for rule in RULES if rule.fit is Fit.BEST)
"""The rules whose rows are looked at: each piece goes into the row that it fills best."""
FEW_KINDS, FILLINGS = 30, 4
"""Of few kinds so many ways to fill rows are looked at as well; of many they take too long."""
PARTS = 400
"""Into so many parts a length is divided to choose rows; heights are raised to whole parts."""


def fullest(
    cloth: Cloth, blanks: Sequence[Blank], longest: int, *, rows_only: bool = False
) -> Layout | None:
    """A layout no longer than ``longest`` ticks of some of the blanks, whose area is great.

    Its placements name the blanks that were asked for; it may hold fewer of each. None where not
    one goes on. ``cloth.buys`` is not asked: the shorter layout is the better one.
    """
    filling = _Filling(replace(cloth, buys=as_laid), blanks, longest, rows_only)
    if not filling.wanted.total():
        return None
    return told_of(filling.run(), filling.turned)


class _Filling:
    """``lying`` are the blanks as they go on the strip, of which ``wanted`` may be cut."""

    def __init__(
        self, cloth: Cloth, blanks: Sequence[Blank], longest: int, rows_only: bool
    ) -> None:
        self.cloth, self.longest, self.rows_only = cloth, longest, rows_only
        self.lying = list(blanks)
        self.wanted: Counter[int] = Counter()
        self.turned: set[int] = set()
        for number, blank in enumerate(blanks):
            try:
                lies = short_enough(number, blank, cloth, longest)
            except DoesNotFit:
                continue
            self.lying[number] = lies
            if lies.width != blank.width:
                self.turned.add(number)
            room = cloth.width * longest // self._area(number)
            self.wanted[number] = min(blank.quantity, room)
        area = sum(self._area(number) * count for number, count in self.wanted.items())
        if area > MANY_TIMES * cloth.width * longest:
            self.wanted = self._fewer(MANY_TIMES * cloth.width * longest, area)

    def run(self) -> Layout:
        """The rows of the greatest area, and what goes on beside them."""
        rows = self._rows()
        best = best_cut(rows, self.cloth, self.lying, self.longest, QUICK, self.rows_only)
        held = Counter(place.blank for place in best.placements)
        filled = sum(self._area(number) * count for number, count in held.items())
        tried = 0
        enough = replace(self.cloth, buys=lambda length: int(length > self.longest))
        for number, count in sorted(
            (self.wanted - held).items(), key=lambda one: (-self._area(one[0]), one[0])
        ):
            for _ in range(count):
                too_much = filled + self._area(number) > self.cloth.width * self.longest
                if too_much or tried == MOST_TRIED:
                    break
                tried += 1
                more = held + Counter({number: 1})
                layout = self._laid(more, enough, rows_only=self.rows_only, effort=TRIAL)
                if layout.length > self.longest:
                    break
                held, best = more, layout
                filled += self._area(number)
        shortest = self._laid(held, self.cloth, rows_only=self.rows_only)
        return min(best, shortest, key=lambda layout: layout.length)

    def _fewer(self, share: int, of: int) -> Counter[int]:
        """A share of what is wanted, drawn evenly from the longest to the shortest."""
        kept: Counter[int] = Counter()
        passed = 0
        for number in sorted(self.wanted, key=lambda one: (-self.lying[one].length, one)):
            before, passed = passed, passed + self.wanted[number]
            kept[number] = passed * share // of - before * share // of
        return +kept

    def _area(self, number: int) -> int:
        return self.lying[number].width * self.lying[number].length

    def _laid(
        self, held: Counter[int], cloth: Cloth, *, rows_only: bool, effort: Effort = QUICK
    ) -> Layout:
        """So many of each blank, laid out so that as little is bought as is found."""
        numbers = sorted(number for number, count in held.items() if count)
        own = [replace(self.lying[number], quantity=held[number]) for number in numbers]
        layout = lay_out(cloth, own, effort=effort, rows_only=rows_only)
        return renamed(layout, numbers)

    def _rows(self) -> tuple[Row, ...]:
        """The rows of the greatest area that go into the length, by the best of a few rules."""
        numbers = sorted(number for number, count in self.wanted.items() if count)
        own = [replace(self.lying[number], quantity=self.wanted[number]) for number in numbers]
        kinds = kinds_of(own)
        ways = [pack(kinds, self.cloth, rule) for rule in FULL_ROWS]
        if len(kinds) <= FEW_KINDS:
            ways += [filler.rows() for filler in islice(fillers(kinds, self.cloth), FILLINGS)]
        _, shelves = max(map(self._chosen, ways), key=lambda chosen: chosen[0])
        return renamed(rows_layout(self.cloth, kinds, own, shelves, 0), numbers).rows

    def _chosen(self, shelves: Sequence[Shelf]) -> tuple[int, list[Shelf]]:
        """The area of those whose heights, in whole repeats, go into the length, and they."""
        shelves = in_order(shelves, 0)
        repeat = self.cloth.repeat
        part = max(1, -(-self.longest // PARTS))
        room = (self.longest + max(0, repeat - 1)) // part  # the last row may leave part of its own
        best: list[tuple[int, tuple[int, ...]]] = [(0, ())] * (room + 1)
        for number, shelf in enumerate(shelves):
            takes = -(-next_repeat(shelf.height, repeat) // part)
            worth = _area_of(shelf)
            for at in range(room, takes - 1, -1):
                area, chosen = best[at - takes]
                if area + worth > best[at][0]:
                    best[at] = (area + worth, (*chosen, number))
        found = [shelves[number] for number in best[room][1]]
        while length_of(with_most_to_spare_last(found, repeat), repeat) > self.longest:
            found.pop()
        found = found or [min(shelves, key=lambda shelf: shelf.height)]
        ordered = with_most_to_spare_last(found, repeat)
        return sum(map(_area_of, ordered)), ordered


def _area_of(shelf: Shelf) -> int:
    return sum(piece.width * piece.length for stack in shelf.stacks for piece in stack.pieces)
