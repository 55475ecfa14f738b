"""Work spread over processes: estimates of garments alone, the same with one process or several."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import active_children
from pathlib import Path

from estimator.estimate import estimate
from estimator.estimated import Estimate
from estimator.faults import Refused
from estimator.job import Job
from estimator.memory import remember_until_the_end

WORTH_A_PROCESS = 6
"""With fewer garments the start of a process takes longer than it saves."""
Told = Callable[[int], None]


def estimates_of(
    jobs: Sequence[Job],
    processes: int = 1,
    told: Told | None = None,
    memory: Path | None = None,
) -> tuple[Estimate, ...]:
    """The estimate of each job, in order; processes remember layouts in the file ``memory``.

    ``told`` is called with how many jobs are done since it was last called. Raises Refused with the
    complaints about all jobs.
    """
    if processes < 2 or len(jobs) < WORTH_A_PROCESS:
        return _collected(_each(jobs, told))
    workers = min(processes, len(jobs))
    with ProcessPoolExecutor(workers, initializer=_begin, initargs=(memory,)) as pool:
        tasks = [pool.submit(_tried, job) for job in jobs]
        try:
            for _ in as_completed(tasks):  # the largest job may be the last to be done
                if told:
                    told(1)
            return _collected(task.result() for task in tasks)
        except BaseException:
            for process in active_children():
                process.terminate()  # what it is at is of no use any more
            raise


def _begin(memory: Path | None) -> None:
    """A process ends without a word when somebody interrupts the work: the first one tells."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    remember_until_the_end(memory)


def _tried(job: Job) -> Estimate | Refused:
    try:
        return estimate(job)
    except Refused as refused:
        return refused


def _each(jobs: Sequence[Job], told: Told | None) -> Iterator[Estimate | Refused]:
    for job in jobs:
        yield _tried(job)
        if told:
            told(1)


def _collected(results: Iterable[Estimate | Refused]) -> tuple[Estimate, ...]:
    found: list[Estimate] = []
    refused: list[Refused] = []
    for one in results:
        if isinstance(one, Refused):
            refused.append(one)
        else:
            found.append(one)
    if refused:
        raise Refused(fault for one in refused for fault in one.faults)
    return tuple(found)
