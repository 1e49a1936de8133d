"""Sentences shared by page, terminal and script: forms by the plural rules of Unicode, a second language as files alone.

Plural categories are held to examples in CLDR's table of plural rules (Unicode Technical Standard 35, part 3; from memory):
English counts one and other, Polish one, few and many, Arabic all six, Japanese other alone.
"""

from __future__ import annotations

import ast
import io
import re
from pathlib import Path

import pytest
import yaml

from keytool.cli.terminal import Terminal
from keytool.cli.walking import Walking
from keytool.identify import Leg, Trail, compiled
from keytool.library import Loaded, load
from keytool.library.sentences import BASE, Sentences, categories, plural
from tests.conftest import copy_mini, everything_found
from tests.mock_language import LANGUAGE, english_left, in_mock, mocked, sentences

ROOT = Path(__file__).parents[2]
MOVED = {
    "keytool/cli/result_text.py": (),
    "keytool/cli/walking.py": (),
    "keytool/pages/undecided_help.py": (),
    "keytool/card/colophon.py": (),
    "site/assets/identify/verdict.js": (),
}
"""Files whose sentences all stand in keydata/sentences."""


@pytest.mark.parametrize(
    ("language", "n", "category"),
    [
        ("en", 1, "one"),
        ("en", 0, "other"),
        ("en", 2, "other"),
        ("pl", 1, "one"),
        ("pl", 3, "few"),
        ("pl", 5, "many"),
        ("pl", 22, "few"),
        ("ar", 0, "zero"),
        ("ar", 2, "two"),
        ("ja", 1, "other"),
        (LANGUAGE, 1, "one"),
    ],
)
def test_a_number_has_the_form_of_its_language(language: str, n: int, category: str) -> None:
    assert plural(language, n) == category
    assert category in categories(language)


@pytest.mark.browser
def test_a_browser_counts_as_python_does(browser: object) -> None:
    page = browser.new_page()  # type: ignore[attr-defined]
    for language in ("en", "de", "pl", "ar", "ja", "fr", LANGUAGE):
        there = page.evaluate("l => Array.from({length: 30}, (_, n) => new Intl.PluralRules(l).select(n))", language)
        assert there == [plural(language, n) for n in range(30)], language
    page.close()


def test_a_sentence_is_said_in_the_form_of_its_number() -> None:
    say = Sentences("en", {"left": {"one": "{n} question left", "other": "{n} questions left"}, "at": "at {place}"})
    assert [say("left", n=n) for n in (0, 1, 2)] == ["0 questions left", "1 question left", "2 questions left"]
    assert say("at", place="the rim") == "at the rim"
    with pytest.raises(KeyError):
        say("at")


def test_every_sentence_is_said_somewhere(loaded: Loaded) -> None:
    files = [*(ROOT / "keytool").rglob("*.py"), *(ROOT / "site/assets").rglob("*.js")]
    code = "\n".join(path.read_text("utf-8") for path in files)
    named = set(re.findall(r"[\"']([a-z0-9]+(?:-[a-z0-9]+)*)[\"']", code))
    assert sorted(set(loaded.library.say.by_id) - named) == []


def test_a_moved_file_holds_no_sentence() -> None:
    for name in MOVED:
        text = (ROOT / name).read_text("utf-8")
        left = [each for each in (_python(text) if name.endswith(".py") else _script(text)) if re.search(r"[A-Za-z]{2,} [a-z]{2,}", each)]
        assert left == [], name


def _python(text: str) -> list[str]:
    """The texts of a module that are no docstrings; commands of the terminal are names and no words."""
    tree = ast.parse(text)
    docs = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    found = (node for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs)
    return [node.value for node in found if not node.value.startswith("wetmount ")]


def _script(text: str) -> list[str]:
    """The texts of a script; the value of a class is a name, and "use strict" belongs to the language."""
    text = re.sub(r"/\*.*?\*/|//[^\n]*", "", text, flags=re.DOTALL)
    texts = re.findall(r'(?<!"class": )"((?:[^"\\\n]|\\.)*)"', text)
    return [each for each in texts if each not in ("use strict", "scale lead-bar")]


def test_a_second_language_is_a_folder_of_files(tmp_path: Path, loaded: Loaded) -> None:
    mini = copy_mini(tmp_path / "mini")
    folder = mini / "keydata/sentences" / LANGUAGE
    folder.mkdir()
    (folder / "all.yaml").write_text(yaml.safe_dump(sentences(loaded.library), allow_unicode=True), "utf-8")
    second = load(mini)
    assert everything_found(second) == []
    assert second.library.sentences[LANGUAGE]("first-question") == mocked("This is the first question.")
    assert second.library.say.language == BASE


def test_what_a_language_lacks_or_says_otherwise_is_found(tmp_path: Path) -> None:
    mini = copy_mini(tmp_path / "mini")
    folder = mini / "keydata/sentences/pl"
    folder.mkdir()
    lines = ["stopped: Stop", "stoped: Stop", 'taken: "Jest {word}"', "and-more: {one: i, other: i}"]
    (folder / "all.yaml").write_text("\n".join(lines) + "\n", "utf-8")
    found = {each.message.split("'")[1]: each for each in everything_found(load(mini)) if each.check == "sentences"}
    assert found["stoped"].message == "No page and no command says 'stoped'."
    assert found["taken"].message == "'taken' puts in word, but in 'en' what."
    assert "lacks the form few, many" in found["and-more"].message or "puts in nothing" in found["and-more"].message
    assert found["pl"].severity.value == "advice"
    assert load(mini).library.sentences["pl"]("first-question") == "This is the first question."


@pytest.mark.parametrize("key", ["small-animals", "threads", "nematode-mouthparts"])
def test_a_walk_in_the_mock_language_leaves_no_english_behind(loaded: Loaded, key: str) -> None:
    library = in_mock(loaded.library)
    output = io.StringIO()
    walking = Walking(compiled(library), Terminal(output), Trail(legs=(Leg(key),)))
    typed = iter(["?\n", "zz\n", "u\n", "u\n", "=\n", *["1\n"] * 14, "b\n", "q\n"])
    walking.run(typed)
    said = output.getvalue()
    assert mocked("Stuck? Try this at the microscope") in " ".join(said.split())
    assert english_left(loaded, said) == []
