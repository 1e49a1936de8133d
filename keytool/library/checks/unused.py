"""Nothing is kept that no key, entry or text uses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain

from keytool.library import text as markup
from keytool.library.checks import names
from keytool.library.checks.file_parts import bases, parts, texts
from keytool.library.finding import Finding, Place, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "unused"
UNUSED = Message(NAME, "Nothing uses the {what} '{name}'.", tip="Use it, or delete it.", severity=Severity.ADVICE)
WORD = re.compile(r"\w+")


def check(loaded: Loaded) -> Iterator[Finding]:
    """Advice for each source, quantity, character and term never used.

    Nothing is said while a file is broken or a name is wrong, since that may be the use.
    """
    if loaded.files.broken or any(names.check(loaded)):
        return
    library = loaded.library
    named = _named_in_texts(loaded)
    sources = {source for part in bases(loaded) for source in part.value.get("sources", ())}
    used = _used_in_whens(loaded) | named
    stated = {name for entry in library.entries.values() for name in entry.statements}
    for id in library.sources:
        if id not in sources:
            yield _advice("source", id, loaded.files.place_of("sources", id))
    read = {part.path[0] for part in parts(loaded) if part.path[-1:] == ("used-in",)}
    for id in library.quantities:
        if id not in used | read:
            yield _advice("quantity", id, loaded.files.place_of("quantities", id))
    for id in library.characters:
        if id not in used | stated:
            yield _advice("character", id, loaded.files.place("character", id, ("id",)))
    spoken = _words_spoken(loaded)
    for id, term in library.terms.items():
        if id not in named and not any(_folded(each) in spoken for each in (term.term, *term.also)):
            yield _advice("term", id, loaded.files.place_of("terms", id))


def _advice(what: str, id: str, place: Place) -> Finding:
    return UNUSED.at(place, what=what, name=id)


def _used_in_whens(loaded: Loaded) -> set[str]:
    """Characters and quantities that a lead or a rule asks for."""
    whens = [part.value for part in parts(loaded) if part.path[-1:] == ("when",)]
    quantities = (wanted.values() for when in whens for wanted in when.values() if isinstance(wanted, dict))
    return {*chain.from_iterable(whens), *chain.from_iterable(quantities)}


def _named_in_texts(loaded: Loaded) -> set[str]:
    found = (part for text in texts(loaded) for part in markup.parts(text.value))
    return {part.id for part in found if isinstance(part, markup.QuantityRef | markup.Link)}


def _words_spoken(loaded: Loaded) -> str:
    """All texts but those of the terms themselves, folded so that whole words can be looked for."""
    return "|".join(_folded(text.value) for text in texts(loaded) if text.kind != "terms")


def _folded(text: str) -> str:
    """Words in small letters with one space round each."""
    return f" {' '.join(WORD.findall(text.lower()))} "
