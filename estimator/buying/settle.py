"""From everything bought new to what is bought where: the stash first, then the shops."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from estimator.buying.at_shops import MOST_TRIED, Supply, at_shops
from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.one_width import WidthOption, matching
from estimator.buying.remnants_first import cut_from_stash_first
from estimator.buying.small_things import lines_for
from estimator.buying.stock_first import Lines, with_stock
from estimator.buying.thread import buy_thread
from estimator.buying.types import Need, Purchase
from estimator.faults import Wrong
from estimator.measure import Unit
from estimator.needs.types import FabricTerms, ThreadNeed
from estimator.shops import Shops, Visit
from estimator.stash import Single, Stash

NOT_ALL_TRIED = (
    f"More than {MOST_TRIED} shops sell something of this list: they are weighed by a rule, and "
    "another set of shops may cost less."
)


@dataclass(frozen=True, slots=True)
class Settled:
    """What is bought where, the shops that are gone to, and what the buyer has to know of that."""

    fabrics: tuple[FabricChoice, ...]
    others: tuple[Purchase, ...]
    visits: tuple[Visit, ...]
    remarks: tuple[str, ...]


def settled(
    fabrics: Sequence[FabricChoice],
    others: Sequence[Purchase],
    stash: Stash,
    shops: Shops,
    unit: Unit,
) -> Settled:
    """The fabrics and the other lines as they are bought, and the shops that are gone to.

    Every way to have a thing without the stash, and at each shop, stays a way: so neither the stash
    nor a further shop makes the whole dearer. Complaints are worded in ``unit``.
    """
    store = _Store(stash)
    things: list[tuple[Supply, ...]] = []
    for choice in fabrics:
        item, colour = choice.need.terms.item or _item(choice.need.terms), choice.need.terms.colour
        tried = cut_from_stash_first(choice, store.of(item, colour))
        store.spend(
            one.single for option in tried.options for way in _ways(option) for one in way.stash
        )
        things.append(tuple(_of_fabric(tried)))
    for need, lines in _by_need(others):
        ways = [Supply(lines)]
        if need is not None:
            item = need.terms.item or need.terms.offers[0].item
            singles = store.of(item, need.terms.colour)
            ways += _of_small_thing(need, lines, singles, unit, shops)
            store.spend(taken.single for way in ways for one in way.lines for taken in one.taken)
        things.append(tuple(ways))
    chosen, visits, all_tried = at_shops(things, shops)
    return Settled(
        tuple(way.choice for way in chosen if way.choice is not None),
        tuple(line for way in chosen if way.choice is None for line in way.lines),
        visits,
        () if all_tried or not shops.matter else (NOT_ALL_TRIED,),
    )


class _Store:
    """The stash while it is given out: what is used for one thing is not there for the next."""

    def __init__(self, stash: Stash) -> None:
        self._stash = stash
        self._spent: set[tuple[int, int]] = set()

    def of(self, item: str, colour: str) -> list[Single]:
        found = self._stash.of(item, colour)
        return [one for one in found if (one.row, one.nth) not in self._spent]

    def spend(self, singles: Iterator[Single]) -> None:
        self._spent.update((one.row, one.nth) for one in singles)


def _item(terms: FabricTerms) -> str:
    """What is in no catalog goes by its name in the plan."""
    return terms.offers[0].item


def _ways(option: WidthOption) -> tuple[WidthOption, ...]:
    return (option, *option.elsewhere)


def _of_fabric(choice: FabricChoice) -> Iterator[Supply]:
    """A fabric at each width and shop, the chosen one first; where it sets rings at that width."""
    if choice.need.sets_rings:
        options = [choice.chosen]
    else:
        options = [choice.chosen, *(one for one in choice.options if one is not choice.chosen)]
    good = {id(one) for one in matching([w for o in options for w in _ways(o)], choice.need.terms)}
    for option in options:
        for way in _ways(option):
            if id(way) not in good:
                continue
            beside = [one for one in _ways(option) if one is not way]
            whole = replace(way, elsewhere=tuple(replace(one, elsewhere=()) for one in beside))
            own = tuple(whole if one is option else one for one in choice.options)
            here = replace(choice, options=own, chosen=whole)
            yield Supply((here.purchase,), here)


def _by_need(lines: Sequence[Purchase]) -> Iterator[tuple[Need | None, Lines]]:
    """The lines that were bought for one need together."""
    groups: dict[int, list[Purchase]] = {}
    for line in lines:
        groups.setdefault(id(line) if line.need is None else id(line.need), []).append(line)
    return ((group[0].need, tuple(group)) for group in groups.values())


def _lines_for(need: Need, unit: Unit) -> Lines:
    return buy_thread(need) if isinstance(need, ThreadNeed) else lines_for(need, unit)


def _of_small_thing(
    need: Need, lines: Lines, singles: Sequence[Single], unit: Unit, shops: Shops
) -> Iterator[Supply]:
    """A trim or notion from all shops and, where shops are weighed, from each one alone."""

    def buying(asked: Need) -> Lines:
        return _lines_for(asked, unit)

    if singles:
        yield Supply(with_stock(need, lines, singles, buying))
    names = dict.fromkeys(offer.shop for offer in need.terms.offers)
    for shop in names if shops.matter and len(names) > 1 else ():

        def at_shop(asked: Need, shop: str = shop) -> Lines:
            here = _sold_at(shop, asked)
            return tuple(
                replace(line, alike=lines[0].alike, need=need) for line in _lines_for(here, unit)
            )

        try:
            here = at_shop(need)
        except Wrong:
            continue  # a run is longer than what this shop's cards hold, or no zip of its is right
        if singles:
            # what is on a spool is asked of the offers, which have to be those of the shop
            own = _sold_at(shop, need) if isinstance(need, ThreadNeed) else need
            found = with_stock(own, here, singles, at_shop)
            here = tuple(replace(line, need=need) for line in found)
        yield Supply(here)


def _sold_at(shop: str, need: Need) -> Need:
    """A need that only this shop is asked for."""
    own = tuple(offer for offer in need.terms.offers if offer.shop == shop)
    return replace(need, terms=replace(need.terms, offers=own))
