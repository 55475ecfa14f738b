"""The shapes of the JSON that reports print; the type checker holds the reports to them."""

from __future__ import annotations

from typing_extensions import TypedDict


class LengthJson(TypedDict):
    """A length in millimetres, exact to a tick, and as a tape reads it."""

    mm: float
    text: str


class SourceJson(TypedDict):
    """Where a quantity comes from: garment and name, and the place in the plan."""

    what: str
    place: str


class BoughtJson(TypedDict):
    """What would be bought on one offer; money is text, to the least coin of its currency."""

    width: LengthJson | None
    shop: str | None
    buy: float
    unit: str
    cost: str | None


class TakenJson(TypedDict):
    """What is taken of a row of the stash file, and what is left of it; a length or a count."""

    row: int
    place: str | None
    take: LengthJson | int
    left: LengthJson | int


_From = TypedDict("_From", {"from": list[SourceJson]})


class PurchaseJson(_From):
    """A line of the shopping list. ``needed`` is before the shop's step, minimum or put-up.

    ``instead`` holds the other ways to buy it, each on one offer or on several together.
    """

    key: str
    group: str
    item: str
    used_as: list[str]
    colour: str | None
    shop: str | None
    shelf: str | None
    width: LengthJson | None
    needed: LengthJson | int | None
    buy: float
    unit: str
    unit_price: str | None
    cost: str | None
    from_stash: list[TakenJson]
    instead: list[list[BoughtJson]]
    notes: list[str]


class PieceJson(TypedDict):
    """A piece as it is cut; ``finished`` is its width and length, as far as the plan tells them.

    Of a part of a circle these are its waist edge and its length from there.
    """

    name: str
    garment: str
    quantity: int
    cut_width: LengthJson
    cut_length: LengthJson
    finished: list[LengthJson | None]
    may_turn: bool
    note: str | None


class PlaceJson(TypedDict):
    """Where a piece lies: its number among the pieces, and its distance from selvedge and end."""

    cut: int
    piece: int
    head_to_tail: int
    layers: int
    half_on_fold: bool
    across: LengthJson
    along: LengthJson
    turned: bool


class RemnantJson(TakenJson):
    """What is cut from a remnant of the stash, and how it lies there."""

    pieces: list[PieceJson]
    places: list[PlaceJson]


class WidthJson(TypedDict):
    """A fabric at one width, with its layout there; ``pieces`` are without those from remnants."""

    width: LengthJson
    usable: LengthJson
    chosen: bool
    buy: float
    unit: str
    cost: str | None
    folded: bool
    waste_share: float
    layout_length: LengthJson
    least_that_any_layout_buys: LengthJson
    style: str
    pieces: list[PieceJson]
    places: list[PlaceJson]
    from_remnants: list[RemnantJson]


class FabricJson(TypedDict):
    """A fabric at all its widths, and why one was chosen."""

    item: str
    key: str
    choice: str
    widths: list[WidthJson]
    cannot_be_used: list[LengthJson]


class VisitJson(TypedDict):
    """A shop that is gone to, and what a visit or delivery costs."""

    shop: str
    charge: str


class SavingJson(TypedDict):
    """A change, and the money that it would save."""

    change: str
    saves: str


class BudgetJson(TypedDict):
    """The list set against what the show may cost; ``left`` is below zero where it is over."""

    goods: str
    charges: str
    tax: str
    contingency: str
    to_spend: str
    spent: str
    ceiling: str | None
    left: str | None
    would_save: list[SavingJson]


class EstimateJson(TypedDict):
    """What to buy for a job, and what led to it. Money is text, so that no coin is lost.

    ``cost`` is that of the goods, and ``total`` is with what the shops charge.
    """

    job: str
    currency: str | None
    cost: str
    total: str
    shops: list[VisitJson]
    budget: BudgetJson | None
    lines_without_price: int
    shopping_list: list[PurchaseJson]
    fabrics: list[FabricJson]
    remarks: list[str]
    advice: list[str]
    assumptions: list[str]
    cautions: list[str]


class WorkingLineJson(TypedDict):
    """One line of a working: why, what is done, and what it gives."""

    label: str
    done: str
    gives: str


class WorkingOfJson(TypedDict):
    """The working of one figure."""

    title: str
    lines: list[WorkingLineJson]
    answer: str


class WorkingJson(TypedDict):
    """The workings of quantities and of cut sizes."""

    what_to_buy: list[WorkingOfJson]
    cut_sizes: list[WorkingOfJson]
