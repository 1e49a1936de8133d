"""Tell a contributor in words where an entry comes out, what it collides with, and what would part the two."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from keytool.contribute.discriminators import Parting, not_stated, partings
from keytool.contribute.keyed_out import KeyPath, Outcome
from keytool.identify import Fault
from keytool.library.checks.showing_text import seen_words, showing_words
from keytool.library.model import Entry, Library
from keytool.library.wording import name_of, plain

MOST_NAMED = 6
SENTENCES = {
    "no-key": "No key leads to {entry}: it stands within no group that a key treats. Groups with a key: {groups}.",
    "way": "{key}: {path} → {end}",
    "at-once": "at once",
    "ends": "{end}.",
    "ends-together": "{end}, together with {others}.",
    "on-to": "on to {end}.",
    "unstated": "stuck at couplet {number} ({asks}): nothing is stated of {missing}.",
    "wrong-end": "COLLISION: it comes out at {end}, which does not hold {entry}.",
    "loop": "couplet {number} for the second time; the key goes round in a ring.",
    "gap": "couplet {number}, where no lead fits it.",
    "overlap": "couplet {number}, where more than one lead fits it.",
    "nothing-parts": "Nothing that is stated parts {entry} from {others}. Look for a difference and state it for each; or let one end hold "
    "them all: a group, or an entry of kind cannot-be-told.",
    "not-stated": "Stated of the others and not of this one: {missing}.",
    "no-quantity": "{words}, but no bench quantity lies between them to ask for; write one into keydata/bench/quantities.yaml first",
}
"""What is said of a way through a key and of what parts two entries, on the command line and in the form alike."""


def comes_out(library: Library, outcome: Outcome) -> Iterator[str]:
    """One paragraph for each way through a key: the couplets by number, the lead taken at each, and the end."""
    entry = library.entries[outcome.entry]
    if not outcome.ways:
        scopes = {group: key.title for key in library.keys.values() for group in key.scope}
        yield SENTENCES["no-key"].format(
            entry=entry.name, groups=", ".join(f"{name_of(library, group)} ({title})" for group, title in scopes.items())
        )
    for way in outcome.ways:
        yield SENTENCES["way"].format(key=name_of(library, way.key), path=path(library, way), end=_end(library, outcome, way))


def path(library: Library, way: KeyPath) -> str:
    """The couplets of a way by their printed numbers, with the lead taken at each."""
    couplets = library.keys[way.key].couplets
    return (
        ", ".join(f"{couplets[step.couplet].number} {plain(library, couplets[step.couplet].leads[step.lead].text)}" for step in way.steps)
        or SENTENCES["at-once"]
    )


def _end(library: Library, outcome: Outcome, way: KeyPath) -> str:
    if way.fault:
        return collision(library, outcome, way)
    others = outcome.others(way)
    if way.end in library.keys:
        return SENTENCES["on-to"].format(end=name_of(library, way.end))
    together = "ends-together" if others and way.end != outcome.entry else "ends"
    return SENTENCES[together].format(end=name_of(library, way.end), others=names(library, others))


def names(library: Library, ids: Sequence[str]) -> str:
    """Names of entries, the first few of many."""
    shown = ", ".join(name_of(library, id) for id in ids[:MOST_NAMED])
    return f"{shown} and {len(ids) - MOST_NAMED} more" if len(ids) > MOST_NAMED else shown


def collision(library: Library, outcome: Outcome, way: KeyPath) -> str:
    """What goes wrong on one way, in a sentence."""
    couplet = library.keys[way.key].couplets[way.about]
    return SENTENCES[_FAULTS[way.fault or Fault.GAP]].format(
        number=couplet.number,
        asks=plain(library, couplet.asks),
        end=name_of(library, way.end),
        entry=name_of(library, outcome.entry),
        missing=", ".join(library.characters[id].name.lower() for id in way.missing),
    )


_FAULTS = {Fault.UNSTATED: "unstated", Fault.WRONG_END: "wrong-end", Fault.LOOP: "loop", Fault.GAP: "gap", Fault.OVERLAP: "overlap"}


def both_show(library: Library, outcome: Outcome, way: KeyPath) -> Iterator[str]:
    """What an entry and those it comes out with both show on the way there, and each of them in what they differ."""
    entry, others = library.entries[outcome.entry], [library.entries[id] for id in outcome.others(way)]
    if way.shown:
        yield f"Both show: {seen_words(library, way.shown)}."
    found = partings(library, entry, others, library.keys[way.key].magnification)
    for each in found:
        yield f"They differ in {parting_words(library, entry, others, each)}."
    if others and not found:
        yield from _nothing_parts(library, entry, others)


def parting_words(library: Library, entry: Entry, others: Sequence[Entry], parting: Parting) -> str:
    """A character in which an entry differs from others, with what each shows."""
    id = parting.character.id
    theirs = "; ".join(
        f"{other.name}: {showing_words(library, parting.character, other.statements[id].showing)}"
        for other in others[:MOST_NAMED]
        if id in other.statements
    )
    own = showing_words(library, parting.character, parting.own)
    words = f"{parting.character.name.lower()} ({entry.name}: {own}; {theirs})"
    if not parting.character.is_number or parting.at:
        return words
    return SENTENCES["no-quantity"].format(words=words)


def _nothing_parts(library: Library, entry: Entry, others: Sequence[Entry]) -> Iterator[str]:
    missing = not_stated(entry, others)
    yield SENTENCES["nothing-parts"].format(entry=entry.name, others=names(library, [each.id for each in others]))
    if missing:
        yield SENTENCES["not-stated"].format(missing=", ".join(library.characters[id].name.lower() for id in missing))
