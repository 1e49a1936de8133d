"""Libraries that the tests share: a small invented one that may be broken, and the real one."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from keytool.identify import prove
from keytool.identify.findings import findings as proof_findings
from keytool.library import Finding, Loaded, Severity, load, root
from keytool.library.checks import run

TESTS = Path(__file__).parent
KEYDATA = TESTS.parent / "keydata"


def copy_mini(to: Path) -> Path:
    """A copy of the mini library with the real schemas and vocabulary; the folder that holds its `keydata/`."""
    shutil.copytree(TESTS / "mini", to / "keydata")
    shutil.copytree(KEYDATA / "schema", to / "keydata" / "schema")
    shutil.copy(KEYDATA / "vocabulary.yaml", to / "keydata")
    return to


def everything_found(loaded: Loaded) -> list[Finding]:
    """All findings: of loading, of the checks, and of the proofs where nothing else is wrong."""
    found = [*loaded.findings, *run(loaded)]
    if not any(each.severity is Severity.PROBLEM for each in found):
        found += [each for key in loaded.library.keys.values() for each in proof_findings(loaded, prove(loaded.library, key))]
    return found


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
