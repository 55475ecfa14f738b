"""Settings for the tests: the same cases on every machine and every day, no clock, no memory."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

from tests.command_line import run as run
from tests.command_line import skirt as skirt

os.environ["ESTIMATOR_MEMORY"] = "off"  # no test hangs on what another run has worked out

settings.register_profile("house", deadline=None, derandomize=True, max_examples=40)
settings.load_profile("house")


@pytest.fixture(scope="session")
def demo_memory(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder in which the layouts of shipped plans are remembered, as at home, for this run.

    Several processes that run the tests share it.
    """
    own = tmp_path_factory.getbasetemp()
    folder = (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "demo-memory"
    folder.mkdir(exist_ok=True)
    return folder


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The longest first, so that no process waits for one that began with it last."""
    items.sort(key=lambda item: item.get_closest_marker("long") is None)
