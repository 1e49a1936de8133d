"""The reference of every field of every kind of file, made from the schemas, so that it cannot drift from them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from html import escape
from typing import Any

from keytool.contribute.schemas import bundled
from keytool.library import Loaded
from keytool.library.records import RECORDS

ELSEWHERE = ("#/$defs/shared.basis", "#/$defs/shared.figure")
"""Parts whose inside is told once, at the end, and not wherever they stand."""


@dataclass(frozen=True, slots=True)
class Field:
    """One field: the way to it (`*` for any id, `[]` for each item), what it is, what it takes, and whether it must stand."""

    path: str
    about: str
    takes: str
    needed: bool


def fields(loaded: Loaded, kind: str) -> list[Field]:
    """Every field of one kind of file, the outer before the inner."""
    schema = bundled(loaded, kind)
    return list(_inside(schema, schema, ()))


def shared_fields(loaded: Loaded) -> list[Field]:
    """The fields of a basis and of a figure, which stand in many kinds of file."""
    schema = bundled(loaded, "entry")
    named = schema["$defs"]
    return [*_inside(schema, named["shared.one-basis"], ("basis",)), *_inside(schema, named["shared.figure"], ("figure",))]


def _inside(whole: Mapping[str, Any], schema: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[Field]:
    needed = schema.get("required", ())
    named = dict(schema.get("properties", {}))
    if isinstance(schema.get("additionalProperties"), dict):
        named["*"] = schema["additionalProperties"]
    for name, each in named.items():
        full = _resolved(whole, each)
        yield Field(".".join((*path, name)), str(each.get("description", full.get("description", ""))), _takes(full), name in needed)
        if each.get("$ref") not in ELSEWHERE:
            yield from _under(whole, full, (*path, name))


def _under(whole: Mapping[str, Any], schema: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[Field]:
    """The fields inside a mapping, inside the items of a list, or inside the mapping a value may be instead of a list."""
    yield from _inside(whole, schema, path)
    if isinstance(schema.get("items"), dict):
        yield from _inside(whole, _resolved(whole, schema["items"]), (*path, "[]"))
    for one in schema.get("anyOf", ()):
        if "properties" in one:
            yield from _inside(whole, one, path)
    if isinstance(schema.get("else"), dict) and "properties" in schema["else"]:
        yield from _inside(whole, schema["else"], path)


def _resolved(whole: Mapping[str, Any], schema: Mapping[str, Any]) -> dict[str, Any]:
    found = dict(schema)
    while "$ref" in found:
        name = found.pop("$ref").removeprefix("#/$defs/")
        found = {**whole["$defs"][name], **found}
    return found


def _takes(schema: Mapping[str, Any]) -> str:
    """What may stand there, in a few words."""
    if "enum" in schema:
        return "one of: " + ", ".join(str(each) for each in schema["enum"])
    if "const" in schema:
        return str(schema["const"]).lower()
    words = {
        "string": "text",
        "number": "a number",
        "integer": "a whole number",
        "boolean": "true or false",
        "object": "a mapping",
        "array": "a list",
    }
    types = schema.get("type", "object")
    said = " or ".join(words[each] for each in (types if isinstance(types, list) else [types]))
    most = f", at most {schema['maxLength']} characters" if "maxLength" in schema and schema["maxLength"] < 500 else ""
    return said + most


def reference(loaded: Loaded) -> str:
    """The reference as HTML: a heading and a table for each kind of file, then the parts that many kinds share."""
    tables = [
        _table(each.kind, loaded.schemas.named()[f"{each.kind}.schema.json"]["title"], f"keydata/{each.place}", fields(loaded, each.kind))
        for each in RECORDS
    ]
    return "\n".join([*tables, _table("shared", "Basis and figure: parts that stand in many kinds of file", "", shared_fields(loaded))])


def _table(anchor: str, title: str, place: str, rows: list[Field]) -> str:
    where = f"<p><code>{escape(place)}</code></p>" if place else ""
    body = "".join(
        f'<tr><th scope="row"><code>{escape(row.path)}</code>{" <em>needed</em>" if row.needed else ""}</th>'
        f"<td>{escape(row.about)}</td><td>{escape(row.takes)}</td></tr>"
        for row in rows
    )
    columns = "".join(f'<th scope="col">{each}</th>' for each in ("Field", "What it is", "What it takes"))
    return (
        f'<h2 id="fields-{anchor}">{escape(title)}</h2>{where}<div class="wm-fields" tabindex="0">'
        f"<table><thead><tr>{columns}</tr></thead><tbody>{body}</tbody></table></div>"
    )
