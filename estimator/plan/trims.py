"""The trim, elastic and notion tables of a plan."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from estimator.catalog import Kind, KindField, PutUpField, WashField
from estimator.edges import EdgeRef, read_edge_ref
from estimator.fields import (
    Allowance,
    Count,
    Entry,
    Fullness,
    Name,
    Note,
    Share,
    Shrinkage,
    Size,
    reading,
    refusal,
)
from estimator.plan.pieces import Joined
from estimator.prices import PriceField
from estimator.written import one_line


class Sold(Entry):
    """One put-up in which a trim or notion may be had, where the plan says what is on offer."""

    put_up: PutUpField | None = None
    length: Size | None = None
    price: PriceField | None = None


class Bought(Entry):
    """What trims, elastics and notions have in common: a name, and where they may be had."""

    name: Name
    buy: Name | None = None
    colour: Note = ""
    price: PriceField | None = None
    sold: tuple[Sold, ...] = ()
    fibres: Note = ""
    care: WashField = None
    note: Note = ""


def _along(written: Any) -> tuple[EdgeRef | str, ...]:
    """One edge or several; a text without a colon names a seam."""
    many = written if isinstance(written, list | tuple) else [written]
    if not many:
        raise refusal("along names no edge", 'write it like "skirt panel: bottom"')
    return tuple(
        one_line(one) if isinstance(one, str) and ":" not in one else reading(read_edge_ref)(one)
        for one in many
    )


def _edges(written: Any) -> tuple[EdgeRef, ...]:
    many = written if isinstance(written, list | tuple) else [written]
    if not many:
        raise refusal("along names no edge", 'write it like "1 x front: right"')
    return tuple(map(reading(read_edge_ref), many))


EdgeRefs = Annotated[tuple[EdgeRef, ...], BeforeValidator(_edges)]
Along = Annotated[tuple[EdgeRef | str, ...], BeforeValidator(_along)]


class ByLength(Bought):
    """What trims and elastics have in common: they are bought by their length."""

    step: Size | None = None
    minimum: Size | None = None
    shrinkage: Shrinkage | None = None
    waste: Share | None = None
    rows: Count = 1
    quantity: Count = 1
    overlap: Allowance | None = None
    width: Size | None = None


class Trim(ByLength):
    """A trim along edges, or of a stated finished length. ``repeat`` is one scallop or motif.

    ``stitched`` is how many rows of stitching hold it on.
    """

    along: Along | None = None
    length: Size | None = None
    run: Literal["together", "each"] | None = None
    joined: Joined | None = None
    ends: Literal["turned under", "raw", "in a seam"] = "turned under"
    fullness: Fullness = Fraction(1)
    repeat: Allowance | None = None
    stitched: Annotated[int, Field(strict=True, ge=0, le=20)] | None = None

    @model_validator(mode="after")
    def _one_length(self) -> Trim:
        if (self.along is None) is (self.length is None):
            raise refusal(
                "a trim states one of along and length" if self.along is None
                else "a trim states along and length, and they may not agree",
                'write along = "skirt panel: bottom", or length = "40", and not both',
            )  # fmt: skip
        return self


class Elastic(ByLength):
    """An elastic cut from a body measure: shorter by its stretch, then overlapped."""

    measure: Size
    stretch: Shrinkage | None = None
    joined: Joined = Joined.IN_THE_ROUND


class Notion(Bought):
    """A notion by count; ``length`` is the opening that a zip has to close.

    Its count may come from the edges that it stands ``along``, or the distance ``over`` which it is
    spread, at most so far ``apart``; or it is two for each bone of ``ends_of``. ``size`` and
    ``thickness`` are a button's. ``spare`` is for the plan as a whole, however many copies are
    made.
    """

    quantity: Count = 1
    kind: KindField | None = None
    length: Size | None = None
    size: Size | None = None
    thickness: Size | None = None
    along: EdgeRefs | None = None
    over: Size | None = None
    apart: Size | None = None
    from_ends: Allowance | None = None
    ends_of: Name | None = None
    spare: Annotated[int, Field(strict=True, ge=0, le=1000)] = 0

    @model_validator(mode="after")
    def _a_notion(self) -> Notion:
        if self.kind in (Kind.FABRIC, Kind.TRIM, Kind.ELASTIC):
            raise refusal(
                f"a {self.kind.value} has a table of its own",
                "write zip, separating zip, thread or notion",
            )
        self._check_count()
        return self

    def _check_count(self) -> None:
        """Refuses a notion whose count is said in two ways, or whose spacing hangs on nothing."""
        spread = self.along is not None or self.over is not None
        if self.along is not None and self.over is not None:
            raise refusal("a notion states along and over", "state one of them")
        if self.from_ends is not None and not spread:
            raise refusal("from_ends is told from the ends of along or over", "add one of them")
        if self.apart is not None and not spread:
            raise refusal(
                "apart goes with the edge or distance over which it is spread",
                'add along = "1 x front: right", or over = "21"',
            )
        counted = "quantity" in self.model_fields_set
        if counted and (self.apart is not None or self.ends_of is not None):
            raise refusal(
                "its count is stated and reckoned as well",
                "leave out quantity, or " + ("apart" if self.apart is not None else "ends_of"),
            )
        if self.ends_of is not None and spread:
            raise refusal("bones have ends, and edges have none of theirs", "leave ends_of out")
