"""Starter plans and the demo, found in the installed package or in a checkout."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """The folder ``templates`` or ``catalog_demo``, wherever this program is installed."""
    inside = _PACKAGE / "_data" / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def starter_plans() -> dict[str, Path]:
    """The starter plans by their short names."""
    return {path.stem: path for path in sorted(shipped("templates").glob("*.toml"))}


def first_comment(path: Path) -> str:
    """What a plan says of itself in its first line."""
    first = path.read_text(encoding="utf-8").split("\n", 1)[0]
    return first.lstrip("# ").strip()
