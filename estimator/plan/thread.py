"""The thread tables of a plan: which thread sews what, and in which stitch."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema, model_validator

from estimator.fields import Name, Note, Share, Size, as_written, or_bare, reading, refusal
from estimator.plan.trims import Bought
from estimator.stitches import Stitch, read_density, read_stitches

Stitches = Annotated[
    tuple[Stitch, ...],
    BeforeValidator(reading(read_stitches)),
    as_written('A stitch or several passes, as in "lockstitch" or "301 + 504".'),
]


class Work(Enum):
    """The kinds of sewing that may have a thread each; the words a plan uses in ``sews``."""

    SEAMS = "seams"
    HEMS = "hems"
    TRIMS = "trims"
    GATHERING = "gathering"
    OVEREDGING = "overedging"


def _one_or_more(written: Any) -> Any:
    return [written] if isinstance(written, str) else written


class Thread(Bought):
    """A thread that is bought by the length of what it sews.

    ``sews`` names kinds of sewing, seams or trims; a thread without it sews what no other does.
    ``stitches`` is how many there are in a tick.
    """

    sews: Annotated[
        tuple[Name, ...],
        BeforeValidator(_one_or_more),
        WithJsonSchema(or_bare({"type": "array", "items": {"type": "string"}}, {"type": "string"})),
    ] = ()
    stitch: Stitches = ()
    thickness: Size | None = None
    stitches: (
        Annotated[
            Fraction,
            BeforeValidator(reading(read_density)),
            WithJsonSchema({"type": "string", "description": 'As in "10 per in".'}),
        ]
        | None
    ) = None
    waste: Share | None = None
    weight: Note = ""

    @model_validator(mode="after")
    def _both_or_neither(self) -> Thread:
        if (self.thickness is None) is not (self.stitches is None):
            raise refusal(
                "thread is reckoned from the thickness of a seam and its stitches together",
                'write thickness = "1/16" and stitches = "10 per in", or neither',
            )
        return self
