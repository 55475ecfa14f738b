"""Capes cut as parts of a circle, and the pieces that they are cut from."""

from __future__ import annotations

from estimator import Estimate, estimate
from estimator.needs.cut_piece import CutPiece
from tests.plans import plan


def cape(width: str, waist: str, long: str, share: str, more: str = "", of_fabric: str = "") -> str:
    return f"""
[garment]
name = "cape"
[[fabric]]
name = "wool"
widths = [{width}]
selvedge = "0"
{of_fabric}
[[piece]]
name = "cape"
cut = "wool"
shape = "sector"
waist = "{waist}"
length = "{long}"
share = "{share}"
edges.bottom = "raw"
{more}
"""


def cut(text: str) -> Estimate:
    return estimate(plan(text))


def pieces(text: str) -> tuple[CutPiece, ...]:
    return cut(text).fabrics[0].chosen.pieces
