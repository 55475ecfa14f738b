"""The seam tables of a plan: which edges are sewn to which."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from estimator.edges import EdgeRef, read_edge_ref
from estimator.fields import Allowance, Entry, Name, Note, as_written, or_bare, reading, refusal
from estimator.plan.piece_edges import EDGE_REF, EdgeRefField
from estimator.stitches import Stitch, read_stitches

SeamSide = tuple[EdgeRef, ...]
"""The edges on one side of a seam, end to end: a waistband joins a front and two backs."""


def _seam_sides(written: Any) -> tuple[SeamSide, ...]:
    if not isinstance(written, list | tuple) or len(written) != 2:
        raise refusal(
            "a seam joins two edges",
            'write edges = ["skirt: top", "band: left"], with a list for several on one side',
        )
    return tuple(
        tuple(map(reading(read_edge_ref), side))
        if isinstance(side, list | tuple)
        else (reading(read_edge_ref)(side),)
        for side in written
    )


_TWO_SIDES = {
    "type": "array",
    "items": or_bare(EDGE_REF, {"type": "array", "items": EDGE_REF}),
    "minItems": 2,
    "maxItems": 2,
    "description": "The two sides that are joined, each an edge or a list of edges.",
}


class Seam(Entry):
    """Two sides sewn together, each an edge or several; as long as the side not gathered."""

    name: Name = ""
    edges: Annotated[
        tuple[SeamSide, SeamSide], BeforeValidator(_seam_sides), WithJsonSchema(_TWO_SIDES)
    ]
    gathered: EdgeRefField | None = None
    allowance: Allowance | None = None
    stitch: Annotated[
        tuple[Stitch, ...],
        BeforeValidator(reading(read_stitches)),
        as_written('A stitch or several passes, as in "lockstitch" or "301 + 504".'),
    ] = ()
    note: Note = ""
