"""A piece as it is cut: its outline, its working, and how it may lie on the fabric."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from estimator.measure import Length
from estimator.needs.arc import Arc
from estimator.working import Reckoning, Source


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece as it is cut: ``width`` across the lengthwise grain and ``length`` along it.

    ``finished`` stands beside the cut size: across and along, and of a part of a circle its waist
    edge and its length, whichever way it lies; None where the plan does not tell it. Each cut size
    carries its working. ``quantity`` is that of the whole job. ``boxed`` says that the rectangle is
    drawn round another outline; of a taper that lies along the fabric or on the bias, ``narrow`` is
    the cut width at its narrow end, and ``square`` its side that does not slant, if there is one;
    ``on_its_head`` tells that the narrow end is the bottom of the piece. Of a part of a circle,
    ``arc`` is the outline. Of a piece at 45 degrees, ``on_bias`` is its own cut width and length,
    and the rectangle that round it. ``selvedges`` are the sides, left or right as it lies, that use
    the fabric's own edge; ``on_fold`` tells that the piece is two mirrored halves. ``seamed`` says
    of a part from what the piece is seamed; ``else_cut`` how a piece may be cut that is too wide.
    """

    source: Source
    name: str
    quantity: int
    finished: tuple[Length | None, Length | None]
    width: Reckoning
    length: Reckoning
    may_turn: bool = False
    boxed: bool = False
    narrow: Length | None = None
    square: str = ""
    on_its_head: bool = False
    arc: Arc | None = None
    on_bias: tuple[Length, Length] | None = None
    selvedges: tuple[str, ...] = ()
    on_fold: bool = False
    note: str = ""
    seamed: str = ""
    else_cut: str = ""

    @property
    def folds(self) -> bool:
        """Whether its halves are mirror images, so that it can be cut on a fold of the fabric."""
        mirrored = not self.boxed or (self.narrow is not None and not self.square)
        if self.arc is not None:
            across = self.width.value > self.length.value  # the straight edges of half a circle
            mirrored = self.arc.share == 1 or (self.arc.share == Fraction(1, 2) and across)
        return self.on_fold or (mirrored and self.on_bias is None and len(self.selvedges) != 1)
