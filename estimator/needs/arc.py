"""The outline of a part of a circle, as it is cut."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from estimator.measure import ZERO, Length

PI = Fraction(Decimal("3.14159265358979323846264338327950288"))


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
    def area(self) -> int:
        """Square ticks within the outline: the ring's part, and the allowances at straight edges.

        ``share x pi x (outer^2 - inner^2)``, and two straight edges with their allowances, each as
        long as the ring is deep. Where an allowance ends at an arc that is taken for straight: at
        5/8 in on a radius of 20 in that makes 1/500 square inch.
        """
        outer, inner = self.outer.ticks, self.inner.ticks
        ring = self.share * PI * (outer**2 - inner**2)
        if self.share == 1:
            return int(ring)
        across, along = self.across.ticks, self.along.ticks
        edges = 2 * along if self.share == Fraction(1, 2) else across + along
        corner = across * along if not inner and self.share < Fraction(1, 2) else 0
        return int(ring + edges * (outer - inner) + corner)

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
