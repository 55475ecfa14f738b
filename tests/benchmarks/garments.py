"""Random cuttings that look like garments, in six families, on cloth from 36 to 60 in wide.

Sizes are cut sizes in eighths of an inch. What pieces a garment has, how large they are and how
often they occur follows what a dressmaker would cut (common practice); no cutting is a real one.
About half the fabrics are one-way: nothing is turned. On the others the small pieces may turn. One
garment in four is cut for two wearers at once.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random

from estimator.layout import Blank, Cloth

EIGHTH_OF_AN_INCH = 25_400
EIGHTH_OF_A_YARD = 914_400
WIDTHS = (36, 40, 42, 44, 45, 48, 52, 54, 58, 60)


@dataclass(frozen=True, slots=True)
class Cutting:
    """One cloth, bought by the eighth of a yard, and all that is cut from it."""

    name: str
    cloth: Cloth
    blanks: tuple[Blank, ...]


def eighths(length: int) -> int:
    """Eighths of a yard bought for a layout of this length in ticks."""
    return -(-length // EIGHTH_OF_A_YARD)


class _Pattern:
    """Collects the pieces of a garment for cloth `usable` eighths of an inch wide."""

    def __init__(self, chance: Random, usable: int) -> None:
        self.chance = chance
        self.usable = usable
        self.one_way = chance.random() < 0.5
        self.wearers = chance.choice([1, 1, 1, 2])
        self.blanks: list[Blank] = []

    def inches(self, low: float, high: float) -> int:
        return self.chance.randint(round(low * 8), round(high * 8))

    def piece(self, name: str, width: int, length: int, quantity: int, small: bool = False) -> None:
        """Add pieces; those wider than the cloth are seamed from two, three ... with seams."""
        parts = 1
        while -(-width // parts) + (10 if parts > 1 else 0) > self.usable:
            parts += 1
        width = -(-width // parts) + (10 if parts > 1 else 0)
        self.blanks.append(
            Blank(
                f"{name} {len(self.blanks)}",
                width * EIGHTH_OF_AN_INCH,
                length * EIGHTH_OF_AN_INCH,
                quantity * parts * self.wearers,
                small and not self.one_way,
            )
        )


def _tiered(p: _Pattern) -> None:
    ring = p.inches(28, 44)
    for tier in range(p.chance.randint(2, 4)):
        widths = 2 + tier + p.chance.randint(0, 1)
        p.piece("tier", ring, p.inches(6, 15), widths)
        ring = min(p.usable, ring + p.inches(0, 6))
    p.piece("waistband", p.inches(26, 42), p.inches(2, 4.5), 1, True)
    if p.chance.random() < 0.6:
        p.piece("hem ruffle", p.inches(30, 58), p.inches(3, 6), p.chance.randint(3, 6))
    if p.chance.random() < 0.5:
        p.piece("pocket", p.inches(6, 9), p.inches(8, 12), p.chance.choice([2, 4]), True)


def _gathered(p: _Pattern) -> None:
    p.piece("skirt panel", p.inches(16, 34), p.inches(22, 42), p.chance.randint(3, 6))
    p.piece("waistband", p.inches(24, 44), p.inches(2.5, 5), 1, True)
    p.piece("tie", p.inches(2.5, 6), p.inches(24, 44), 2, True)
    p.piece("pocket", p.inches(6, 9), p.inches(9, 13), p.chance.choice([2, 4]), True)
    if p.chance.random() < 0.5:
        p.piece("yoke", p.inches(14, 24), p.inches(5, 9), 2)
    if p.chance.random() < 0.4:
        p.piece("placket", p.inches(2, 4), p.inches(8, 14), 2, True)


def _apron(p: _Pattern) -> None:
    p.piece("skirt", p.inches(24, 42), p.inches(18, 32), p.chance.randint(1, 3))
    p.piece("bib", p.inches(9, 15), p.inches(9, 15), p.chance.choice([1, 2]))
    p.piece("strap", p.inches(2.5, 5), p.inches(18, 36), 2, True)
    p.piece("tie", p.inches(3, 6), p.inches(26, 42), 2, True)
    p.piece("waistband", p.inches(18, 34), p.inches(3, 5), 2, True)
    p.piece("pocket", p.inches(6, 10), p.inches(7, 11), p.chance.randint(1, 3), True)
    if p.chance.random() < 0.5:
        p.piece("ruffle", p.inches(28, 44), p.inches(3, 6), p.chance.randint(2, 4))


def _bodice(p: _Pattern) -> None:
    high = p.inches(14, 22)
    p.piece("front", p.inches(9, 14), high, 2)
    p.piece("side front", p.inches(6, 9), high - p.inches(0, 3), 2)
    p.piece("back", p.inches(9, 14), high + p.inches(0, 2), 2)
    p.piece("side back", p.inches(5, 9), high - p.inches(0, 3), 2)
    p.piece("sleeve", p.inches(13, 22), p.inches(9, 26), 2)
    p.piece("cuff", p.inches(7, 12), p.inches(2.5, 6), p.chance.choice([2, 4]), True)
    p.piece("collar", p.inches(14, 20), p.inches(2.5, 5), 2, True)
    p.piece("facing", p.inches(3, 6), p.inches(10, 22), p.chance.choice([2, 4]), True)
    if p.chance.random() < 0.5:
        p.piece("peplum", p.inches(12, 24), p.inches(6, 11), p.chance.choice([2, 4]))


def _cloak(p: _Pattern) -> None:
    p.piece("panel", p.inches(22, 40), p.inches(38, 60), p.chance.randint(2, 4))
    p.piece("hood", p.inches(12, 17), p.inches(15, 22), p.chance.choice([2, 4]))
    p.piece("yoke", p.inches(16, 24), p.inches(6, 10), p.chance.choice([1, 2]))
    p.piece("front facing", p.inches(3, 6), p.inches(36, 58), 2)
    p.piece("tie", p.inches(2, 4), p.inches(16, 30), 2, True)
    if p.chance.random() < 0.5:
        p.piece("capelet", p.inches(14, 26), p.inches(10, 18), p.chance.choice([2, 4]))


def _finishings(p: _Pattern) -> None:
    """Small pieces that any garment may have."""
    small = [
        ("patch pocket", p.inches(5, 9), p.inches(6, 11), p.chance.choice([1, 2, 4])),
        ("cuff", p.inches(8, 13), p.inches(2.5, 6), p.chance.choice([2, 4])),
        ("facing", p.inches(3, 6), p.inches(9, 24), p.chance.choice([1, 2, 4])),
        ("belt", p.inches(3, 5), p.inches(26, 42), p.chance.choice([1, 2])),
        ("carrier", p.inches(1.5, 2.5), p.inches(3, 6), p.chance.choice([4, 5, 6])),
        ("pocket flap", p.inches(5, 9), p.inches(3, 5), p.chance.choice([2, 4])),
    ]
    for piece in p.chance.sample(small, p.chance.randint(0, 4)):
        p.piece(*piece, small=True)


_PLAIN: tuple[Callable[[_Pattern], None], ...] = (_tiered, _gathered, _apron, _bodice, _cloak)


def _mixed(p: _Pattern) -> None:
    for family in p.chance.sample(_PLAIN, 2):
        family(p)


FAMILIES: dict[str, Callable[[_Pattern], None]] = {
    "tiered": _tiered,
    "gathered": _gathered,
    "apron": _apron,
    "bodice": _bodice,
    "cloak": _cloak,
    "mixed": _mixed,
}


def garment_cuttings(count: int, seed: int = 1) -> list[Cutting]:
    """`count` cuttings, the families in turn; the first ones stay the same for a larger count."""
    made = []
    for number in range(count):
        family = list(FAMILIES)[number % len(FAMILIES)]
        chance = Random(f"{seed} {family} {number}")
        nominal = chance.choice(WIDTHS)
        usable = nominal * 8 - chance.choice([4, 6, 8, 12])
        pattern = _Pattern(chance, usable)
        FAMILIES[family](pattern)
        _finishings(pattern)
        cloth = Cloth(usable * EIGHTH_OF_AN_INCH, 0, eighths)
        made.append(Cutting(f"{family} {number} on {nominal} in", cloth, tuple(pattern.blanks)))
    return made


def copies_of_kinds(count: int, kinds: int = 50, seed: int = 1) -> Cutting:
    """A costume shop's whole chorus: `count` pieces in all, of `kinds` sizes, on 60 in cloth."""
    chance = Random(f"{seed} {kinds}")

    def inches(low: int, high: int) -> int:
        return chance.randint(low * 8, high * 8) * EIGHTH_OF_AN_INCH

    blanks = tuple(
        Blank(f"kind {i}", inches(3, 30), inches(3, 40), count // kinds + (i < count % kinds))
        for i in range(kinds)
    )
    return Cutting(f"{count} pieces of {kinds} kinds", Cloth(59 * 203_200, 0, eighths), blanks)
