"""The JSON Schema of the library to take away, made from the library's own types, so that the two cannot part."""

from __future__ import annotations

import inspect
import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from keytool.library.model import Library
from keytool.library.value import Showing

Schema = dict[str, Any]

PLAIN: Mapping[type, Schema] = {
    str: {"type": "string"},
    int: {"type": "integer"},
    float: {"type": "number"},
    bool: {"type": "boolean"},
    NoneType: {"type": "null"},
}
SHOWING: Schema = {
    "description": "What is shown: states of a character by their ids, any of which may be seen, or a stretch of numbers, "
    "lengths in µm and speeds in µm/s. An end that is null is open.",
    "oneOf": [
        {"type": "object", "required": ["states"], "properties": {"states": {"type": "array", "items": {"type": "string"}}}},
        {
            "type": "object",
            "required": ["low", "high"],
            "properties": {"low": {"type": ["number", "null"]}, "high": {"type": ["number", "null"]}},
        },
    ],
}


def schema(version: int, left_out: tuple[str, ...]) -> bytes:
    """The schema of `library.json`, whose `schema_version` is `version` and which holds all of a library but the parts `left_out`.

    Fields may be added without a new version, so unknown ones are allowed.
    """
    definitions: dict[str, Schema] = {}
    hints = get_type_hints(Library)
    parts = {part.name: _of(hints[part.name], definitions) for part in fields(Library) if part.name not in left_out}
    whole = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "The wetmount library",
        "description": "Everything of the library by id. Lengths are in µm and speeds in µm/s, whatever unit a file of the library uses.",
        "type": "object",
        "required": ["schema_version", "version", "licence", *parts],
        "properties": {
            "schema_version": {"const": version, "description": "Goes up when a field is renamed, removed or changes its meaning."},
            "version": {"type": "string", "description": "The version of wetmount that made the file."},
            "licence": {"type": "string", "description": "The licence of all of it."},
            **parts,
        },
        "$defs": dict(sorted(definitions.items())),
    }
    return (json.dumps(whole, ensure_ascii=False, indent=1) + "\n").encode()


def _of(hint: Any, definitions: dict[str, Schema]) -> Schema:
    """The schema of a type; a dataclass is defined once and referred to."""
    if hint is Any:
        return {}
    if hint in PLAIN:
        return PLAIN[hint]
    if hint is Showing:
        return SHOWING
    if is_dataclass(hint):
        return _defined(hint, definitions)
    origin, inner = get_origin(hint), get_args(hint)
    if origin in (Union, UnionType):
        return {"anyOf": [_of(each, definitions) for each in inner]}
    if origin is tuple:
        return _listed(inner, definitions)
    if origin is Literal:
        return {"enum": list(inner)}
    if origin is frozenset:
        return {"type": "array", "items": _of(inner[0], definitions), "uniqueItems": True}
    assert origin is Mapping, hint
    return {"type": "object", "additionalProperties": _of(inner[1], definitions)}


def _listed(inner: tuple[Any, ...], definitions: dict[str, Schema]) -> Schema:
    """A tuple of any length, or of so many parts."""
    if inner[-1] is ...:
        return {"type": "array", "items": _of(inner[0], definitions)}
    return {"type": "array", "prefixItems": [_of(each, definitions) for each in inner], "minItems": len(inner), "maxItems": len(inner)}


def _defined(kind: Any, definitions: dict[str, Schema]) -> Schema:
    name = kind.__name__
    if name not in definitions:
        definitions[name] = {}  # taken, should the type name itself
        hints = get_type_hints(kind)
        properties = {part.name: _of(hints[part.name], definitions) for part in fields(kind)}
        about = inspect.cleandoc(kind.__doc__).replace("\n", " ").replace("  ", " ")
        definitions[name] = {"description": about, "type": "object", "required": list(properties), "properties": properties}
    return {"$ref": f"#/$defs/{name}"}
