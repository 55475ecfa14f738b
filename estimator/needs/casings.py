"""Casings, and whether what runs in one goes through it."""

from __future__ import annotations

from estimator.edges import EdgeRef, Finish
from estimator.faults import Wrong
from estimator.measure import ZERO, Length, tape_text
from estimator.needs.edge_lengths import EdgeLengths
from estimator.quoting import quoted


def check_depth(
    ref: EdgeRef, what: str, rows: int, width: Length | None, edges: EdgeLengths
) -> None:
    """Raises Wrong where an edge is no casing, or one less deep than so many rows are wide.

    Of what has no known width only the casing is asked for.
    """
    edges.check(ref)
    edge = edges.piece(ref.piece).edges.get(ref.edge)
    finish = edge.finish if edge else None
    if finish is None or finish.finish is not Finish.CASING:
        raise Wrong(
            f"{quoted(ref)} has no casing",
            f'write edges = {{ {ref.edge} = "casing 1" }} in the piece',
            ("casing",),
        )
    depth, unit = finish.depth or ZERO, edges.order.tape
    if width is not None and width * rows > depth:
        several = f"{rows} rows of {what}" if rows > 1 else what
        raise Wrong(
            f"{several} {tape_text(width, unit)} wide will not go into a casing of "
            f"{tape_text(depth, unit)}",
            f"make the casing deeper, or take a narrower {what}",
            ("casing",),
        )
