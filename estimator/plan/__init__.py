"""What a person writes about one garment: fabrics, pieces, seams, trims, elastics, notions, thread.

Every length is read with the garment's own unit. A plan is frozen, and the same plan always gives
the same estimate.
"""

from __future__ import annotations

from estimator.fields import Entry, Size
from estimator.plan.closures import Boning, Lacing, Loops
from estimator.plan.fabrics import Fabric, Role, Width
from estimator.plan.garment import Garment, Wearer
from estimator.plan.piece_edges import Edge
from estimator.plan.pieces import (
    Cut,
    Grain,
    Joined,
    Made,
    Piece,
    Shape,
    TakeUp,
    TakeUpKind,
)
from estimator.plan.seams import Seam
from estimator.plan.thread import Thread, Work
from estimator.plan.trim_parts import End, Pleats, TrimEnd
from estimator.plan.trims import Bought, ByLength, Elastic, ElasticKind, Notion, Sold, Trim

__all__ = [
    "Boning",
    "Bought",
    "ByLength",
    "Cut",
    "Edge",
    "Elastic",
    "ElasticKind",
    "End",
    "Fabric",
    "Garment",
    "Grain",
    "Joined",
    "Lacing",
    "Loops",
    "Made",
    "Notion",
    "Piece",
    "Plan",
    "Pleats",
    "Role",
    "Seam",
    "Shape",
    "Sold",
    "TakeUp",
    "TakeUpKind",
    "Thread",
    "Trim",
    "TrimEnd",
    "Wearer",
    "Width",
    "Work",
]


class Plan(Entry):
    """One garment, whole."""

    garment: Garment
    measures: dict[str, Size] = {}
    fabric: tuple[Fabric, ...] = ()
    piece: tuple[Piece, ...] = ()
    seam: tuple[Seam, ...] = ()
    trim: tuple[Trim, ...] = ()
    elastic: tuple[Elastic, ...] = ()
    notion: tuple[Notion, ...] = ()
    lacing: tuple[Lacing, ...] = ()
    boning: tuple[Boning, ...] = ()
    loops: tuple[Loops, ...] = ()
    thread: tuple[Thread, ...] = ()

    @property
    def bought(self) -> tuple[Bought, ...]:
        """What is bought and is no fabric, table by table in this order."""
        tables = (getattr(self, key) for key in type(self).model_fields)
        return tuple(
            one for table in tables if isinstance(table, tuple) for one in table
            if isinstance(one, Bought)
        )  # fmt: skip
