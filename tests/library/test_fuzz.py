"""Whatever is done to a file, loading and checking end, with findings and never with a traceback.

`WETMOUNT_FUZZ=5000` tries more files than the 300 of every run. How long the slowest took is printed, not asserted: that
would be a matter of the machine and of what else it does.
"""

from __future__ import annotations

import os
import re
import signal
import statistics
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from keytool.library import load
from keytool.library.report import as_json, as_text
from tests.conftest import copy_mini, everything_found

FILES = int(os.environ.get("WETMOUNT_FUZZ", "300"))
HANGS = 60
"""Seconds after which a load is taken to have no end; it takes a tenth of one, so no busy machine comes near."""
SNIPPETS = [
    "{",
    "}",
    "[",
    "]",
    ": ",
    "- ",
    "\n",
    "  ",
    "'",
    '"',
    "#",
    "&a ",
    "*a",
    "!t ",
    "|",
    "null",
    "true",
    "0",
    "-1",
    "1e9",
    "no",
    "[[",
    "]]",
    "{x}",
    "[[x]]",
    "button",
    "holes",
    "any: true",
    "otherwise: true",
    "couplet: holes",
    "key: sewing",
    "\t",
    "µ",
    "\u200b",
]


@st.composite
def edits(draw: st.DrawFn) -> list[tuple[float, int, str]]:
    """Where (as a part of the text), how many characters go, and what comes in their place."""
    place = st.floats(0, 1, exclude_max=True)
    snippet = st.sampled_from(SNIPPETS) | st.text(max_size=3)
    return draw(st.lists(st.tuples(place, st.integers(0, 12), snippet), min_size=1, max_size=3))


@contextmanager
def an_end(seconds: int = HANGS) -> Iterator[None]:
    """Stops what does not end by itself, where it is, so that the failure shows the line and the file."""

    def stop(_number: int, _frame: FrameType | None) -> None:
        raise TimeoutError(f"no end after {seconds} s")

    before = signal.signal(signal.SIGALRM, stop)
    signal.alarm(seconds)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return copy_mini(tmp_path_factory.mktemp("fuzz") / "mini")


@pytest.fixture(scope="module")
def took() -> list[float]:
    """Seconds of our own processor time for each file tried."""
    return []


@settings(max_examples=FILES, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data(), changes=edits(), swap_line=st.booleans())
def test_a_changed_file_never_ends_in_a_traceback(
    folder: Path, took: list[float], data: st.DataObject, changes: list[tuple[float, int, str]], swap_line: bool
) -> None:
    files = sorted(path for path in (folder / "keydata").rglob("*.yaml"))
    path = data.draw(st.sampled_from(files))
    before = path.read_bytes()
    text = before.decode()
    for at, gone, snippet in changes:
        start = int(at * len(text))
        text = text[:start] + snippet + text[start + gone :]
    if swap_line:
        lines = text.split("\n")
        at = data.draw(st.integers(0, len(lines) - 1))
        text = "\n".join([*lines[:at], *lines[at + 1 :], lines[at]])
    try:
        path.write_bytes(text.encode("utf-8", "surrogatepass"))
        begin = time.process_time()
        with an_end():
            found = everything_found(load(folder))
        took.append(time.process_time() - begin)
        assert not [each for each in found if "itself failed" in each.message]
        assert all(each.message and each.place.line >= 1 and each.place.column >= 1 for each in found)
        assert as_text(found) and as_json(found)
    finally:
        path.write_bytes(before)


def test_how_long_the_slowest_took_is_printed(took: list[float], record_property: Callable[[str, object], None]) -> None:
    assert len(took) >= FILES
    record_property(
        "score", f"{len(took)} changed files read and checked, {statistics.median(took):.1f} s each, the slowest {max(took):.1f} s."
    )


def test_what_has_no_end_is_stopped_and_said() -> None:
    endless = re.compile(r"(a+)+$")
    with pytest.raises(TimeoutError, match="no end after 1 s"), an_end(1):
        endless.match("a" * 60 + "!")
