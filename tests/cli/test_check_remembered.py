"""A second `wetmount check` of the same files says the same without looking again; one changed byte, and it looks again."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from keytool.cli import check
from keytool.cli.check import check_command
from tests.conftest import copy_mini


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return copy_mini(tmp_path / "mini")


def test_what_was_found_is_remembered_until_a_byte_changes(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    looked = []
    real = check._looked
    monkeypatch.setattr(check, "_looked", lambda loaded: looked.append(loaded) or real(loaded))

    def run() -> tuple[int, str]:
        result = CliRunner().invoke(check_command, [], obj=root)
        return result.exit_code, result.output

    first = run()
    assert first[0] == 0 and run() == first and len(looked) == 1
    path = root / "keydata/entries/debris/coat-button.yaml"
    path.write_text(path.read_text("utf-8").replace("kind: object", "kind: objet"), "utf-8")
    broken = run()
    assert broken[0] == 1 and "'objet' is not a word" in broken[1] and len(looked) == 2
    assert run() == broken and len(looked) == 2, "what is wrong is remembered too"


def test_a_link_in_the_place_of_a_file_with_the_same_bytes_is_found(root: Path) -> None:
    assert CliRunner().invoke(check_command, [], obj=root).exit_code == 0
    path = root / "keydata/entries/debris/coat-button.yaml"
    elsewhere = path.rename(root / "elsewhere.yaml")
    path.symlink_to(elsewhere)
    result = CliRunner().invoke(check_command, [], obj=root)
    assert result.exit_code == 1 and "This is a link to another place." in result.output
