"""An entry stands within groups only, and never within itself."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "within"
HOLDING_KINDS = ("group", "cannot-be-told")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each parent that is no group, and each ring of `within`."""
    entries = loaded.library.entries
    for entry in entries.values():
        for number, parent in enumerate(entry.within):
            place = loaded.files.place("entry", entry.id, ("within", number))
            if parent in entries and entries[parent].kind not in HOLDING_KINDS:
                yield Finding(
                    NAME,
                    place,
                    f"'{parent}' is of kind '{entries[parent].kind}', so nothing can stand within it.",
                    "an entry of kind " + " or ".join(HOLDING_KINDS),
                    "Name a group, or change the kind of that entry.",
                )
            if parent in entries and entry.id in loaded.library.ancestry(parent):
                yield Finding(
                    NAME,
                    place,
                    f"'{entry.id}' stands within '{parent}', which stands within '{entry.id}'.",
                    tip="Take one of the two out; a group cannot be inside its own member.",
                )
