"""What words of the closed lists say of themselves. A library without its vocabulary has no lists."""

from __future__ import annotations

from keytool.library.model import Vocabulary


def holding_kinds(vocabulary: Vocabulary) -> tuple[str, ...]:
    """The kinds of entry within which others may stand."""
    return tuple(word.id for word in vocabulary.get("entry-kind", {}).values() if word.get("holds"))


def needing(vocabulary: Vocabulary, field: str) -> tuple[str, ...]:
    """The themes whose entries have to give a field, such as "feeding"."""
    return tuple(word.id for word in vocabulary.get("theme", {}).values() if field in word.get("needs", ()))
