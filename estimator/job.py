"""A job: the garments to be made together, for how many and for whom, and where to buy."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from estimator.catalog import NO_CATALOG, Catalog
from estimator.faults import Path, Places
from estimator.measure import Length
from estimator.plan import Piece, Plan
from estimator.working import Source


@dataclass(frozen=True)
class GarmentOrder:
    """One garment of a job. ``count`` is beyond the copies that its plan states.

    ``places`` is where its plan's values stand in a file; ``unread`` names entries that were too
    faulty to be in the plan.
    """

    plan: Plan
    count: int = 1
    wearer: str = ""
    places: Places = field(default_factory=Places)
    unread: frozenset[str] = frozenset()

    @property
    def copies(self) -> int:
        """How many of the garment are made."""
        return self.count * self.plan.garment.copies

    @cached_property
    def pieces(self) -> Mapping[str, Piece]:
        """The pieces by their names."""
        return {piece.name: piece for piece in self.plan.piece}

    @cached_property
    def seam_allowances(self) -> Mapping[tuple[str, str], Length]:
        """What ``[[seam]]`` tables state as the allowance of the edges (piece, edge) they join."""
        return {
            (ref.piece, ref.edge): seam.allowance
            for seam in self.plan.seam
            if seam.allowance is not None
            for side in seam.edges
            for ref in side
        }

    def source(self, name: str, path: Path) -> Source:
        """Where a need comes from."""
        return Source(self.plan.garment.name, name, self.places.of(path), self.wearer)


@dataclass(frozen=True)
class Job:
    """Everything an estimate is made from.

    ``thorough`` asks for the long search for each layout. ``title`` is that of the show.
    """

    garments: tuple[GarmentOrder, ...]
    catalog: Catalog = NO_CATALOG
    thorough: bool = False
    title: str = ""
