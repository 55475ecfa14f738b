"""A dress with a fabric, an interfacing, a trim, an elastic and a notion, for tests of papers."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from estimator.bill import Funds

DRESS = """
[garment]
name = "harbour dress"
currency = "USD"
[[fabric]]
name = "lawn"
colour = "sea green"
widths = [{ width = "44 in", price = "8.49 per yd" }]
[[fabric]]
name = "fusible"
role = "interfacing"
widths = ["90 cm"]
[[piece]]
name = "panel"
quantity = 3
cut = ["lawn"]
width = "19 1/4"
length = "31"
[[piece]]
name = "band"
cut = ["lawn", { fabric = "fusible", cut_to = "finished size" }]
made = "folded band"
width = "2"
length = "29 1/2"
[[trim]]
name = "braid"
along = "panel: bottom"
price = "1.13 per yd"
[[elastic]]
name = "cuff elastic"
measure = "8"
quantity = 2
price = "0.55 per yd"
[[notion]]
name = "button"
quantity = 7
sold = [{ put_up = "pack of 3", price = "2.35 each" }]
"""
NOTED = DRESS.replace('currency = "USD"', 'currency = "USD"\nnote = "=Wash it first"')
"""The dress with a note that looks like a formula."""
FUNDS = Funds(Decimal(90), Fraction(33, 400), Fraction(1, 10))
