"""Lengths that a shop cuts from the roll: shrinkage, waste, minimum, selling step, price breaks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from fractions import Fraction
from math import ceil

from estimator.buying.types import Buy
from estimator.catalog import Offer
from estimator.measure import ZERO, Length, Unit, shop_text
from estimator.needs.types import BuyingTerms, FabricTerms
from estimator.working import SHRINKS, Reckoning, in_all

CUT_ENDS = 2


def with_waste(length: Reckoning, terms: FabricTerms | BuyingTerms) -> Reckoning:
    """With the waste allowance, which comes last before the shop's own rounding."""
    return length.times("waste allowance", 1 + terms.waste)


def washed_repeat(terms: FabricTerms) -> Length:
    """The lengthwise repeat as it is when the fabric is cut; nothing where none is matched."""
    return terms.repeat.times(1 - terms.shrinkage) if terms.repeat else ZERO


def fabric_needed(
    layout_length: Length, terms: FabricTerms, cuts: int = 1, further: int = 0
) -> Reckoning:
    """The length of fabric that a layout of this length needs, with all cut ends straightened.

    The first cut of a matched print may begin anywhere, and sets where the pieces start; each of so
    many ``further`` ones is trimmed to the same place of the repeat, which takes up to one repeat.
    Shrinkage divides: to have 60 in after washing at 5 %, 60 / 0.95 is needed.
    """
    length = Reckoning.start("length of the cutting layout", layout_length)
    length = length.plus("trimmed to begin on the repeat", washed_repeat(terms) * further)
    ends = CUT_ENDS * cuts
    label = "straightening, two cut ends" if cuts == 1 else f"straightening, {ends} cut ends"
    length = length.plus(label, terms.straightening * ends)
    return with_waste(length.divided_by(SHRINKS, 1 - terms.shrinkage), terms)


def cuts_needed(lengths: Sequence[int], terms: FabricTerms) -> list[Reckoning]:
    """What each cut needs, from the lengths of their layouts in ticks."""
    return [
        fabric_needed(Length(length), terms, further=int(number > 0))
        for number, length in enumerate(lengths)
    ]


HUNDREDTH, SIXTEENTH = Fraction(1, 100), Fraction(1, 16)


def as_sold(needed: Reckoning, offer: Offer) -> Reckoning:
    """Up to the shop's minimum cut, then up to its selling step."""
    if offer.minimum is not None:
        needed = needed.at_least("the shop's minimum cut", offer.minimum)
    return _sayable(needed.sold_by("as the shop sells it", offer.selling_step), offer)


