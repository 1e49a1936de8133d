"""The leads of a couplet are worded alike, so that the eye goes straight to the difference."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.couplets import couplets
from keytool.library.checks.shown import as_shown
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "parallel"
UNEQUAL = Message(
    NAME,
    "Lead '{lead}' has {length} characters, its partner '{partner}' only {least}.",
    tip="Say of each what is said of the other.",
    severity=Severity.ADVICE,
)
STOPPED = Message(
    NAME,
    "Lead '{lead}' ends with a full stop, its partner does not.",
    tip="End all leads of a couplet alike; without a full stop is the habit here.",
    severity=Severity.ADVICE,
)
SMALL_LETTER = Message(NAME, "Lead '{lead}' begins with a small letter.", tip="Begin it with a capital.", severity=Severity.ADVICE)


def check(loaded: Loaded) -> Iterator[Finding]:
    """Advice for each couplet whose leads differ much in length, in how they begin, or in how they end."""
    widest = loaded.library.limit("widest-leads")
    for at in couplets(loaded):
        texts = {lead.id: as_shown(loaded.library, lead.text) for lead in at.couplet.leads.values()}
        short, long = min(texts, key=lambda id: len(texts[id])), max(texts, key=lambda id: len(texts[id]))
        if len(texts[long]) > widest * len(texts[short]):
            sizes = {"length": len(texts[long]), "partner": short, "least": len(texts[short])}
            yield UNEQUAL.at(at.place("leads", long, "text"), lead=long, **sizes)
        stopped = [id for id, text in texts.items() if text.endswith(".")]
        if stopped and len(stopped) < len(texts):
            yield STOPPED.at(at.place("leads", stopped[0], "text"), lead=stopped[0])
        for id, text in texts.items():
            if text[0].islower():
                yield SMALL_LETTER.at(at.place("leads", id, "text"), lead=id)
