"""Lists for every test of them: a dress's, only looked at, and a cloak's, to be filled in."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from estimator import Estimate, estimate
from estimator.reports.buyers_list.file import write_list
from tests.plans import plan
from tests.reports.filled_lists import cloak, the_list
from tests.reports.harbour_dress import FUNDS, NOTED


@pytest.fixture(scope="session")
def dress() -> Estimate:
    return estimate(plan(NOTED))


@pytest.fixture(scope="session")
def dress_list(dress: Estimate, tmp_path_factory: pytest.TempPathFactory) -> Path:
    found = tmp_path_factory.mktemp("list") / "list.xlsx"
    write_list(dress, found, FUNDS)
    return found


@pytest.fixture
def sheet(dress_list: Path) -> Worksheet:
    return the_list(dress_list)[1]


@pytest.fixture
def path(tmp_path: Path) -> Path:
    found = tmp_path / "list.xlsx"
    write_list(cloak(), found)
    return found
