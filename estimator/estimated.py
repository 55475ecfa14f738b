"""What an estimate is: the fabrics, the list, and what has to be said of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.buying.fabric_widths import FabricChoice
from estimator.buying.types import Purchase, total_cost, with_own_keys
from estimator.job import Job
from estimator.needs.types import Group
from estimator.shops import Visit

CUT_FROM = (Group.FABRICS, Group.LININGS)
"""What is cut from fabric laid out at a width; all else is bought by length or count."""


@dataclass(frozen=True, slots=True)
class Saved:
    """What planning several garments together saves on one thing, against garment by garment.

    ``alike`` is that of its purchases. ``units`` are yards, metres or put-ups; None where the ways
    buy in different ones. ``money`` is None without prices.
    """

    alike: object
    title: str
    colour: str
    unit: str
    units: Fraction | None
    money: Decimal | None


@dataclass(frozen=True)
class Estimate:
    """What to buy for a job, and everything that led to it.

    ``bought_new`` is the same before the stash was used and the shops were weighed, if they were.
    """

    job: Job
    currency: str
    fabrics: tuple[FabricChoice, ...]
    purchases: tuple[Purchase, ...]
    remarks: tuple[str, ...]
    granted: tuple[str, ...]
    cautions: tuple[str, ...]
    advice: tuple[str, ...]
    saved: tuple[Saved, ...] = ()
    visits: tuple[Visit, ...] = ()
    bought_new: Estimate | None = None

    @property
    def charges(self) -> Decimal:
        """What the shops take for a visit or a delivery."""
        return sum((one.charge for one in self.visits), Decimal(0))

    @property
    def total(self) -> Decimal:
        """What is paid: goods that have a price, and charges."""
        return self.cost + self.charges

    @property
    def cost(self) -> Decimal:
        """The sum of what has a price."""
        return total_cost(self.purchases)

    @property
    def unpriced(self) -> int:
        """How many lines of the list have no price."""
        return sum(1 for one in self.purchases if one.buy.cost is None)


def listed(fabrics: Sequence[FabricChoice], others: Sequence[Purchase]) -> tuple[Purchase, ...]:
    """The shopping list in the order in which a shop is walked."""
    rest = [one for one in others if one.group not in CUT_FROM]
    lines = [*(choice.purchase for choice in fabrics), *rest]
    order = {group: number for number, group in enumerate(Group)}
    return with_own_keys(sorted(lines, key=lambda one: order[one.group]))


def bill_of_what_hangs_on_widths(one: Estimate) -> tuple[int, Decimal, int]:
    """Least money for all that hangs on widths; where its prices lack, least fabric."""
    hanging = [line for line in one.purchases if line.group is not Group.NOTIONS]
    fabric = sum(choice.chosen.needed.ticks for choice in one.fabrics)
    if any(line.buy.cost is None for line in hanging):
        return 1, Decimal(0), fabric
    return 0, total_cost(hanging), fabric


def bill_with_charges(one: Estimate) -> tuple[int, int, Decimal, int]:
    """Least money for the whole list and the shops visited; the fewest shops where asked for."""
    shops = len(one.visits) if one.job.shops.fewest else 0
    fabric = sum(choice.chosen.needed.ticks for choice in one.fabrics)
    return one.unpriced, shops, one.total, fabric
