"""The words that the identifying pages put to what the engine says: names, what an end means, what can be looked at.

One script file for the whole library, `data/faces.js`, fetched at the first answer and kept. Links in it are as seen from the
root of the site; the script sets them for the page it stands on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from keytool.identify import compiled, library_data
from keytool.library.basis import Basis
from keytool.library.model import Character, Entry, Library
from keytool.library.wording import basis_label, feeding_words, mark, meaning, plain
from keytool.pages.html import Html, el, join
from keytool.pages.key_data import as_script
from keytool.pages.page import Asset
from keytool.pages.page_writer import Writer

PATH = "data/faces.js"
ENGINE = "data/engine.js"
ROOT = "describe.md"
"""A page at the root of the site, from which links are written."""


def face_data(library: Library) -> Asset:
    """The file."""
    data = {
        "language": library.language,
        "say": library.say.by_id,
        "entries": {each.id: _entry(library, each) for each in library.entries.values()},
        "keys": {each.id: {"name": each.title, "about": plain(library, each.about)} for each in library.keys.values()},
        "characters": {each.id: _character(library, each) for each in library.characters.values()},
        "pictures": {each.id: {"name": each.name, "entry": each.entry, "power": each.power} for each in library.pictures.values()},
        "feeding": {each.id: each.label for each in library.vocabulary["feeding"].values()},
        "sureness": {each.id: each.label for each in library.vocabulary.get("sureness", {}).values()},
        "samples": {each.id: each.label for each in library.vocabulary.get("sample-kind", {}).values()},
        "cautions": {id: Writer(library, ROOT).brief_caution(id) for id in _cautions(library)},
    }
    return Asset(PATH, as_script("faces", data, parsed=True), "keydata/entries")


def engine_data(library: Library) -> Asset:
    """What the engine reads of the whole library, without words."""
    return Asset(ENGINE, as_script("engine", library_data(compiled(library)), parsed=True), "keydata")


def _entry(library: Library, entry: Entry) -> dict[str, Any]:
    writer = Writer(library, ROOT)
    words = {
        "name": entry.name,
        "latin": entry.scientific if entry.scientific != entry.name else "",
        "eatsMany": len(entry.feeding) > 2,
        "vague": entry.kind == "cannot-be-told",
        "drawn": entry.figure is not None,
        "feeding": join([feeding_words(library, entry.feeding), " ", _sign(writer, entry, entry.feeding_basis)]) if entry.feeding else "",
        "summary": writer.rich(entry.summary),
        "means": join(_means(writer, entry)),
        "tell": writer.rich(entry.would_tell) if entry.would_tell else "",
    }
    return {**{name: value for name, value in words.items() if value}, "cautions": list(entry.cautions)}


def _means(writer: Writer, entry: Entry) -> Iterator[Html]:
    for teller, said in meaning(writer.library, entry):
        who = None if teller is entry else join(["As all of ", writer.link(teller.id), ": "])
        yield el("p", who, writer.rich(said.text), " ", _sign(writer, teller, said.basis))


def _sign(writer: Writer, entry: Entry, bases: Iterable[Basis]) -> Html:
    """The mark of a statement, short: what it rests on is said in full on the page of the entry, where it leads."""
    bases = tuple(bases)
    words = f"Basis: {'; '.join(dict.fromkeys(basis_label(writer.library, each) for each in bases))}"
    return el("a", mark(writer.library, bases), href=writer.place(entry.id), class_="wm-sign-link", title=words, aria_label=words)


def _character(library: Library, character: Character) -> dict[str, Any]:
    """What can be looked at; of a number its unit and how many base units one of it is."""
    unit = character.unit or "1"
    return {
        "name": character.name,
        "asks": plain(library, character.asks),
        "look": Writer(library, ROOT).rich(character.look),
        "power": Writer(library, ROOT).power(character.magnification),
        "number": character.is_number,
        "unit": unit,
        "factor": float(library.vocabulary["unit"][unit].get("factor", 1)),
        "states": {
            each.id: {"name": each.name, "about": plain(library, each.about), "drawn": each.figure is not None}
            for each in character.states.values()
        },
    }


def _cautions(library: Library) -> list[str]:
    used = {each for entry in library.entries.values() for each in entry.cautions}
    return [id for id in library.cautions if id in used]
