"""Ask for a set of look-alikes: which things, why they are taken for each other, and the test to do first."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from keytool.contribute import parse_answer
from keytool.contribute.draft import slug
from keytool.contribute.field_validator import refuse_taken, validate_field
from keytool.contribute.look_alikes import worth_comparing
from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.talk import Talk, ids_of
from keytool.library import Loaded
from keytool.library.wording import name_of


def look_alikes_from(talk: Talk, loaded: Loaded, *, replace: bool) -> dict[str, Any]:
    """The set as it will stand in its file.

    Raises:
        NotUnderstood, NoAnswer: see `Talk.ask`.
    """
    library = loaded.library

    def line(*path: str) -> Callable[[str], str]:
        return validate_field(loaded, "look-alike", path)

    def new(words: str) -> str:
        refuse_taken(loaded, words, "look-alike", replace=replace)
        return line("id")(words)

    named = ids_of({each.id: each.common for each in library.entries.values()})
    entries = talk.ask("entries", "Which entries, two to six, joined by commas?", lambda words: _several(named(words)))
    proposed = [each.id for each in worth_comparing(library, [library.entries[id] for id in entries])]
    characters = ids_of({id: each.name for id, each in library.characters.items()})
    title = talk.ask(
        "title",
        "The question people have?",
        line("title"),
        f"{', '.join(name_of(library, id) for id in entries[:-1])} or {name_of(library, entries[-1]).lower()}?",
    )
    return {
        "id": talk.ask("id", "Its id?", new, slug(title) or None),
        "title": title,
        "about": talk.ask("about", "Why are they taken for each other?", line("about")),
        "entries": entries,
        "decisive": {
            "text": talk.ask("decisive", "The one test to do first, and what each shows in it?", line("decisive", "text")),
            "basis": talk.ask("basis", "What does that test rest on?", lambda words: parse_answer.basis(library, words), "memory"),
        },
        "characters": talk.ask("characters", "Which characters to compare?", characters, ", ".join(proposed) or None),
    }


def _several(entries: list[str]) -> list[str]:
    if not 2 <= len(entries) <= 6:
        raise NotUnderstood("Name two to six entries.")
    return entries
