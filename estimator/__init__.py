"""Works out what fabric, trim and notions to buy for a garment.

    from estimator import estimate_files

    for line in estimate_files(["skirt.toml"], catalog="shop").purchases:
        print(line.title, line.buy.sold_units, line.buy.unit, line.buy.cost)

Names are imported when they are first used, so that ``estimator --help`` answers at once.
"""

from __future__ import annotations

import sys
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from estimator.catalog import Catalog
    from estimator.estimate import estimate
    from estimator.estimated import Estimate
    from estimator.faults import Fault, Refused
    from estimator.files import estimate_files
    from estimator.job import GarmentOrder, Job
    from estimator.measure import Length
    from estimator.plan import Plan
    from estimator.readers.catalogs import read_catalog
    from estimator.readers.plans import read_plan

__all__ = [
    "Catalog",
    "Estimate",
    "Fault",
    "GarmentOrder",
    "Job",
    "Length",
    "Plan",
    "Refused",
    "estimate",
    "estimate_files",
    "read_catalog",
    "read_plan",
]

_HOMES = {
    "Catalog": "catalog",
    "Estimate": "estimated",
    "Fault": "faults",
    "Refused": "faults",
    "estimate_files": "files",
    "GarmentOrder": "job",
    "Job": "job",
    "Length": "measure",
    "Plan": "plan",
    "read_catalog": "readers.catalogs",
    "read_plan": "readers.plans",
}


class _Face(ModuleType):
    """The package, with the function ``estimate`` where Python would put the module of its name."""

    @property
    def estimate(self) -> Any:
        return import_module("estimator.estimate").estimate

    @estimate.setter
    def estimate(self, module: ModuleType) -> None:
        """The import system announces the module here; the name stays the function's."""


sys.modules[__name__].__class__ = _Face


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module 'estimator' has no attribute '{name}'")
    return getattr(import_module(f"estimator.{_HOMES[name]}"), name)


def __dir__() -> list[str]:
    return __all__
