"""On what terms each thing may be had: its offers from the catalog, or from the plan itself."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, TypeVar

from pydantic import ValidationError

from estimator.catalog import Item, Kind, Offer
from estimator.faults import NamesAnUnread, Wrong, nearest
from estimator.job import GarmentOrder, Job
from estimator.measure import ZERO, Length, Unit, natural_text
from estimator.needs.currencies import currency_in_use
from estimator.needs.types import BuyingTerms, FabricTerms
from estimator.plan import (
    Boning,
    Bought,
    ByLength,
    Elastic,
    Fabric,
    Lacing,
    Loops,
    Notion,
    Sold,
    Thread,
    Trim,
    Width,
)
from estimator.prices import Price
from estimator.put_up import BY_THE_LENGTH, EACH, PutUp
from estimator.quoting import quoted
from estimator.rules import house_rules

T = TypeVar("T")

_KINDS = {
    Trim: {Kind.TRIM, Kind.ELASTIC},
    Elastic: {Kind.ELASTIC},
    Notion: {Kind.NOTION, Kind.ZIP, Kind.SEPARATING_ZIP, Kind.THREAD},
    Thread: {Kind.THREAD},
    Lacing: {Kind.TRIM},
    Boning: {Kind.TRIM, Kind.NOTION},
    Loops: {Kind.TRIM},
}


def item_for(buy: str, kinds: set[Kind], job: Job) -> Item:
    """The item that a plan buys; raises Wrong where there is none, or it is of another kind."""
    items = job.catalog.items
    if not items:
        raise Wrong(
            f"it buys {quoted(buy)}, an item of a catalog, and no catalog is given",
            "name the catalog's folder with --catalog",
            ("buy",),
        )
    if buy not in items:
        alike = [name for name, item in items.items() if item.kind in kinds]
        raise Wrong(f"the catalog has no item {quoted(buy)}", nearest(buy, alike), ("buy",))
    if items[buy].kind not in kinds:
        wanted = " or ".join(sorted(kind.value for kind in kinds))
        raise Wrong(
            f"{quoted(buy)} is a {items[buy].kind.value} in the catalog",
            f"buy an item of the kind {wanted} here",
            ("buy",),
        )
    if not job.catalog.offers.get(buy):
        raise Wrong(f"no shop offers {quoted(buy)}", "add a row for it to the offers", ("buy",))
    return items[buy]


def notes_on(item: Item | None, note: str) -> tuple[str, ...]:
    """What the catalog says of an item, and the plan of its use."""
    return tuple(filter(None, (item.fibres, item.notes, note) if item else (note,)))


def fabric_terms(fabric: Fabric, order: GarmentOrder, job: Job) -> FabricTerms:
    """The terms of a fabric; what the plan states overrides the catalog. Raises Wrong."""
    rules = order.plan.garment.rules
    item = item_for(fabric.buy, {Kind.FABRIC}, job) if fabric.buy else None
    offers = _offers_of_item(fabric, item, job) if item else _offers_in_plan(fabric, order, job)
    _check_width(fabric, offers)
    shop_rules = house_rules(offers[0].sold_by)
    stated = order.plan.garment
    return FabricTerms(
        item=item.item if item else "",
        colour=fabric.colour or (item.colour if item else ""),
        offers=offers,
        fixed_width=fabric.width,
        usable=fabric.usable,
        selvedge=_first(
            fabric.selvedge if fabric.selvedge is not None else stated.selvedge,
            item.selvedge if item else None,
            shop_rules.selvedge,
        ),
        nap=_first(fabric.nap, item.nap if item else None, False),
        one_dye_lot=fabric.one_dye_lot,
        repeat=_first(fabric.repeat, item.repeat if item else None, ZERO) or None,
        repeat_across=_first(fabric.repeat_across, item.repeat_across if item else None, ZERO)
        or None,
        shrinkage=_first(fabric.shrinkage, item.shrinkage_length if item else None, Fraction(0)),
        shrinkage_across=_first(
            fabric.shrinkage_across, item.shrinkage_width if item else None, Fraction(0)
        ),
        straightening=_first(fabric.straightening, stated.straightening, shop_rules.straightening),
        waste=_first(fabric.waste, None, rules.fabric_waste),
        rows_only=(fabric.layout or stated.layout) == "straight rows",
        folded=(fabric.laid or stated.laid) == "folded",
        thorough=job.thorough,
    )


def _first(in_plan: T | None, in_catalog: T | None, default: T) -> T:
    if in_plan is not None:
        return in_plan
    return default if in_catalog is None else in_catalog


def _offers_of_item(fabric: Fabric, item: Item, job: Job) -> tuple[Offer, ...]:
    _refuse_own_offers(fabric, ("widths", "price", "step", "minimum"))
    offers = job.catalog.offers[item.item]
    if any(offer.width is None or not offer.put_up.cut_to_length for offer in offers):
        raise Wrong(
            f"an offer of {quoted(item.item)} is not a width cut to length",
            "fill in its width, and leave its put_up empty",
            ("buy",),
        )
    if fabric.bolt is not None:
        return tuple(offer.model_copy(update={"bolt": fabric.bolt}) for offer in offers)
    return offers


def _refuse_own_offers(entry: Fabric | Bought, keys: tuple[str, ...]) -> None:
    """What is bought from a catalog is priced there, and not in the plan as well."""
    for key in keys:
        if getattr(entry, key, None):
            raise Wrong(
                f"it buys {quoted(entry.buy)} from the catalog and states {key} as well",
                f"leave out buy, or {key}",
                (key,),
            )


def _offers_in_plan(fabric: Fabric, order: GarmentOrder, job: Job) -> tuple[Offer, ...]:
    widths = fabric.widths or ((Width(width=fabric.width),) if fabric.width else ())
    if not widths:
        raise Wrong(
            f"nothing says at which widths {quoted(fabric.name)} may be had",
            'add buy = "..." for an item of a catalog, or widths = ["45 in", "60 in"]',
        )
    currency = currency_in_use(order, job)
    unit = order.tape if fabric.step is None else order.plan.garment.unit
    return tuple(
        _offer(
            item=fabric.name,
            width=one.width,
            usable=one.usable,
            bolt=one.bolt or fabric.bolt,
            step=fabric.step,
            minimum=fabric.minimum,
            **_priced(one.price or fabric.price, BY_THE_LENGTH, unit, currency),
        )
        for one in widths
    )


def _offer(**values: Any) -> Offer:
    """An offer made in a plan; what the offer's own checks refuse is complained of as Wrong."""
    try:
        return Offer(**values)
    except ValidationError as error:
        context = error.errors()[0].get("ctx", {})
        raise Wrong(context.get("wrong", str(error)), context.get("right", "")) from None


