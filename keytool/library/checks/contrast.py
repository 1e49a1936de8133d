"""The leads of a couplet contrast: they speak of the same characters, and at most one takes all the rest."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import At, couplets, is_whole
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import listed

NAME = "contrast"
TWO_RESTS = Message(
    NAME,
    "'{first}' and '{lead}' both take all the rest.",
    allowed="one lead with otherwise: true",
    tip="Say with when: what must be seen for the other.",
)
NO_CONTRAST = Message(
    NAME,
    "The leads do not contrast: '{first}' looks at {looks}, '{lead}' at {others}.",
    tip="All leads of a couplet speak of the same characters, so that one look decides between them.",
)


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each lead that speaks of other characters than its partner, and for each `otherwise` too many."""
    for at in couplets(loaded):
        yield from _rests(at)
        if is_whole(at):
            yield from _different(at)


def _rests(at: At) -> Iterator[Finding]:
    rests = [lead for lead in at.couplet.leads.values() if lead.otherwise]
    for lead in rests[1:]:
        yield TWO_RESTS.at(at.place("leads", lead.id, "otherwise", of_key=True), first=rests[0].id, lead=lead.id)


def _different(at: At) -> Iterator[Finding]:
    named = [lead for lead in at.couplet.leads.values() if not lead.otherwise]
    for lead in named[1:]:
        if set(lead.when) != set(named[0].when):
            yield NO_CONTRAST.at(
                at.place("leads", lead.id, "when", of_key=True),
                first=named[0].id,
                looks=listed(named[0].when),
                lead=lead.id,
                others=listed(lead.when),
            )
