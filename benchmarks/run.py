"""Speed, as ratios measured in one run: ours against a peer or a bound. Prints; asserts nothing.

Run: make bench
"""

from __future__ import annotations

import os
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

PROJECT = Path(__file__).parents[1]
BIN = Path(sys.executable).parent
ROUNDS = 5


def seconds(*command: str, cwd: Path = PROJECT) -> float:
    """How long a command takes, as a whole process."""
    begin = time.perf_counter()
    subprocess.run(command, cwd=cwd, check=True, capture_output=True, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    return time.perf_counter() - begin


@dataclass(frozen=True)
class Spent:
    """What a command took: seconds on the clock and of processors, and the most memory one of its processes held, in MB."""

    clock: float
    processor: float
    memory: float


def spent(*command: str, cwd: Path = PROJECT) -> Spent:
    """What a command takes, with all the processes it starts."""
    begin = time.perf_counter()
    started = subprocess.Popen(
        command, cwd=cwd, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    )
    _, status, used = os.wait4(started.pid, 0)
    clock = time.perf_counter() - begin
    if status:
        raise SystemExit(f"{' '.join(command)} ended with {os.waitstatus_to_exitcode(status)}")
    return Spent(clock, used.ru_utime + used.ru_stime, used.ru_maxrss / 1000)


def pair(ours: tuple[str, ...], peer: tuple[str, ...], rounds: int = ROUNDS) -> tuple[float, float]:
    """Medians of ours and of the peer, run in turn after one warm-up each."""
    seconds(*ours), seconds(*peer)
    both = [(seconds(*ours), seconds(*peer)) for _ in range(rounds)]
    return statistics.median(each[0] for each in both), statistics.median(each[1] for each in both)


def report(what: str, ours: float, peer: float, bound: str) -> None:
    print(f"{what}: {ours:.3f} s against {peer:.3f} s, ratio {ours / peer:.2f} ({bound})")


def schema_check(work: Path) -> None:
    """The schema part of `check` against check-jsonschema on the same files and schemas."""
    script = "from keytool.library import root; from keytool.library.load import load; import sys; sys.exit(len(load(root()).problems))"
    from keytool.library import load, root

    schemas = work / "schemas"
    schemas.mkdir()
    import json

    for name, schema in load(root()).schemas.named().items():
        (schemas / name).write_text(json.dumps({**schema, "$id": (schemas / name).as_uri()}), "utf-8")
    calls = " && ".join(
        f"{BIN}/check-jsonschema --schemafile {schemas}/{kind}.schema.json keydata/{files}"
        for kind, files in (
            ("entry", "entries/*/*.yaml"),
            ("character", "characters/*.yaml"),
            ("key", "keys/*.yaml"),
            ("guide", "guides/*.yaml"),
            ("look-alike", "look-alikes/*.yaml"),
        )
    )
    ours, peer = pair((sys.executable, "-c", script), ("sh", "-c", calls))
    report("Schemas, loading included (check-jsonschema, one call a kind)", ours, peer, "wanted: 1.0 at most")


def site_build(work: Path) -> None:
    """The site against plain MkDocs with the same theme building the same pages already on disk."""
    pages = work / "plain"
    subprocess.run([str(BIN / "wetmount"), "site", "--sources", "-o", str(pages / "docs")], check=True, cwd=PROJECT, capture_output=True)
    from keytool.pages.build import plain_config

    (pages / "mkdocs.yml").write_text(plain_config(PROJECT), "utf-8")
    plain = (str(BIN / "mkdocs"), "build", "-q", "-f", str(pages / "mkdocs.yml"), "-d", str(work / "peer"))
    forgetful = f"rm -rf '{work}/cache' && XDG_CACHE_HOME='{work}/cache' '{BIN}/wetmount' site -o '{work}/ours'"
    both = [(spent("sh", "-c", forgetful), spent(*plain)) for _ in range(3)]
    for what, of in (("s", "clock"), ("processor s", "processor"), ("MB", "memory")):
        ours, peer = (statistics.median(getattr(each[which], of) for each in both) for which in (0, 1))
        print(
            f"Site, nothing remembered (plain MkDocs and theme, same pages on disk): {ours:.1f} {what} against {peer:.1f} {what}, "
            f"ratio {ours / peer:.2f} (wanted: 1.3 at most)"
        )
    again = f"XDG_CACHE_HOME='{work}/cache' '{BIN}/wetmount' site -o '{work}/ours'"
    ours, peer = pair(("sh", "-c", again), (sys.executable, "-c", "pass"), rounds=3)
    report("Site, built again from the same files (python -c pass)", ours, peer, "wanted: 2 s at most")


def edited_page(work: Path) -> None:
    """One entry edited under `wetmount serve`: until its page as served says so; and the first page after the start."""
    shutil.copytree(PROJECT / "keydata", work / "edited" / "keydata")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    address = f"http://127.0.0.1:{port}/entries/plectus.html"
    file = work / "edited" / "keydata" / "entries" / "nematodes" / "plectus.yaml"

    def says(words: str) -> bool:
        try:
            return words in urllib.request.urlopen(address, timeout=120).read().decode()
        except OSError:
            time.sleep(0.05)
            return False

    def until(words: str) -> float:
        begin = time.perf_counter()
        while not says(words):
            if server.poll() is not None:
                raise SystemExit("wetmount serve has ended")
        return time.perf_counter() - begin

    server = subprocess.Popen(
        [str(BIN / "wetmount"), "--library", str(work / "edited"), "serve", "--port", str(port)],
        cwd=PROJECT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        first = until("<h1>")
        times = []
        for number in range(ROUNDS):
            file.write_text(file.read_text("utf-8").replace("summary: ", f"summary: Edited {number}. ", 1), "utf-8")
            times.append(until(f"Edited {number}."))
    finally:
        server.terminate()
        server.wait()
    edited = statistics.median(times)
    print(f"wetmount serve, until its first page: {first:.1f} s (no bound)")
    print(f"wetmount serve, one entry edited and its page there: {edited:.1f} s (wanted: 3 s at most)")


def help_text() -> None:
    """`wetmount --help` against an empty Python."""
    ours, peer = pair((str(BIN / "wetmount"), "--help"), (sys.executable, "-c", "pass"), rounds=15)
    report("wetmount --help (python -c pass)", ours, peer, f"{1000 * (ours - peer):.0f} ms more; wanted: under 150 ms")


def broken_files(work: Path) -> None:
    """The broken file of the tests that takes longest to be told of, against the same library unbroken."""
    sys.path.insert(0, str(PROJECT))
    from keytool.library import load
    from tests.conftest import copy_mini, everything_found
    from tests.library.test_bad_files import BAD, put_in

    def taken(action: Callable[[], object]) -> float:
        begin = time.perf_counter()
        action()
        return time.perf_counter() - begin

    mini = copy_mini(work / "mini")
    peer = statistics.median(taken(lambda: everything_found(load(mini))) for _ in range(ROUNDS))
    ours, slowest = max((taken(lambda case=case: put_in(mini, case)), case.stem) for case in BAD)
    report(f"The slowest of {len(BAD)} broken files, {slowest} (the same small library, whole)", ours, peer, "no bound; a hang would show")


def main() -> None:
    """Every benchmark, one line each."""
    with tempfile.TemporaryDirectory() as folder:
        help_text()
        schema_check(Path(folder))
        broken_files(Path(folder))
        site_build(Path(folder))
        edited_page(Path(folder))


if __name__ == "__main__":
    main()
