"""Two sleeves and six gores, for tests of what is sewn onto them or runs along them."""

from __future__ import annotations

SLEEVES = """
[[piece]]
name = "sleeve"
quantity = 2
cut = "print"
width = "14 1/2"
length = "21"
"""
GORES = """
[[piece]]
name = "gore"
quantity = 6
cut = "print"
width = "9"
length = "30 1/4"
[[seam]]
name = "side"
edges = ["gore: left", "gore: right"]
"""
