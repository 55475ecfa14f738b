"""From a question to the layout that is cut: refuse, pack, bound, choose."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.layout.answer import Layout, Style
from estimator.layout.bounds import lower_bound
from estimator.layout.effort import EVERYDAY, Effort
from estimator.layout.kinds import kinds_of
from estimator.layout.question import Blank, Cloth, refuse_what_cannot_be_cut
from estimator.layout.rows import best_rows, rows_layout


def lay_out(cloth: Cloth, blanks: Sequence[Blank], *, effort: Effort = EVERYDAY) -> Layout:
    """Lay every blank on the cloth so that the least is bought, in straight rows.

    Sizes are ticks. The layout depends on the sizes and names of the blanks, never on their order.
    `Layout.length` runs from the first piece to the last: straightened ends are not in it.

    Raises DoesNotFit for a blank wider than the cloth in each turn allowed, or without a size or a
    quantity above zero, and ValueError for a cloth without a width.
    """
    del effort
    refuse_what_cannot_be_cut(cloth, blanks)
    kinds = kinds_of(blanks)
    if not kinds:
        return Layout(cloth.width, 0, (), (), 0, Style.STRAIGHT_ROWS)
    bound = lower_bound(kinds, cloth.width, cloth.repeat)
    return rows_layout(cloth, kinds, blanks, best_rows(cloth, kinds), bound)
