"""The piece tables of a plan: what is cut, and how it is made up."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from typing import Annotated, Any, Literal

from pydantic import (
    Field,
    GetJsonSchemaHandler,
    model_validator,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from estimator.edges import SIDES, Finish
from estimator.faults import nearest
from estimator.fields import (
    Allowance,
    Count,
    Entry,
    FullnessOnto,
    Name,
    Note,
    Size,
    SizeOrPoint,
    or_bare,
    refusal,
)
from estimator.measure import ZERO
from estimator.plan.piece_edges import Edge, EdgeRefField
from estimator.quoting import quoted


class Grain(Enum):
    """How a piece's length lies on the fabric."""

    LENGTHWISE = "lengthwise"
    CROSSWISE = "crosswise"
    EITHER = "either"
    BIAS = "bias"


class Shape(Enum):
    """The outline of a piece."""

    RECTANGLE = "rectangle"
    TAPER = "taper"
    SECTOR = "sector"
    BOX = "box"


class Made(Enum):
    """How a piece is made up from what is cut."""

    FLAT = "flat"
    TUBE = "tube"
    FOLDED_BAND = "folded band"
    FACING = "facing"
    JOINED_STRIP = "joined strip"
    BIAS_STRIP = "bias strip"


class Joined(Enum):
    """Whether a strip or trim closes on itself."""

    IN_THE_ROUND = "in the round"
    OPEN = "open"


class TakeUpKind(Enum):
    """Folds that are sewn into a piece before it has its finished size."""

    KNIFE_PLEAT = "knife pleat"
    BOX_PLEAT = "box pleat"
    TUCK = "tuck"
    DART = "dart"


class TakeUp(Entry):
    """Pleats, tucks or darts across a piece's width (or length); ``depth`` is a dart's intake."""

    kind: TakeUpKind
    depth: Size
    count: Count = 1
    across: Literal["width", "length"] = "width"


