"""What is asked is a question."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "questions"
NO_QUESTION = Message(NAME, "'{text}' does not end with '?'.", tip="Ask one thing that can be answered by looking.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each `asks` of a couplet or a character that does not end with a question mark."""
    for at in couplets(loaded):
        yield from _no_question(at.couplet.asks, at.place("asks"))
    for character in loaded.library.characters.values():
        yield from _no_question(character.asks, loaded.files.place("character", character.id, ("asks",)))


def _no_question(text: str, place: Place) -> Iterator[Finding]:
    if not text.endswith("?"):
        yield NO_QUESTION.at(place, text=text)
