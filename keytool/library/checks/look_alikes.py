"""Two entries that are mistaken for each other name each other."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "look-alikes"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each look-alike that does not name the entry back, is the entry itself, or is named twice."""
    entries = loaded.library.entries
    for entry in entries.values():
        met: set[str] = set()
        for number, mistake in enumerate(entry.mistaken_for):
            place = loaded.files.place("entry", entry.id, ("mistaken-for", number, "entry"))
            other = entries.get(mistake.entry)
            if mistake.entry == entry.id:
                yield Finding(NAME, place, f"'{entry.id}' is named as its own look-alike.", tip="Name the other entry.")
            elif mistake.entry in met:
                yield Finding(NAME, place, f"'{mistake.entry}' is named twice as a look-alike.", tip="Join the two sentences.")
            elif other and entry.id not in (each.entry for each in other.mistaken_for):
                yield Finding(
                    NAME,
                    place,
                    f"'{mistake.entry}' does not name '{entry.id}' back as a look-alike.",
                    tip=f"Add '{entry.id}' under mistaken-for: in {loaded.library.files['entry', other.id]}, "
                    "so that a person who starts there is warned too.",
                )
            met.add(mistake.entry)
