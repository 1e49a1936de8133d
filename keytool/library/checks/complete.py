"""An entry has what a person at the scope needs and most others give: a look, a picture, what it is taken for, what it means."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Entry

NAME = "complete"
TIP = (
    "It can be used as it is. characters: says what is seen, figure: names a drawing, mistaken-for: its nearest double and the "
    "look that tells them apart, tells: what it means for the soil. 'wetmount show' of a kin shows all four."
)
LACKS = Message(NAME, "'{entry}' has {lacking} yet.", tip=TIP, severity=Severity.ADVICE)


WANTED: Mapping[str, Callable[[Entry], bool]] = {
    "nothing to look at": lambda entry: bool(entry.statements),
    "no picture": lambda entry: entry.figure is not None,
    "no look-alike": lambda entry: bool(entry.mistaken_for),
    "no meaning for the soil": lambda entry: bool(entry.tells),
}


def check(loaded: Loaded) -> Iterator[Finding]:
    """Advice for each entry that lacks any of the four, of those that most entries of the library give; silent while a file is broken."""
    if loaded.files.broken:
        return
    entries = loaded.library.entries.values()
    usual = {words: given for words, given in WANTED.items() if sum(map(given, entries)) > len(entries) / 2}
    for entry in entries:
        if lacking := [words for words, given in usual.items() if not given(entry)]:
            words = " and ".join(filter(None, (", ".join(lacking[:-1]), lacking[-1])))
            place = loaded.files.place("entry", entry.id, ("id",))
            yield LACKS.at(place, entry=entry.id, lacking=words)
