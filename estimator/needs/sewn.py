"""One thing that is sewn, and how often an edge of a piece is there to be sewn."""

from __future__ import annotations

from dataclasses import dataclass

from estimator.edges import EdgeRef, Finish
from estimator.needs.edge_lengths import EdgeLengths
from estimator.plan import Work
from estimator.stitches import Stitch
from estimator.working import Reckoning


@dataclass(frozen=True, slots=True)
class Sewn:
    """One thing that is sewn, in the whole job.

    ``name`` is that of its seam or trim, and ``stitches`` the passes that the plan states.
    """

    work: Work
    length: Reckoning
    name: str = ""
    stitches: tuple[Stitch, ...] = ()


_OPPOSITE = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}


def times_over(ref: EdgeRef, edges: EdgeLengths) -> int:
    """How often an edge is in a garment: twice on a piece whose other half is beyond its fold."""
    piece = edges.piece(ref.piece)
    beyond = piece.edges.get(_OPPOSITE.get(ref.edge, ""))
    halves = 2 if beyond is not None and beyond.finish.finish is Finish.FOLD else 1
    return piece.quantity * halves
