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
from estimator.measure import Length, Unit, natural_text, tape_text
from estimator.readers.csv_cells import cells_of, delimiter_of
from estimator.readers.files import read_text
from estimator.readers.stash_csv import TABLE, mark_of
from estimator.reports.saving import write_whole
from estimator.stash import MARKS, InHand, is_metric
from estimator.stash_after import Change, changes, left_overs

COLUMNS = tuple(InHand.model_fields)


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
    text = read_text(path, TABLE)
    old = path.read_bytes()
    changed, added = changes(estimate), left_overs(estimate)
    if not changed and not added:
        return ("Nothing was taken from the stash, and nothing is left over: it stays as it is.",)
    content = _as_before(_written(text, path, changed, added), old)
    if mark_of(path) != stash.mark:
        raise _refused(path, "has changed while this was worked out", "run it again")
    copy = path.with_name(f"{path.stem}-{on.isoformat()}-before-{slug}{path.suffix}")
    write_whole(copy, old)
    try:
        write_whole(path, content)
    except Refused:
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
    header, *rows = cells_of(text, path)
    names = [name.strip().lower() for name in header]
    for name in _missing(names, changed, added):
        header.append(name)
        names.append(name)
    by_row = {one.row: one for one in changed}
    found = [header]
    for number, cells in enumerate(rows, start=2):
        cells = [*cells, *[""] * (len(names) - len(cells))]
        change = by_row.get(number)
        found += [cells] if change is None else _changed(cells, names, change)
    found += [_new(row, names) for row in added]
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter_of(text), lineterminator="\n").writerows(found)
    return out.getvalue()


def _missing(names: list[str], changed: tuple[Change, ...], added: tuple[InHand, ...]) -> list[str]:
    """The columns that have to be added for what is written."""
    wanted = {"count"} if changed else set()
    for row in added:
        wanted |= {name for name in COLUMNS if _cell(row, name)}
    return [name for name in COLUMNS if name in wanted and name not in names]


def _changed(cells: list[str], names: list[str], change: Change) -> list[list[str]]:
    """A row with fewer of its things, and one for each length that was cut short."""
    found = []
    if change.stay:
        found.append(_with(cells, names, count=str(change.stay)))
    for length in change.cut:
        found.append(_with(cells, names, count="1", length=_length_text(length)))
    return found


def _with(cells: list[str], names: list[str], **values: str) -> list[str]:
    return [values.get(name, cell) for name, cell in zip(names, cells, strict=False)]


def _new(row: InHand, names: list[str]) -> list[str]:
    return [_cell(row, name) if name in COLUMNS else "" for name in names]


def _cell(row: InHand, name: str) -> str:
    value = getattr(row, name)
    if isinstance(value, Length):
        return _length_text(value)
    if isinstance(value, bool):
        return "yes" if value else ""
    return "" if value is None else str(value)


def _length_text(length: Length) -> str:
    """A length that reads back as it is where it lies on a mark of a tape; else down to one."""
    metric = is_metric(length)
    mark = MARKS[metric]
    on_mark = mark * mark.times_into(length)
    return tape_text(on_mark, Unit.CM) if metric else natural_text(on_mark, Unit.IN)


def _refused(where: Path | str, wrong: str, right: str) -> Refused:
    return Refused([Fault(str(where), wrong, right)])
