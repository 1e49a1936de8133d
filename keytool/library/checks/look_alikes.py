"""Two entries that are mistaken for each other name each other."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "look-alikes"
ITSELF = Message(NAME, "'{entry}' is named as its own look-alike.", tip="Name the other entry.")
TWICE = Message(NAME, "'{entry}' is named twice as a look-alike.", tip="Join the two sentences.")
NOT_NAMED_BACK = Message(
    NAME,
    "'{other}' does not name '{entry}' back as a look-alike.",
    tip="Add '{entry}' under mistaken-for: in {file}, so that a person who starts there is warned too.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each look-alike that does not name the entry back, is the entry itself, or is named twice."""
    entries = loaded.library.entries
    for entry in entries.values():
        met: set[str] = set()
        for number, mistake in enumerate(entry.mistaken_for):
            place = loaded.files.place("entry", entry.id, ("mistaken-for", number, "entry"))
            other = entries.get(mistake.entry)
            if mistake.entry == entry.id:
                yield ITSELF.at(place, entry=entry.id)
            elif mistake.entry in met:
                yield TWICE.at(place, entry=mistake.entry)
            elif other and entry.id not in (each.entry for each in other.mistaken_for):
                yield NOT_NAMED_BACK.at(place, other=mistake.entry, entry=entry.id, file=loaded.library.files["entry", other.id])
            met.add(mistake.entry)
