"""Work spread over processes: told as it is done, and ended at once when somebody interrupts it."""

from __future__ import annotations

import os
from importlib import import_module
from multiprocessing import Process, active_children
from pathlib import Path
from time import sleep

import pytest

from estimator import GarmentOrder, Job, cli, estimate, workers
from estimator.workers import WORTH_A_PROCESS, estimates_of
from tests.plans import plan

APRON = """
[garment]
name = "Apron {number}"
unit = "in"
[[fabric]]
name = "check"
widths = ["45 in"]
[[piece]]
name = "skirt"
cut = "check"
width = "{width}"
length = "20"
"""


def jobs() -> list[Job]:
    return [
        Job((GarmentOrder(plan(APRON.format(number=number, width=20 + number))),))
        for number in range(WORTH_A_PROCESS)
    ]


@pytest.mark.parametrize("processes", [1, 2])
def test_every_job_is_told_once_and_comes_in_its_place(processes: int) -> None:
    told: list[int] = []
    found = estimates_of(jobs(), processes, told.append)
    assert sum(told) == len(found) == WORTH_A_PROCESS
    assert [one.purchases for one in found] == [estimate(job).purchases for job in jobs()]


def interrupted(*_: object) -> None:
    raise KeyboardInterrupt


def test_an_interruption_ends_the_processes_too() -> None:
    with pytest.raises(KeyboardInterrupt):
        estimates_of(jobs(), 2, interrupted)
    assert not active_children()


def test_an_interruption_leaves_the_processes_of_a_caller_alone() -> None:
    own = Process(target=sleep, args=(60,))
    own.start()
    try:
        with pytest.raises(KeyboardInterrupt):
            estimates_of(jobs(), 2, interrupted)
        assert active_children() == [own]
    finally:
        own.kill()
        own.join()


def die(*_: object) -> None:
    os._exit(9)


def test_what_no_other_process_can_do_is_done_by_this_one(monkeypatch: pytest.MonkeyPatch) -> None:
    plain = estimates_of(jobs())
    monkeypatch.setattr(workers, "_begin", die)  # as if the machine were short of memory
    told: list[int] = []
    found = estimates_of(jobs(), 2, told.append)
    assert [one.purchases for one in found] == [one.purchases for one in plain]
    assert sum(told) == len(found)

    def too_many(*_: object, **__: object) -> None:
        raise OSError(24, "Too many open files")

    monkeypatch.setattr(workers, "ProcessPoolExecutor", too_many)
    assert len(estimates_of(jobs(), 2)) == len(found)


def test_an_interrupted_command_says_that_nothing_was_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "apron.toml"
    file.write_text(APRON.format(number=1, width=20), encoding="utf-8")
    list_file = tmp_path / "list.xlsx"
    monkeypatch.setattr("sys.argv", ["estimator", "write", str(file), "--out", str(list_file)])
    pipeline = import_module("estimator.estimate")  # by its name alone it is the function
    monkeypatch.setattr(pipeline, "needs_of", interrupted)
    with pytest.raises(SystemExit) as end:
        cli.main()
    assert end.value.code == 130
    assert capsys.readouterr().err == "stopped; nothing was written.\n"
    assert not list_file.exists()
