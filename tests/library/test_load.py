"""Loading a library: what is missing, what is left out, and what is still read."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from keytool.library import load


def messages(root: Path) -> list[tuple[str, str]]:
    return [(each.place.file, each.message) for each in load(root).findings]


@pytest.mark.parametrize("name", ["vocabulary.yaml", "guides/making-the-slide.yaml"])
def test_a_file_that_cannot_be_done_without(mini: Path, name: str) -> None:
    (mini / "keydata" / name).unlink()
    assert messages(mini) == [(f"keydata/{name}", "The file is missing.")]


@pytest.mark.parametrize("name", ["terms.yaml", "bench/shortcuts.yaml"])
def test_a_file_that_can_be_done_without(mini: Path, name: str) -> None:
    (mini / "keydata" / name).unlink()
    assert messages(mini) == []


def test_schemas_missing(mini: Path) -> None:
    shutil.rmtree(mini / "keydata/schema")
    assert messages(mini) == [("keydata/schema", "The schemas are missing.")]


def test_empty_library(tmp_path: Path) -> None:
    (tmp_path / "keydata").mkdir()
    assert len(messages(tmp_path)) == 1


def test_a_broken_file_is_left_out_and_the_rest_is_read(mini: Path) -> None:
    (mini / "keydata/entries/debris/coat-button.yaml").write_text("id: coat-button\nkind: [", "utf-8")
    loaded = load(mini)
    assert loaded.files.broken == {"coat-button"}
    assert "coat-button" not in loaded.library.entries and "cuff-button" in loaded.library.entries
    assert len(loaded.problems) == 1


def test_both_names_of_a_misnamed_file_are_broken(mini: Path) -> None:
    folder = mini / "keydata/entries/debris"
    (folder / "coat-button.yaml").rename(folder / "overcoat.yaml")
    assert load(mini).files.broken == {"coat-button", "overcoat"}


def test_hidden_files_are_passed_over(mini: Path) -> None:
    (mini / "keydata/entries/debris/.coat-button.yaml.swp").write_text("x", "utf-8")
    assert messages(mini) == []


def test_findings_stand_in_the_order_of_the_files(mini: Path) -> None:
    for name in ("terms.yaml", "cautions.yaml", "keys/buttons.yaml"):
        (mini / "keydata" / name).write_text("", "utf-8")
    assert [name for name, _ in messages(mini)] == ["keydata/cautions.yaml", "keydata/keys/buttons.yaml", "keydata/terms.yaml"]


def test_places_lead_to_the_file(mini: Path) -> None:
    files = load(mini).files
    place = files.place("key", "buttons", ("couplets", "rim", "leads", "flat", "end"))
    line = (mini / place.file).read_text("utf-8").splitlines()[place.line - 1]
    assert line[place.column - 1 :] == "cuff-button"
    place = files.place_of("quantities", "narrow-button", "value")
    line = (mini / place.file).read_text("utf-8").splitlines()[place.line - 1]
    assert line[place.column - 1 :].startswith("12,")
