"""Dates that spreadsheets make of fractions: of 1/2 the first of February."""

from __future__ import annotations

import re

from estimator.quoting import NotReadable, quoted

_DATE_CELL = re.compile(
    r"(?:(?P<y>\d{4})-(?P<m>\d\d)-(?P<d>\d\d)(?:[ T][\d:]+)?"
    r"|(?P<d1>\d{1,2})[- ](?P<mon1>[A-Za-z]{3,9})(?:[- ]\d{2,4})?"
    r"|(?P<mon2>[A-Za-z]{3,9})[- ](?P<d2>\d{1,2})"
    r"|(?P<a>\d{1,2})[/.](?P<b>\d{1,2})[/.]\d{2,4})"
)
_YEARS_FROM_FRACTIONS = range(1932, 1999)
"""No day is the 32nd or later: of 1/32 and 3/64 spreadsheets make the first of a month in 1932 and
1964."""
_MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]


def refuse_date(text: str) -> None:
    """Raises NotReadable, with the likely fraction, for what a spreadsheet made of 1/2 or 3/4."""
    found = _DATE_CELL.fullmatch(text)
    if not found:
        return
    parts = found.groupdict()
    name = parts["mon1"] or parts["mon2"]
    if name:
        if name[:3].lower() not in _MONTHS:
            return
        month = _MONTHS.index(name[:3].lower()) + 1
        day = int(parts["d1"] or parts["d2"])
    elif parts["y"]:
        month, day = int(parts["m"]), int(parts["d"])
        if day == 1 and int(parts["y"]) in _YEARS_FROM_FRACTIONS:
            day = int(parts["y"][2:])
    else:
        month, day = int(parts["a"]), int(parts["b"])
    low, high = sorted((month, day))
    likely = f"{low}/{high}"
    raise NotReadable(
        f"{quoted(text)} is a date; a spreadsheet makes one of a fraction such as {likely}",
        f"format the cell as text and write {likely} again",
    )
