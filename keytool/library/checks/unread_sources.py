"""A value is called seen or quoted only where its source was read that far."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.file_parts import bases
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Vocabulary

NAME = "unread"
CLAIMS_MORE = Message(NAME, "The value is called '{value}', but '{source}' is marked '{read}' ({label}).", tip="{tip}")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each basis that claims more than the record of reading in sources.yaml allows."""
    library = loaded.library
    for part in bases(loaded):
        value = part.value.get("value", "")
        for id in part.value.get("sources", ()):
            source = library.sources.get(id)
            if source and value in library.vocabulary["read"][source.read].get("not-with", ()):
                yield CLAIMS_MORE.at(part.file.place((*part.path, "value")), source=id, **claim(library.vocabulary, value, source.read))


def claim(vocabulary: Vocabulary, value: str, read: str) -> dict[str, str]:
    """What is said of a value that cannot be known so from a source read only so far."""
    word = vocabulary["read"][read]
    return {"value": value, "read": read, "label": word.label, "tip": word.get("otherwise")}
