"""Where contrast decides, the computed pictures of the states show what they say, and at least two can be compared."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Entry
from keytool.library.value import States

NAME = "seen-through"
NO_PICTURE = Message(
    NAME,
    "'{entry}' has no computed picture, so it cannot show '{state}'.",
    tip="Make it: wetmount eyepiece {entry}; or name an entry that has one.",
)
SHOWS_NOT = Message(
    NAME,
    "'{entry}' does not show '{state}' of '{character}', so its computed picture would show something else.",
    tip="Name an entry that states it.",
)
ALONE = Message(
    NAME,
    "Only '{state}' names a computed picture; with nothing beside it, it shows no contrast.",
    allowed="eyepiece: on two states or more",
    tip="Name an entry for another state too, or take this one out.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each state whose picture is not there or shows something else, and for a picture without its fellow."""
    library = loaded.library
    for character in library.characters.values():
        named = [state for state in character.states.values() if state.eyepiece]
        for state in named:
            place = loaded.files.place("character", character.id, ("states", state.id, "eyepiece"))
            yield from unknown(loaded, NAME, "entry", state.eyepiece, place)
            entry = library.entries.get(state.eyepiece)
            if entry is None:
                continue
            if not _shows(entry, character.id, state.id):
                yield SHOWS_NOT.at(place, entry=entry.id, state=state.id, character=character.id)
            elif entry.id not in library.eyepiece.stills:
                yield NO_PICTURE.at(place, entry=entry.id, state=state.id)
        if len(named) == 1:
            place = loaded.files.place("character", character.id, ("states", named[0].id, "eyepiece"))
            yield ALONE.at(place, state=named[0].id)


def _shows(entry: Entry, character: str, state: str) -> bool:
    statement = entry.statements.get(character)
    return statement is not None and isinstance(statement.showing, States) and state in statement.showing.ids
