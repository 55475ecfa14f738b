"""The JSON schemas of a plan and of an estimate, for programs that write one or read the other."""

from __future__ import annotations

from enum import Enum
from typing import Any

from pydantic import TypeAdapter
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from estimator.plan import Plan
from estimator.reports.json_shapes import EstimateJson

DIALECT = "https://json-schema.org/draft/2020-12/schema"


class _Schema(GenerateJsonSchema):
    """Pydantic's own schema of what people write: a key that is not stated is left out, not null.

    Defaults are named as far as they are plain values.
    """

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        default = schema.get("default")
        plain = default.value if isinstance(default, Enum) else default
        if isinstance(plain, str | int) and plain != "":
            return super().default_schema(schema)
        return self.generate_inner(schema["schema"])


class _Closed(GenerateJsonSchema):
    """Pydantic's own schema, in which tables hold no keys but those that are named."""

    def typed_dict_schema(self, schema: core_schema.TypedDictSchema) -> JsonSchemaValue:
        return {**super().typed_dict_schema(schema), "additionalProperties": False}


def plan_schema() -> dict[str, Any]:
    """The schema of a plan: of a TOML file as its reader gives it, or the same as JSON."""
    schema = Plan.model_json_schema(schema_generator=_Schema)
    return {"$schema": DIALECT, **schema, "title": "Plan of a garment"}


def estimate_schema() -> dict[str, Any]:
    """The schema of what ``estimator show --json`` prints."""
    schema = TypeAdapter(EstimateJson).json_schema(schema_generator=_Closed)
    return {"$schema": DIALECT, **schema, "title": "Estimate of what to buy"}


SCHEMAS = {"plan": plan_schema, "estimate": estimate_schema}
