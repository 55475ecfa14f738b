"""Edges of pieces: how each is finished, what that adds to the cut size, and how one is named.

Finishes and the names of edges are read here and nowhere else.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from estimator.faults import nearest
from estimator.measure import ZERO, Length, Unit
from estimator.quoting import NotReadable, one_line, quoted, text_of
from estimator.rules import Rules
from estimator.written import read_length


class Finish(Enum):
    """How an edge is finished. Values are the words a plan uses."""

    SEAM = "seam"
    FACED = "faced"
    HEM = "hem"
    ROLLED = "rolled hem"
    CASING = "casing"
    TURNED = "turned under"
    SERGED = "serged"
    SELVEDGE = "selvedge"
    FOLD = "fold"
    RAW = "raw"


SIDES = ("top", "bottom", "left", "right")
"""The edges that every piece has; a plan may name others with a length of their own."""

SPELLINGS = {
    **{finish.value: finish for finish in Finish},
    "narrow rolled hem": Finish.ROLLED,
    "overlocked": Finish.SERGED,
    "facing": Finish.FACED,
}
WITH_DEPTH = {Finish.SEAM, Finish.FACED, Finish.HEM, Finish.ROLLED, Finish.CASING, Finish.SERGED,
              Finish.TURNED}  # fmt: skip
NEEDS_DEPTH = {Finish.HEM, Finish.CASING}
SEWN = {Finish.SEAM, Finish.FACED}
"""Finishes that take the seam allowance unless they state their own."""


@dataclass(frozen=True, slots=True)
class EdgeFinish:
    """A finish as it was written. ``depth`` and ``turn`` are None where the default is meant."""

    finish: Finish
    depth: Length | None = None
    turn: Length | None = None
    double: bool = False


def read_finish(written: object, unit: Unit | None) -> EdgeFinish:
    """Reads ``seam``, ``seam 3/8``, ``hem 1 1/4``, ``hem 1 double``, ``hem 1 1/4 + 1/2``, ``raw``.

    Raises NotReadable for an unknown finish, a missing depth, or a depth that makes no sense.
    """
    text = text_of(written)
    word = max((w for w in SPELLINGS if re.match(rf"{w}\b", text.lower())), key=len, default="")
    if not word:
        raise NotReadable(
            f"{quoted(written)} is not a way to finish an edge",
            nearest(text.split(" ")[0], SPELLINGS),
        )
    finish, rest = SPELLINGS[word], text[len(word) :].strip()
    if not rest:
        if finish in NEEDS_DEPTH:
            raise NotReadable(f"the {word} states no depth", f"write it like {word} 1 1/4")
        return EdgeFinish(finish)
    if finish not in WITH_DEPTH:
        raise NotReadable(f"{quoted(written)} states a depth", f"write {word} alone")
    double = rest.lower().endswith(" double")
    if double:
        rest = rest[: -len(" double")]
    depth_text, plus, turn_text = rest.partition("+")
    if finish not in NEEDS_DEPTH and (double or plus):
        raise NotReadable(f"{quoted(written)} says more than a {word} has", f"write {word} 1/4")
    if double and plus:
        raise NotReadable(
            f"{quoted(written)} is both double and with a turn-under", "write the one that is meant"
        )
    depth = read_length(depth_text, unit)
    if depth == ZERO and finish not in SEWN:
        raise NotReadable(f"{quoted(written)} has no depth", "write raw for an edge left as cut")
    return EdgeFinish(finish, depth, read_length(turn_text, unit) if plus else None, double)


def allowance(edge: EdgeFinish, rules: Rules) -> Length:
    """What a finish adds to the cut size beyond the finished edge.

    A hem or casing takes its depth and a turn-under, or twice its depth if double; a rolled hem is
    turned twice; an overlocked edge takes what the knife trims (common practice).
    """
    match edge.finish:
        case Finish.SEAM | Finish.FACED:
            return _stated(edge.depth, rules.seam_allowance)
        case Finish.HEM | Finish.CASING:
            assert edge.depth is not None, "read_finish asks for the depth"
            return edge.depth + (
                edge.depth if edge.double else _stated(edge.turn, rules.turn_under)
            )
        case Finish.TURNED:
            return _stated(edge.depth, rules.turn_under)
        case Finish.ROLLED:
            return 2 * _stated(edge.depth, rules.rolled_hem)
        case Finish.SERGED:
            return _stated(edge.depth, rules.serged)
        case Finish.SELVEDGE | Finish.FOLD | Finish.RAW:
            return ZERO


def _stated(length: Length | None, default: Length) -> Length:
    return default if length is None else length


@dataclass(frozen=True, slots=True)
class EdgeRef:
    """An edge of a piece, and on how many of the quantity it is meant (None: on every one)."""

    piece: str
    edge: str
    count: int | None = None

    def __str__(self) -> str:
        return f"{self.piece}: {self.edge}"


def read_edge_ref(written: Any) -> EdgeRef:
    """Reads ``"skirt panel: bottom"``, ``"2 x skirt panel: bottom"`` or a table of the same.

    The table is ``{ piece = "skirt panel", edge = "bottom", count = 2 }``. Raises NotReadable.
    """
    right = 'write it like "skirt panel: bottom" or "2 x skirt panel: bottom"'
    if isinstance(written, EdgeRef):
        return written
    if isinstance(written, Mapping):
        if not set(written) <= {"piece", "edge", "count"} or not {"piece", "edge"} <= set(written):
            raise NotReadable("the table does not name an edge", right)
        count = written.get("count")
        if count is not None and (type(count) is not int or count < 1):
            raise NotReadable(f"{quoted(count)} is not a whole number of edges", right)
        piece, edge = written["piece"], written["edge"]
        if not isinstance(piece, str) or not isinstance(edge, str):
            raise NotReadable("piece and edge of an edge are not both text", right)
        return EdgeRef(one_line(piece), one_line(edge), count)
    if not isinstance(written, str):
        raise NotReadable(f"{quoted(written)} is not one edge", f"{right}, without brackets")
    found = re.fullmatch(r"(?:(\d{1,5})\s*[x×]\s+)?([^:]+):([^:]+)", one_line(written))
    if not found:
        raise NotReadable(f"{quoted(written)} does not name an edge", right)
    number = int(found[1]) if found[1] else None
    if number == 0:
        raise NotReadable(f"{quoted(written)} is about no edge at all", right)
    return EdgeRef(one_line(found[2]), one_line(found[3]), number)
