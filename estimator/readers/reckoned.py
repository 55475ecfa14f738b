"""Which sizes of a plan come from measures, and to what each comes: so that a list can say so."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from estimator.arithmetic import length_from
from estimator.job import Reckoned
from estimator.measure import Length, Unit
from estimator.quoting import NotReadable, one_line


def reckoned_sizes(
    raw: Mapping[str, Any], tables: Mapping[str, Any], measures: Mapping[str, Length], unit: Unit
) -> tuple[Reckoned, ...]:
    """Each size that is written ``{ from = "..." }`` in ``tables`` of a plan; unsound ones are not.

    The plan is as it was parsed, and has been found free of cycles and of deep nesting.
    """
    found = []
    for key in tables:
        entries = raw.get(key)
        for entry in entries if isinstance(entries, list) else ():
            name = entry.get("name") if isinstance(entry, Mapping) else None
            if not isinstance(name, str):
                continue
            for place, text in _froms(entry, ()):
                try:
                    size = length_from(text, measures, unit)
                except NotReadable:
                    continue
                found.append(Reckoned(one_line(name), " ".join(place), one_line(text), size))
    return tuple(found)


def _froms(value: Any, place: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    """Where a table holds sizes from measures, in words, and what is written of each."""
    if isinstance(value, Mapping):
        text = value.get("from")
        if set(value) == {"from"} and isinstance(text, str):
            yield place, text
            return
        for key, own in value.items():
            yield from _froms(own, (*place, str(key)))
    elif isinstance(value, list):
        for own in value:
            yield from _froms(own, place)
