"""From a question to the layout that is cut: refuse, pack, bound, choose."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.layout.answer import Layout, Style
from estimator.layout.bounds import lower_bound
from estimator.layout.effort import EVERYDAY, Effort
from estimator.layout.kinds import kinds_of, placements_of
from estimator.layout.question import Blank, Cloth, refuse_what_cannot_be_cut
from estimator.layout.rows import rows_layout
from estimator.layout.search import Search


def least_length_of(cloth: Cloth, blanks: Sequence[Blank]) -> int:
    """A length in ticks that no layout of these blanks goes below, of any style."""
    return lower_bound(kinds_of(blanks), cloth)


def lay_out(
    cloth: Cloth,
    blanks: Sequence[Blank],
    *,
    effort: Effort = EVERYDAY,
    rows_only: bool = False,
) -> Layout:
    """Lay every blank on the cloth so that the least is bought.

    The layout is in straight rows unless a close one buys less; with `rows_only` it always is, and
    its bound still holds for every style. Sizes are ticks. The layout depends on the sizes and
    names of the blanks, never on their order. `Layout.length` runs from the first piece to the
    last: straightened ends are not in it.

    Raises DoesNotFit for a blank wider than the cloth in each turn allowed, or without a size or a
    quantity above zero, and ValueError for a cloth without a width.
    """
    refuse_what_cannot_be_cut(cloth, blanks)
    kinds = kinds_of(blanks)
    if not kinds:
        return Layout(cloth.width, 0, (), (), 0, Style.STRAIGHT_ROWS)
    bound = lower_bound(kinds, cloth)
    found = Search(cloth, kinds, bound, effort, rows_only).run()
    if found.spots is None:
        return rows_layout(cloth, kinds, blanks, found.rows, found.bound)
    placements = placements_of(found.spots, kinds, blanks)
    length = max(spot.along + spot.length for spot in found.spots)
    return Layout(cloth.width, length, placements, (), found.bound, Style.CLOSE)