def _priced(price: Price | None, put_up: PutUp, unit: Unit, currency: str) -> dict[str, Any]:
    """The price of an offer made in a plan; raises Wrong for a price that does not suit it.

    Of one without a currency its garment is complained of.
    """
    if price is None:
        return {"per": unit.shop if put_up.cut_to_length else None}
    if put_up.cut_to_length and price.per is None:
        raise Wrong(
            "what is cut to length is priced by its length", 'write "8.50 per yd"', ("price",)
        )
    if not put_up.cut_to_length and price.per is not None:
        raise Wrong(f"a {put_up.word} is priced each", 'write "2.40 each"', ("price",))
    if not currency:
        raise NamesAnUnread("currency")
    return {"price": price.amount, "per": price.per, "currency": currency}


def _check_width(fabric: Fabric, offers: tuple[Offer, ...]) -> None:
    narrowest = min(offer.width for offer in offers if offer.width)
    if fabric.usable is not None and fabric.usable > (fabric.width or narrowest):
        unit = offers[0].sold_by
        raise Wrong(
            f"{natural_text(fabric.usable, unit)} cannot be used of "
            f"{natural_text(fabric.width or narrowest, unit)}",
            'state usable beside each width, as in { width = "60 in", usable = "58 in" }',
            ("usable",),
        )
    if fabric.width is None or any(offer.width == fabric.width for offer in offers):
        return
    unit = offers[0].sold_by.tape
    on_offer = sorted({offer.width for offer in offers if offer.width})
    raise Wrong(
        f"{quoted(fabric.name)} is not on offer {natural_text(fabric.width, unit)} wide",
        "the widths are " + ", ".join(natural_text(width, unit) for width in on_offer),
        ("width",),
    )


