"""A tier of two whole widths, with lace round it: the width of its fabric sets its ring."""

from __future__ import annotations

TIER = """
[garment]
name = "tier"
currency = "USD"
straightening = "0"
selvedge = "0"
[[fabric]]
name = "voile"
widths = [{widths}]
[[piece]]
name = "tier"
cut = "voile"
made = "joined strip"
length = "10"
widths = 2
[[trim]]
name = "lace"
along = "tier: bottom"
price = "{lace} per yd"
"""
BOTH = '{ width = "45 in", price = "5 per yd" }, { width = "60 in", price = "5 per yd" }'


def tier(widths: str = BOTH, lace: str = "1", more: str = "") -> str:
    return TIER.replace("{widths}", widths).replace("{lace}", lace) + more
