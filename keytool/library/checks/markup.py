"""Every {quantity} and [[link]] in a text leads to something."""

from __future__ import annotations

import re
from collections.abc import Iterator

from keytool.library.checks.file_parts import Part, texts
from keytool.library.checks.unknown_ids import is_broken, of_kind, unknown
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.messages import did_you_mean
from keytool.library.records import LINKED
from keytool.library.text import Link, QuantityRef, parts

NAME = "markup"
LONE_BRACKET = Message(
    NAME, "'{mark}' stands alone in a text.", allowed="{{quantity}}, [[id]] or [[id|words]]", tip="Close the bracket, or take it out."
)
DEAD_LINK = Message(
    NAME,
    "The link [[{name}]] leads nowhere.",
    allowed="the id of an entry, key, character, term, caution, guide or set of look-alikes",
    tip="{tip}",
)
_LEFT_OVER = re.compile(r"\[\[|\]\]|\{|\}")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each quantity or link that does not exist, and each bracket that is not closed."""
    for text in texts(loaded):
        for part in parts(text.value):
            if isinstance(part, QuantityRef):
                yield from unknown(loaded, NAME, "quantity", part.id, text.place)
            elif isinstance(part, Link):
                yield from _link(loaded, text, part.id)
            elif found := _LEFT_OVER.search(part):
                yield LONE_BRACKET.at(text.place, mark=found[0])


def _link(loaded: Loaded, text: Part, id: str) -> Iterator[Finding]:
    if any(id in of_kind(loaded, each.one) or is_broken(loaded, each.one, id) for each in LINKED):
        return
    known = [id for each in LINKED for id in each.of(loaded.library)]
    yield DEAD_LINK.at(text.place, name=id, tip=did_you_mean(id, known) or "Mend the id, or write the plain word without brackets.")
