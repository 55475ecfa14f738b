"""A garment plan from its file, whichever kind that is."""

from __future__ import annotations

from pathlib import Path

from estimator.faults import Refused
from estimator.plan import Plan
from estimator.readers import plan_toml
from estimator.readers.plan_toml import Draft
from estimator.readers.workbooks import is_workbook


def read_plan(path: Path) -> Plan:
    """Reads a plan without a fault in it; raises Refused with every complaint about it."""
    draft = read_draft(path)
    if draft.faults:
        raise Refused(draft.faults)
    return draft.plan


def read_draft(path: Path) -> Draft:
    """Reads as much of a plan as can be; raises Refused where nothing can be made of the file."""
    if is_workbook(path):
        from estimator.readers.plan_workbook import draft_from_workbook

        return draft_from_workbook(path)
    return plan_toml.read_draft(path)
