"""What a visit to each shop costs, and whether to spend least or to go to the fewest shops."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal


@dataclass(frozen=True)
class Shops:
    """``charges`` by the shop's name, for a visit or a delivery; one that is not named is free.

    ``fewest`` asks for as few shops as can be, and the least total among those.
    """

    charges: Mapping[str, Decimal] = field(default_factory=dict)
    fewest: bool = False

    @property
    def matter(self) -> bool:
        """Whether anything is to be weighed against the prices of the goods."""
        return self.fewest or any(self.charges.values())


ANY_SHOPS = Shops()


@dataclass(frozen=True, slots=True)
class Visit:
    """A shop at which something is bought, and what going there costs."""

    shop: str
    charge: Decimal
