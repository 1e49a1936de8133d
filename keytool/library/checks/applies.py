"""What a character has a meaning for is there, and nothing says what it shows of a character that has none for it.

What an entry says itself wins over `where`: a gliding rod moves in a manner, though too slowly to be seen to move.
"""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.applies import within_reach
from keytool.library.checks.unknown_ids import missing, not_among, unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Character

NAME = "applies"
NO_SUCH_STATE = missing(NAME, "'{state}' is not a state of '{character}'.")
NO_STATES = missing(NAME, "'{character}' is a number; it has no states.")
RING = Message(
    NAME, "'{character}' has a meaning only where '{other}' has, and the other way round.", tip="Let one of the two stand by itself."
)
MEANINGLESS = Message(
    NAME,
    "'{entry}' says what it shows of '{character}', which has no meaning for it.",
    allowed="members of {members}",
    tip="Take it out, or put '{entry}' or its group under applies, to, in {file}.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each unknown group, character or state, each ring of `where`, and each statement where it cannot be."""
    sound = True
    for character in loaded.library.characters.values():
        for finding in _names(loaded, character):
            sound = False
            yield finding
    if sound:
        yield from _misplaced(loaded)


def _names(loaded: Loaded, character: Character) -> Iterator[Finding]:
    library = loaded.library
    file = loaded.files.by_id["character", character.id]
    for number, id in enumerate(character.applies.to):
        yield from unknown(loaded, NAME, "entry", id, file.place(("applies", "to", number)))
    for number, id in enumerate(character.settled_by):
        yield from unknown(loaded, NAME, "character", id, file.place(("settled-by", number)))
    if character.applies.otherwise and character.applies.otherwise not in character.states:
        otherwise, place = character.applies.otherwise, file.place(("applies", "else"))
        yield not_among(NO_SUCH_STATE, otherwise, character.states, place, state=otherwise, character=character.id)
    for name, states in character.applies.where.items():
        place = file.place(("applies", "where", name), of_key=True)
        yield from unknown(loaded, NAME, "character", name, place)
        other = library.characters.get(name)
        for state in sorted(set(states) - set(other.states)) if other else ():
            message = NO_SUCH_STATE if other and other.states else NO_STATES
            yield not_among(message, state, other.states if other else (), place, state=state, character=name)
        if _goes_round(loaded, character):
            yield RING.at(place, character=character.id, other=name)


def _goes_round(loaded: Loaded, character: Character) -> bool:
    seen: set[str] = set()
    waiting = list(character.applies.where)
    while waiting:
        id = waiting.pop()
        if id == character.id:
            return True
        if id not in seen and id in loaded.library.characters:
            seen.add(id)
            waiting.extend(loaded.library.characters[id].applies.where)
    return False


def _misplaced(loaded: Loaded) -> Iterator[Finding]:
    library = loaded.library
    for entry in library.entries.values():
        file = loaded.files.by_id["entry", entry.id]
        for name in file.data.get("characters", {}):
            character = library.characters.get(name)
            if character is None:
                continue
            place = file.place(("characters", name), of_key=True)
            if not within_reach(library, character, entry.id):
                members, where = ", ".join(character.applies.to), library.files["character", name]
                yield MEANINGLESS.at(place, entry=entry.id, character=name, members=members, file=where)
