"""What the form gave is taken over in one command: looked at first, then written whole or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest

from keytool.library import load
from tests.conftest import everything_found
from tests.contribute.helping import part, run
from tests.contribute.test_new import snapshot, words

ENTRY = """id: tarn-end-button
kind: genus
theme: debris
names: {common: Tarn End button}
within: [button]
summary: An invented button of the Tarn End market garden.
commonness: {class: rare, basis: {kind: memory}}
characters:
  holes: {states: [four], basis: {kind: memory}}
  width: {low: 14, high: 16, unit: mm, basis: {kind: memory}}
  rim: {states: [raised], basis: {kind: memory}}
  light: {states: [shiny], basis: {kind: memory}}
mistaken-for:
  - {entry: shirt-button, by: Look whether it shines., basis: {kind: memory}}
contributors: [Ilse Okafor]
reviewed: "2026-11-25"
"""
COUPLET = """
# Belongs into other files:
# In keydata/entries/debris/shirt-button.yaml, under mistaken-for:
#   - {entry: tarn-end-button, by: Look whether it shines., basis: {kind: memory}}
# In keydata/keys/buttons.yaml, at couplets.rim.leads.raised, write couplet: tarn-end-button-light instead of end: shirt-button
# and under couplets:
#   tarn-end-button-light:
#     asks: Does it gleam like wet slate?
#     leads:
#       tarn-end-button:
#         text: Gleams
#         when: {light: [shiny]}
#         end: tarn-end-button
#       the-rest:
#         text: No gleam
#         when: {light: [dull]}
#         end: shirt-button

# To take this over, with a look first at what it would change: wetmount take tarn-end-button.yaml
"""
STATE = """In keydata/characters/rim.yaml, under states:
  rolled: {name: rolled, about: The edge is rolled over.}
