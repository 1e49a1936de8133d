"""Every nematode says what it feeds on, and a group names all that its members feed on."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.closed_lists import needing
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import listed

NAME = "feeding"
NOT_SAID = Message(
    NAME,
    "'{entry}' does not say what it feeds on.",
    allowed="{kinds}",
    tip="Add feeding: {{groups: [...], basis: ...}}. It is not inherited, since it is what people come for.",
)
NOT_IN_GROUP = Message(
    NAME,
    "'{entry}' feeds as {groups}, but its group '{group}' does not list that.",
    tip="Add it to the feeding of '{group}', or mend this one.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each nematode without `feeding`, and each group that leaves out what a member feeds on."""
    entries, themes = loaded.library.entries, needing(loaded.library.vocabulary, "feeding")
    for entry in entries.values():
        file = loaded.files.by_id["entry", entry.id]
        if entry.theme in themes and not entry.feeding:
            yield NOT_SAID.at(file.place(("id",), of_key=True), entry=entry.id, kinds=listed(loaded.library.vocabulary["feeding"]))
        for group in sorted(loaded.library.ancestry(entry.id) - {entry.id}):
            left_out = [each for each in entry.feeding if each not in entries[group].feeding]
            if entries[group].feeding and left_out:
                yield NOT_IN_GROUP.at(file.place(("feeding", "groups")), entry=entry.id, groups=listed(left_out), group=group)