def allowed_offers(terms: FabricTerms) -> tuple[Offer, ...]:
    """The offers at the widths that may be bought: all, or those of the width that is fixed."""
    return tuple(one for one in terms.offers if terms.fixed_width in (None, one.width))


def usable_width(terms: FabricTerms, offer: Offer) -> Length:
    """What can be cut from: nominal less two selvedges, or as stated; narrowed by shrinkage."""
    assert offer.width is not None, "an offer of a fabric has a width"
    usable = terms.usable or offer.usable or offer.width - terms.selvedge * 2
    return usable.times_rounded_down(1 - terms.shrinkage_across)


def buying_terms(bought: Bought, order: GarmentOrder, job: Job) -> BuyingTerms:
    """The terms of a trim, elastic or notion; raises Wrong."""
    kinds = _KINDS[type(bought)]
    item = item_for(bought.buy, kinds, job) if bought.buy else None
    if item:
        _refuse_own_offers(bought, ("sold", "price", "step", "minimum"))
        offers = job.catalog.offers[item.item]
    else:
        offers = _own_offers(bought, order, job)
    waste = shrinkage = Fraction(0)
    if isinstance(bought, ByLength):
        offers = _of_one_width(bought, offers)
        if not isinstance(bought, Boning):  # bones are counted by their length
            offers = tuple(map(_as_lengths, offers))
        waste = _first(bought.waste, None, order.plan.garment.rules.trim_waste)
        shrinkage = _first(bought.shrinkage, item.shrinkage_length if item else None, Fraction(0))
    return BuyingTerms(
        item=item.item if item else "",
        kind=item.kind if item else _kind_of(bought),
        colour=bought.colour or (item.colour if item else ""),
        offers=offers,
        waste=waste,
        shrinkage=shrinkage,
    )


def _kind_of(bought: Bought) -> Kind:
    if isinstance(bought, Notion):
        return bought.kind or (Kind.ZIP if bought.length else Kind.NOTION)
    if isinstance(bought, Thread):
        return Kind.THREAD
    return Kind.ELASTIC if isinstance(bought, Elastic) else Kind.TRIM


def _own_offers(bought: Bought, order: GarmentOrder, job: Job) -> tuple[Offer, ...]:
    """The offers that a plan makes itself: its ``sold`` tables, or one by the length or each."""
    currency, unit = currency_in_use(order, job), order.plan.garment.unit
    if isinstance(bought, ByLength) and bought.step is None:
        unit = order.tape
    usual = BY_THE_LENGTH if isinstance(bought, ByLength) else EACH
    offers = []
    for one in bought.sold or (Sold(),):
        put_up = one.put_up or usual
        cut: dict[str, Any] = {}
        if isinstance(bought, ByLength) and put_up.cut_to_length:
            cut = {"step": bought.step, "minimum": bought.minimum}
        cut |= _priced(one.price or bought.price, put_up, unit, currency)
        offers.append(_offer(item=bought.name, length=one.length, put_up=put_up, **cut))
    return tuple(offers)


def _as_lengths(offer: Offer) -> Offer:
    """A trim that is sold each in a length, as what holds that length."""
    if offer.length is None or not isinstance(offer.put_up.holds, int):
        return offer
    return offer.model_copy(update={"put_up": offer.put_up.of_lengths(offer.length)})


def _of_one_width(bought: ByLength, offers: tuple[Offer, ...]) -> tuple[Offer, ...]:
    """The offers at the width that the plan names; raises Wrong where it must name one."""
    widths = sorted({offer.width for offer in offers if offer.width})
    names = ", ".join(natural_text(width, Unit.IN) for width in widths)
    if bought.width is not None and widths:
        offers = tuple(offer for offer in offers if offer.width == bought.width)
        if not offers:
            raise Wrong(
                f"{quoted(bought.name)} is not on offer {natural_text(bought.width, Unit.IN)} wide",
                f"the widths are {names}",
                ("width",),
            )
    elif len(widths) > 1:
        raise Wrong(f"{quoted(bought.buy)} is sold in several widths", f"add width, one of {names}")
    return offers
