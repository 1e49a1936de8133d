"""What a build that was killed leaves beside its site is taken away by the next, and nothing is lost."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from keytool.pages.build import clear_begun


def ended() -> int:
    """The number of a process that has ended."""
    process = subprocess.Popen([sys.executable, "-c", ""])
    process.wait()
    return process.pid


def begun(out: Path, process: int, *parts: str) -> Path:
    folder = out.parent / f".{out.name}-{process}-ab12_cd3"
    for part in parts:
        (folder / part).mkdir(parents=True)
        (folder / part / "index.html").write_text(part, "utf-8")
    return folder


def test_the_folder_of_a_killed_build_is_taken_away(tmp_path: Path) -> None:
    out = tmp_path / "site"
    out.mkdir()
    left = begun(out, ended(), "new")
    clear_begun(out)
    assert not left.exists() and out.is_dir()


def test_a_site_that_was_set_aside_comes_back(tmp_path: Path) -> None:
    out = tmp_path / "site"
    begun(out, ended(), "old", "new")
    clear_begun(out)
    assert (out / "index.html").read_text("utf-8") == "old"
    assert [each.name for each in tmp_path.iterdir()] == ["site"]


def test_a_build_that_still_runs_and_folders_of_others_are_left_alone(tmp_path: Path) -> None:
    out = tmp_path / "site"
    mine = begun(out, os.getpid(), "new")
    other = tmp_path / ".site-notes"
    other.mkdir()
    clear_begun(out)
    assert mine.is_dir() and other.is_dir()
