"""The layout engine: rectangles on cloth of a given width, in rows a person can cut, with a proof.

It works on whole ticks and imports nothing of the rest of the program, so that it can be used and
measured alone:

    cloth = Cloth(width=44 * 203_200, buys=lambda length: -(-length // 914_400))
    layout = lay_out(cloth, [Blank("panel", 4_000_000, 5_300_000, quantity=4)])
    layout.placements, layout.length, layout.bound
"""

from estimator.layout.across import next_repeat
from estimator.layout.answer import Column, Layout, Placement, Row, Style
from estimator.layout.choose import lay_out, least_length_of
from estimator.layout.effort import EVERYDAY, THOROUGH, Effort
from estimator.layout.fullest import fullest
from estimator.layout.in_cuts import Cuts, lay_out_in_cuts, renamed
from estimator.layout.question import Blank, Cloth, DoesNotFit, Held, OffTheRepeat

__all__ = [
    "EVERYDAY",
    "THOROUGH",
    "Blank",
    "Cloth",
    "Column",
    "Cuts",
    "DoesNotFit",
    "Effort",
    "Held",
    "Layout",
    "OffTheRepeat",
    "Placement",
    "Row",
    "Style",
    "fullest",
    "lay_out",
    "lay_out_in_cuts",
    "least_length_of",
    "next_repeat",
    "renamed",
]
