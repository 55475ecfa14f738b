"""A plan as a text file: its tables as TOML, in lines that a person can read and change."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from textwrap import wrap
from typing import Any

from estimator.faults import Path
from estimator.form.cells import in_toml, key_in_toml
from estimator.plan import Plan
from estimator.quoting import one_line

WIDE = 98
"""Characters: longer lists have a line for each entry."""
_NO_COMMENT = re.compile(r"[\x00-\x08\x0a-\x1f\x7f]")
"""Characters that a comment may not hold (TOML 1.0, comments)."""


def plan_text(
    raw: Mapping[str, Any],
    opening: Sequence[str] = (),
    remarks: Mapping[Path, str] | None = None,
) -> str:
    """A plan's tables as TOML: read again, they are the same.

    ``opening`` is what the plan says of itself, in paragraphs, and ``remarks`` what it says of its
    entries and keys; both become comments.
    """
    blocks = ["\n".join(_opening(opening))] if opening else []
    said = remarks or {}
    for key in (*(key for key in Plan.model_fields if key in raw), *_others(raw)):
        tables = raw[key]
        if isinstance(tables, list):
            blocks += (
                "\n".join(_table(f"[[{key_in_toml(key)}]]", table, (key, number), said))
                for number, table in enumerate(tables)
            )
        elif tables or key == "garment":
            blocks.append("\n".join(_table(f"[{key_in_toml(key)}]", tables, (key,), said)))
    return "\n\n".join(blocks) + "\n"


def _others(raw: Mapping[str, Any]) -> Iterator[str]:
    return (key for key in raw if key not in Plan.model_fields)


def _opening(paragraphs: Sequence[str]) -> Iterator[str]:
    """The first paragraph on one line, for it is the plan's title; the others below it."""
    first, *others = paragraphs
    yield f"# {_comment(first)}"
    for text in others:
        yield "#"
        yield from _comments(text)


def _table(
    head: str, table: Mapping[str, Any], path: Path, remarks: Mapping[Path, str]
) -> Iterator[str]:
    """A headed table, each remark above what it is about."""
    yield from _comments(remarks.get(path, ""))
    yield head
    for key, value in table.items():
        yield from _comments(_about((*path, key), remarks))
        yield from _pair(key, value)


def _about(path: Path, remarks: Mapping[Path, str]) -> str:
    """What is said of a key, and of what is held in it: of an edge, or of one entry of a list."""
    return " ".join(text for at, text in remarks.items() if at[: len(path)] == path)


def _pair(key: str, value: Any) -> Iterator[str]:
    line = f"{key_in_toml(key)} = {in_toml(value)}"
    if isinstance(value, list) and len(line) > WIDE:
        yield f"{key_in_toml(key)} = ["
        yield from (f"  {in_toml(one)}," for one in value)
        yield "]"
    else:
        yield line


def _comments(text: str) -> Iterator[str]:
    return (f"# {line}" for line in wrap(_comment(text), WIDE - 2, break_on_hyphens=False))


def _comment(text: str) -> str:
    return _NO_COMMENT.sub(" ", one_line(text))
