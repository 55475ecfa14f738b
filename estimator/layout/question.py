"""What is to be laid out: the pieces, the cloth, and the refusal of what cannot be cut.

Every size is a whole number of ticks (1/8000 mm). The package knows nothing of plans or shops: what
a length costs reaches it as one rising function of the length, `Cloth.buys`.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum


def as_laid(length: int) -> int:
    """Buy exactly the length of the layout, ticks for ticks: the default where no shop is known."""
    return length


class Held(Enum):
    """Where across the cloth a blank has to lie.

    The far edge of the cloth is its other selvedge or, folded, its fold.
    """

    FREE = "anywhere"
    NEAR = "at the near edge"
    FAR = "at the far edge"
    EITHER = "at either edge"


@dataclass(frozen=True, slots=True)
class Blank:
    """A rectangle to be cut `quantity` times.

    `width` lies across the fabric and `length` along it, both in ticks. `may_turn` says that a copy
    may lie a quarter turn round, which both the piece and the fabric have to allow; a blank that is
    `held` at an edge of the cloth lies there upright.
    """

    name: str
    width: int
    length: int
    quantity: int = 1
    may_turn: bool = False
    held: Held = Held.FREE


@dataclass(frozen=True, slots=True)
class Cloth:
    """The fabric that the blanks are cut from.

    `width` is usable between the selvedges, in ticks. `repeat` is the lengthwise repeat of a
    matched print: each piece, and so each row, starts on a whole multiple of it; 0 where nothing is
    matched. `repeat_across` is that of a plaid, counted from the near edge; a piece held at an edge
    lies there, whatever the repeat across. `buys` tells what is bought for a layout of a given
    length, in any unit; it must never fall when the length rises.
    """

    width: int
    repeat: int = 0
    buys: Callable[[int], int] = as_laid
    repeat_across: int = 0


class DoesNotFit(ValueError):
    """A blank that this cloth cannot take; `blank` is its index among the blanks asked for."""

    def __init__(self, blank: int, reason: str) -> None:
        super().__init__(reason)
        self.blank = blank


class OffTheRepeat(DoesNotFit):
    """A blank that a further cut cannot be sure to hold, from the start of a repeat on."""


def refuse_what_cannot_be_cut(cloth: Cloth, blanks: Sequence[Blank]) -> None:
    """Raise DoesNotFit for the first blank without a size or too wide, ValueError for bad cloth."""
    if cloth.width <= 0:
        raise ValueError(f"the cloth is {cloth.width} ticks wide; a width is above zero")
    for repeat in (cloth.repeat, cloth.repeat_across):
        if repeat < 0:
            raise ValueError(f"a repeat is {repeat} ticks; it is zero (no repeat) or above")
    for index, blank in enumerate(blanks):
        for side, size in (("wide", blank.width), ("long", blank.length)):
            if size <= 0:
                raise DoesNotFit(
                    index, f"{blank.name} is {size} ticks {side}; a size is above zero"
                )
        if blank.quantity <= 0:
            raise DoesNotFit(
                index,
                f"{blank.name} is wanted {blank.quantity} times; leave it out, or ask for one",
            )
        if blank.may_turn and blank.held is not Held.FREE:
            raise DoesNotFit(index, f"{blank.name} is held at an edge and may not turn as well")
        narrowest = min(blank.width, blank.length) if blank.may_turn else blank.width
        if narrowest > cloth.width:
            over = narrowest - cloth.width
            turn = "in either turn" if blank.may_turn else "as it must lie"
            raise DoesNotFit(
                index,
                f"{blank.name} is {narrowest} ticks wide {turn}, the cloth {cloth.width}: "
                f"{over} ticks too wide",
            )