class Cut(Entry):
    """What is cut for a piece from one fabric; sizes, edges and grain stated here are its own.

    ``shorter`` and ``longer`` are told from the piece's own length, as a lining hangs; ``trimmed``
    is cut off all round, as of interfacing; ``pieced`` is the overlap of parts, where it may be cut
    in parts because its fabric is narrow.
    """

    fabric: Name
    cut_to: Literal["cut size", "finished size"] = "cut size"
    quantity: Count | None = None
    width: Size | None = None
    length: Size | None = None
    top: Size | None = None
    bottom: Size | None = None
    waist: Size | None = None
    shorter: Size | None = None
    longer: Size | None = None
    trimmed: Size | None = None
    pieced: Allowance | None = None
    fullness: FullnessOnto | None = None
    grain: Grain | None = None
    edges: dict[str, Edge] | None = None

    @model_validator(mode="after")
    def _one_length(self) -> Cut:
        lengths = [key for key in ("length", "shorter", "longer") if getattr(self, key) is not None]
        if len(lengths) > 1:
            raise refusal(f"it states {' and '.join(lengths)}", "state one of them")
        return self

    @model_validator(mode="before")
    @classmethod
    def _bare_fabric(cls, written: Any) -> Any:
        return {"fabric": written} if isinstance(written, str) else written

    @classmethod
    def __get_pydantic_json_schema__(
        cls, core: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return or_bare(handler(core), {"type": "string"})


def _or_one(schema: JsonSchemaValue) -> None:
    """One fabric needs no list."""
    several = {key: schema.pop(key) for key in list(schema) if key != "title"}
    schema["anyOf"] = [several, several["items"]]


class Piece(Entry):
    """A piece of the garment as it is when finished, and the fabrics it is cut from.

    Which sizes it takes hangs on its shape and on how it is made: ``_check_sizes`` says which.
    """

    name: Annotated[Name, Field(pattern=r"^[^:]+$")]
    cut: tuple[Cut, ...] = Field(min_length=1, json_schema_extra=_or_one)
    quantity: Count = 1
    shape: Shape = Shape.RECTANGLE
    made: Made = Made.FLAT
    sizes: Literal["finished", "cut"] = "finished"
    width: Size | None = None
    length: Size | None = None
    top: SizeOrPoint | None = None
    bottom: SizeOrPoint | None = None
    waist: SizeOrPoint | None = None
    share: Literal["1/4", "1/2", "3/4", "1"] | None = None
    ring: Size | None = None
    widths: Count | None = None
    onto: EdgeRefField | None = None
    fullness: FullnessOnto | None = None
    underlap: Allowance | None = None
    joined: Joined | None = None
    last_width: Literal["part", "whole"] | None = None
    slant: Literal["both sides", "left side", "right side"] | None = None
    seams: Literal["none", "as needed", "least fabric"] | None = None
    grain: Grain = Grain.LENGTHWISE
    edges: dict[str, Edge] = {}
    takes_up: tuple[TakeUp, ...] = ()
    note: Note = ""

    @model_validator(mode="before")
    @classmethod
    def _one_fabric(cls, written: Any) -> Any:
        """``cut = "print"`` is as good as ``cut = ["print"]``."""
        if isinstance(written, Mapping) and isinstance(written.get("cut"), str | Mapping):
            return {**written, "cut": [written["cut"]]}
        return written

    @property
    def is_on_fold(self) -> bool:
        """Whether an edge lies on the fold, so that sizes are those of one half."""
        return any(edge.finish.finish is Finish.FOLD for edge in self.edges.values())

    @property
    def in_whole_widths(self) -> bool:
        """Whether a strip is made of whole widths of the fabric only, and its ring follows them."""
        return self.widths is not None or self.last_width == "whole"

    @model_validator(mode="after")
    def _sizes_of_its_shape(self) -> Piece:
        _check_sizes(self)
        return self


_SIZE_KEYS = ("width", "length", "top", "bottom", "waist", "share", "ring", "widths", "onto")
_SIZES_OF_SHAPE = {
    Shape.RECTANGLE: ({"width", "length"},),
    Shape.BOX: ({"width", "length"},),
    Shape.TAPER: ({"top", "bottom", "length"},),
    Shape.SECTOR: ({"waist", "length", "share"},),
}
_SIZES_OF_MADE = {
    Made.TUBE: ({"width", "length"}, {"width", "onto"}),
    Made.FOLDED_BAND: ({"width", "length"}, {"width", "onto"}),
    Made.FACING: ({"width", "length"}, {"width", "onto"}),
    Made.BIAS_STRIP: ({"width", "length"}, {"width", "onto"}),
    Made.JOINED_STRIP: ({"length", "ring"}, {"length", "widths"}, {"length", "onto"}),
}


def _check_sizes(piece: Piece) -> None:
    """Refuses a piece whose sizes are not those of its shape, or of how it is made up."""
    choices: tuple[set[str], ...]
    if piece.made is Made.FLAT:
        what, choices = piece.shape.value, _SIZES_OF_SHAPE[piece.shape]
    else:
        what, choices = piece.made.value, _SIZES_OF_MADE[piece.made]
        if piece.shape is not Shape.RECTANGLE:
            raise refusal(
                f"a {what} is cut as a rectangle, not a {piece.shape.value}", "leave shape out"
            )
    stated = {key for key in _SIZE_KEYS if getattr(piece, key) is not None}
    wanted = " or ".join(" and ".join(k for k in _SIZE_KEYS if k in keys) for keys in choices)
    if stated not in choices:
        raise refusal(
            f"a {what} takes {wanted}, and this one states "
            f"{', '.join(sorted(stated)) or 'no size'}",
            _size_remedy(stated, choices),
        )
    if piece.top == piece.bottom == ZERO:
        raise refusal(
            "this taper comes to a point at both ends", "write a top or a bottom of more than zero"
        )
    if piece.fullness is not None and piece.onto is None and piece.ring is None:
        raise refusal(
            "fullness goes with onto, the edge it is gathered onto, or with a ring",
            'add onto = "piece: edge", or the ring to which it is gathered',
        )
    if piece.underlap is not None and piece.onto is None:
        raise refusal("an underlap goes with onto, the edge it goes beyond", "leave underlap out")
    _check_edges_and_grain(piece)
    if piece.last_width is not None and piece.made is not Made.JOINED_STRIP:
        raise refusal("last_width goes with made = 'joined strip'", "leave last_width out")
    if piece.joined is not None and piece.made is not Made.JOINED_STRIP:
        raise refusal("joined goes with made = 'joined strip'", "leave joined out")
    if piece.seams is not None and piece.shape is not Shape.SECTOR:
        raise refusal("seams goes with shape = 'sector'", "leave seams out")
    if piece.slant is not None and piece.shape is not Shape.TAPER:
        raise refusal("slant goes with shape = 'taper'", "leave slant out")
    if piece.takes_up and (
        piece.made is not Made.FLAT or piece.shape in (Shape.TAPER, Shape.SECTOR)
    ):
        raise refusal(
            "pleats, tucks and darts go into flat rectangles and boxes", "leave takes_up out"
        )
    if piece.sizes == "cut" and (piece.made is not Made.FLAT or piece.takes_up):
        raise refusal(
            "cut sizes are given, and yet something is to be made up", "give the finished sizes"
        )


def _check_edges_and_grain(piece: Piece) -> None:
    """An edge that is no side is one that the plan names, and so has a length of its own."""
    for name, edge in piece.edges.items():
        if name not in SIDES and edge.length is None:
            raise refusal(
                f"edges: {quoted(name)} is no side of a piece, and has no length of its own",
                f'{nearest(name, SIDES)}; or {name} = {{ length = "10", finish = "faced" }}',
            )
    if piece.in_whole_widths and piece.grain is not Grain.LENGTHWISE:
        raise refusal("whole widths lie across the fabric", "leave grain out")


def _size_remedy(stated: set[str], choices: tuple[set[str], ...]) -> str:
    closest = min(choices, key=lambda keys: len(keys ^ stated))
    missing = [key for key in _SIZE_KEYS if key in closest - stated]
    idle = [key for key in _SIZE_KEYS if key in stated - closest]
    parts = ["add " + " and ".join(missing)] if missing else []
    return ", ".join(parts + (["leave out " + " and ".join(idle)] if idle else []))
