"""A row of a layout drawn as one line of text, to scale across the fabric."""

from __future__ import annotations

from estimator.layout import Layout, Placement, Row

WIDE = 76
FULL, REST = "|", "."


def sketch(layout: Layout, row: Row, names: tuple[str, ...], wide: int = WIDE) -> str:
    """One row as text ``wide`` characters across: a bar at each edge, names between, rest dotted.

    ``names`` are those of the blanks. A column of several pieces shows its lowest and how many lie
    above it.
    """
    line = [REST] * (wide + 1)
    for column in row.columns:
        start = column.across * wide // layout.width
        end = (column.across + column.width) * wide // layout.width
        line[start : end + 1] = list(_cell(column.placements, names, end - start))
    line[0] = line[0] if line[0] == FULL else FULL
    line[wide] = FULL
    return "".join(line)


def _cell(placements: tuple[Placement, ...], names: tuple[str, ...], wide: int) -> str:
    name = names[placements[0].blank]
    more = f" +{len(placements) - 1}" if len(placements) > 1 else ""
    room = max(0, wide - 1)
    text = f"{name[: max(0, room - len(more))]}{more}"[:room]
    return FULL + text.center(room) + FULL
