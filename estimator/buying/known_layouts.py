"""Layouts that were worked out before: asked for before the search, and kept after it.

Where nothing is remembered (the usual case of a caller from Python) every layout is worked out. An
answer is the same either way, for a layout depends on nothing but its question.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Sequence
from contextlib import suppress
from contextvars import ContextVar
from functools import lru_cache
from pathlib import Path
from typing import Any, Protocol

from estimator import layout as engine
from estimator.buying import cut_lengths
from estimator.layout import Blank, Cloth, Column, Cuts, Layout, Placement, Row, Style


class Memory(Protocol):
    """Texts kept by their keys, from one run to the next."""

    def find(self, key: str) -> str | None:
        """What was kept under a key."""

    def keep(self, key: str, text: str) -> None:
        """Keep a text under a key."""


MEMORY: ContextVar[Memory | None] = ContextVar("memory of layouts", default=None)


def known_or(
    cloth: Cloth,
    buys: Sequence[object],
    blanks: Sequence[Blank],
    limits: Sequence[object],
    work_out: Callable[[], Cuts],
) -> Cuts:
    """The cuts for a question, remembered or worked out; ``buys`` says what ``cloth.buys`` does.

    ``limits`` is everything else on which the answer depends.
    """
    memory = MEMORY.get()
    if memory is None:
        return work_out()
    key = _key(cloth, buys, blanks, limits)
    text = memory.find(key)
    if text is not None:
        # a file that anything may have written to: what makes no layout is not known
        with suppress(ValueError, TypeError, KeyError, IndexError):
            return _cuts_from(json.loads(text))
    found = work_out()
    memory.keep(key, json.dumps(_written(found), separators=(",", ":")))
    return found


def _key(
    cloth: Cloth, buys: Sequence[object], blanks: Sequence[Blank], limits: Sequence[object]
) -> str:
    question = [
        _engine(),
        [cloth.width, cloth.repeat, cloth.repeat_across],
        [str(one) for one in buys],
        [str(one) for one in limits],
        [
            [one.name, one.width, one.length, one.quantity, one.may_turn, one.held.value]
            for one in blanks
        ],
    ]
    return hashlib.sha256(json.dumps(question).encode()).hexdigest()


@lru_cache(maxsize=1)
def _engine() -> str:
    """The text of all that an answer hangs on: what another engine has worked out, or another
    way of buying or of writing layouts down, is not remembered.
    """
    files = sorted(Path(engine.__file__).parent.glob("*.py"))
    files += [Path(cut_lengths.__file__), Path(__file__)]
    return hashlib.sha256(b"".join(file.read_bytes() for file in files)).hexdigest()


def _written(cuts: Cuts) -> list[Any]:
    return [cuts.bound, cuts.fewest, [_layout_written(one) for one in cuts.layouts]]


def _layout_written(one: Layout) -> list[Any]:
    numbers = {place: number for number, place in enumerate(one.placements)}
    rows = [
        [
            row.start,
            row.height,
            [
                [column.across, column.width, [numbers[place] for place in column.placements]]
                for column in row.columns
            ],
        ]
        for row in one.rows
    ]
    places = [
        [place.blank, place.across, place.along, place.width, place.length, place.turned]
        for place in one.placements
    ]
    return [one.width, one.length, places, rows, one.bound, one.style.value]


def _cuts_from(written: list[Any]) -> Cuts:
    bound, fewest, layouts = written
    return Cuts(tuple(map(_layout_from, layouts)), bound, fewest)


def _layout_from(written: list[Any]) -> Layout:
    width, length, places, rows, bound, style = written
    placements = tuple(Placement(*place) for place in places)
    bands = tuple(
        Row(
            start,
            height,
            tuple(
                Column(across, wide, tuple(placements[number] for number in numbers))
                for across, wide, numbers in columns
            ),
        )
        for start, height, columns in rows
    )
    return Layout(width, length, placements, bands, bound, Style(style))
