"""Speed, as ratios measured in one run: ours against a peer or a bound. Prints; asserts nothing.

Run: make bench
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

PROJECT = Path(__file__).parents[1]
BIN = Path(sys.executable).parent
ROUNDS = 5


def seconds(*command: str, cwd: Path = PROJECT) -> float:
    """How long a command takes, as a whole process."""
    begin = time.perf_counter()
    subprocess.run(command, cwd=cwd, check=True, capture_output=True, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    return time.perf_counter() - begin


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
    ours, peer = pair(("sh", "-c", forgetful), plain, rounds=3)
    report("Site, nothing remembered (plain MkDocs and theme, same pages on disk)", ours, peer, "wanted: 1.3 at most")
    again, _ = pair((str(BIN / "wetmount"), "site", "-o", str(work / "ours")), (sys.executable, "-c", "pass"), rounds=3)
    report("Site, built again from the same files (the same plain build)", again, peer, "wanted: 1.3 at most")


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

    def spent(action: Callable[[], object]) -> float:
        begin = time.perf_counter()
        action()
        return time.perf_counter() - begin

    mini = copy_mini(work / "mini")
    peer = statistics.median(spent(lambda: everything_found(load(mini))) for _ in range(ROUNDS))
    ours, slowest = max((spent(lambda case=case: put_in(mini, case)), case.stem) for case in BAD)
    report(f"The slowest of {len(BAD)} broken files, {slowest} (the same small library, whole)", ours, peer, "no bound; a hang would show")


def main() -> None:
    """Every benchmark, one line each."""
    with tempfile.TemporaryDirectory() as folder:
        help_text()
        schema_check(Path(folder))
        broken_files(Path(folder))
        site_build(Path(folder))


if __name__ == "__main__":
    main()
