"""Every pair in tests/bad and tests/good is a case: `<name>.yaml` and `<name>.expected`.

The first line of `.expected` is the file of the mini library that the case replaces or adds to
it; the rest is the text report, to the letter. To add a case, drop in the two files.
"""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from string import Formatter

import pytest

from keytool.library import Finding, checks, load
from keytool.library.checks import CHECKS, messages
from keytool.library.message import Message
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


ELSEWHERE = {
    "photos": "a case is one text file, and these need pictures: tests/library/test_locks.py",
    "manners.UNSHOWN": "needs a character and a manner: tests/live/test_motion_data.py",
    "counting.NOT_COUNTED_THERE": "needs a tally and a rule: below",
}
"""Rules and sentences that other tests provoke, and why."""


def test_every_sentence_of_a_rule_is_said_in_a_bad_case(found: dict[Path, list[Finding]]) -> None:
    said = {(finding.check, finding.message) for case in BAD for finding in found[case]}
    never = [
        f"{rule.NAME}.{name}"
        for rule in CHECKS
        for name, message in messages(rule).items()
        if not {rule.NAME, f"{rule.NAME}.{name}"} & set(ELSEWHERE)
        and not any(check == rule.NAME and _fits(message, text) for check, text in said)
    ]
    assert never == []


def test_a_rule_of_the_bench_asks_for_what_is_counted_there(tmp_path: Path) -> None:
    mini = copy_mini(tmp_path / "mini")
    shutil.copy(TESTS / "bad" / "tally-part-of-a-part.yaml", mini / "keydata/bench/tally.yaml")
    (mini / "keydata/bench/bench-rules.yaml").write_text(
        "buttons-in-field:\n  asks: One button in a field\n  counts: [button]\n  per: field\n  wants: at-least\n  value: 1\n"
        "  taken-for: A coat.\n  against: Invented.\n  basis: {kind: memory}\n",
        "utf-8",
    )
    (found,) = (each for each in everything_found(load(mini)) if each.place.file.endswith("bench-rules.yaml"))
    assert (str(found.place), found.message) == (
        "keydata/bench/bench-rules.yaml:3:12",
        "The rule speaks of a field, but 'button' is not counted there.",
    )
    assert found.allowed == "drop"


def _fits(message: Message, text: str) -> bool:
    parts = [re.escape(literal) + (".*" if name else "") for literal, name, _, _ in Formatter().parse(message.text)]
    return re.fullmatch("".join(parts), text, re.DOTALL) is not None


def test_a_rule_speaks_in_the_sentences_it_declares() -> None:
    folder = Path(checks.__file__).parent
    bare = [path.name for path in sorted(folder.glob("*.py")) if re.search(r"\bFinding\(", path.read_text("utf-8"))]
    assert bare == ["__init__.py"], "only the fault of a rule itself is no sentence of a rule"


def test_mini_library_is_clean(mini: Path) -> None:
    assert everything_found(load(mini)) == []
