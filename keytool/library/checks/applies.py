"""What a character has a meaning for is there, and nothing says what it shows of a character that has none for it.

What an entry says itself wins over `where`: a gliding rod moves in a manner, though too slowly to be seen to move.
"""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.applies import within_reach
from keytool.library.checks.unknown_ids import not_among, unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.model import Character

NAME = "applies"


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
    if character.applies.otherwise and character.applies.otherwise not in character.states:
        message = f"'{character.applies.otherwise}' is not a state of '{character.id}'."
        yield not_among(NAME, message, character.applies.otherwise, character.states, file.place(("applies", "else")))
    for name, states in character.applies.where.items():
        place = file.place(("applies", "where", name), of_key=True)
        yield from unknown(loaded, NAME, "character", name, place)
        other = library.characters.get(name)
        for state in sorted(set(states) - set(other.states)) if other else ():
            message = f"'{state}' is not a state of '{name}'." if other and other.states else f"'{name}' is a number; it has no states."
            yield not_among(NAME, message, state, other.states if other else (), place)
        if _goes_round(loaded, character):
            yield Finding(
                NAME,
                place,
                f"'{character.id}' has a meaning only where '{name}' has, and the other way round.",
                tip="Let one of the two stand by itself.",
            )


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
                yield Finding(
                    NAME,
                    place,
                    f"'{entry.id}' says what it shows of '{name}', which has no meaning for it.",
                    f"members of {', '.join(character.applies.to)}",
                    f"Take it out, or put '{entry.id}' or its group under applies, to, in {library.files['character', name]}.",
                )
