"""How much work a search is allowed."""

from __future__ import annotations

from estimator.layout.effort import times_for


def test_fewer_kinds_are_never_allowed_less_work_and_many_are_allowed_the_limit_itself():
    times = [times_for(kinds) for kinds in range(1, 100)]
    assert times == sorted(times, reverse=True)
    assert times_for(10) == 8
    assert times_for(15) == 4
    assert times_for(30) == times_for(99) == 1
