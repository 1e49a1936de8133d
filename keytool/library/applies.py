"""Applies, inherits, unknown: three different things that an entry may be silent for.

A character *applies* to an entry that can have such a part or do such a thing. Where it applies and the entry
does not say what it shows, the entry *inherits* what its nearest kin show. Where they are silent too, it is
*unknown*. Where a character does not apply, seeing it speaks against the entry.
"""

from __future__ import annotations

from keytool.library.model import Character, Entry, Library
from keytool.library.value import States


def applies(library: Library, character: Character, entry: Entry) -> bool:
    """Whether a character has a meaning for an entry: it says something of it, or the character says so."""
    return character.id in entry.statements or (within_reach(library, character, entry.id) and not ruled_out_by(library, character, entry))


def within_reach(library: Library, character: Character, entry: str) -> bool:
    """Whether an entry is one of those that a character is for, whatever it shows of others."""
    return not character.applies.to or not library.ancestry(entry).isdisjoint(character.applies.to)


def ruled_out_by(library: Library, character: Character, entry: Entry) -> str:
    """The character by whose state an entry has no such part (no spear, so no spear length), or an empty text."""
    for name, states in character.applies.where.items():
        if name in entry.statements:
            showing = entry.statements[name].showing
            if isinstance(showing, States) and showing.ids.isdisjoint(states):
                return name
        if name in library.characters and (above := ruled_out_by(library, library.characters[name], entry)):
            return above
    return ""
