"""The outline of a part of a circle, as it is cut."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from estimator.measure import ZERO, Length


@dataclass(frozen=True, slots=True)
class Arc:
    """The true outline of a part of a circle in its box: ``share`` of a ring, cut.

    ``inner`` and ``outer`` are the cut radii; where ``inner`` is zero there is no inner edge. A
    straight edge lies beyond the middle of the circle by its allowance: ``across`` that of one
    along the fabric, ``along`` that of one across it. Half a circle has but one line of straight
    edges, ``along``, and a whole one none.
    """

    share: Fraction
    inner: Length
    outer: Length
    across: Length
    along: Length

    @property
    def turned(self) -> Arc:
        """The same part of a circle with its width and its length exchanged."""
        return replace(self, across=self.along, along=self.across)

    @property
    def half(self) -> Arc:
        """The half of a whole circle, or of a half with its straight edges across, on the fold."""
        return replace(self, share=self.share / 2)

    def less(self, off: Length) -> Arc:
        """The same part with so much taken off along all of its edges."""
        return replace(
            self,
            inner=self.inner + off if self.inner else ZERO,
            outer=self.outer - off,
            across=self.across - off if self.share in (Fraction(1, 4), Fraction(3, 4)) else ZERO,
            along=self.along - off if self.share < 1 else ZERO,
        )
