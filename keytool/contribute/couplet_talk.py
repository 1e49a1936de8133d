"""Ask for a couplet written by hand: where it goes, what it asks, and its leads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from keytool.contribute import parse_answer
from keytool.contribute.discriminators import CoupletDraft, parting_limit
from keytool.contribute.field_validator import validate_field
from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.talk import Talk, one_of, text
from keytool.library import Loaded
from keytool.library.checks.length import QUESTION
from keytool.library.messages import listed
from keytool.library.model import Character, Key, Library
from keytool.library.wording import plain

GOES = ("end", "couplet", "key")
LEAD = "SLUG | TEXT | SEEN | GOES"


def couplet_from(talk: Talk, loaded: Loaded, leads: Sequence[str]) -> CoupletDraft:
    """The couplet as answered.

    Raises:
        NotUnderstood, NoAnswer: see `Talk.ask`.
    """
    library = loaded.library
    key = library.keys[talk.ask("key", f"Which key? {listed(library.keys)}", one_of({id: each.title for id, each in library.keys.items()}))]
    couplet, lead = talk.ask("behind", "Behind which lead? COUPLET/LEAD", lambda words: _behind(key, words), more=_couplets(library, key))
    slug = talk.ask("id", "Its slug?", lambda words: validate_field(loaded, "key", ("id",))(_free(key, words)))
    asks = talk.ask(
        "asks",
        f"What does it ask, in at most {library.limit(QUESTION):g} characters?",
        validate_field(loaded, "key", ("couplets", key.first, "asks")),
    )
    characters = {id: each.name for id, each in library.characters.items()}
    character = library.characters[talk.ask("by", "Which character does it ask for?", one_of(characters))]
    written = [_lead(library, character, each) for each in leads]
    while len(written) < 2:
        which = f"lead {len(written) + 1}"
        written.append(
            talk.ask(which, f"Which {which}? {LEAD}", lambda words: _lead(library, character, words), more=_states(library, character))
        )
    by_slug = dict(written)
    if len(by_slug) < len(written):
        raise NotUnderstood(f"--lead: two leads have the same slug: {listed(slug for slug, _ in written)}.")
    return CoupletDraft(key.id, couplet, lead, slug, {"asks": asks, "leads": by_slug})


def _couplets(library: Library, key: Key) -> str:
    """The couplets of a key with their leads, by the slugs that are wanted."""
    return "\n".join(f"  {each.number} {each.id}: {plain(library, each.asks)} {listed(each.leads)}" for each in key.couplets.values())


def _states(library: Library, character: Character) -> str:
    """What a lead may ask to be seen of a character."""
    if character.is_number:
        limits = (id for id, each in library.quantities.items() if parting_limit(library, each) is not None)
        return f"Bench quantities: {listed(limits)}."
    return "States: " + ", ".join(f"{id} ({state.name})" for id, state in character.states.items()) + "."


def _behind(key: Key, words: str) -> tuple[str, str]:
    couplet, _, lead = words.partition("/")
    if couplet not in key.couplets:
        raise NotUnderstood(f"'{key.id}' has no couplet '{couplet}'. It has: {listed(key.couplets)}.")
    if lead not in key.couplets[couplet].leads:
        raise NotUnderstood(f"'{couplet}' has no lead '{lead}'. It has: {listed(key.couplets[couplet].leads)}.")
    return couplet, lead


def _free(key: Key, slug: str) -> str:
    if slug in key.couplets:
        raise NotUnderstood(f"'{slug}' is a couplet of this key already.")
    return text(slug)


def _lead(library: Library, character: Character, words: str) -> tuple[str, dict[str, Any]]:
    parts = [part.strip() for part in words.split("|")]
    if len(parts) != 4 or not all(parts):
        raise NotUnderstood(f"'{words}' is no lead. Write {LEAD}, such as: flat | Edge flat | flat | end:cuff-button")
    slug, what, seen, goes = parts
    where, _, id = goes.partition(":")
    if where not in GOES or not id:
        raise NotUnderstood(f"'{goes}' is nowhere to go. Write end:ENTRY, couplet:SLUG or key:KEY.")
    when: Mapping[str, Any] = {"otherwise": True} if seen == "otherwise" else {"when": {character.id: _seen(library, character, seen)}}
    return slug, {"text": what, **when, where: id}


def _seen(library: Library, character: Character, words: str) -> Any:
    if not character.is_number:
        return parse_answer.showing(library, character, words)["states"]
    limits = dict(part.split(":", 1) for part in words.split() if ":" in part)
    unknown = [id for id in limits.values() if id not in library.quantities]
    if not limits or unknown or set(limits) - {"from", "below"}:
        near = f" There is no bench quantity '{unknown[0]}'." if unknown else ""
        raise NotUnderstood(f"'{words}' does not limit a number. Write from:QUANTITY, below:QUANTITY, or both.{near}")
    return limits
