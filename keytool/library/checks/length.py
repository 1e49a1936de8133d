"""Leads and questions are short enough to be read with one eye at the lens."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.checks.shown import as_shown
from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "length"
TOO_LONG = Message(
    NAME, "{what} is {length} characters long as shown.", allowed="at most {most}", tip="Say it shorter; put the rest into look: or note:."
)
LEAD, QUESTION = "longest-lead", "longest-question"
"""The quantities that say how many characters each may have."""


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each lead or question that is too long as it will be shown."""
    for at in couplets(loaded):
        yield from _too_long(loaded, "The question", at.couplet.asks, QUESTION, at.place("asks"))
        for lead in at.couplet.leads.values():
            yield from _too_long(loaded, "The lead", lead.text, LEAD, at.place("leads", lead.id, "text"))
    for character in loaded.library.characters.values():
        place = loaded.files.place("character", character.id, ("asks",))
        yield from _too_long(loaded, "The question", character.asks, QUESTION, place)


def _too_long(loaded: Loaded, what: str, text: str, limit: str, place: Place) -> Iterator[Finding]:
    length, most = len(as_shown(loaded.library, text)), loaded.library.limit(limit)
    if length > most:
        yield TOO_LONG.at(place, what=what, length=length, most=f"{most:g}")
