"""Pieces cut from one rectangle without waste, so that the shortest layout is known: the rectangle.

Cuts are guillotine (each goes right across what it cuts) or not: then some cuts are pinwheels of
five pieces round a middle one, which no sequence of straight cuts makes.
"""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from estimator.layout import Blank


@dataclass(frozen=True, slots=True)
class CutUp:
    """A rectangle `width` by `length` ticks, cut up into `blanks`."""

    name: str
    width: int
    length: int
    blanks: tuple[Blank, ...]


def cut_up(
    seed: int,
    pieces: int,
    *,
    guillotine: bool,
    width: int = 1000,
    length: int = 1500,
    may_turn: bool = False,
    slimmest: int = 20,
) -> CutUp:
    """Cut a rectangle at random until there are about `pieces` of them (a pinwheel makes five)."""
    chance = Random(f"{seed} {pieces} {guillotine}")
    parts = [(width, length)]
    stuck = 0
    while len(parts) < pieces and stuck < 50 * pieces:
        weights = [w * h for w, h in parts]
        index = chance.choices(range(len(parts)), weights)[0]
        w, h = parts[index]
        if not guillotine and len(parts) + 4 <= pieces and chance.random() < 0.5:
            made = _pinwheel(chance, w, h, slimmest)
        else:
            made = _cut_across(chance, w, h, slimmest)
        if made:
            parts[index : index + 1] = made
        else:
            stuck += 1
    chance.shuffle(parts)
    blanks = tuple(Blank(f"part {i}", w, h, 1, may_turn) for i, (w, h) in enumerate(parts))
    how = "guillotine" if guillotine else "pinwheel"
    return CutUp(f"{how} {len(blanks)} seed {seed}", width, length, blanks)


def _cut_across(chance: Random, w: int, h: int, slimmest: int) -> list[tuple[int, int]]:
    along = chance.random() < w / (w + h)
    side = w if along else h
    if side < 2 * slimmest:
        return []
    at = chance.randint(slimmest, side - slimmest)
    return [(at, h), (w - at, h)] if along else [(w, at), (w, h - at)]


def _pinwheel(chance: Random, w: int, h: int, slimmest: int) -> list[tuple[int, int]]:
    """Five parts:   |---------|---|     the middle one is x1..x2 by y1..y2
    |---|     |   |
    |   |-----|   |
    |   |---------|
    """
    if w < 3 * slimmest or h < 3 * slimmest:
        return []
    x1 = chance.randint(slimmest, w - 2 * slimmest)
    x2 = chance.randint(x1 + slimmest, w - slimmest)
    y1 = chance.randint(slimmest, h - 2 * slimmest)
    y2 = chance.randint(y1 + slimmest, h - slimmest)
    return [(x1, y2), (w - x1, y1), (w - x2, h - y1), (x2, h - y2), (x2 - x1, y2 - y1)]
