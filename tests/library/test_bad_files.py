"""Every pair in tests/bad and tests/good is a case: `<name>.yaml` and `<name>.expected`.

The first line of `.expected` is the file of the mini library that the case replaces or adds to
it; the rest is the text report, to the letter. To add a case, drop in the two files.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from keytool.library import Finding, load
from keytool.library.checks import CHECKS
from keytool.library.report import as_text
from tests.conftest import TESTS, copy_mini, everything_found

BAD = sorted((TESTS / "bad").glob("*.expected"))
GOOD = sorted((TESTS / "good").glob("*.expected"))


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> dict[Path, list[Finding]]:
    """What is found in the mini library with the file of each case in its place."""
    mini = copy_mini(tmp_path_factory.mktemp("bad") / "mini")
    return {case: put_in(mini, case) for case in [*BAD, *GOOD]}


def put_in(mini: Path, case: Path) -> list[Finding]:
    """What is found with one case; the library is as before afterwards."""
    target = mini / case.read_text("utf-8").splitlines()[0]
    before = target.read_bytes() if target.exists() else None
    target.parent.mkdir(parents=True, exist_ok=True)
    shutil.copy(case.with_suffix(".yaml"), target)
    found = everything_found(load(mini))
    if before is None:
        target.unlink()
    else:
        target.write_bytes(before)
    return found


@pytest.mark.parametrize("case", [*BAD, *GOOD], ids=lambda case: f"{case.parent.name}/{case.stem}")
def test_report_is_as_expected(found: dict[Path, list[Finding]], case: Path) -> None:
    _, expected = case.read_text("utf-8").split("\n", 1)
    assert as_text(found[case]) + "\n" == expected


def test_cases_come_in_pairs() -> None:
    for folder in ("bad", "good"):
        files = [file for file in (TESTS / folder).iterdir() if not file.name.startswith(".")]
        assert {file.stem for file in files if file.suffix == ".yaml"} == {file.stem for file in files if file.suffix == ".expected"}
    assert len(BAD) >= 45


def test_every_bad_case_has_a_finding_and_no_good_one_has() -> None:
    for case in BAD:
        assert case.read_text("utf-8").count("\n") > 2, case
    for case in GOOD:
        assert case.read_text("utf-8").splitlines()[1:] == ["No problems."], case


def test_every_check_is_hit_by_a_bad_case(found: dict[Path, list[Finding]]) -> None:
    hit = {finding.check for case in BAD for finding in found[case]}
    assert {check.NAME for check in CHECKS} - hit == set()
    assert hit >= {"readable", "shape", "place", "name", "proof"}


def test_mini_library_is_clean(mini: Path) -> None:
    assert everything_found(load(mini)) == []
