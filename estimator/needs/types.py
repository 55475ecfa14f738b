"""Needs: frozen values between what a person wrote and what is laid out and bought."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from estimator.catalog import Kind, Offer
from estimator.faults import Path
from estimator.job import GarmentOrder
from estimator.measure import ZERO, Length, total
from estimator.needs.cut_piece import CutPiece
from estimator.plan import Boning, Cut, Elastic, Lacing, Loops, Piece, Thread, Trim
from estimator.stitches import Stitch
from estimator.working import Reckoning, Source, Step


class Group(Enum):
    """The parts of a shop, in the order in which it is walked."""

    FABRICS = "Fabrics"
    LININGS = "Linings and interfacings"
    TRIMS = "Trims"
    ELASTICS = "Elastics"
    NOTIONS = "Notions"


@dataclass(frozen=True, slots=True)
class FabricTerms:
    """What decides whether two fabrics of a job are bought as one: one cloth, on equal terms."""

    item: str
    colour: str
    offers: tuple[Offer, ...]
    fixed_width: Length | None
    usable: Length | None
    selvedge: Length
    nap: bool
    repeat: Length | None
    repeat_across: Length | None
    shrinkage: Fraction
    shrinkage_across: Fraction
    straightening: Length
    waste: Fraction
    rows_only: bool
    folded: bool
    thorough: bool
    one_dye_lot: bool = False


@dataclass(frozen=True)
class ToCut:
    """One piece as it is cut from one of its fabrics, before its cut size is reckoned.

    ``garment`` is the number of the garment in the job. ``long`` is the finished length of a band
    that takes it from an edge. Of bias strips that a ``trim`` needs, ``wide`` is their cut width.
    """

    order: GarmentOrder
    path: Path
    piece: Piece
    cut: Cut
    garment: int = 0
    nap: bool = False
    long: Reckoning | None = None
    trim: Trim | None = None
    wide: Reckoning | None = None

    @property
    def source(self) -> Source:
        """Where the piece stands in the plan."""
        return self.order.source(self.piece.name, self.path)


@dataclass(frozen=True, slots=True)
class FabricNeed:
    """All that is cut from one fabric: sized pieces, and those that hang on widths and edges.

    ``used_as`` names the fabric as each garment's plan does: (number of the garment, name).
    """

    key: str
    title: str
    names: tuple[str, ...]
    group: Group
    terms: FabricTerms
    notes: tuple[str, ...]
    pieces: tuple[CutPiece, ...]
    hanging: tuple[ToCut, ...]
    used_as: tuple[tuple[int, str], ...]
    sources: tuple[Source, ...]

    @property
    def sets_rings(self) -> bool:
        """Whether a finished ring depends on this fabric's width: so many whole widths joined."""
        return any(one.piece.in_whole_widths for one in self.hanging)


