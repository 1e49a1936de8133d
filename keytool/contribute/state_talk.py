"""Ask for a new state of a character: what it is, which entries show it, and which leads take it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from keytool.contribute.draft import slug
from keytool.contribute.field_validator import validate_field
from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.talk import Talk, ids_of, one_of
from keytool.library import Loaded
from keytool.library.messages import listed
from keytool.library.model import Couplet, Key, Library
from keytool.library.wording import plain

StateAnswers = tuple[str, str, dict[str, Any], list[str], list[tuple[str, str, str]]]
"""Character, id of the state, what is said of it, entries that show it, leads (key, couplet, lead) that take it."""


def state_from(talk: Talk, loaded: Loaded, leads: Sequence[str]) -> StateAnswers:
    """The state as answered.

    Raises:
        NotUnderstood, NoAnswer: see `Talk.ask`.
    """
    library = loaded.library
    given = [_lead(library, each) for each in leads]
    characters = {id: each.name for id, each in library.characters.items() if not each.is_number}
    character = library.characters[talk.ask("character", "Which character may show it? Its id or name.", one_of(characters))]
    talk.say(f"{character.name}: {character.asks} So far: {listed(character.states)}.")

    def line(field: str) -> Callable[[str], str]:
        return validate_field(loaded, "character", ("states", "*", field))

    def new(words: str) -> str:
        if words in character.states:
            raise NotUnderstood(f"'{words}' is a state of '{character.id}' already.")
        return validate_field(loaded, "character", ("id",))(words)

    name = talk.ask("name", "Its short name?", line("name"))
    id = talk.ask("id", "Its id?", new, slug(name) or None)
    about = talk.ask("about", "What does one see? One sentence.", line("about"))
    own = {
        each.id: each.common
        for each in library.entries.values()
        if character.id in each.statements and each.statements[character.id].stated_by == each.id
    }
    entries = talk.ask("entries", "Which entries show it, besides what they show now? - for none.", ids_of(own), "-")
    taken = list(given)
    for key, couplet in _closed(library, character.id):
        if not any((key.id, couplet.id) == each[:2] for each in taken):
            there = {lead.id: plain(library, lead.text) for lead in couplet.leads.values()}
            question = f"{key.title}, couplet {couplet.number}: {plain(library, couplet.asks)} Which lead takes '{name}'?" + "".join(
                f"\n    {n} {lead} ({words})" for n, (lead, words) in enumerate(there.items(), 1)
            )
            taken.append((key.id, couplet.id, talk.ask(f"lead {key.id}/{couplet.id}/LEAD", question, one_of(there))))
    return character.id, id, {"name": name, "about": about}, entries, taken


def _closed(library: Library, character: str) -> Iterator[tuple[Key, Couplet]]:
    """The couplets that ask for a character and have no lead that takes all the rest, so that a new state would fall between."""
    for key in library.keys.values():
        for couplet in key.couplets.values():
            if character in couplet.characters and not any(lead.otherwise for lead in couplet.leads.values()):
                yield key, couplet


def _lead(library: Library, words: str) -> tuple[str, str, str]:
    key, couplet, lead = [*words.split("/", 2), "", ""][:3]
    if key not in library.keys or couplet not in library.keys[key].couplets:
        raise NotUnderstood(f"--lead: '{words}' is no KEY/COUPLET/LEAD of this library.")
    there = {each.id: plain(library, each.text) for each in library.keys[key].couplets[couplet].leads.values()}
    try:
        return key, couplet, one_of(there)(lead)
    except NotUnderstood as error:
        raise NotUnderstood(f"--lead: {error}") from None
