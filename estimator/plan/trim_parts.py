"""What a trim's table says of its ends and pleats."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, ValidationInfo, WithJsonSchema

from estimator.faults import nearest
from estimator.fields import Entry, Size, or_bare, reading, refusal, unit_of
from estimator.measure import Length, Unit
from estimator.quoting import NotReadable, quoted, text_of
from estimator.written import read_length


class End(Enum):
    """How an end of a trim is finished. Values are the words a plan uses."""

    TURNED = "turned under"
    RAW = "raw"
    SEAM = "in a seam"
    FOLDED = "folded back"


@dataclass(frozen=True, slots=True)
class TrimEnd:
    """An end as it was written; ``depth`` is None where the default is meant."""

    end: End
    depth: Length | None = None


def read_end(written: object, unit: Unit | None) -> TrimEnd:
    """Reads ``turned under``, ``in a seam 3/8``, ``folded back 1``, ``raw``; raises NotReadable."""
    if isinstance(written, TrimEnd):
        return written
    text = text_of(written)
    for end in End:
        if re.match(rf"{end.value}\b", text.lower()):
            rest = text[len(end.value) :].strip()
            if rest and end is End.RAW:
                raise NotReadable(f"a raw end takes nothing, not {rest}", "write raw alone")
            return TrimEnd(end, read_length(rest, unit) if rest else None)
    raise NotReadable(
        f"ends cannot be {quoted(written)}", nearest(text, [end.value for end in End])
    )


def _ends(written: Any, info: ValidationInfo) -> tuple[TrimEnd, TrimEnd]:
    """Both ends alike, or a list of the two."""
    pair = tuple(written) if isinstance(written, list | tuple) else (written, written)
    if len(pair) != 2:
        raise refusal("a run has two ends", 'write ends = ["in a seam", "raw"], or one for both')
    first, second = (reading(lambda text: read_end(text, unit_of(info)))(end) for end in pair)
    return first, second


_END = {"type": "string", "description": 'As in "turned under", "in a seam 3/8" or "raw".'}
EndsField = Annotated[
    tuple[TrimEnd, TrimEnd],
    BeforeValidator(_ends),
    WithJsonSchema(or_bare({"type": "array", "items": _END, "minItems": 2, "maxItems": 2}, _END)),
]


class Pleats(Entry):
    """Pleats laid into a trim: how deep, and how far apart on the edge.

    Where ``spacing`` is not stated they meet, so that the trim takes three times the edge.
    """

    depth: Size
    kind: Literal["knife pleat", "box pleat"] = "knife pleat"
    spacing: Size | None = None

    @property
    def takes(self) -> int:
        """How many depths one pleat takes: a knife pleat two, a box pleat four."""
        return 2 if self.kind == "knife pleat" else 4

    @property
    def apart(self) -> Length:
        """From one pleat to the next along the edge; such as meet show half of what they take."""
        return self.spacing or self.depth.times(Fraction(self.takes, 2))
