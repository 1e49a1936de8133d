"""What growers type is heard as observations, the same in Python and in the page's script.

The words rest on memory and on wording met in use (`keydata/words/`); the cases are our own, after constructed unknowns.
"""

from __future__ import annotations

import json
import os
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import Trail, compiled, written
from keytool.identify.library_data import library_data
from keytool.library import Library
from keytool.words import Heard, compile_words, hear
from keytool.words.fold import fold
from keytool.words.hear import slips, taken
from keytool.words.understood import understand
from tests.conftest import read_cases

ROOT = Path(__file__).parents[2]
CASES = read_cases(ROOT / "tests" / "cases" / "lay-words.yaml")
SCRIPTS = [ROOT / "site" / "assets" / "words" / name for name in ("fold.js", "hear.js")]
AMONG_FIRST = 6
MORE = [
    "Grey, not quite round; 20–25 µm across. It didn't stop & I couldn't see whether there's a tail",
    "ÉLONGATED “thing”, 1,200 um long, 3/4 mm, 5,5 microns thick, perhaps brown",
    "no no not nothing without",
    "__proto__ constructor toString hasOwnProperty",
    "tail like a ha",
    "wiggl",
    "a" * 3000,
    "½ mm, ２０ um, 10^3 µm",
    "fills a third of the field at 400x, or half my view at 100 x, a quarter of the cell",
    ".4 mm long, like a hair, flaps on its head, .5mm; ~.3 mm",
    "Cross walls not seen, a spider-web of thread worms everywhere. Legs aren't there",
]


@pytest.fixture(scope="module")
def words(library: Library) -> dict[str, Any]:
    return compile_words(library)


def short(heard: Heard) -> str:
    """An observation as the cases write it: "tail=blunt", "not tail=blunt", "unsure tail", "body-length=20..30"."""
    value = heard.state
    if heard.low is not None or heard.high is not None:
        low, high = ("" if each is None else f"{each:g}" for each in (heard.low, heard.high))
        value = low if low == high else f"{low}..{high}"
    return ("" if heard.says == "is" else f"{heard.says} ") + heard.character + (f"={value}" if value else "")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["said"] or "nothing")
def test_what_is_said_is_heard(words: dict[str, Any], case: dict[str, Any]) -> None:
    heard = [short(each) for each in hear(words, case["said"])]
    assert [each for each in case["hears"] if each not in heard[:AMONG_FIRST]] == [], heard
    assert [each for each in case.get("never", []) if each in heard] == []


def test_every_state_is_found_by_its_own_lay_words(words: dict[str, Any], library: Library) -> None:
    missed = []
    for character, states in library.lay.states.items():
        for state, phrases in states.items():
            found = [{(each.character, each.state) for each in hear(words, phrase)} for phrase in phrases[:3]]
            missed += [(character, state)] if not any((character, state) in each for each in found) else []
    assert missed == []


def test_what_is_taken_unasked_is_sure_and_said_with_words_of_few_meanings(words: dict[str, Any]) -> None:
    assert {short(each) for each in taken(hear(words, "a worm 600 um long, tail like a hair, no knobs at the spear"))} >= {
        "body-length=600",
        "tail=drawn-out",
        "spear-base=plain",
    }
    same = [Heard("is", character, "any", None, None, 0.8, 0, 5) for character in ("one", "two", "three")]
    assert taken(same) == []
    assert taken(same[:2]) == same[:2]
    assert taken([same[0], Heard("is", "two", "any", None, None, 0.6, 0, 5)]) == same[:1]


def test_hearing_can_be_kept_to_some_characters(words: dict[str, Any]) -> None:
    assert {each.character for each in hear(words, "brown and stiff, 20 um long", among=["body-colour"])} == {"body-colour"}


def test_the_last_word_may_be_unfinished_while_typing(words: dict[str, Any]) -> None:
    assert "tail=drawn-out" in [short(each) for each in hear(words, "tail like a ha", typing=True)[:3]]


