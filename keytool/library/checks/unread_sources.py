"""A value is called seen or quoted only where its source was read that far."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.file_parts import bases
from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "unread"
CONTRADICTS = {("seen", "not-read"), ("seen", "quoted"), ("quoted", "not-read")}
"""How a value is said to be known, and how much of its source was read, that cannot both be true."""


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each basis that claims more than the record of reading in sources.yaml allows."""
    library = loaded.library
    for part in bases(loaded):
        value = part.value.get("value", "")
        for id in part.value.get("sources", ()):
            source = library.sources.get(id)
            if source and (value, source.read) in CONTRADICTS:
                yield Finding(
                    NAME,
                    part.file.place((*part.path, "value")),
                    f"The value is called '{value}', but '{id}' is marked '{source.read}' "
                    f"({library.vocabulary['read'][source.read].label}).",
                    tip="Say value: recalled. If the value was read since, say in sources.yaml how much of the source was read."
                    if source.read == "not-read"
                    else "Say value: quoted, since only a later page that quotes it was read.",
                )
