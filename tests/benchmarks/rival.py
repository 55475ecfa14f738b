"""The same work done by a general-purpose rectangle packer (rectpack), for comparison."""

from __future__ import annotations

from collections.abc import Sequence

import rectpack
from rectpack import guillotine, maxrects, skyline

from estimator.layout import Blank, Cloth

ALGORITHMS = (
    maxrects.MaxRectsBl,
    maxrects.MaxRectsBssf,
    maxrects.MaxRectsBaf,
    maxrects.MaxRectsBlsf,
    skyline.SkylineBl,
    skyline.SkylineBlWm,
    skyline.SkylineMwf,
    skyline.SkylineMwfl,
    guillotine.GuillotineBafSas,
)
SORTS = (rectpack.SORT_AREA, rectpack.SORT_PERI, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE)


def best_of_rectpack(
    cloth: Cloth, blanks: Sequence[Blank], *, algorithms: Sequence[type] = ALGORITHMS
) -> int:
    """The shortest length of all its algorithms and sort orders on a strip of this width.

    The packer turns all pieces or none: where only some may turn, none are. It has no repeats.
    """
    turn = all(blank.may_turn for blank in blanks)
    copies = [(b.width, b.length) for b in blanks for _ in range(b.quantity)]
    endless = sum(max(size) for size in copies)
    best = endless
    for algorithm in algorithms:
        for sort in SORTS:
            packer = rectpack.newPacker(
                mode=rectpack.PackingMode.Offline,
                pack_algo=algorithm,
                sort_algo=sort,
                rotation=turn,
            )
            packer.add_bin(cloth.width, endless)
            for width, length in copies:
                packer.add_rect(width, length)
            packer.pack()
            if packer and len(packer[0]) == len(copies):
                best = min(best, max(rect.y + rect.height for rect in packer[0]))
    return best
