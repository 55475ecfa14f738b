"""A trim's runs with their working: their sum, and the longest of them."""

from __future__ import annotations

from estimator.measure import Length
from estimator.needs.types import LengthNeed
from estimator.working import Reckoning, in_all


def all_runs(need: LengthNeed) -> Reckoning:
    """Every run's working, one after the other, and their sum: totalled before any rounding."""
    alike = [run.length.times("so many runs alike", run.count) for run in need.runs]
    return in_all("all runs together", alike)


def runs_in_one(need: LengthNeed) -> Reckoning:
    """Every run's working, where all are cut from one length: a motif begins but once anywhere."""
    parts = [
        one.times("so many runs alike", count) for run in need.runs for one, count in run.in_turn
    ]
    return in_all("all runs together", parts)


def longest_run(need: LengthNeed) -> Length:
    """The longest run, which the shop's longest put-up has to hold."""
    return max(run.length.value for run in need.runs)
