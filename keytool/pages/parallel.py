"""Work shared out over the processors of the machine, where that is safe; the result is the same as without."""

from __future__ import annotations

import multiprocessing
import os
import sys
import threading
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from typing import TypeVar

Result = TypeVar("Result")

_jobs: Sequence[Callable[[], object]] = ()
"""What a child finds when it is forked; a job holds the library and could not be sent to it cheaply."""


def run_parallel(jobs: Sequence[Callable[[], Result]]) -> list[Result]:
    """The results of the jobs, in their order. Put the longest first.

    A process is only forked where nothing else runs in it: elsewhere the copy could wait for ever for a lock that a
    thread held. Results must be such as can be pickled.
    """
    global _jobs
    many = min(processors(), len(jobs))
    if many < 2 or sys.platform != "linux" or threading.active_count() > 1:
        return [job() for job in jobs]
    _jobs = jobs
    try:
        with ProcessPoolExecutor(many, multiprocessing.get_context("fork")) as pool:
            return list(pool.map(_done, range(len(jobs))))  # type: ignore[arg-type]
    finally:
        _jobs = ()


def _done(number: int) -> object:
    return _jobs[number]()


def processors() -> int:
    """How many processors this program may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
