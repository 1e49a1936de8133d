"""A manner of moving names entries and states that exist."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import is_broken, not_among, unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "manners"
CHARACTER = "manner"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry that is said to move so and does not exist, and each state that `manner` does not have."""
    character = loaded.library.characters.get(CHARACTER)
    states = character.states if character else {}
    for manner in loaded.library.manners.values():
        for entry in manner.seen_in:
            yield from unknown(loaded, NAME, "entry", entry, loaded.files.place_of("manners", manner.id, "seen-in", entry))
        for number, state in enumerate(manner.shows):
            if state not in states and not is_broken(loaded, "character", CHARACTER):
                place = loaded.files.place_of("manners", manner.id, "shows", number)
                yield not_among(NAME, f"'{state}' is not a state of the character '{CHARACTER}'.", state, states, place)
