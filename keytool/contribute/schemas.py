"""The schemas as they are published: each whole in itself, its closed lists and shared parts put in, for editors."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from keytool.library import Loaded

SHARED = ("shared", "words")
"""Schemas that are no kind of file, only parts of others."""


def kinds(loaded: Loaded) -> list[str]:
    """Every kind of file that has a schema."""
    return [kind for name in loaded.schemas.named() if (kind := name.removesuffix(".schema.json")) not in SHARED]


def bundled(loaded: Loaded, kind: str) -> dict[str, Any]:
    """The schema of one kind with everything it refers to inside it, and the label of each word of a closed list."""
    named = loaded.schemas.named()
    schema = _turned(named[f"{kind}.schema.json"])
    definitions: dict[str, Any] = dict(schema.pop("$defs", {}))
    waiting = list(_referred([schema, definitions]))
    while waiting:
        name = waiting.pop()
        if name not in definitions:
            source, _, part = name.partition(".")
            definitions[name] = _turned(named[f"{source}.schema.json"]["$defs"][part], source)
            if source == "words":
                definitions[name] |= _labels(loaded, part)
            waiting += _referred(definitions[name])
    return {**schema, **({"$defs": dict(sorted(definitions.items()))} if definitions else {})}


def schema_files(loaded: Loaded) -> dict[str, bytes]:
    """The published schemas by file name, such as `entry.schema.json`."""
    return {
        f"{kind}.schema.json": (json.dumps(bundled(loaded, kind), ensure_ascii=False, indent=1) + "\n").encode() for kind in kinds(loaded)
    }


def _turned(value: Any, source: str = "") -> Any:
    """A schema without its words for `wetmount check`, and with references that stay inside the file."""
    if isinstance(value, dict):
        return {name: _inside(each, source) if name == "$ref" else _turned(each, source) for name, each in value.items() if name != "x-say"}
    return [_turned(each, source) for each in value] if isinstance(value, list) else value


def _inside(reference: str, source: str) -> str:
    """`shared.schema.json#/$defs/id`, or `#/$defs/id` within that file, as `#/$defs/shared.id`."""
    file, _, part = reference.partition("#/$defs/")
    home = file.removesuffix(".schema.json") or source
    return f"#/$defs/{home}.{part}" if home else f"#/$defs/{part}"


def _referred(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        if isinstance(value.get("$ref"), str):
            yield value["$ref"].removeprefix("#/$defs/")
        for each in value.values():
            yield from _referred(each)
    elif isinstance(value, list):
        for each in value:
            yield from _referred(each)


def _labels(loaded: Loaded, name: str) -> Mapping[str, Any]:
    """What editors show beside each word of a closed list."""
    words = loaded.library.vocabulary.get(name.removesuffix("-number"), {})
    told = [word.label + (f": {word.get('about')}" if word.get("about") else "") for word in words.values()]
    return {"enumDescriptions": told} if told else {}
