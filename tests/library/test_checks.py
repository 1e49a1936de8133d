"""The list of checks, and that a check which fails does not stop the rest."""

from __future__ import annotations

from pathlib import Path

import pytest

from keytool.library import Loaded, Place, Severity, load
from keytool.library.checks import CHECKS, run, unknown_ids, unused
from tests.conftest import everything_found


def test_every_check_has_a_name_of_its_own_and_says_its_rule() -> None:
    names = [check.NAME for check in CHECKS]
    assert len(set(names)) == len(names)
    for check in CHECKS:
        for text in (check.__doc__, check.check.__doc__):
            first = (text or "").strip().splitlines()[0]
            assert first.endswith("."), check.NAME


def test_every_module_with_a_rule_is_a_check_with_a_name_of_its_own_and_says_its_rule() -> None:
    assert len(CHECKS) >= 27
    names = [check.NAME for check in CHECKS]
    assert len(set(names)) == len(names)
    assert all(check.__doc__ for check in CHECKS)


def test_a_check_that_fails_is_a_finding_and_the_rest_still_run(mini: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (mini / "keydata/terms.yaml").write_text("bobbin: {term: bobbin, means: A reel of thread.}\n", "utf-8")

    def fails(loaded: Loaded) -> object:
        raise ZeroDivisionError("by nought")

    monkeypatch.setattr(CHECKS[0], "check", fails)
    found = run(load(mini))
    assert [each.message for each in found if each.check == CHECKS[0].NAME] == [
        f"The check '{CHECKS[0].NAME}' itself failed: ZeroDivisionError: by nought."
    ]
    assert any(each.check == "markup" for each in found)


def test_names_in_a_broken_file_are_not_called_unknown(mini: Path) -> None:
    for broken in (
        "sources.yaml",
        "terms.yaml",
        "cautions.yaml",
        "bench/quantities.yaml",
        "characters/holes.yaml",
        "entries/debris/button.yaml",
        "keys/buttons.yaml",
    ):
        path = mini / "keydata" / broken
        text = path.read_text("utf-8")
        path.write_text(text + "\n\tbroken", "utf-8")
        loaded = load(mini)
        assert {each.place.file for each in everything_found(loaded)} == {f"keydata/{broken}"}, broken
        path.write_text(text, "utf-8")


def test_advice_is_no_problem(mini: Path) -> None:
    (mini / "keydata/terms.yaml").write_text(
        "shank: {term: shank, means: A loop at the back.}\nbobbin: {term: bobbin, means: A reel of thread.}\n", "utf-8"
    )
    loaded = load(mini)
    assert {each.severity for each in run(loaded)} == {Severity.ADVICE}
    assert [each.check for each in run(loaded)] == [unused.NAME]


def test_kinds_of_id_are_all_known(mini: Path) -> None:
    loaded = load(mini)
    for what in ("entry", "character", "key", "source", "quantity", "term", "caution"):
        assert unknown_ids.of_kind(loaded, what)
        assert list(unknown_ids.unknown(loaded, "x", what, "no-such-thing", Place("keydata")))


def test_real_library_has_no_problem(loaded: Loaded) -> None:
    assert [each for each in everything_found(loaded) if each.severity is Severity.PROBLEM] == []