def steps_sold(terms: FabricTerms, offer: Offer) -> Callable[[int], int]:
    """How many selling steps a layout of so many ticks buys: all it knows of the shop.

    The arithmetic of ``fabric_needed`` and ``as_sold`` in whole numbers and without its working,
    because a search asks for it thousands of times.
    """
    grown = (1 + terms.waste) / (1 - terms.shrinkage)
    ends = terms.straightening.ticks * CUT_ENDS
    least = offer.minimum.ticks * grown.denominator if offer.minimum is not None else 0
    step = offer.selling_step.ticks * grown.denominator

    def steps(ticks: int) -> int:
        return -(-max((ticks + ends) * grown.numerator, least) // step)

    return steps


def steps_sold_of(terms: BuyingTerms, offer: Offer) -> Callable[[Fraction], int]:
    """How many selling steps so many ticks of trim buy, its waste included, as ``cut_from_roll``.

    It keeps no working, because a search asks for it thousands of times.
    """
    step = offer.selling_step.ticks
    least = offer.minimum.ticks if offer.minimum is not None else 0
    if isinstance(offer.from_quantity, Length):
        least = max(least, offer.from_quantity.ticks)
    grown = 1 + terms.waste

    def steps(ticks: Fraction) -> int:
        return ceil(max(ticks * grown, Fraction(least)) / step)

    return steps


def longest_layout(terms: FabricTerms, offer: Offer) -> int | None:
    """The longest layout, in ticks, that one bolt takes; None where bolts have no stated length.

    Below zero for a bolt that its straightened ends take up.
    """
    if offer.bolt is None:
        return None
    grown = (1 + terms.waste) / (1 - terms.shrinkage)
    sold = offer.bolt.ticks // offer.selling_step.ticks * offer.selling_step.ticks
    return int(sold / grown) - terms.straightening.ticks * CUT_ENDS


def _sayable(sold: Reckoning, offer: Offer) -> Reckoning:
    """Up to what a list can state: sixteenths or hundredths of a yard, hundredths of a metre.

    It only raises where a step in one system is sold by the other's unit; what is paid for is what
    stands on the list.
    """
    unit = offer.sold_by
    parts = (HUNDREDTH,) if unit.metric else (SIXTEENTH, HUNDREDTH)
    if any((sold.exact / (unit.length.ticks * part)).denominator == 1 for part in parts):
        return sold
    return sold.sold_by("as the list can state it", unit.of(HUNDREDTH))


def cut_from_roll(needed: Sequence[Reckoning], offer: Offer) -> Buy:
    """Buys the lengths of one or several cuts on an offer, each raised as the shop sells it.

    Where the price is from a quantity, at least that quantity.
    """
    cuts = [as_sold(one, offer) for one in needed]
    sold = in_all("all cuts together", _told_once(cuts))
    unit = offer.sold_by
    note = f"cut in {_listed([cut.value for cut in cuts], unit)}" if len(cuts) > 1 else ""
    least = offer.from_quantity
    if not isinstance(least, Length) or sold.value >= least:
        return Buy(offer, sold.value, sold.steps, note)
    more = sold.at_least("the quantity from which this price holds", least)
    more = _sayable(more.sold_by("as the shop sells it", offer.selling_step), offer)
    why = break_note(shop_text(least, unit))
    return Buy(offer, more.value, more.steps, "; ".join(filter(None, (note, why))))


MOST_LISTED = 4
"""Of more cuts than this, those of one length are counted."""


def _listed(lengths: Sequence[Length], unit: Unit) -> str:
    """``2 yd, 2 yd and 3/8 yd``, or of many cuts ``60 lengths, 59 of 53 1/4 yd and 1 of 3 yd``."""
    texts = [shop_text(length, unit) for length in lengths]
    if len(texts) <= MOST_LISTED:
        return _in_words(texts)
    counted = Counter(texts)
    return f"{len(texts)} lengths, {_in_words([f'{n} of {text}' for text, n in counted.items()])}"


def _in_words(texts: Sequence[str]) -> str:
    """``a, b and c``."""
    *before, last = texts
    return f"{', '.join(before)} and {last}" if before else last


def _told_once(cuts: Sequence[Reckoning]) -> list[Reckoning]:
    """Each cut with its number in its working; those that are alike worked once, with how many."""
    if len(cuts) == 1:
        return list(cuts)
    alike: dict[Reckoning, list[int]] = {}
    for number, cut in enumerate(cuts, start=1):
        alike.setdefault(cut, []).append(number)
    return [
        cut.named(f"{cut.steps[0].label}, {_numbers(numbers)}").times("cuts alike", len(numbers))
        for cut, numbers in alike.items()
    ]


def _numbers(numbers: Sequence[int]) -> str:
    """``cut 3``, ``cuts 1, 2 and 5`` or ``cuts 1 to 59``."""
    if len(numbers) == 1:
        return f"cut {numbers[0]}"
    first, last = numbers[0], numbers[-1]
    if len(numbers) == last - first + 1 > 2:
        return f"cuts {first} to {last}"
    if len(numbers) > MOST_LISTED:
        return f"{len(numbers)} of the cuts, {first} the first"
    return f"cuts {_in_words([str(number) for number in numbers])}"


def break_note(least: str) -> str:
    """Tells the buyer why more is bought than is needed."""
    return f"this much, because the lower price holds from {least}"
