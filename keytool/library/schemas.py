"""Schemas of every kind of file, with the closed lists of `vocabulary.yaml` put in."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator, ValidationError, validators

from keytool.library.finding import Finding
from keytool.library.messages import sentences
from keytool.library.yaml_file import KEPT, YamlFile

Words = Mapping[str, Iterable[str]]


def words_schema(words: Words) -> dict[str, Any]:
    """The schema whose `$defs` are the closed lists, so that no schema repeats one."""
    lists: dict[str, Any] = {name: {"enum": list(ids)} for name, ids in words.items()}
    if "magnification" in lists:
        lists["magnification-number"] = {"enum": [int(each) for each in lists["magnification"]["enum"]]}
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "words.schema.json", "$defs": lists}


class Schemas:
    """The schemas in a folder, ready to hold files against.

    What a file was found to lack is remembered as long as the file and its schema are the same, whichever folder they came from.
    """

    def __init__(self, folder: Path, words: Words) -> None:
        self._texts = (*(path.read_text("utf-8") for path in sorted(folder.glob("*.schema.json"))), json.dumps(words_schema(words)))
        self._named = _by_name(self._texts)

    def named(self) -> Mapping[str, dict[str, Any]]:
        """Every schema by file name, the closed lists among them, as they are published."""
        return self._named

    def findings(self, kind: str, file: YamlFile) -> list[Finding]:
        """What is wrong with the shape of a file of a kind, such as "entry"."""
        return list(_findings(self._texts, kind, file))

    def field(self, kind: str, path: Sequence[str]) -> Mapping[str, Any]:
        """The schema of one field of a kind of file, such as ("names", "common") of "entry"; of a list, that of its items."""
        found = _validator(self._texts, kind).schema
        for name in path:
            found = _inside(_items(found), name)
        return _joined(_items(found))

    def field_findings(self, kind: str, path: Sequence[str], value: Any) -> list[Finding]:
        """What is wrong with a value that is to stand in one field, whatever else the file holds."""
        schema, data = dict(self.field(kind, path)), value
        for name in reversed(path):
            schema, data = {"properties": {name: schema}}, {name: data}
        file = YamlFile("", data)
        return [each for error in _Validator(schema).iter_errors(data) for each in sentences(error, file)]


def _whole_pattern(validator: Any, pattern: str, value: Any, schema: Any) -> Iterator[ValidationError]:
    """A pattern as ECMA-262 reads it, whose `$` is the very end: Python's also fits before a last line break."""
    if validator.is_type(value, "string") and not re.search(re.sub(r"\$$", r"\\Z", pattern), value):
        yield ValidationError(f"{value!r} does not match {pattern!r}")


_Validator = validators.extend(Draft202012Validator, {"pattern": _whole_pattern})  # type: ignore[no-untyped-call]


@lru_cache(maxsize=KEPT)
def _findings(texts: tuple[str, ...], kind: str, file: YamlFile) -> tuple[Finding, ...]:
    found = (each for error in _validator(texts, kind).iter_errors(file.data) for each in sentences(error, file))
    return tuple(dict.fromkeys(found))


@lru_cache(maxsize=64)
def _validator(texts: tuple[str, ...], kind: str) -> Any:
    named = _by_name(texts)
    return _Validator(_whole(named[f"{kind}.schema.json"], f"{kind}.schema.json", named))


def _whole(part: Any, name: str, named: Mapping[str, dict[str, Any]]) -> Any:
    """A part of the schema `name` with every definition it points to put in its place.

    Looking definitions up takes most of the time of holding a file against its schema; ours never point to themselves.
    """
    if isinstance(part, list):
        return [_whole(each, name, named) for each in part]
    if not isinstance(part, dict):
        return part
    rest = {key: _whole(each, name, named) for key, each in part.items() if key not in ("$ref", "$defs")}
    if not isinstance(part.get("$ref"), str):
        return rest
    file, _, definition = part["$ref"].partition("#/$defs/")
    there = file or name
    pointed = _whole(named[there]["$defs"][definition], there, named)
    return {"allOf": [pointed], **rest} if rest.keys() - _SAID else pointed


def _items(schema: Mapping[str, Any]) -> Mapping[str, Any]:
    """The schema of the items of a list; any other as it is."""
    joined = _joined(schema)
    found: Mapping[str, Any] = joined.get("items", joined)
    return found


def _inside(schema: Mapping[str, Any], name: str) -> Mapping[str, Any]:
    joined = _joined(schema)
    found: Mapping[str, Any] = joined.get("properties", {}).get(name) or joined["additionalProperties"]
    return found


def _joined(schema: Mapping[str, Any]) -> Mapping[str, Any]:
    """A schema with what it points to laid under it."""
    under: dict[str, Any] = {}
    for each in schema.get("allOf", ()):
        under |= _joined(each)
    return {**under, **{name: each for name, each in schema.items() if name != "allOf"}}


_SAID = {"title", "description", "examples"}
"""What a schema says beside a pointer that restricts nothing."""


@lru_cache(maxsize=64)
def _by_name(texts: tuple[str, ...]) -> dict[str, dict[str, Any]]:
    schemas: list[dict[str, Any]] = [json.loads(text) for text in texts]
    return {schema["$id"]: schema for schema in schemas}
