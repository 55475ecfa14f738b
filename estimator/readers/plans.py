"""A garment plan from its file, whichever kind that is."""

from __future__ import annotations

from os import PathLike
from pathlib import Path

from estimator.faults import Refused
from estimator.plan import Plan
from estimator.readers.plan_tables import Draft, PlanTables, draft_of
from estimator.readers.plan_toml import tables_from_toml
from estimator.readers.workbooks import is_workbook


def read_plan(path: str | PathLike[str]) -> Plan:
    """Reads a plan without a fault in it; raises Refused with every complaint about it."""
    draft = read_draft(Path(path))
    if draft.faults:
        raise Refused(draft.faults)
    return draft.plan


def read_draft(path: Path) -> Draft:
    """Reads as much of a plan as can be; raises Refused where nothing can be made of the file."""
    return draft_of(read_tables(path))


def read_tables(path: Path) -> PlanTables:
    """The tables of a plan as they were written, from a TOML file or a spreadsheet."""
    if is_workbook(path):
        from estimator.readers.plan_workbook import tables_from_workbook

        return tables_from_workbook(path)
    return tables_from_toml(path)
