"""Fibres and the care that each can stand: common practice, irons as the dots of ISO 3758."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum


class Wash(Enum):
    """How a thing may be cleaned, the gentlest first; the words that a plan and a list use."""

    DRY_CLEAN = "dry clean"
    HAND = "hand wash"
    COOL = "wash at 30 °C"
    WARM = "wash at 40 °C"
    HOT = "wash at 60 °C"


GENTLEST_FIRST = tuple(Wash)

COOL_IRON, WARM_IRON, HOT_IRON, NO_IRON = 110, 150, 200, 0
"""In °C: one, two and three dots, and not to be ironed."""
FUSES_AT = 150
"""What fusible interfacing takes to bond, in °C (common practice; its own leaflet says)."""


@dataclass(frozen=True, slots=True)
class Care:
    """What one fibre stands: washing, the hottest iron in °C (0 for none), and a tumble dryer."""

    wash: Wash
    iron: int
    tumble: bool


_CELLULOSE = Care(Wash.HOT, HOT_IRON, tumble=True)
_HAIR = Care(Wash.HAND, WARM_IRON, tumble=False)
_REGENERATED = Care(Wash.COOL, WARM_IRON, tumble=False)
_ACETATE = Care(Wash.HAND, COOL_IRON, tumble=False)
_STRETCH = Care(Wash.WARM, COOL_IRON, tumble=False)
_NYLON = Care(Wash.WARM, COOL_IRON, tumble=True)
_ACRYLIC = Care(Wash.COOL, COOL_IRON, tumble=False)
_COATED = Care(Wash.COOL, NO_IRON, tumble=False)
_SKIN = Care(Wash.DRY_CLEAN, NO_IRON, tumble=False)

FIBRES = {
    **dict.fromkeys(("cotton", "linen", "flax", "hemp", "ramie"), _CELLULOSE),
    **dict.fromkeys(("wool", "hair", "mohair", "cashmere", "alpaca", "silk"), _HAIR),
    **dict.fromkeys(("viscose", "rayon", "modal", "lyocell", "cupro"), _REGENERATED),
    **dict.fromkeys(("acetate", "triacetate"), _ACETATE),
    "polyester": Care(Wash.WARM, WARM_IRON, tumble=True),
    **dict.fromkeys(("nylon", "polyamide"), _NYLON),
    **dict.fromkeys(("acrylic", "modacrylic", "metallised", "metallic"), _ACRYLIC),
    **dict.fromkeys(("elastane", "spandex", "rubber"), _STRETCH),
    **dict.fromkeys(("polypropylene", "polyurethane", "vinyl"), _COATED),
    **dict.fromkeys(("leather", "suede", "fur", "feather", "feathers"), _SKIN),
}


def fibres_in(text: str) -> tuple[str, ...]:
    """The fibres that a text names, in its order: of "97 % cotton, elastane" both."""
    words = re.findall(r"[^\W\d_]+", text.lower())
    return tuple(dict.fromkeys(word for word in words if word in FIBRES))
