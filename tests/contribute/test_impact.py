"""What a change does to identification is told, in words and as data, and the work tree is not touched."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from keytool.contribute import revision
from keytool.contribute.impact import Moved, Names, Together, impact
from keytool.library import load
from tests.contribute.helping import part, run
from tests.contribute.test_new import BUTTON, FILE, snapshot, words


@pytest.fixture
def parted(mini: Path) -> Path:
    return part(mini)


@pytest.fixture
def older(mini: Path, tmp_path: Path) -> Path:
    """A copy of the mini library, to be compared with."""
    return shutil.copytree(mini, tmp_path / "older")


def change(root: Path, name: str, old: str, new: str) -> None:
    path = root / "keydata" / name
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


def test_nothing_changed_is_said_in_one_line(mini: Path, older: Path) -> None:
    text = run(mini, "impact", "--base", str(older)).output
    assert text.startswith(f"# What this changes, against {older}\n\nNothing to tell of: proofs that fail; entries that end elsewhere; ")


def test_an_entry_that_ends_elsewhere_and_a_pair_no_longer_told_apart(mini: Path, older: Path) -> None:
    change(mini, "keys/buttons.yaml", "when: {rim: [raised]}\n        end: shirt-button", "when: {rim: [raised]}\n        end: button")
    change(mini, "keys/buttons.yaml", "when: {rim: [flat]}\n        end: cuff-button", "when: {rim: [flat]}\n        end: button")
    found = impact(load(older).library, load(mini).library)
    assert found.moved == (
        Moved("buttons", "cuff-button", ("cuff-button",), ("button",)),
        Moved("buttons", "shirt-button", ("shirt-button",), ("button",)),
    )
    assert found.no_longer_told == (Together("buttons", "cuff-button", "shirt-button", "button"),)
    assert found.couplets == Names((), (), ("buttons/rim",))
    text = run(mini, "impact", "--base", str(older)).output
    assert "- Buttons: Shirt button ended at Shirt button, now at Button" in text
    assert "- Buttons: Cuff button and Shirt button, both at Button" in text
    back = impact(load(mini).library, load(older).library)
    assert back.now_told == found.no_longer_told and back.no_longer_told == ()


def test_questions_gained_and_sureness_lost_are_told_with_figures(mini: Path, older: Path) -> None:
    change(mini, "keys/buttons.yaml", "first: holes", "first: rim-first")
    change(
        mini,
        "keys/buttons.yaml",
        "couplets:\n",
        """couplets:
  rim-first:
    asks: Does the rim stand up?
    leads:
      up: {text: Raised, when: {rim: [raised]}, couplet: holes}
      down: {text: Flat, when: {rim: [flat]}, couplet: holes}
