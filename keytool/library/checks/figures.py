"""A figure that takes a size from its entry finds it there."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from keytool.library.checks.file_parts import Part, parts
from keytool.library.checks.unknown_ids import unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.value import Interval

NAME = "figures"
OF_NO_ENTRY = Message(NAME, "'{name}' takes its size from an entry, but this figure belongs to none.", allowed="a number in µm")
OF_A_STATE = Message(NAME, "'{character}' is a choice of states, so no size can be taken from it.", allowed="a number character")
HALF_A_RANGE = Message(
    NAME,
    "'{entry}' does not give both ends of '{character}'.",
    tip="Give low: and high: of '{character}', or write the size as a number in µm.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each {of: character} that is no number with both ends in this entry."""
    for part in parts(loaded):
        if part.path[-1:] == ("figure",) and isinstance(part.value, dict):
            for name, value in part.value.items():
                if isinstance(value, dict):
                    yield from _of(loaded, part, name, value["of"])


def _of(loaded: Loaded, figure: Part, name: str, character: str) -> Iterator[Finding]:
    place = figure.file.place((*figure.path, name, "of"))
    if figure.kind != "entry":
        yield OF_NO_ENTRY.at(place, name=name)
        return
    yield from unknown(loaded, NAME, "character", character, place)
    entry = loaded.library.entries[_id(figure.file.data)]
    known = loaded.library.characters.get(character)
    if known and not known.is_number:
        yield OF_A_STATE.at(place, character=character)
    elif known:
        statement = entry.statements.get(character)
        ends = statement.showing if statement and isinstance(statement.showing, Interval) else Interval()
        if not math.isfinite(ends.low) or not math.isfinite(ends.high):
            yield HALF_A_RANGE.at(place, entry=entry.id, character=character)


def _id(data: Any) -> str:
    return str(data["id"])
