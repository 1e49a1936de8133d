"""Say that an id belongs to nothing, and what it may have meant."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import did_you_mean, listed
from keytool.library.records import BY_NAME

MOST_LISTED = 12
OTHERWISE = "Mend the name, or write what it stands for first."


def of_kind(loaded: Loaded, what: str) -> Collection[str]:
    """The ids of everything of one kind, such as entry or source."""
    return BY_NAME[what].of(loaded.library)


def is_broken(loaded: Loaded, what: str, id: str) -> bool:
    """Whether the id may stand in a file that could not be used, so that nobody can say it is unknown."""
    record = BY_NAME[what]
    if record.has_own_files:
        return id in loaded.files.broken
    return any(name.startswith(record.kind) for name in loaded.files.broken)


def unknown(loaded: Loaded, check: str, what: str, id: str, place: Place) -> Iterator[Finding]:
    """A finding when there is no such entry, character, key, source, quantity, term or caution."""
    known = of_kind(loaded, what)
    if id not in known and not is_broken(loaded, what, id):
        yield replace(not_among(UNKNOWN, id, known, place, where_to_write(what), what=what, id=id), check=check)


def where_to_write(what: str) -> str:
    """The tip for an id that belongs to nothing: where such a thing is written."""
    written = BY_NAME[what].written
    where = f" into keydata/{written}" if written else ""
    return f"Mend the name, or write what it stands for{where} first."


def few(known: Collection[str]) -> str:
    """The ids that are allowed, where they are few enough to be read."""
    return listed(known) if len(known) <= MOST_LISTED else ""


def missing(check: str, text: str) -> Message:
    """The message of a rule on an id that is none of those known: few are listed, of many the nearest is named."""
    return Message(check, text, "{few}", "{near}")


def not_among(message: Message, named: str, known: Collection[str], place: Place, otherwise: str = OTHERWISE, **words: object) -> Finding:
    """A finding for an id that is none of those known; `otherwise` is the tip where none of them is near."""
    return message.at(place, few=few(known), near=did_you_mean(named, known) or otherwise, **words)


UNKNOWN = missing("", "There is no {what} '{id}'.")
"""What every rule says of an id that belongs to nothing."""
