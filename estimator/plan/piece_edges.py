"""The edges of a piece as a plan tells them: how each is named, finished, long and curved."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import (
    BeforeValidator,
    GetJsonSchemaHandler,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from estimator.edges import EdgeFinish, EdgeRef, Finish, read_edge_ref, read_finish
from estimator.fields import Entry, Size, or_bare, reading, refusal, unit_of


def _edge(written: object, info: ValidationInfo) -> EdgeFinish:
    if isinstance(written, EdgeFinish):
        return written
    found: EdgeFinish = reading(lambda text: read_finish(text, unit_of(info)))(written)
    return found


_FINISH = {"type": "string", "description": 'As in "hem 1 1/4", "seam" or "selvedge".'}
EDGE_REF = {
    "anyOf": [
        {"type": "string"},
        {
            "type": "object",
            "properties": {
                "piece": {"type": "string"},
                "edge": {"type": "string"},
                "count": {"type": "integer", "minimum": 1},
            },
            "required": ["piece", "edge"],
            "additionalProperties": False,
        },
    ],
    "description": 'An edge, as in "skirt panel: bottom" or "2 x skirt panel: bottom".',
}
FinishField = Annotated[EdgeFinish, BeforeValidator(_edge), WithJsonSchema(_FINISH)]
EdgeRefField = Annotated[EdgeRef, BeforeValidator(reading(read_edge_ref)), WithJsonSchema(EDGE_REF)]


Curve = Literal[
    "hollow 1/4", "hollow 1/2", "hollow 3/4", "hollow 1",
    "rounded 1/4", "rounded 1/2", "rounded 3/4", "rounded 1",
]  # fmt: skip


class Edge(Entry):
    """How an edge is finished and, for one that the sizes do not give, its finished length.

    ``curve`` says by what part of a circle such an edge turns, and to which side: a neckline is
    hollow, the outer edge of a collar rounded.
    """

    finish: FinishField = EdgeFinish(Finish.SEAM)
    length: Size | None = None
    curve: Curve | None = None

    @property
    def turns(self) -> Fraction:
        """What part of a circle it turns: more than nothing where it is hollow, else less."""
        if self.curve is None:
            return Fraction(0)
        side, share = self.curve.split(" ")
        return Fraction(share) if side == "hollow" else -Fraction(share)

    @model_validator(mode="after")
    def _curve_of_a_stated_length(self) -> Edge:
        if self.curve is not None and self.length is None:
            raise refusal("curve goes with the length of an edge", 'add length = "15"')
        return self

    @model_validator(mode="before")
    @classmethod
    def _bare_finish(cls, written: Any) -> Any:
        return written if isinstance(written, Mapping) else {"finish": written}

    @classmethod
    def __get_pydantic_json_schema__(
        cls, core: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return or_bare(handler(core), _FINISH)
