"""The plans and the shops that travel with the program, for the tests of both."""

from __future__ import annotations

from pathlib import Path

from estimator import Estimate, Length, Plan, read_plan
from estimator.buying.types import Purchase
from estimator.written import length

ROOT = Path(__file__).resolve().parent.parent
SHOPS = ROOT / "catalog_demo"
DEMOS = [
    SHOPS / f"{name}.toml"
    for name in ("market_dress", "herald_tabard", "night_cloak", "goose_girl")
]
STARTERS = sorted((ROOT / "templates").glob("*.toml"))
SHOWS = sorted(SHOPS.glob("*.show.toml"))
ALL = [*sorted(set(SHOPS.glob("*.toml")) - set(SHOWS)), *STARTERS]


def stem(path: Path) -> str:
    return path.stem


def sound(path: Path) -> Plan:
    return read_plan(path)


def plan_of(found: Estimate) -> Plan:
    return found.job.garments[0].plan


def cut(found: Estimate, fabric: str, piece: str) -> tuple[Length, Length]:
    """The cut width and length of a piece from the fabric of that name in the plan."""
    (choice,) = (one for one in found.fabrics if fabric in one.need.names)
    (of_name,) = (one for one in choice.chosen.pieces if one.name == piece)
    return of_name.width.value, of_name.length.value


def line(found: Estimate, name: str) -> Purchase:
    (of_name,) = (one for one in found.purchases if name in one.names)
    return of_name


def by(wide: str, long: str) -> tuple[Length, Length]:
    return length(wide), length(long)
