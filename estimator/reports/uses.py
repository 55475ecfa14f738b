"""What a thing is for, in words: its names in the plan, and of which garment where needed."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.types import Purchase
from estimator.estimated import Estimate
from estimator.working import Source

MOST_NAMED = 4


def several_garments(estimate: Estimate) -> bool:
    """Whether a use has to name its garment as well."""
    return len(estimate.job.garments) > 1


def named(names: Sequence[str]) -> str:
    """Names one after the other; of many only the first, and how many more there are."""
    more = len(names) - MOST_NAMED
    text = ", ".join(names[:MOST_NAMED])
    return f"{text} and {more} more" if more > 0 else text


def use_of(purchase: Purchase, estimate: Estimate) -> str:
    """What a line of the list is for; nothing where its own title says all of it."""
    if several_garments(estimate):
        return _with_garments(purchase.sources, purchase.title)
    return named([name for name in purchase.names if name != purchase.title])


def fabric_title(choice: FabricChoice, estimate: Estimate) -> str:
    """The fabric's title; with its use where the title alone would not tell it from another."""
    need = choice.need
    if several_garments(estimate):
        return f"{need.title} for {_with_garments(need.sources, need.title)}"
    if sum(one.need.title == need.title for one in estimate.fabrics) > 1:
        return f"{need.title} for {named(need.names)}"
    return need.title


def _with_garments(sources: Sequence[Source], thing: str) -> str:
    """``Harbour dress: main, braid, Night cloak (Ada, Bo): lining``: garments before their names.

    A garment that is made for several wearers is told once, with as many of them as are named. A
    name that is that of the ``thing`` itself is not said again.
    """
    wearers: dict[tuple[str, str], dict[str, None]] = {}
    for source in sources:
        wearers.setdefault((source.garment, source.name), {})[source.wearer] = None
    found = []
    before = None
    for (garment, name), who in wearers.items():
        people = named([one for one in who if one])
        title = f"{garment} ({people})" if people else garment
        if name == thing:
            found.append(title)
            continue
        found.append(name if title == before else f"{title}: {name}")
        before = title
    return named(found)