In keydata/entries/debris/coat-button.yaml, at characters.rim.states, add: rolled
In keydata/keys/buttons.yaml, at couplets.rim.leads.raised.when.rim, add: rolled
"""


@pytest.fixture
def root(mini: Path) -> Path:
    return part(mini)


def file(root: Path, text: str) -> str:
    """The text as a file that came by mail."""
    path = root.parent / "tarn-end-button.yaml"
    path.write_bytes(text.replace("\n", "\r\n").encode())
    return str(path)


def test_an_entry_and_its_couplet_are_taken_over_in_the_words_they_were_sent_in(root: Path) -> None:
    result = run(root, "take", file(root, ENTRY + COUPLET), "--yes")
    assert result.exit_code == 0, result.output
    assert everything_found(load(root)) == []
    couplet = load(root).library.keys["buttons"].couplets["tarn-end-button-light"]
    assert couplet.asks == "Does it gleam like wet slate?"
    assert [lead.text for lead in couplet.leads.values()] == ["Gleams", "No gleam"]
    assert [each.entry for each in load(root).library.entries["shirt-button"].mistaken_for].count("tarn-end-button") == 1
    written = (root / "keydata/entries/debris/tarn-end-button.yaml").read_text("utf-8")
    assert written == ENTRY, "as it was sent, without what belongs elsewhere"
    assert "Tarn End button has no drawing yet" in words(result.output)


def test_a_dry_run_shows_every_line_that_would_change_and_writes_nothing(root: Path) -> None:
    before, sent = snapshot(root), file(root, ENTRY + COUPLET)
    result = run(root, "take", sent, "--dry-run")
    assert result.exit_code == 0, result.output
    assert f"new: keydata/entries/debris/tarn-end-button.yaml, {len(ENTRY.splitlines())} lines" in result.output
    assert "\n    -        end: shirt-button\n" in result.output and "\n    +        couplet: tarn-end-button-light\n" in result.output
    assert "Gleams → Tarn End button" in words(result.output)
    assert words(result.output).endswith("Every file is right. Every proof holds. Nothing was written.")
    assert snapshot(root) == before


def test_it_is_written_only_after_a_yes(root: Path) -> None:
    before, sent = snapshot(root), file(root, ENTRY + COUPLET)
    assert run(root, "take", sent, typed="no\n").exit_code == 1
    assert run(root, "take", sent).exit_code == 2, "the input ends at the question"
    assert snapshot(root) == before
    assert run(root, "take", sent, typed="yes\n").exit_code == 0
    assert snapshot(root) != before


def test_a_collision_without_a_couplet_is_told_and_one_is_offered(root: Path) -> None:
    before, sent = snapshot(root), file(root, ENTRY)
    result = run(root, "take", sent, "--yes")
    assert result.exit_code == 1
    assert "COLLISION: it comes out at Shirt button" in words(result.output) and "so nothing was written" in words(result.output)
    assert snapshot(root) == before
    result = run(root, "take", sent, typed="yes\nno\nyes\n")
    assert result.exit_code == 0, result.output
    assert everything_found(load(root)) == []


def test_a_state_reaches_its_character_its_entry_and_its_lead(root: Path) -> None:
    result = run(root, "take", file(root, STATE), "--yes", "--even-so")
    assert result.exit_code == 0, result.output
    library = load(root).library
    assert library.characters["rim"].states["rolled"].name == "rolled"
    assert "rolled" in library.entries["coat-button"].statements["rim"].showing.ids
    assert "rolled" in library.keys["buttons"].couplets["rim"].leads["raised"].when["rim"].ids


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("keydata/keys/buttons.yaml, at", "keydata/../../keys.yaml, at", "is no file of this library that holds one key"),
        ("instead of end: shirt-button", "instead of end: coat-button", "that lead goes to 'shirt-button' now: the library has changed"),
        ("leads.raised, write", "leads.lowered, write", "there is no such lead now"),
        ("        text: Gleams", "text: Gleams", "is nothing the form writes"),
        ("#     leads:", "#     leads: [", "cannot be read"),
        ("kind: genus", "kind: genius", "tarn-end-button.yaml:2:7: 'genius' is not a word for 'kind'."),
        ("id: tarn-end-button", "id: ../tarn-end-button", "tarn-end-button.yaml:1:5"),
        ("id: tarn-end-button", "id: coat-button", "is the id of keydata/entries/debris/coat-button.yaml already"),
    ],
)
def test_what_does_not_fit_is_refused_with_one_message(root: Path, old: str, new: str, said: str) -> None:
    before, text = snapshot(root), ENTRY + COUPLET
    assert old in text
    result = run(root, "take", file(root, text.replace(old, new)), "--yes")
    assert result.exit_code == 1, result.output
    assert said in words(result.output) and "Nothing was written" in words(result.output)
    assert snapshot(root) == before


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "holds nothing to take over"),
        (b"# only a comment\n", "holds nothing to take over"),
        (b"\xff\xfe\x00", "is no UTF-8 text"),
        (b"q" * 1_000_001, "is larger than anything the form makes"),
        (b"wetmount photo add PHOTOGRAPH --entry coat-button\n", "is the command that takes in a photograph"),
        (b"[1, 2, 3]\n", "a list"),
        (b"a: [\n", "This is not YAML"),
        (b"In keydata/characters/rim.yaml, under states:\n", "cannot be read"),
    ],
)
def test_a_file_that_the_form_did_not_make_is_told_so(root: Path, data: bytes, said: str) -> None:
    before, path = snapshot(root), root.parent / "sent.txt"
    path.write_bytes(data)
    result = run(root, "take", str(path), "--yes")
    assert result.exit_code == 1 and said in words(result.output), result.output
    assert snapshot(root) == before


def test_a_couplet_may_be_reworded_in_the_talk(root: Path) -> None:
    sent = file(root, ENTRY)
    result = run(root, "take", sent, typed="yes\nyes\nGleams\n\nDoes it gleam?\nyes\n")
    assert result.exit_code == 0, result.output
    couplet = load(root).library.keys["buttons"].couplets["tarn-end-button-light"]
    assert couplet.asks == "Does it gleam?" and [lead.text for lead in couplet.leads.values()] == ["Gleams", "Dull"]
