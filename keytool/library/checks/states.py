"""No two states of a character share a name, and each is shown by an entry or taken by a lead."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.file_parts import parts
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Character
from keytool.library.value import States

NAME = "states"
UNTAKEN = Message(
    NAME,
    "No entry shows '{state}' of '{character}', and no lead takes it.",
    tip="Whoever sees it is left alone with it: give it to an entry and to a lead, or delete it.",
    severity=Severity.ADVICE,
)
SAME_NAME = Message(
    NAME,
    "'{state}' and '{first}' of '{character}' have the same name, '{name}'.",
    tip="Name what tells them apart, or keep one of the two.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each name that stands twice; advice for each state that nothing shows and no lead takes."""
    known = _taken(loaded)
    used = {name for name, _ in known}  # of a character that nothing uses, another rule speaks
    for character in loaded.library.characters.values():
        yield from _twice(loaded, character)
        if loaded.files.broken or character.id not in used:
            continue
        for state in character.states:
            if (character.id, state) not in known:
                place = loaded.files.place("character", character.id, ("states", state))
                yield UNTAKEN.at(place, state=state, character=character.id)


def _twice(loaded: Loaded, character: Character) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for state in character.states.values():
        name = state.name.casefold()
        if name in first:
            place = loaded.files.place("character", character.id, ("states", state.id))
            yield SAME_NAME.at(place, state=state.id, first=first[name], character=character.id, name=state.name)
        first.setdefault(name, state.id)


def _taken(loaded: Loaded) -> set[tuple[str, str]]:
    shown = {
        (statement.character, state)
        for entry in loaded.library.entries.values()
        for statement in entry.statements.values()
        if isinstance(statement.showing, States)
        for state in statement.showing.ids
    }
    asked = {
        (name, state)
        for part in parts(loaded)
        if part.path[-1:] == ("when",) and isinstance(part.value, dict)
        for name, wanted in part.value.items()
        if isinstance(wanted, list)
        for state in wanted
    }
    return shown | asked
