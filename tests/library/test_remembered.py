"""A clean library is remembered by its content, and never shown when anything has changed."""

from pathlib import Path

import pytest

from keytool.cli.opening import library
from keytool.library import remembered


@pytest.fixture(autouse=True)
def nothing_remembered(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def test_a_clean_library_is_recalled_as_it_was(mini: Path) -> None:
    assert remembered.recall(mini) is None
    first = library(mini)
    again = remembered.recall(mini)
    assert again == first


def test_one_changed_byte_is_read_anew(mini: Path) -> None:
    library(mini)
    path = mini / "keydata/terms.yaml"
    path.write_text(path.read_text("utf-8").replace("A loop", "A ring"), "utf-8")
    assert remembered.recall(mini) is None
    assert any("A ring" in term.means for term in library(mini).terms.values())


def test_a_spoilt_memory_is_passed_over(mini: Path) -> None:
    library(mini)
    remembered._file(mini).write_bytes(b"nonsense")
    assert remembered.recall(mini) is None
    assert library(mini).keys


def test_without_a_cache_folder_everything_still_works(mini: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert library(mini).keys
