"""A job: the garments to be made together, for how many and for whom, and where to buy."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from estimator.bill import NO_FUNDS, Funds
from estimator.catalog import NO_CATALOG, Catalog
from estimator.faults import Path, Places
from estimator.measure import Length, Unit, Units
from estimator.plan import Piece, Plan
from estimator.rules import house_rules
from estimator.shops import ANY_SHOPS, Shops
from estimator.stash import NO_STASH, Stash
from estimator.working import Source


@dataclass(frozen=True, slots=True)
class Reckoned:
    """A size that comes from measures: ``place`` in the entry ``of`` a plan, as written, and it."""

    of: str
    place: str
    text: str
    size: Length


@dataclass(frozen=True)
class GarmentOrder:
    """One garment of a job. ``count`` is beyond the copies that its plan states.

    ``places`` is where its plan's values stand in a file; ``unread`` names entries that were too
    faulty to be in the plan. ``reckoned`` are the sizes that come from the measures taken.
    ``units`` are those that the papers were asked for in, if any. A plan's spares are for all that
    is made by it: of several orders one is ``with_spares``.
    """

    plan: Plan
    count: int = 1
    wearer: str = ""
    places: Places = field(default_factory=Places)
    unread: frozenset[str] = frozenset()
    reckoned: tuple[Reckoned, ...] = ()
    units: Units | None = None
    with_spares: bool = True

    @property
    def tape(self) -> Unit:
        """What lengths read in on the papers: as asked for, else as the plan is written."""
        unit = self.plan.garment.unit
        return self.units.tape_beside(unit) if self.units else unit.tape

    @property
    def mark(self) -> Length:
        """To which mark cut sizes are raised: as the plan states, else one of the tape in use."""
        garment = self.plan.garment
        return garment.rules.mark if garment.mark is not None else house_rules(self.tape).mark

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

    ``thorough`` asks for the long search for each layout. ``title`` is that of the show, ``notes``
    what shows say of themselves. ``stash`` is what is in hand, and ``shops`` what a visit to each
    costs; ``funds`` are for the reports.
    """

    garments: tuple[GarmentOrder, ...]
    catalog: Catalog = NO_CATALOG
    thorough: bool = False
    title: str = ""
    notes: tuple[str, ...] = ()
    stash: Stash = NO_STASH
    shops: Shops = ANY_SHOPS
    funds: Funds = NO_FUNDS

    @property
    def is_bought_new(self) -> bool:
        """Whether nothing is in hand, and no shop is dearer to reach than another."""
        return not self.stash.rows and not self.shops.matter

    @property
    def bought_new(self) -> Job:
        """The same with nothing in hand, where every shop is as near as any other."""
        return replace(self, stash=NO_STASH, shops=ANY_SHOPS)
