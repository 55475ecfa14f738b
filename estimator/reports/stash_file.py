"""Booking out: the stash file written anew with what is left, the old one kept as a dated copy."""

from __future__ import annotations

import codecs
import csv
import glob
import io
import re
from datetime import date
from pathlib import Path

from estimator.estimated import Estimate
from estimator.faults import Fault, Refused
from estimator.readers.csv_cells import cells_of, delimiter_of
from estimator.readers.files import read_bytes, read_text
from estimator.readers.stash_table import TABLE, mark_of
from estimator.readers.workbooks import is_workbook
from estimator.reports.booked_rows import booked
from estimator.reports.saving import write_whole
from estimator.reports.stash_sheet import with_rows
from estimator.stash import InHand
from estimator.stash_after import Change, changes, left_overs


def book_out(estimate: Estimate, on: date, mark: str = "") -> tuple[str, ...]:
    """Writes the stash as it is after the list has been bought and cut; what was done, in words.

    ``mark`` is the check mark on the list that was followed, if it was told. Raises Refused, and
    changes nothing, where the stash is not what the list was made from, or the same show was booked
    out already.
    """
    stash = estimate.job.stash
    if not stash.file:
        raise _refused(
            "", "there is no stash to book out from", 'add stash = "stash.csv" to [show]'
        )
    path = Path(stash.file)
    title = estimate.job.title or estimate.job.garments[0].plan.garment.name
    slug = re.sub(r"[^a-z0-9]+", "-", title.lower()).strip("-") or "list"
    before = sorted(
        path.parent.glob(f"{glob.escape(path.stem)}-*-before-{slug}{glob.escape(path.suffix)}")
    )
    if before:
        raise _refused(
            path,
            f"'{title}' was booked out already: {before[0].name} is the stash as it was before",
            "put that file back, or move it away to book out once more",
        )
    if mark and mark != stash.mark:
        raise _refused(
            path,
            f"the stash has changed since the list was made: its mark is {stash.mark}, not {mark}",
            "make the list again, and compare what was used",
        )
    old = read_bytes(path, TABLE)
    changed, added = changes(estimate), left_overs(estimate)
    if not changed and not added:
        return ("Nothing was taken from the stash, and nothing is left over: it stays as it is.",)
    content = (
        with_rows(path, old, changed, added)
        if is_workbook(path)
        else _as_before(_written(read_text(path, TABLE), path, changed, added), old)
    )
    if mark_of(path) != stash.mark:
        raise _refused(path, "has changed while this was worked out", "run it again")
    copy = path.with_name(f"{path.stem}-{on.isoformat()}-before-{slug}{path.suffix}")
    write_whole(copy, old)
    try:
        write_whole(path, content)
    except BaseException:  # refused or interrupted: the copy says that it was done
        copy.unlink(missing_ok=True)
        raise
    return (
        f"Booked out for {title}: {_rows(len(changed))} changed, {_rows(len(added))} added.",
        f"The stash as it was is kept as {copy.name}.",
    )


def _as_before(text: str, old: bytes) -> bytes:
    """With the line ends, and the mark at the start, by which programs know the old file."""
    if b"\r\n" in old:
        text = text.replace("\n", "\r\n")
    start = codecs.BOM_UTF8 if old.startswith(codecs.BOM_UTF8) else b""
    return start + text.encode()


def _rows(count: int) -> str:
    return f"{count} row{'' if count == 1 else 's'}"


def _written(text: str, path: Path, changed: tuple[Change, ...], added: tuple[InHand, ...]) -> str:
    """The table with its changed rows and the new ones; all other cells as they were."""
    out = io.StringIO()
    rows = booked(cells_of(text, path), changed, added)
    csv.writer(out, delimiter=delimiter_of(text), lineterminator="\n").writerows(rows)
    return out.getvalue()


def _refused(where: Path | str, wrong: str, right: str) -> Refused:
    return Refused([Fault(str(where), wrong, right)])
