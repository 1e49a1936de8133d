"""Lay words belong to what exists, no word of a character is claimed by two of its states, and every state has some."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Any

from keytool.library.checks.unknown_ids import missing, not_among, unknown
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.records import LINKED
from keytool.library.yaml_file import YamlFile

NAME = "lay-words"
NO_SUCH_THING = missing(NAME, "'{name}' is no entry, key, guide, set of look-alikes, character, term or caution.")
NO_SUCH_STATE = missing(NAME, "'{character}' has no state '{state}'.")
NO_SUCH_STEP = missing(NAME, "The guide '{name}' has no step '{step}'.")
CLAIMED_TWICE = Message(
    NAME, "'{phrase}' stands for '{other}' and for '{state}' of '{character}'.", tip="Leave it with the one it fits, or say more."
)
WORDLESS = Message(
    NAME,
    "No lay word stands for '{state}' of '{character}', so nobody who types what they see will find it.",
    tip="Add some to keydata/words/states.yaml, as a grower would say it.",
    severity=Severity.ADVICE,
)
WRITTEN = "page/"
"""How the address of a page begins that is written by hand."""


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each unknown id and each word claimed twice; advice for each state without a lay word."""
    known = named(loaded)
    for kind, file in sorted(((kind, file) for (kind, _), file in loaded.files.by_id.items()), key=lambda each: each[1].name):
        if kind == "state-words":
            yield from _states(loaded, file)
        elif kind == "number-words":
            for id in file.data["numbers"]:
                yield from unknown(loaded, NAME, "character", id, file.place(("numbers", id), of_key=True))
        elif kind == "name-words":
            for id in file.data["names"]:
                yield from _named(loaded, known, id, file, ("names", id), of_key=True)
        elif kind == "several-words":
            for word, ids in file.data["several"].items():
                for number, id in enumerate(ids):
                    yield from _named(loaded, known, id, file, ("several", word, number))
        elif kind == "question-words":
            for number, each in enumerate(file.data["questions"]):
                yield from _question(loaded, known, each, file, number)
    yield from _twice(loaded)
    yield from _wordless(loaded)


def named(loaded: Loaded) -> Collection[str]:
    """Every id that a lay name may stand for."""
    return {id for each in LINKED for id in each.of(loaded.library)}


def _named(
    loaded: Loaded, known: Collection[str], id: str, file: YamlFile, path: tuple[str | int, ...], *, of_key: bool = False
) -> Iterator[Finding]:
    unreadable = {"terms", "cautions"} & loaded.files.broken
    if id not in known and id not in loaded.files.broken and not unreadable:
        yield not_among(NO_SUCH_THING, id, known, file.place(path, of_key=of_key), name=id)


def _states(loaded: Loaded, file: YamlFile) -> Iterator[Finding]:
    for character, states in file.data["characters"].items():
        yield from unknown(loaded, NAME, "character", character, file.place(("characters", character), of_key=True))
        if character in loaded.library.characters:
            known = loaded.library.characters[character].states
            for state in states:
                if state not in known:
                    place = file.place(("characters", character, state), of_key=True)
                    yield not_among(NO_SUCH_STATE, state, known, place, character=character, state=state)


def _question(loaded: Loaded, known: Collection[str], each: Any, file: YamlFile, number: int) -> Iterator[Finding]:
    id, step = each["goes-to"], each.get("at", "")
    if not id.startswith(WRITTEN):
        yield from _named(loaded, known, id, file, ("questions", number, "goes-to"))
    if step and id in loaded.library.guides:
        steps = [step.id for step in loaded.library.guides[id].steps]
        if step not in steps:
            yield not_among(NO_SUCH_STEP, step, steps, file.place(("questions", number, "at")), name=id, step=step)


def _twice(loaded: Loaded) -> Iterator[Finding]:
    """Words that two states of one character claim, wherever the files stand."""
    first: dict[tuple[str, str], str] = {}
    for (kind, _), file in sorted(loaded.files.by_id.items()):
        if kind != "state-words":
            continue
        for character, states in file.data["characters"].items():
            for state, phrases in states.items():
                for number, phrase in enumerate(phrases):
                    other = first.setdefault((character, phrase.lower()), state)
                    if other != state:
                        place = file.place(("characters", character, state, number))
                        yield CLAIMED_TWICE.at(place, phrase=phrase, other=other, state=state, character=character)


def _wordless(loaded: Loaded) -> Iterator[Finding]:
    if not loaded.library.lay.states or loaded.files.broken:
        return
    for character in loaded.library.characters.values():
        for state in character.states:
            if not loaded.library.lay.states.get(character.id, {}).get(state):
                place = loaded.files.place("character", character.id, ("states", state), of_key=True)
                yield WORDLESS.at(place, state=state, character=character.id)