@dataclass(frozen=True, slots=True)
class BuyingTerms:
    """What decides whether two trims or notions of a job are bought as one."""

    item: str
    kind: Kind
    colour: str
    offers: tuple[Offer, ...]
    waste: Fraction = Fraction(0)
    shrinkage: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Material:
    """A trim as it is bought: its repeat before it shrinks, and its width where that is known."""

    repeat: Length | None = None
    shrinkage: Fraction = Fraction(0)
    width: Length | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """One unbroken length of trim as it is bought, ``count`` times alike.

    Where it may be joined from several lengths, it is so at most ``joins`` times, each join takes
    ``overlap`` more, and a join of a patterned trim lies at a ``repeat``. ``after`` is what further
    ones take in turn where they are cut from the same length after another, if that is less.
    """

    source: Source
    length: Reckoning
    count: int
    joins: int = 0
    overlap: Length = ZERO
    repeat: Length | None = None
    notes: tuple[str, ...] = ()
    after: tuple[Reckoning, ...] = ()

    @property
    def in_turn(self) -> tuple[tuple[Reckoning, int], ...]:
        """What the runs take where all are cut from one length, and how many of them so much."""
        if not self.after or self.count < 2:
            return ((self.length, self.count),)
        further, kinds = self.count - 1, len(self.after)
        times = (-(-(further - place) // kinds) for place in range(kinds))
        return (
            (self.length, 1),
            *((one, n) for one, n in zip(self.after, times, strict=True) if n),
        )


@dataclass(frozen=True, slots=True)
class LengthNeed:
    """Trim or elastic to buy by its length."""

    key: str
    title: str
    names: tuple[str, ...]
    group: Group
    terms: BuyingTerms
    notes: tuple[str, ...]
    runs: tuple[Run, ...]

    @property
    def sources(self) -> tuple[Source, ...]:
        """Where it comes from, each once."""
        return tuple(dict.fromkeys(run.source for run in self.runs))

    @property
    def takes(self) -> tuple[tuple[Source, Length], ...]:
        """How much each of them takes, before waste."""
        return tuple(
            (run.source, total(one.value * count for one, count in run.in_turn))
            for run in self.runs
        )


@dataclass(frozen=True, slots=True)
class CountNeed:
    """A notion to buy by count.

    ``takes`` is how many each garment takes, its spares with them. ``opening`` is what a zip has
    to close, or how long a bone is, and ``bone`` how that comes of its channel; ``shorter`` is by
    how much a bone may be so that it need not be cut.
    """

    key: str
    title: str
    names: tuple[str, ...]
    group: Group
    terms: BuyingTerms
    notes: tuple[str, ...]
    count: int
    opening: Length | None
    steps: tuple[Step, ...]
    takes: tuple[tuple[Source, int], ...]
    sources: tuple[Source, ...]
    bone: tuple[Step, ...] = ()
    shorter: Length | None = None


@dataclass(frozen=True)
class ToRun:
    """One trim, elastic or closure of a plan, before its edges have their lengths."""

    garment: int
    path: Path
    entry: Trim | Elastic | Lacing | Boning | Loops
    terms: BuyingTerms
    title: str
    repeat: Length | None
    notes: tuple[str, ...]

    @property
    def material(self) -> Material:
        """The trim as it is bought: its repeat, what it shrinks, and its width where known."""
        stated = (offer.width for offer in self.terms.offers if offer.width)
        width = self.entry.width or next(stated, None)
        return Material(self.repeat, self.terms.shrinkage, width)


@dataclass(frozen=True)
class ToSew:
    """One thread of a plan, before the seams that it sews have their lengths."""

    garment: int
    path: Path
    entry: Thread
    terms: BuyingTerms
    title: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ThreadNeed:
    """Thread to buy: so much for each stitch, all garments together; ``takes`` is by garment.

    ``in_hand`` is what is on each of the spools and cones that are there already.
    """

    key: str
    title: str
    names: tuple[str, ...]
    terms: BuyingTerms
    notes: tuple[str, ...]
    sewn: tuple[tuple[Stitch, Reckoning], ...]
    takes: tuple[tuple[Source, Length], ...]
    sources: tuple[Source, ...]
    in_hand: tuple[Length, ...] = ()

    @property
    def group(self) -> Group:
        """Thread lies with the notions."""
        return Group.NOTIONS


@dataclass(frozen=True)
class Needs:
    """What a job needs before any width is chosen."""

    garments: tuple[GarmentOrder, ...]
    fabrics: tuple[FabricNeed, ...]
    lengths: tuple[ToRun, ...]
    counts: tuple[CountNeed, ...]
    threads: tuple[ToSew, ...]
    currency: str


def key_of(item: str, colour: str, names: Iterable[str]) -> str:
    """A key that stays when the list is made again: item, colour, names in the plans.

    The order of the plans does not change it.
    """
    return " / ".join(part for part in (item, colour, " + ".join(sorted(set(names)))) if part)
