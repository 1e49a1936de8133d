"""A commented file from plain data: each field under the schema's own description of it."""

from __future__ import annotations

import posixpath
import re
import textwrap
import unicodedata
from collections.abc import Iterator, Mapping
from typing import Any

from keytool.contribute.yaml_text import flow, pair
from keytool.library import Loaded
from keytool.library.model import Character, Library

SCHEMA_FOLDER = "build/schemas"
"""Where `wetmount new editor-schemas` writes the schemas that an editor reads."""
COMMENT_WIDTH = 110


def modeline(kind: str, name: str) -> str:
    """The first line of a file, which tells a YAML language server where its schema is; `name` is the file from the root of the library."""
    up = posixpath.relpath(SCHEMA_FOLDER, posixpath.dirname(name))
    return f"# yaml-language-server: $schema={up}/{kind}.schema.json\n"


def file_text(loaded: Loaded, kind: str, name: str, raw: Mapping[str, Any]) -> str:
    """The whole text of a new file of a kind (entry, look-alike), in the order of its schema, and what else could be said."""
    properties: Mapping[str, Any] = loaded.schemas.named()[f"{kind}.schema.json"]["properties"]
    text = modeline(kind, name)
    for field, schema in properties.items():
        if field in raw:
            text += _comment(schema["description"])
            text += _characters(loaded.library, raw[field]) if (kind, field) == ("entry", "characters") else pair(field, raw[field])
    left = [(field, schema["description"]) for field, schema in properties.items() if field not in raw]
    if left:
        text += "\n# What else can be said here:\n" + "".join(_comment(f"{field}: {about}") for field, about in left)
    return text


def _characters(library: Library, statements: Mapping[str, Any]) -> str:
    """Each statement under what its character asks, with the states there are."""
    return "characters:\n" + "".join(
        _comment(_asked(library.characters[id]), 2) + f"  {id}: {flow(each)}\n" for id, each in statements.items()
    )


def _asked(character: Character) -> str:
    allowed = f"In {character.unit}" if character.is_number else f"One or more of: {', '.join(character.states)}"
    return f"{character.name}: {character.asks} {allowed}; or any: true."


def _comment(words: str, indent: int = 0) -> str:
    pad = " " * indent + "# "
    return textwrap.fill(words, COMMENT_WIDTH, initial_indent=pad, subsequent_indent=pad, break_on_hyphens=False) + "\n"


def slug(words: str) -> str:
    """An id made of a name: "Tarn End worm" gives "tarn-end-worm"; empty where no letter is left."""
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().lower()
    parts = [part for part in re.findall(r"[a-z0-9]+", plain) if part]
    while parts and not parts[0][0].isalpha():
        parts.pop(0)
    return "-".join(parts)[:48].strip("-")


def entry_name(raw: Mapping[str, Any]) -> str:
    """The file of an entry, from the root of the library."""
    return f"keydata/entries/{raw['theme']}/{raw['id']}.yaml"


def without_empty(raw: Mapping[str, Any]) -> dict[str, Any]:
    """The data without fields that nothing was said for."""
    return dict(_said(raw))


def _said(raw: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    for name, value in raw.items():
        left = without_empty(value) if isinstance(value, Mapping) else value
        if left not in ("", [], {}, None):
            yield name, left
