"""Bindings and pipings cut from a fabric of the garment: bias strips as long as a trim's runs.

They join the fabric's layout as the square from which they are cut; what they follow is reckoned
as of any other trim.
"""

from __future__ import annotations

from fractions import Fraction

from estimator.faults import Path, Wrong
from estimator.job import GarmentOrder
from estimator.measure import Length
from estimator.needs.arc import PI
from estimator.needs.edge_lengths import EdgeLengths
from estimator.needs.sewn_on import CUT_OF_A_BINDING
from estimator.needs.trim_runs import trim_runs
from estimator.needs.types import Material, ToCut
from estimator.plan import Cut, Made, Piece, Trim
from estimator.quoting import quoted
from estimator.working import Reckoning, in_all


def strips_to_cut(trim: Trim, cord: Length | None, order: GarmentOrder, path: Path) -> ToCut:
    """What is cut from its fabric for a trim; ``cord`` is the thickness of the cord it covers.

    Raises Wrong for a cord of unknown thickness.
    """
    wide = _cut_width(trim, cord, order)
    cut = Cut(fabric=trim.cut_from or "")
    # its length hangs on the edges that it follows, and is asked for where it is made up
    piece = Piece(
        name=trim.name.replace(":", ","), cut=(cut,), made=Made.BIAS_STRIP,
        width=wide.value, length=wide.value, note=trim.note,
    )  # fmt: skip
    return ToCut(order, path, piece, cut, trim=trim, wide=wide)


def _cut_width(trim: Trim, cord: Length | None, order: GarmentOrder) -> Reckoning:
    """As stated; round a cord, its girth and two seam allowances; else four times the binding."""
    rules = order.plan.garment.rules
    if trim.strip is not None:
        return Reckoning.start("strip, cut", trim.strip)
    if trim.covers is not None:
        if cord is None:
            raise Wrong(
                f"nothing says how thick the cord {quoted(trim.covers)} is",
                'add width = "3/16" to it, or strip = "1 3/4" here',
                ("covers",),
            )
        wide = Reckoning.start("thickness of the cord", cord).times("round it, π", PI)
        wide = wide.plus("two seam allowances", rules.seam_allowance * 2)
    else:
        assert trim.width is not None, "the trim's table was checked for a width"
        wide = Reckoning.start("binding, finished", trim.width)
        wide = wide.times("cut so many times as wide", CUT_OF_A_BINDING)
    return wide.to_mark("up to the mark of the tape", order.mark)


def length_of_strips(hanging: ToCut, edges: EdgeLengths, lost: Length) -> Reckoning:
    """All that a trim's strips have to reach, joined, with what a join at each run's end takes."""
    trim = hanging.trim
    assert trim is not None, "the caller asks for strips that a trim needs"
    material = Material(None, Fraction(0), trim.width)
    runs = trim_runs(trim, material, edges, hanging.source)
    return in_all(
        "all runs together",
        [
            run.length.plus("a join at its ends", lost).times("so many runs alike", run.count)
            for run in runs
        ],
    )
