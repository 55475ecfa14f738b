"""The trim, elastic and notion tables of a plan."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

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
    or_bare,
    reading,
    refusal,
)
from estimator.plan.piece_edges import EDGE_REF, EdgeRefField
from estimator.plan.pieces import Joined
from estimator.plan.trim_parts import End, EndsField, Pleats, TrimEnd
from estimator.prices import PriceField
from estimator.quoting import NotReadable, one_line, quoted


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
        one_line(one) if isinstance(one, str) and ":" not in one else reading(_one_edge)(one)
        for one in many
    )


def _one_edge(written: Any) -> EdgeRef:
    """An edge; raises NotReadable, with the list to write where one text names several."""
    try:
        return read_edge_ref(written)
    except NotReadable:
        parts = [one.strip() for one in written.split(",")] if isinstance(written, str) else []
        if len(parts) < 2 or not all(map(_is_edge, parts)):
            raise
    listed = ", ".join(f'"{one}"' for one in parts)
    raise NotReadable(f"{quoted(written)} names several edges", f"write along = [{listed}]")


def _is_edge(text: str) -> bool:
    try:
        read_edge_ref(text)
    except NotReadable:
        return False
    return '"' not in text


def _edges(written: Any) -> tuple[EdgeRef, ...]:
    many = written if isinstance(written, list | tuple) else [written]
    if not many:
        raise refusal("along names no edge", 'write it like "1 x front: right"')
    return tuple(map(reading(_one_edge), many))


_ONE_OR_SEVERAL = or_bare({"type": "array", "items": EDGE_REF, "minItems": 1}, EDGE_REF)
EdgeRefs = Annotated[
    tuple[EdgeRef, ...],
    BeforeValidator(_edges),
    WithJsonSchema(_ONE_OR_SEVERAL | {"description": "Edges; several in a list."}),
]
Along = Annotated[
    tuple[EdgeRef | str, ...],
    BeforeValidator(_along),
    WithJsonSchema(
        _ONE_OR_SEVERAL | {"description": "Edges, or the names of seams; several in a list."}
    ),
]


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
    """A trim along edges, through another trim, or of a stated finished length.

    ``repeat`` is one scallop or motif, and ``overlapped`` how much of it a round overlaps;
    ``ease_repeats`` is by how much of its length an edge may be eased in, for fewer repeats.
    ``joins`` is in how many places a run may be joined where no put-up holds it whole. A trim that
    is ``cut_from`` a fabric is a bias strip, cut ``strip`` wide, or as it ``covers`` a cord.
    ``stitched`` is how many rows of stitching hold it on: none where it runs in a ``casing``, an
    edge.
    """

    along: Along | None = None
    length: Size | None = None
    through: Name | None = None
    covers: Name | None = None
    run: Literal["together", "each"] | None = None
    joined: Joined | None = None
    ends: EndsField = (TrimEnd(End.TURNED), TrimEnd(End.TURNED))
    row_spacing: Size | None = None
    from_edge: Allowance | None = None
    ease: Share = Fraction(0)
    fullness: Fullness = Fraction(1)
    pleats: Pleats | None = None
    corners: Annotated[int, Field(strict=True, ge=0, le=10_000)] = 0
    corner: Literal["folded", "mitred", "cut"] | None = None
    measured: Literal["inner edge", "outer edge"] | None = None
    bow: Size | None = None
    repeat: Allowance | None = None
    overlapped: Share = Fraction(1)
    ease_repeats: Share = Fraction(0)
    motif: Literal["centred", "at the start"] | None = None
    mirrored: bool = False
    joins: Annotated[int, Field(strict=True, ge=0, le=100)] = 0
    cut_from: Name | None = None
    strip: Size | None = None
    stitched: Annotated[int, Field(strict=True, ge=0, le=20)] | None = None
    casing: EdgeRefField | None = None

    @model_validator(mode="after")
    def _hangs_together(self) -> Trim:
        if sum(one is not None for one in (self.along, self.length, self.through, self.covers)) > 1:
            raise refusal(
                "a trim states along and length, and they may not agree"
                if self.along is not None and self.length is not None
                else "a trim states more than one of along, length, through and covers",
                'write along = "skirt panel: bottom", or length = "40", and not both',
            )
        if all(one is None for one in (self.along, self.length, self.through, self.covers)):
            raise refusal(
                "a trim states one of along and length",
                'write along = "skirt panel: bottom", or length = "40", and not both',
            )
        for wrong, right in _idle_keys(self):
            raise refusal(wrong, right)
        return self


def _idle_keys(trim: Trim) -> Iterator[tuple[str, str]]:
    """What a trim states that goes with something it does not state, and the remedy."""
    if trim.row_spacing is not None and trim.rows == 1:
        yield "row_spacing is between rows, and there is one", "add rows = 2, or leave it out"
    if trim.along is None and (trim.row_spacing is not None or trim.from_edge is not None):
        yield "row_spacing and from_edge go inwards from an edge", "leave them out, or add along"
    if trim.corners == 0 and (trim.corner is not None or trim.measured is not None):
        yield "corner and measured say nothing without corners", "add corners = 4, or leave it out"
    if trim.pleats is not None and trim.fullness != 1:
        yield "a trim is pleated or gathered, not both", "leave out fullness, or pleats"
    if trim.casing is not None and trim.stitched:
        yield "what runs in a casing is not stitched", "leave out stitched, or casing"
    if trim.bow is not None and trim.joined is Joined.IN_THE_ROUND:
        yield "a trim tied in a bow is not joined in the round", "leave out joined, or bow"
    if not 0 < trim.overlapped <= 1:
        yield "overlapped is a part of a repeat", 'write more than 0 % and at most "100 %"'
    if trim.ease_repeats > MOST_EASED:
        yield "nobody eases in more than a fifth", 'write ease_repeats = "3 %"'
    if trim.cut_from is None and (trim.strip is not None or trim.covers is not None):
        yield "strip and covers are for bias strips", "add cut_from, the fabric they are cut from"
    if trim.cut_from is not None:
        own = ("buy", "price", "sold", "step", "minimum", "repeat", "shrinkage", "waste")
        for key in own:
            if getattr(trim, key):
                yield f"it is cut from a fabric and states {key} as well", f"leave out {key}"
        if trim.strip is None and trim.covers is None and trim.width is None:
            yield "nothing says how wide its strip is cut", 'add strip = "2", or its finished width'


MOST_EASED = Fraction(1, 5)


class ElasticKind(Enum):
    """How an elastic is made, which tells how far it is stretched."""

    WOVEN = "woven"
    BRAIDED = "braided"
    KNITTED = "knitted"
    CLEAR = "clear"
    FOLD_OVER = "fold-over"
    SHIRRING = "shirring"


class Elastic(ByLength):
    """An elastic cut from a body measure, a finished opening or an edge: shorter by its stretch.

    ``casing`` is the edge in whose casing it runs.
    """

    measure: Size | None = None
    opening: Size | None = None
    along: Along | None = None
    kind: ElasticKind | None = None
    stretch: Shrinkage | None = None
    joined: Joined | None = None
    casing: EdgeRefField | None = None

    @model_validator(mode="after")
    def _one_length(self) -> Elastic:
        stated = [one for one in (self.measure, self.opening, self.along) if one is not None]
        if len(stated) != 1:
            raise refusal(
                "an elastic states one of measure, opening and along"
                if not stated
                else "an elastic states more than one of measure, opening and along",
                'write measure = "28", the body measure, or opening = "26", as it is finished',
            )
        return self


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
