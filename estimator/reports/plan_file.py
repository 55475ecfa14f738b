"""A plan as a file of either kind, from a file of either kind: nothing of it is lost on the way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from estimator.catalog import NO_CATALOG
from estimator.faults import Fault, Refused
from estimator.faults import Path as PlanPath
from estimator.readers.catalogs import read_catalog
from estimator.readers.files import read_text
from estimator.readers.form_remarks import opening_of, remarks_of
from estimator.readers.plan_tables import PlanTables, draft_of
from estimator.readers.plan_toml import tables_from_text
from estimator.readers.plan_workbook import tables_from_sheets
from estimator.readers.remarks import opening_remarks, remarks_in
from estimator.readers.show_toml import is_show
from estimator.readers.workbooks import is_workbook, read_workbook
from estimator.reports.plan_form import plan_form
from estimator.reports.plan_text import plan_text
from estimator.reports.saving import workbook_bytes


def as_workbook(plan: Path, catalog: Path | None = None) -> bytes:
    """A plan as a form to fill in, from which the items of a catalog can be chosen.

    Raises Refused with every complaint about a plan that is not sound, or about the catalog.
    """
    shop = read_catalog(catalog) if catalog else NO_CATALOG
    own = _sound(plan)
    return workbook_bytes(plan_form(own.raw, own.opening, own.remarks, shop))


def as_text(plan: Path) -> bytes:
    """A plan as TOML; raises Refused with every complaint about one that is not sound."""
    own = _sound(plan)
    return plan_text(own.raw, own.opening, own.remarks).encode()


@dataclass(frozen=True)
class _Written:
    """The tables of a plan, and what is said in it for people."""

    raw: Mapping[str, Any]
    opening: Sequence[str]
    remarks: Mapping[PlanPath, str]


def _sound(plan: Path) -> _Written:
    if is_workbook(plan):
        sheets = read_workbook(plan, "a plan")
        tables = _without_fault(tables_from_sheets(sheets, str(plan)))
        return _Written(tables.raw, opening_of(sheets), remarks_of(sheets, tables.places))
    if is_show(plan):
        fault = Fault(str(plan), "this is a show", "convert the plans that it names, one by one")
        raise Refused([fault])
    text = read_text(plan, "a plan")
    tables = _without_fault(tables_from_text(text, str(plan)))
    return _Written(tables.raw, opening_remarks(text), remarks_in(text))


def _without_fault(tables: PlanTables) -> PlanTables:
    faults = draft_of(tables).faults
    if faults:
        raise Refused(faults)
    return tables
