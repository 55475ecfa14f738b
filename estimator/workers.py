"""Work spread over processes: estimates of garments alone, the same with one process or several."""

from __future__ import annotations

import signal
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import BrokenExecutor, ProcessPoolExecutor, as_completed
from multiprocessing import active_children
from pathlib import Path

from estimator.estimate import estimate
from estimator.estimated import Estimate
from estimator.faults import Refused
from estimator.job import Job
from estimator.memory import remember_until_the_end

WORTH_A_PROCESS = 6
"""With fewer garments the start of a process takes longer than it saves."""
MOST_PROCESSES = 61
"""Windows waits for no more of them."""
Told = Callable[[int], None]


def estimates_of(
    jobs: Sequence[Job],
    processes: int = 1,
    told: Told | None = None,
    memory: Path | None = None,
) -> tuple[Estimate, ...]:
    """The estimate of each job, in order; processes remember layouts in the file ``memory``.

    ``told`` is called with how many jobs are done since it was last called. Where processes fail,
    this one does it all. Raises Refused with the complaints about all jobs.
    """
    workers = min(processes, len(jobs), MOST_PROCESSES)
    results: Iterable[Estimate | Refused] | None = None
    if workers > 1 and len(jobs) >= WORTH_A_PROCESS:
        results = _spread(jobs, workers, told, memory)
    return _collected(_each(jobs, told) if results is None else results)


def _spread(
    jobs: Sequence[Job], workers: int, told: Told | None, memory: Path | None
) -> list[Estimate | Refused] | None:
    """What comes of each job; None where no process can be begun, or one was ended from outside.

    ``told`` is told to take back what was done until then.
    """
    others = set(active_children())
    done = 0
    try:
        with ProcessPoolExecutor(workers, initializer=_begin, initargs=(memory,)) as pool:
            try:
                tasks = [pool.submit(_tried, job) for job in jobs]
                for _ in as_completed(tasks):  # the largest job may be the last to be done
                    done += 1
                    if told:
                        told(1)
                return [task.result() for task in tasks]
            except BaseException:
                for process in set(active_children()) - others:
                    process.terminate()  # what it is at is of no use any more
                raise
    except (OSError, BrokenExecutor):
        if told and done:
            told(-done)
        return None


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
