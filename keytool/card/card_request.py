"""What was asked for, found in the library and put into words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from keytool.card.comparison import entries_content, look_alike_content
from keytool.card.content import content
from keytool.card.errors import NothingAsked, NotInLibrary
from keytool.card.model import CardCouplet, Content
from keytool.card.words import Run
from keytool.library.model import Library

T = TypeVar("T")
DENSE = Run(" How to see each: on the larger card.")
"""A dense card has no room for it."""


def chosen(
    library: Library, keys: Sequence[str], look_alikes: Sequence[str], entries: Sequence[str], photos: Mapping[str, bytes], dense: bool
) -> list[Content]:
    """The keys, the look-alike sets, then the entries, which are compared with each other; `photos` are shown of entries only.

    Raises:
        NotInLibrary: one of them is not there.
        NothingAsked: none was named.
    """
    made = [content(library, _found(library.keys, each, "key")) for each in keys]
    made += [look_alike_content(library, _found(library.look_alikes, each, "look-alike set")) for each in look_alikes]
    if entries:
        made.append(entries_content(library, [_found(library.entries, each, "entry") for each in entries], photos))
    if not made:
        raise NothingAsked("Say which key, look-alike set or entries the card is to show.")
    return [_dense(each) if dense else each for each in made]


def _found(known: Mapping[str, T], id: str, what: str) -> T:
    if id not in known:
        raise NotInLibrary(f"There is no {what} '{id}'. There are: {', '.join(list(known)[:12])}{' ...' if len(known) > 12 else ''}.")
    return known[id]


def _dense(what: Content) -> Content:
    if not any(isinstance(block, CardCouplet) for block in what.blocks):
        return what
    return replace(what, begin=(*what.begin[:-1], (*what.begin[-1], DENSE)))
