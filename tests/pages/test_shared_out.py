"""Work shared out over processes gives what it gives without, and its faults are not lost."""

from __future__ import annotations

import os
import threading
from functools import partial

import pytest

from keytool.pages import parallel as module
from keytool.pages.parallel import run_parallel


def process_and(number: int) -> tuple[int, int]:
    return os.getpid(), number


def fail(number: int) -> tuple[int, int]:
    raise ValueError(f"job {number} is at fault")


@pytest.fixture
def two_processors(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "processors", lambda: 2)


def test_results_come_in_the_order_of_the_jobs(two_processors: None):
    assert [number for _, number in run_parallel([partial(process_and, each) for each in range(20)])] == list(range(20))


def test_a_fault_in_a_job_is_raised_here(two_processors: None):
    with pytest.raises(ValueError, match="job 3 is at fault"):
        run_parallel([partial(process_and, 1), partial(fail, 3)])


def test_nothing_is_forked_while_a_thread_runs(two_processors: None):
    stop = threading.Event()
    thread = threading.Thread(target=stop.wait)
    thread.start()
    try:
        assert {process for process, _ in run_parallel([partial(process_and, each) for each in range(4)])} == {os.getpid()}
    finally:
        stop.set()
        thread.join()


def test_one_processor_does_all_itself(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr(module, "processors", lambda: 1)
    assert {process for process, _ in run_parallel([partial(process_and, each) for each in range(4)])} == {os.getpid()}
