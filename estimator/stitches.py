"""Stitch types by their ISO 4915 numbers: how a plan names them, and what thread they take."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from estimator.faults import nearest
from estimator.measure import Length, Unit
from estimator.quoting import NotReadable, quoted, text_of


class Machine(Enum):
    """What a stitch is sewn on: it decides whether needle and looper can share a spool."""

    LOCKSTITCH = "lockstitch machine"
    CHAINSTITCH = "chainstitch machine"
    OVERLOCKER = "overlocker"
    COVERSTITCH = "coverstitch machine"


@dataclass(frozen=True, slots=True)
class Stitch:
    """A stitch type. ``ratio`` is the thread for one length of seam.

    ``shares`` names each needle and looper and its part of the thread; on a lockstitch machine
    there are none, for needle and bobbin are filled from the same spools.
    """

    number: str
    name: str
    machine: Machine
    ratio: Fraction
    shares: tuple[tuple[str, Fraction], ...] = ()

    def __str__(self) -> str:
        return f"{self.name} ({self.number})"


def _stitch(
    number: str, name: str, machine: Machine, ratio: str, needles: str = "", loopers: str = ""
) -> Stitch:
    """Needles share one percentage of the thread equally, and loopers the rest."""
    share = Fraction(NEEDLES_OF_THREAD.get(number, 0), 100)
    needle, looper = needles.split(", ") if needles else [], loopers.split(", ") if loopers else []
    shares = [(one, share / len(needle)) for one in needle]
    shares += [(one, (1 - share) / len(looper)) for one in looper]
    return Stitch(number, name, machine, Fraction(ratio), tuple(shares))


NEEDLES_OF_THREAD = {"401": 25, "504": 20, "514": 25, "602": 20}
"""Of 100 lengths of thread those through the needles (textbook tables, from memory)."""

STITCHES = {
    one.number: one
    for one in (
        _stitch("301", "lockstitch", Machine.LOCKSTITCH, "2.5"),
        _stitch("401", "chainstitch", Machine.CHAINSTITCH, "5.5", "needle", "looper"),
        _stitch("504", "three-thread overedge", Machine.OVERLOCKER, "14",
                "needle", "upper looper, lower looper"),
        _stitch("514", "four-thread overedge", Machine.OVERLOCKER, "18",
                "needle, second needle", "upper looper, lower looper"),
        _stitch("602", "coverstitch", Machine.COVERSTITCH, "25",
                "needle, second needle", "looper, cover thread"),
    )
}  # fmt: skip
"""Thread for each length of seam: textbook tables, from memory."""

LOCKSTITCH, OVEREDGE = STITCHES["301"], STITCHES["504"]
_SPELLINGS = {
    **STITCHES,
    **{one.name: one for one in STITCHES.values()},
    "straight stitch": LOCKSTITCH,
    "overlock": OVEREDGE,
    "overedge": OVEREDGE,
}
_LOOPS = {"301": 2, "401": 4}


def read_stitches(written: object) -> tuple[Stitch, ...]:
    """Reads ``301``, ``lockstitch``, or several passes over one seam: ``301 + 504``.

    Nothing written is no stitch. Raises NotReadable with the nearest for an unknown one.
    """
    if isinstance(written, tuple) and all(isinstance(one, Stitch) for one in written):
        return written
    text = text_of(written).lower()
    names = [name.strip() for name in text.split("+")] if text else []
    for name in names:
        if name not in _SPELLINGS:
            raise NotReadable(f"{quoted(name)} is not a stitch", nearest(name, _SPELLINGS))
    return tuple(_SPELLINGS[name] for name in names)


def read_density(written: object) -> Fraction:
    """The stitches in a tick, from how many there are: ``10 per in`` or ``4 per cm``.

    Raises NotReadable.
    """
    if isinstance(written, Fraction):
        return written
    found = re.fullmatch(r"(\d{1,3}(?:[.,]\d)?)\s*per\s*(in|inch|cm)", text_of(written), re.ASCII)
    amount = Fraction(found[1].replace(",", ".")) if found else Fraction(0)
    if not found or not amount:
        raise NotReadable(
            f"{quoted(written)} does not say how many stitches", 'write "10 per in" or "4 per cm"'
        )
    return amount / (Unit.CM if found[2] == "cm" else Unit.IN).length.ticks


def ratio_from_geometry(stitch: Stitch, thickness: Length, density: Fraction) -> Fraction | None:
    """Thread for one length of seam through cloth of that thickness; None where no formula is.

    301: 2 + 2TS, 401: 4 + 2TS, with T the thickness of the seam and S the stitches in a length,
    here in a tick (textile engineering textbooks).
    """
    loops = _LOOPS.get(stitch.number)
    return None if loops is None else loops + 2 * thickness.ticks * density
