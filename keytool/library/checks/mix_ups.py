"""What is mixed up with what are two states of one character, and the right answer stays possible."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import missing, not_among
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Character
from keytool.library.yaml_file import YamlFile

NAME = "mix-ups"
NO_SUCH_STATE = missing(NAME, "'{state}' is not a state of '{character}'.")
ITSELF = Message(NAME, "'{there}' is not mixed up with itself.", tip="Name the other state.")
TWICE = Message(NAME, "'{there}' seen as '{seen}' stands twice.", tip="Keep one of the two.")
TOO_OFTEN = Message(
    NAME,
    "'{there}' is taken for something else {wrong} of the time.",
    allowed="at most {most}",
    tip="Lower its rates, or drop a question that nobody can answer.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each pair that names no state, one state twice, or the same as another pair, and for rates too high."""
    for character in loaded.library.characters.values():
        file = loaded.files.by_id["character", character.id]
        pairs = list(_pairs(file))
        for number, (there, seen) in enumerate(pairs):
            path = ("misread", "pairs", number)
            for word, state in (("is", there), ("seen", seen)):
                if state not in character.states:
                    yield not_among(NO_SUCH_STATE, state, character.states, file.place((*path, word)), state=state, character=character.id)
            if there == seen:
                yield ITSELF.at(file.place((*path, "seen")), there=there)
            elif (there, seen) in pairs[:number]:
                yield TWICE.at(file.place(path), there=there, seen=seen)
        yield from _too_often(loaded, character, file)


def _pairs(file: YamlFile) -> Iterator[tuple[str, str]]:
    return ((pair["is"], pair["seen"]) for pair in file.data["misread"].get("pairs", ()))


def _too_often(loaded: Loaded, character: Character, file: YamlFile) -> Iterator[Finding]:
    most = loaded.library.limit("most-mixed-up")
    for there in character.states:
        others = [other for other in character.states if other != there]
        wrong = sum(character.mix_ups.get((there, other), character.misread / len(others)) for other in others)
        if wrong > most:
            yield TOO_OFTEN.at(file.place(("misread", "pairs"), of_key=True), there=there, wrong=f"{wrong:.2f}", most=f"{most:g}")