@pytest.mark.parametrize(
    "alike",
    [
        ("fibre", "fiber", "fibres"),
        ("mould", "mold", "moulds"),
        ("colour", "color", "coloured"),
        ("amoeba", "ameba", "amoebae", "ameoba"),
        ("grey", "gray"),
        ("hypha", "hyphae", "hifa"),
        ("fungus", "fungi"),
        ("armoured", "armored"),
        ("wriggle", "wriggling", "wriggled", "wriggly"),
        ("stripe", "striped", "stripy"),
        ("mycorrhiza", "mycorrhizae", "mycorhiza"),
        ("faecal", "fecal"),
        ("centre", "center"),
        ("bacterium", "bacteria"),
    ],
)
def test_spellings_of_one_word_are_one(library: Library, alike: tuple[str, ...]) -> None:
    assert len({fold(each, library.lay.spelling["forms"]) for each in alike}) == 1


def test_other_words_stay_apart(library: Library) -> None:
    forms = library.lay.spelling["forms"]
    assert len({fold(each, forms) for each in ("spine", "spin", "bar", "bare", "mite", "mit", "star", "stare")}) == 8


def test_slips_are_counted_with_swaps() -> None:
    assert (slips("nematode", "nemaotde", 2), slips("mite", "mites", 1), slips("rod", "root", 1)) == (1, 1, 2)


def test_the_script_hears_the_same(words: dict[str, Any], browser: Any) -> None:
    page = browser.new_page()
    for script in SCRIPTS:
        page.add_script_tag(content=script.read_text("utf-8"))
    texts = [*(case["said"] for case in CASES), *MORE, " ".join(case["said"] + "." for case in CASES[:12])]
    run = "([data, texts, typing]) => texts.map((text) => wetmountWords.hear(data, text, {typing}))"
    take = "([data, texts]) => texts.map((text) => wetmountWords.taken(wetmountWords.hear(data, text)))"
    plain = json.loads(json.dumps(words))
    assert page.evaluate(take, [plain, texts]) == [[asdict(each) for each in taken(hear(words, text))] for text in texts]
    for typing in (False, True):
        given = page.evaluate(run, [plain, texts, typing])
        for text, theirs in zip(texts, given, strict=True):
            assert [asdict(each) for each in hear(words, text, typing=typing)] == theirs, text[:80]
    page.close()


def test_the_script_understands_whole_texts_the_same(words: dict[str, Any], library: Library, browser: Any) -> None:
    model = compiled(library)
    page = browser.new_page()
    words_scripts = [ROOT / "site" / "assets" / "words" / f"{name}.js" for name in ("likeness", "understood")]
    for script in (ROOT / "site" / "assets" / "engine.js", *SCRIPTS, *words_scripts):
        page.add_script_tag(content=script.read_text("utf-8"))
    spoken = read_cases(ROOT / "tests" / "cases" / "described-as-spoken.yaml")
    step = 1 if os.environ.get("WETMOUNT_WHOLE") else 3
    texts = [*(case["said"] for case in spoken[::step]), *MORE, "A worm? No, a thread. I think it branches, maybe.", "", "from compost tea"]
    run = """([library, data, texts]) => {
        const engine = wetmountEngine.open(library), fresh = () => ({sample: "", pictures: [], legs: [], saw: []});
        return texts.map((text) => {
            const {places, called} = wetmountUnderstood.understand(engine, data, fresh(), text);
            return {address: engine.write(wetmountUnderstood.addedTo(fresh(), places, called)), places: places.map((each) => [each.start, each.end])};
        });
    }"""
    data = json.loads(json.dumps(words))
    for text, theirs in zip(texts, page.evaluate(run, [json.loads(json.dumps(library_data(model))), data, texts]), strict=True):
        ours = understand(model, words, Trail(), text)
        assert written(ours.added_to(Trail())) == theirs["address"], text[:80]
        assert [[each.start, each.end] for each in ours.places] == theirs["places"], text[:80]
    page.close()
