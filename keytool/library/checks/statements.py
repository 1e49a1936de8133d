"""What an entry says of a character is something that character can show."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from keytool.library.checks.unknown_ids import missing, not_among, unknown
from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Character
from keytool.library.yaml_file import YamlFile

NAME = "statements"
OTHER_FORM = Message(
    NAME,
    "'{character}' says {what}.",
    allowed="{allowed}",
    tip="Say what is seen, or any: true where it may show anything or is not known.",
)
NO_STATES = Message(NAME, "'{character}' is a number; it has no states.", allowed="low:, high: and unit:")
NO_SUCH_STATE = missing(NAME, "'{state}' is not a state of '{character}'.")
NO_NUMBER = Message(NAME, "'{character}' is a choice of states, not a number.", allowed="states: [...]")
UPSIDE_DOWN = Message(NAME, "Low is {low}, but high is {high}.", tip="Swap the two.")
OTHER_UNIT = Message(NAME, "'{unit}' is a unit of {shown}, but '{character}' is a {wanted}.", allowed="{allowed}")


@dataclass(frozen=True)
class _Said:
    """What one entry says of one character, as written, with the way to its places."""

    file: YamlFile
    name: str

    @property
    def raw(self) -> dict[str, Any]:
        raw: dict[str, Any] = self.file.data["characters"][self.name]
        return raw

    def place(self, *path: str | int) -> Place:
        return self.file.place(("characters", self.name, *path), of_key=not path)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each unknown character or state, each mix of kinds, each range upside down, each unit that does not fit."""
    for id in loaded.library.entries:
        file = loaded.files.by_id["entry", id]
        for name in file.data.get("characters", {}):
            said = _Said(file, name)
            yield from unknown(loaded, NAME, "character", name, said.place())
            character = loaded.library.characters.get(name)
            if character is not None:
                yield from _form(character, said)
                yield from _states(character, said)
                yield from _range(loaded, character, said)


def _form(character: Character, said: _Said) -> Iterator[Finding]:
    forms = [name for name, ids in {"states": {"states"}, "any": {"any"}, "low/high": {"low", "high"}}.items() if ids & set(said.raw)]
    if len(forms) != 1:
        what = f"{' and '.join(forms)} together" if forms else "nothing"
        right = "low: and high: with a unit:, or any: true" if character.is_number else "states: [...], or any: true"
        yield OTHER_FORM.at(said.place(), character=character.id, what=what, allowed=right)


def _states(character: Character, said: _Said) -> Iterator[Finding]:
    states = said.raw.get("states", [])
    if states and character.is_number:
        yield NO_STATES.at(said.place("states"), character=character.id)
        return
    for number, state in enumerate(states):
        if state not in character.states:
            yield not_among(NO_SUCH_STATE, state, character.states, said.place("states", number), state=state, character=character.id)


def _range(loaded: Loaded, character: Character, said: _Said) -> Iterator[Finding]:
    low, high, unit = (said.raw.get(name) for name in ("low", "high", "unit"))
    given = next((name for name in ("low", "high", "unit") if name in said.raw), "")
    if given and not character.is_number:
        yield NO_NUMBER.at(said.place(given), character=character.id)
        return
    if low is not None and high is not None and low > high:
        yield UPSIDE_DOWN.at(said.place("low"), low=low, high=high)
    if unit:
        units = loaded.library.vocabulary["unit"]
        shown, wanted = units[unit].get("dimension"), units[character.unit].get("dimension")
        if shown != wanted:
            fitting = ", ".join(id for id, word in units.items() if word.get("dimension") == wanted)
            yield OTHER_UNIT.at(said.place("unit"), unit=unit, shown=shown, character=character.id, wanted=wanted, allowed=fitting)
