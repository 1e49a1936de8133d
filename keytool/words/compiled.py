"""The lay words of a library made ready to hear with: plain data, the same that the page's script reads."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Any

from keytool.library.model import Character, Library, State
from keytool.library.value import Interval
from keytool.library.wording import plain
from keytool.words.fold import Token, fold, tokens
from keytool.words.likeness import compile_likeness

SAID, TOLD = 100, 70
"""What a phrase weighs: as people say it, and as the library describes the state."""
NARROW, WIDE = 0.65, 80
"""What a match counts for a character that hardly any entry states and that was not named; from so many entries on it counts in full."""


def compile_words(library: Library) -> dict[str, Any]:
    """Everything `hear` needs, as plain data that can be written as JSON.

    `states` holds (character, state, phrases), a phrase being its weight and its words, denied ones with "!", those not made out
    with "?"; `weights` how telling each word is, in hundredths; `found` the numbers of the states it stands in; `groups` the
    groups of words of one meaning each belongs to; `first-looks` the picture that a word for the thing points at;
    `field-once` how wide the field is at a total magnification of 1, in micrometres.
    """
    lay = library.lay
    spelling = {name: value for name, value in lay.spelling.items() if name not in ("alike", "first-looks", "samples")}
    states = [
        (character, state, _phrases(library, character, state))
        for character in library.characters.values()
        for state in character.states.values()
    ]
    found: dict[str, list[int]] = {}
    for number, (_, _, phrases) in enumerate(states):
        for word in sorted({word.lstrip("!?") for _, words in phrases for word in words.split()}):
            found.setdefault(word, []).append(number)
    forms = spelling["forms"]
    spelling["measured-across"] = {fold(word, forms): below for word, below in spelling["measured-across"].items()}
    groups: dict[str, list[int]] = {}
    for number, words in enumerate(lay.spelling["alike"]):
        for word in dict.fromkeys(each.word for phrase in words for each in tokens(phrase, spelling)):
            groups.setdefault(word, []).append(number)
    return {
        "spelling": spelling,
        "weights": {word: round(100 * math.log(1 + len(states) / len(where))) for word, where in sorted(found.items())},
        "found": dict(sorted(found.items())),
        "groups": groups,
        "field-once": library.quantities["field-number"].low * library.quantities["eyepiece-power"].low * 1000
        if {"field-number", "eyepiece-power"} <= library.quantities.keys()
        else 0.0,
        "parts": sorted({fold(each, forms) for each in spelling["parts"]}),
        "kinds": {fold(each, forms): list(themes) for each, themes in spelling["kinds"].items()},
        "first-looks": {
            fold(word, forms): "" if picture == "none" else picture
            for picture, words in lay.spelling["first-looks"].items()
            for word in words
        },
        "samples": [
            [[fold(word, forms) for word in phrase.split()], id] for id, phrases in lay.spelling["samples"].items() for phrase in phrases
        ],
        "characters": {each.id: _about(library, each) for each in library.characters.values()},
        "states": [[character.id, state.id, [list(each) for each in phrases]] for character, state, phrases in states],
        "likeness": compile_likeness(library),
        "sizes": [
            [id, each.along, [fold(word, forms) for word in each.of], [fold(word, forms) for word in each.not_of], _most(library, id)]
            for id, each in lay.sizes.items()
        ],
    }


def _most(library: Library, id: str) -> float:
    """The largest size of a character that anything in the library has, in base units."""
    stated = [entry.statements[id].showing for entry in library.entries.values() if id in entry.statements]
    return max((each.high for each in stated if isinstance(each, Interval) and each.high < math.inf), default=0.0)


def written(token: Token) -> str:
    """A token as a phrase keeps it."""
    return ("?" if token.unclear else "!" if token.denied else "") + token.word


def _phrases(library: Library, character: Character, state: State) -> list[tuple[int, str]]:
    spelling = library.lay.spelling
    own = [*library.lay.states.get(character.id, {}).get(state.id, ()), state.name]
    told = re.split(r"[.;:,]", plain(library, state.about))
    phrases: dict[str, int] = {}
    for weight, texts in ((SAID, own), (TOLD, told)):
        for text in texts:
            words = " ".join(dict.fromkeys(written(each) for each in tokens(text, spelling)))
            if words:
                phrases.setdefault(words, weight)
    return [(weight, words) for words, weight in phrases.items()]


def _about(library: Library, character: Character) -> dict[str, Any]:
    """The themes in which a character is stated, how widely it is used (in hundredths), and the words of its name and question."""
    spelling = library.lay.spelling
    stating = [entry for entry in library.entries.values() if character.id in entry.statements]
    words = dict.fromkeys(each.word for each in _named(library, character, spelling))
    wide = round(100 * (NARROW + (1 - NARROW) * min(1.0, math.sqrt(len(stating) / WIDE))))
    return {"themes": sorted({entry.theme for entry in stating}), "wide": wide, "words": list(words)}


def _named(library: Library, character: Character, spelling: Any) -> Iterator[Token]:
    for text in (character.name, character.asks):
        yield from tokens(plain(library, text), spelling)
