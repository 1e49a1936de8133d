"""Libraries that the tests share: a small invented one that may be broken, and the real one."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any, TypeVar

import pytest
import yaml
from hypothesis import HealthCheck, settings

from keytool.identify import prove
from keytool.identify.findings import findings as proof_findings
from keytool.library import Finding, Loaded, Severity, load, root
from keytool.library.checks import run

settings.register_profile("untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("untimed")  # how fast the machine is says nothing about the code

TESTS = Path(__file__).parent
KEYDATA = TESTS.parent / "keydata"


def copy_mini(to: Path) -> Path:
    """A copy of the mini library with the real schemas and vocabulary; the folder that holds its `keydata/`."""
    shutil.copytree(TESTS / "mini", to / "keydata")
    shutil.copytree(KEYDATA / "schema", to / "keydata" / "schema")
    shutil.copy(KEYDATA / "vocabulary.yaml", to / "keydata")
    shutil.copytree(KEYDATA / "sentences", to / "keydata" / "sentences")
    for name in ("identification", "limits"):
        shutil.copy(KEYDATA / "bench" / f"quantities-{name}.yaml", to / "keydata" / "bench")
    return to


def everything_found(loaded: Loaded) -> list[Finding]:
    """All findings: of loading, of the checks, and of the proofs where nothing else is wrong."""
    found = [*loaded.findings, *run(loaded)]
    if not any(each.severity is Severity.PROBLEM for each in found):
        found += [each for key in loaded.library.keys.values() for each in proof_findings(loaded, prove(loaded.library, key))]
    return found


def read_cases(path: Path) -> Any:
    """What a YAML file of cases holds; read by libyaml where it is there, ten times as fast, since cases are read before any test runs."""
    return yaml.load(path.read_text("utf-8"), Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))


T = TypeVar("T")


def sampled(everything: list[T]) -> list[T]:
    """Every third of many alike, so that the tests of every run stay quick; all of them with `WETMOUNT_WHOLE=1`."""
    return everything if os.environ.get("WETMOUNT_WHOLE") else everything[::3]


WHOLE = {"site", "content", "texts", "card_of", "real_card", "real_cards", "wheel"}
"""Fixtures that build, draw or print the whole library."""
EXHAUSTIVE = (
    *("tests/card/", "tests/figures/", "tests/live/", "tests/optics/"),
    *(f"tests/contribute/test_{name}" for name in ("newcomer", "impact", "photo", "take")),
    *("tests/cli/test_count_and_measure", "tests/cli/test_walking", "tests/identify/test_published", "tests/library/test_fuzz"),
    *("tests/bench/test_field_edge", "tests/pages/test_downloads", "tests/pages/test_build"),
)
"""Where nearly every test draws, prints, or tries hundreds of cases; the figures behind this are of --durations."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Marks each test by what it asks for, so that `-m "not browser and not whole"` leaves what is quick (`make test-quick`)."""
    for item in items:
        asked = set(getattr(item, "fixturenames", ()))
        if "browser" in asked:
            item.add_marker("browser")
        if asked & WHOLE or item.nodeid.startswith(EXHAUSTIVE):
            item.add_marker("whole")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Prints what tests recorded as a score, also when they ran in another process."""
    for report in terminalreporter.stats.get("passed", []):
        for name, text in getattr(report, "user_properties", []):
            if name == "score":
                terminalreporter.write_line(str(text))


@pytest.fixture(scope="session")
def shared_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of this run that all its processes share, for what is dear to make and made once."""
    base = tmp_path_factory.getbasetemp()
    shared = (base.parent if os.environ.get("PYTEST_XDIST_WORKER") else base) / "shared"
    shared.mkdir(exist_ok=True)
    return shared


@pytest.fixture(scope="session", autouse=True)
def own_cache(shared_folder: Path) -> None:
    """Keeps what the tests remember out of the user's cache, also for the commands they start."""
    os.environ["XDG_CACHE_HOME"] = str(shared_folder / "cache")


@pytest.fixture
def mini(tmp_path: Path) -> Path:
    """A fresh copy of the mini library, to be read or broken."""
    return copy_mini(tmp_path / "mini")


@pytest.fixture(scope="session")
def loaded() -> Loaded:
    """The real library as loaded."""
    return load(root())


@pytest.fixture(scope="session")
def library(loaded: Loaded):
    """The real library."""
    return loaded.library


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Chromium, one for the whole run; without it these tests are skipped by name, but fail where CI is true."""
    missing = ""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        missing = "playwright is not installed (pip install '.[test]')"
    path = shutil.which("chromium")
    if not missing and not path:
        missing = "there is no chromium (apt-get install chromium)"
    if missing:
        if os.environ.get("CI") == "true":
            pytest.fail(f"browser tests cannot run: {missing}")
        pytest.skip(f"browser tests not run: {missing}")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=["--no-sandbox", "--disable-gpu"])
        yield started
        started.close()
