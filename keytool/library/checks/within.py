"""An entry stands within groups only, and never within itself."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.closed_lists import holding_kinds
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "within"
NO_HOLDER = Message(
    NAME,
    "'{parent}' is of kind '{kind}', so nothing can stand within it.",
    allowed="an entry of kind {kinds}",
    tip="Name a group, or change the kind of that entry.",
)
EACH_IN_THE_OTHER = Message(
    NAME,
    "'{entry}' stands within '{parent}', which stands within '{entry}'.",
    tip="Take one of the two out; a group cannot be inside its own member.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each parent that is no group, and each ring of `within`."""
    entries, holding = loaded.library.entries, holding_kinds(loaded.library.vocabulary)
    for entry in entries.values():
        for number, parent in enumerate(entry.within):
            place = loaded.files.place("entry", entry.id, ("within", number))
            if parent in entries and entries[parent].kind not in holding:
                yield NO_HOLDER.at(place, parent=parent, kind=entries[parent].kind, kinds=" or ".join(holding))
            if parent in entries and entry.id in loaded.library.ancestry(parent):
                yield EACH_IN_THE_OTHER.at(place, entry=entry.id, parent=parent)
