"""Every nematode says what it feeds on, and a group names all that its members feed on."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.messages import listed

NAME = "feeding"
THEME = "nematodes"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each nematode without `feeding`, and each group that leaves out what a member feeds on."""
    entries = loaded.library.entries
    for entry in entries.values():
        file = loaded.files.by_id["entry", entry.id]
        if entry.theme == THEME and not entry.feeding:
            yield Finding(
                NAME,
                file.place(("id",), of_key=True),
                f"'{entry.id}' does not say what it feeds on.",
                listed(loaded.library.vocabulary["feeding"]),
                "Add feeding: {groups: [...], basis: ...}. It is not inherited, since it is what people come for.",
            )
        for group in sorted(loaded.library.ancestry(entry.id) - {entry.id}):
            left_out = [each for each in entry.feeding if each not in entries[group].feeding]
            if entries[group].feeding and left_out:
                yield Finding(
                    NAME,
                    file.place(("feeding", "groups")),
                    f"'{entry.id}' feeds as {listed(left_out)}, but its group '{group}' does not list that.",
                    tip=f"Add it to the feeding of '{group}', or mend this one.",
                )
