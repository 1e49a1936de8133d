"""A language made by a machine: every letter accented and every text a third longer, so that what was left in English stands out.

Its tag is `en-XA`, the tag that Unicode (CLDR) keeps for English with accents as a test of programs; it counts as English does.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from keytool.library import Loaded
from keytool.library.checks.file_parts import texts
from keytool.library.model import Library
from keytool.library.sentences import BASE, Sentence, Sentences

LANGUAGE = "en-XA"
PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
ACCENTED = "àƀçđéƒĝĥîĵķļɱñöþɋŕšţûṽŵẋýžÀƁÇĐÉƑĜĤÎĴĶĻṀÑÖÞɊŔŠŢÛṼŴẊÝŽ"
LONGER = 1.3
_NAMES = re.compile(r"(\{\w+\})")


def mocked(text: str) -> str:
    """A text in the mock language; the names in braces stay."""
    parts = _NAMES.split(text)
    told = "".join(part if _NAMES.fullmatch(part) else part.translate(str.maketrans(PLAIN, ACCENTED)) for part in parts)
    letters = sum(len(part) for part in parts if not _NAMES.fullmatch(part))
    return told + "·" * max(0, round(letters * (LONGER - 1)))


def sentences(library: Library) -> dict[str, Sentence]:
    """Every sentence of the library in the mock language."""
    base = library.sentences[BASE].by_id
    return {id: mocked(said) if isinstance(said, str) else {form: mocked(each) for form, each in said.items()} for id, said in base.items()}


def in_mock(library: Library) -> Library:
    """The library, told in the mock language."""
    told: Mapping[str, Sentences] = {**library.sentences, LANGUAGE: Sentences(LANGUAGE, sentences(library))}
    return replace(library, language=LANGUAGE, sentences=told)


def english_left(loaded: Loaded, text: str) -> list[str]:
    """Pieces of two and more words of the English sentences that stand in a text, and in no text of an entry, a key or a character."""
    base = loaded.library.sentences[BASE].by_id.values()
    own = " ".join(each.value for each in texts(loaded))
    forms = [form for said in base for form in ([said] if isinstance(said, str) else said.values())]
    pieces = {piece.strip(" .,;:") for form in forms for piece in _NAMES.split(form) if not _NAMES.fullmatch(piece)}
    flat = " ".join(text.split())
    return sorted(piece for piece in pieces if len(piece.split()) > 1 and piece in flat and piece not in own)