""",
    )
    change(mini, "characters/holes.yaml", "rate: 0.1", "rate: 0.4")
    found = impact(load(older).library, load(mini).library)
    (questions,) = found.questions
    assert (questions.key, questions.most_before, questions.most_after) == ("buttons", 3, 4)
    assert questions.after == pytest.approx(questions.before + 1)
    shank = next(each for each in found.sureness if each.entry == "shank-button")
    assert shank.after < shank.before - 0.05
    text = run(mini, "impact", "--base", str(older)).output
    assert "at most 3 before, 4 now" in text
    assert "- Buttons, Shank button: less sure" in text


def test_a_proof_that_fails_comes_first(parted: Path, tmp_path: Path) -> None:
    older = shutil.copytree(parted, tmp_path / "older")
    assert run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--even-so").exit_code == 0
    text = run(parted, "impact", "--base", str(older)).output
    assert text.index("## Proofs that fail\n\n- Buttons: its proof **fails now**") < text.index("## Entries\n\n- new: tarn-end-button")
    assert "- Buttons: Tarn End button and Shirt button, both at Shirt button" in text
    shutil.rmtree(older)
    shutil.copytree(parted, older)
    assert run(parted, "new", "couplet", "--for", "tarn-end-button", "--yes").exit_code == 0
    assert "its proof failed and holds again" in run(parted, "impact", "--base", str(older)).output


def test_a_key_whose_card_no_longer_fits_is_told(mini: Path, older: Path) -> None:
    change(mini, "keys/buttons.yaml", "text: Edge flat\n", "text: Edge quite flat\n")
    before, after = load(older).library, load(mini).library
    found = impact(before, after, lambda library, key: "too high" if library is after and key.id == "buttons" else "")
    assert [(card.key, card.why) for card in found.cards or ()] == [("buttons", "too high")]
    tried: list[str] = []
    impact(before, after, lambda library, key: tried.append(key.id) or "")
    assert set(tried) == {"buttons"}, "a key that did not change is not tried"


def test_a_new_set_of_look_alikes_is_told(mini: Path, older: Path) -> None:
    told = run(
        mini,
        "new",
        "look-alike",
        "--entries",
        "coat-button,cuff-button",
        "--title",
        "Coat or cuff at Tarn End?",
        "--about",
        "Both are flat.",
        "--decisive",
        "Measure them.",
        "--yes",
    )
    assert told.exit_code == 0, told.output
    assert "## Sets of look-alikes\n\n- new: coat-or-cuff-at-tarn-end\n" in run(mini, "impact", "--base", str(older), "--no-cards").output


def test_json_has_every_part(mini: Path, older: Path) -> None:
    change(mini, "entries/debris/coat-button.yaml", "commonness: {class: occasional", "commonness: {class: rare")
    found = json.loads(run(mini, "impact", "--base", str(older), "--format", "json", "--no-cards").output)
    assert found["entries"]["changed"] == ["coat-button"]
    assert found["cards"] is None
    assert set(found) >= {
        "moved",
        "no_longer_told",
        "now_told",
        "sureness",
        "questions",
        "unproved",
        "couplets",
        "characters",
        "keys",
        "look_alikes",
        "photos",
    }


def git(folder: Path, *words_: str) -> None:
    who = ("-c", "user.name=x", "-c", "user.email=x@example.org")
    subprocess.run(["git", "-C", str(folder), *who, *words_], check=True, capture_output=True)


def test_a_revision_is_read_without_touching_the_work_tree(parted: Path) -> None:
    git(parted, "init", "-q")
    git(parted, "add", ".")
    git(parted, "commit", "-q", "-m", "first")
    assert run(parted, "new", "entry", *BUTTON, "--shows", "light=shiny", "--couplet").exit_code == 0
    before = {name: data for name, data in snapshot(parted).items() if not name.startswith(".git/")}
    text = run(parted, "impact").output
    assert text.startswith("# What this changes, against HEAD\n")
    assert "- new: tarn-end-button" in text
    assert {name: data for name, data in snapshot(parted).items() if not name.startswith(".git/")} == before
    assert FILE in before
    result = run(parted, "impact", "--base", "no-such-branch")
    assert result.exit_code == 1
    assert "'no-such-branch' is neither a folder with a keydata folder in it nor a revision" in words(result.output)


def test_a_revision_is_never_an_option_of_git(mini: Path) -> None:
    result = run(mini, "impact", "--base", "--output=/tmp/x")
    assert result.exit_code == 1
    assert "is neither a folder" in result.output


def test_no_git_and_no_repository_are_said_plainly(mini: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    result = run(mini, "impact")
    assert result.exit_code == 1
    assert "'HEAD' is neither a folder with a keydata folder in it nor a revision that git can give" in words(result.output)

    def missing(*_: object, **__: object) -> None:
        raise FileNotFoundError("git")

    monkeypatch.setattr(revision.subprocess, "run", missing)
    result = run(mini, "impact")
    assert result.exit_code == 1
    assert "git, which would know a revision of that name, is not installed" in words(result.output)


def test_an_older_library_with_problems_is_said(mini: Path, older: Path) -> None:
    (older / "keydata/terms.yaml").write_text("shank: {term: shank}\n", "utf-8")
    result = run(mini, "impact", "--base", str(older))
    assert result.exit_code == 1
    assert "has problems, so there is nothing to compare with; the first is at keydata/terms.yaml:1:1" in words(result.output)


def test_an_answer_that_leads_elsewhere_is_named_with_the_lead_it_left(mini: Path, older: Path) -> None:
    """A state is moved from one lead to another: no entry that is stated ends elsewhere, and yet whoever sees it does."""
    change(mini, "keys/buttons.yaml", "when: {holes: [none]}", "when: {holes: [none, two]}")
    change(mini, "keys/buttons.yaml", "when: {holes: [two, four]}", "when: {holes: [four]}")
    change(mini, "keys/buttons.yaml", "text: Edge flat", "text: The edge is flat")
    found = impact(load(older).library, load(mini).library)
    assert [(each.couplet, each.lead, each.gained, each.lost) for each in found.leads] == [
        ("holes", "closed", ("holes=two",), ()),
        ("holes", "open", (), ("holes=two",)),
        ("rim", "flat", (), ()),
    ]
    text = run(mini, "impact", "--base", str(older)).output
    assert "- Buttons, couplet 1 (holes), 'No hole; light does not pass': takes holes 'two holes'" in text
    assert "- Buttons, couplet 1 (holes), 'Holes; light passes': no longer takes holes 'two holes'" in text
    assert "'Edge flat' now reads 'The edge is flat'" in text


def test_what_is_walked_as_it_was_is_not_walked_again(mini: Path, older: Path) -> None:
    change(mini, "keys/buttons.yaml", "text: Edge flat\n", "text: Edge quite flat\n")
    looked: list[str] = []
    impact(load(older).library, load(mini).library, told=looked.append)
    after = [each for each in looked if each.endswith(", after")]
    assert after == ["Buttons, after"]
    assert len(looked) > 2, "before the change every key is"
