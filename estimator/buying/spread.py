"""Pieces as they meet the fabric: laid open in one layer, or folded lengthwise and cut in pairs.

Folded, the fold is the near edge, from which all is measured, and the selvedges lie on each other
at the far edge: a distance from the fold holds for both layers. Pieces go in pairs, one from
each layer; a piece on the fold lies with its half, and so may an odd one whose halves are mirror
images. An odd piece that cannot be folded is cut in a pair, with one to spare.

A plaid is folded on a line from which it is the same both ways. So what is matched in the upper
layer is matched in the under layer, in a mirror: a pair starts on the repeat counted from the fold,
and what lies on the fold has the repeat in its middle. An odd one of several is then cut in a pair
like the others, because its edges would not match theirs.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from estimator.layout import Held
from estimator.measure import Length
from estimator.needs.cut_piece import CutPiece
from estimator.needs.fits import on_cloth
from estimator.needs.selvedges import Breadth


@dataclass(frozen=True, slots=True)
class Part:
    """A piece as it is laid ``quantity`` times: whole, or its half on the fold.

    ``width`` is what it takes of the usable width; ``layers`` pieces are cut at each place.
    ``spare`` of what is cut there were not asked for.
    """

    number: int
    piece: CutPiece
    quantity: int
    width: Length
    held: Held = Held.FREE
    layers: int = 1
    half: bool = False
    words: str = ""
    spare: int = 0

    @property
    def name(self) -> str:
        """What the layout calls it."""
        return f"{self.piece.name}{self.words}"


def parts_laid(pieces: Sequence[CutPiece], breadth: Breadth, *, one_way: bool) -> Iterator[Part]:
    """Every piece as it is laid, with its number among ``pieces``.

    ``one_way`` says that none may be turned end for end: the fabric has nap, or is matched.
    """
    for number, piece in enumerate(pieces):
        if breadth.folded:
            yield from _folded(number, piece, breadth)
        else:
            width = on_cloth(piece, breadth.selvedge)
            yield Part(number, piece, piece.quantity, width, _held(piece, one_way))


def _held(piece: CutPiece, one_way: bool) -> Held:
    """Turned end for end, a piece changes its selvedge for the other one."""
    if len(piece.selvedges) != 1:
        return Held.FREE
    if not one_way:
        return Held.EITHER
    return Held.NEAR if piece.selvedges == ("left",) else Held.FAR


def _folded(number: int, piece: CutPiece, breadth: Breadth) -> Iterator[Part]:
    width = on_cloth(piece, breadth.selvedge)
    half = width.times(Fraction(1, 2))
    if width == breadth.usable:
        half = breadth.of_a_layer
    narrowest = min(width, piece.length.value) if piece.may_turn else width
    pairs, odd = divmod(piece.quantity, 2)
    if piece.square and not piece.on_fold:
        # all copies are of one hand, and of a pair one is of the other
        words = ", each in a pair with one of the other hand to spare"
        held = Held.FAR if piece.selvedges else Held.FREE
        yield Part(number, piece, piece.quantity, width, held, 1, words=words, spare=1)
        return
    if piece.on_fold or (piece.folds and narrowest > breadth.of_a_layer):
        pairs, odd = 0, piece.quantity
    if pairs:
        held = Held.FAR if piece.selvedges else Held.FREE
        yield Part(number, piece, pairs, width, held, 2, words=", in pairs")
    if not odd:
        return
    matches_pairs = bool(pairs and breadth.off_middle)
    if piece.folds and half <= breadth.of_a_layer and not matches_pairs:
        yield Part(number, piece, odd, half, Held.NEAR, 1, half=True, words=", on the fold")
    else:
        words = ", a pair with one to spare"
        held = Held.FAR if piece.selvedges else Held.FREE
        yield Part(number, piece, 1, width, held, 2, words=words, spare=1)
