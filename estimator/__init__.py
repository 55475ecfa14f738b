"""Works out what fabric, trim and notions to buy for a garment.

from estimator import estimate, read_catalog, read_plan

draft = read_plan(Path("skirt.toml"))
for line in estimate(draft.plan, read_catalog(Path("shop"))).purchases:
    print(line.title, line.buy.sold_units, line.buy.unit, line.buy.cost)
"""

from estimator.catalog import Catalog
from estimator.estimate import Estimate, estimate
from estimator.faults import Fault, Refused
from estimator.job import GarmentOrder, Job
from estimator.measure import Length
from estimator.plan import Plan
from estimator.readers.catalog_csv import read_catalog
from estimator.readers.plan_toml import read_plan

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
    "read_catalog",
    "read_plan",
]
