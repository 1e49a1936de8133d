"""Ask for a set of look-alikes: which things, why they are taken for each other, and the test to do first."""

from __future__ import annotations

from typing import Any

from keytool.contribute import said
from keytool.contribute.draft import slug
from keytool.contribute.look_alikes import worth_comparing
from keytool.contribute.said import NotUnderstood
from keytool.contribute.talk import Talk, ids_of, text
from keytool.library.model import Library
from keytool.library.show import name_of


def look_alikes_from(talk: Talk, library: Library) -> dict[str, Any]:
    """The set as it will stand in its file.

    Raises:
        NotUnderstood, NoAnswer: see `Talk.ask`.
    """
    named = ids_of({each.id: each.common for each in library.entries.values()})
    entries = talk.ask("entries", "Which entries, two to six, joined by commas?", lambda words: _several(named(words)))
    proposed = [each.id for each in worth_comparing(library, [library.entries[id] for id in entries])]
    characters = ids_of({id: each.name for id, each in library.characters.items()})
    title = talk.ask("title", "The question people have?", text, f"{', '.join(name_of(library, id) for id in entries[:-1])} or "
                     f"{name_of(library, entries[-1]).lower()}?")
    return {
        "id": talk.ask("id", "Its id?", text, slug(title) or None),
        "title": title,
        "about": talk.ask("about", "Why are they taken for each other?", text),
        "entries": entries,
        "decisive": {
            "text": talk.ask("decisive", "The one test to do first, and what each shows in it?", text),
            "basis": talk.ask("basis", "What does that test rest on?", lambda words: said.basis(library, words), "memory"),
        },
        "characters": talk.ask("characters", "Which characters to compare?", characters, ", ".join(proposed) or None),
    }


def _several(entries: list[str]) -> list[str]:
    if not 2 <= len(entries) <= 6:
        raise NotUnderstood("Name two to six entries.")
    return entries
