"""The little markup of texts: `{strong-spear}` for a quantity, `[[plectus]]` for a link."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

_MARKUP = re.compile(r"\{(?P<quantity>[^{}]*)\}|\[\[(?P<id>[^\[\]|]*)(?:\|(?P<words>[^\[\]]*))?\]\]")


@dataclass(frozen=True, slots=True)
class QuantityRef:
    """Stands for a bench quantity with its unit."""

    id: str


@dataclass(frozen=True, slots=True)
class Link:
    """A link to an entry, key, character, term or caution; `words` is empty where its name is shown."""

    id: str
    words: str


Part: TypeAlias = str | QuantityRef | Link


def parts(text: str) -> Iterator[Part]:
    """A text cut into plain words, quantities and links, in order."""
    end = 0
    for match in _MARKUP.finditer(text):
        if match.start() > end:
            yield text[end : match.start()]
        if match["quantity"] is not None:
            yield QuantityRef(match["quantity"])
        else:
            yield Link(match["id"], match["words"] or "")
        end = match.end()
    if end < len(text):
        yield text[end:]
