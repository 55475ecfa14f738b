"""The published JSON schemas against the plans and estimates of the demo and the starters."""

from __future__ import annotations

import json
import tomllib
import warnings
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from estimator.files import estimate_files
from estimator.reports.as_json import estimate_json
from estimator.reports.schemas import SCHEMAS, estimate_schema, plan_schema
from tests.plans import HEADING
from tests.shipped_plans import ALL, DEMOS, ROOT, stem

PLAN = Draft202012Validator(plan_schema())
ESTIMATE = Draft202012Validator(estimate_schema())


def faults(schema: Draft202012Validator, data: object) -> list[str]:
    return [f"{one.json_path}: {one.message}" for one in schema.iter_errors(data)]


@pytest.mark.parametrize("name", SCHEMAS)
def test_a_schema_is_sound_and_is_made_without_a_warning(name: str) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        schema = SCHEMAS[name]()
    Draft202012Validator.check_schema(schema)
    assert json.loads(json.dumps(schema)) == schema


@pytest.mark.parametrize("path", ALL, ids=stem)
def test_every_shipped_plan_is_as_the_schema_of_plans_says(path: Path) -> None:
    assert faults(PLAN, tomllib.loads(path.read_text(encoding="utf-8"))) == []


PIECE = '[[piece]]\nname = "skirt"\ncut = "print"\nwidth = "31"\nlength = "23"\n'


@pytest.mark.parametrize(
    ("written", "wrong"),
    [
        (PIECE, False),
        (PIECE.replace('"31"', "31"), False),
        (PIECE.replace('"31"', '{ from = "waist / 4" }'), False),
        (PIECE.replace('"print"', '[{ fabric = "print", edges = { top = "raw" } }]'), False),
        (PIECE.replace("width", "widht"), True),
        (PIECE.replace('"31"', "true"), True),
        (PIECE.replace('"31"', '{ of = "waist" }'), True),
        (PIECE + 'grain = "sideways"\n', True),
        (PIECE.replace('name = "skirt"\n', ""), True),
        (PIECE + '[[seam]]\nedges = ["skirt: left"]\n', True),
        (PIECE + '[[trim]]\nname = "cord"\nalong = 3\n', True),
    ],
)
def test_the_schema_of_plans_takes_what_the_reader_takes(written: str, wrong: bool) -> None:
    assert bool(faults(PLAN, tomllib.loads(HEADING + written))) is wrong


@pytest.mark.parametrize("path", DEMOS, ids=stem)
def test_the_estimate_of_the_demo_is_as_the_schema_of_estimates_says(path: Path) -> None:
    found = estimate_json(estimate_files([path], ROOT / "catalog_demo"))
    assert faults(ESTIMATE, json.loads(json.dumps(found))) == []


def test_an_estimate_with_a_key_more_or_less_is_not_as_the_schema_says() -> None:
    found: Any = dict(estimate_json(estimate_files([DEMOS[0]], ROOT / "catalog_demo")))
    assert faults(ESTIMATE, found | {"colour": "blue"})
    for key in found:
        assert faults(ESTIMATE, {name: value for name, value in found.items() if name != key})


def tables(schema: object) -> list[Mapping[str, Any]]:
    """Every table in a schema, wherever it stands."""
    if isinstance(schema, list):
        return [one for part in schema for one in tables(part)]
    if not isinstance(schema, Mapping):
        return []
    inner = [one for part in schema.values() for one in tables(part)]
    return [schema, *inner] if schema.get("type") == "object" else inner


def test_no_table_of_either_schema_takes_keys_that_it_does_not_name() -> None:
    for schema in (plan_schema(), estimate_schema()):
        found = [table for table in tables(schema) if "properties" in table]
        assert found
        assert all(table["additionalProperties"] is False for table in found)
