"""The outline of a part of a circle: its area, against points counted on a fine grid."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import numpy as np
import pytest

from estimator import estimate
from estimator.measure import INCH
from estimator.needs.arc import Arc
from estimator.written import length
from tests.plans import plan

RAW_QUARTER = """
[garment]
name = "Cape"
unit = "in"
[[fabric]]
name = "velvet"
widths = ["26 in"]
selvedge = "0"
straightening = "0"
[[piece]]
name = "quarter"
cut = "velvet"
shape = "sector"
share = "1/4"
waist = "9"
length = "20"
edges = { top = "raw", bottom = "raw", left = "raw", right = "raw" }
"""


def counted(arc: Arc) -> float:
    """Square inches by the points of a grid that lie on the cloth, as it is chalked."""
    outer = arc.outer / INCH
    x, y = np.meshgrid(*[np.linspace(-float(outer) - 2, float(outer) + 2, 3001)] * 2)
    radius = np.hypot(x, y)
    beside, below = x >= -float(arc.across / INCH), y >= -float(arc.along / INCH)
    on = {1: beside & below, 2: below, 3: beside | below, 4: beside | ~beside}[int(arc.share * 4)]
    on &= (radius <= float(outer)) & (radius >= float(arc.inner / INCH))
    return float(on.sum() * (x[0, 1] - x[0, 0]) ** 2)


@pytest.mark.parametrize(
    ("quarters", "inner"),
    [(1, "5 1/8"), (2, "5 1/8"), (3, "5 1/8"), (4, "5 1/8"), (1, "0"), (2, "0"), (4, "0")],
)
def test_the_area_of_a_part_of_a_circle_is_that_of_its_outline(quarters: int, inner: str) -> None:
    seam = length("5/8 in")
    arc = Arc(Fraction(quarters, 4), length(f"{inner} in"), length("26 in"), seam, seam)
    assert arc.area / INCH.ticks**2 == pytest.approx(counted(arc), rel=0.003)


def test_the_waste_beside_a_quarter_of_a_circle_is_told_by_its_arc_and_not_by_its_box() -> None:
    # radii 9 x 4 / (2 pi) = 5.73 and 25.73: 1/4 x pi x (25.73^2 - 5.73^2) = 494.1 square inches
    (choice,) = estimate(plan(RAW_QUARTER)).fabrics
    inner = 9 * 4 / (2 * pi)
    cut = pi / 4 * ((inner + 20) ** 2 - inner**2)
    bought = float(choice.chosen.buy.bought / INCH)
    assert float(choice.chosen.waste) == pytest.approx(1 - cut / (26 * bought), abs=0.003)
