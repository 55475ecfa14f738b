"""What several garments need of one thing is bought as one."""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from estimator.needs.types import CountNeed, FabricNeed, ThreadNeed, key_of

NeedT = TypeVar("NeedT", FabricNeed, CountNeed, ThreadNeed)


def as_one(first: NeedT, second: NeedT) -> NeedT:
    """The first need under the names, notes and sources of both; how much is their own to add."""
    return replace(
        first,
        key=key_of(first.terms.item, first.terms.colour, first.names + second.names),
        names=tuple(dict.fromkeys(first.names + second.names)),
        notes=tuple(dict.fromkeys(first.notes + second.notes)),
        sources=first.sources + second.sources,
    )
