"""A text as long as it will be shown."""

from __future__ import annotations

from keytool.library.model import Library
from keytool.library.text import QuantityRef, parts
from keytool.library.wording import plain


def as_shown(library: Library, text: str) -> str:
    """A text with its quantities and links put in; as written when it names a quantity that does not exist."""
    quantities = (part.id for part in parts(text) if isinstance(part, QuantityRef))
    return plain(library, text) if all(id in library.quantities for id in quantities) else text
