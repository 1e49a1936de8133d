"""A clean library is remembered by its content, and never shown when anything has changed."""

import os
from pathlib import Path
from typing import Any

import pytest

from keytool.cli.opening import library
from keytool.library import disk_cache


@pytest.fixture(autouse=True)
def nothing_remembered(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def known(root: Path) -> Any:
    return disk_cache.recall("library", disk_cache.key_of([root / "keydata", disk_cache.LIBRARY_CODE]))


def test_a_clean_library_is_recalled_as_it_was(mini: Path) -> None:
    assert known(mini) is None
    first = library(mini)
    assert known(mini) == first


def test_one_changed_byte_is_read_anew(mini: Path) -> None:
    library(mini)
    path = mini / "keydata/terms.yaml"
    path.write_text(path.read_text("utf-8").replace("A loop", "A ring"), "utf-8")
    assert known(mini) is None
    assert any("A ring" in term.means for term in library(mini).terms.values())


def test_a_spoilt_memory_is_passed_over(mini: Path) -> None:
    library(mini)
    (kept,) = Path(os.environ["XDG_CACHE_HOME"]).rglob("*.library")
    kept.write_bytes(b"nonsense")
    assert known(mini) is None
    assert library(mini).keys


def test_without_a_cache_folder_everything_still_works(mini: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert library(mini).keys
