"""What the form on the site needs to know: closed lists, what the library holds, the keys, and the words of the checks."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from typing import Any

from keytool.contribute.discriminators import parting_limit
from keytool.contribute.draft import COMMENT_WIDTH, SCHEMA_FOLDER
from keytool.contribute.field_validator import taken
from keytool.contribute.form_fields import field, other_forms
from keytool.contribute.form_rules import rules_of_a_couplet, rules_of_a_look_alike, rules_of_an_entry
from keytool.contribute.outcome_text import MOST_NAMED, SENTENCES
from keytool.contribute.yaml_text import WIDTH
from keytool.figures import Kind, Param, kinds
from keytool.library import Loaded
from keytool.library.checks.length import LEAD, QUESTION
from keytool.library.closed_lists import holding_kinds, needing
from keytool.library.model import Character, Entry, Key, Lead, Library
from keytool.library.value import Interval, Showing, States
from keytool.library.wording import plain

WRITTEN = {
    "id": ("id",),
    "common": ("names", "common"),
    "scientific": ("names", "scientific"),
    "summary": ("summary",),
    "would-tell": ("would-tell",),
    "contributor": ("contributors",),
    "reviewed": ("reviewed",),
}
"""The fields of the form that are typed, and where each stands in the file of an entry."""
LISTS = ("entry-kind", "theme", "commonness", "feeding", "basis", "value", "unit", "licence")
VARIABLE = "WETMOUNT_CONTRIBUTE"
"""The name under which the page's script finds the data."""


def form_data(loaded: Loaded) -> dict[str, Any]:
    """Everything the form needs, as plain data. Lengths are in base units (µm, µm/s); open ends of numbers are null."""
    library = loaded.library
    properties = loaded.schemas.named()["entry.schema.json"]["properties"]
    where = _themes(library)
    return {
        "version": library.version,
        "words": {
            name: [{"id": word.id, "label": word.label, **_told(word.more)} for word in library.vocabulary[name].values()] for name in LISTS
        },
        "fields": {name: field(loaded, "entry", path) for name, path in WRITTEN.items()},
        "says": rules_of_an_entry(library),
        "mistakes": {
            "about": str(properties["mistaken-for"]["description"]),
            "says": {**rules_of_a_look_alike(), **field(loaded, "entry", ("mistaken-for", "by"))["says"]},
            "by": str(properties["mistaken-for"]["items"]["properties"]["by"]["description"]),
        },
        "couplets": {
            "says": rules_of_a_couplet(library),
            "longest": {"question": library.limit(QUESTION), "lead": library.limit(LEAD)},
        },
        "kinds": {name: _kind(kind) for name, kind in kinds(library.drawings.values()).items()},
        "quantities": {id: limit for id, each in library.quantities.items() if (limit := parting_limit(library, each)) is not None},
        "sentences": SENTENCES,
        "mostNamed": MOST_NAMED,
        "fedThemes": needing(library.vocabulary, "feeding"),
        "holdingKinds": holding_kinds(library.vocabulary),
        "comments": {name: schema["description"] for name, schema in properties.items()},
        "schemaFolder": SCHEMA_FOLDER,
        "widths": {"comment": COMMENT_WIDTH, "line": WIDTH},
        "characters": {id: _character(library, each, where[id]) for id, each in library.characters.items()},
        "entries": {id: _entry(library, each) for id, each in library.entries.items()},
        "keys": {id: _key(library, each) for id, each in library.keys.items()},
        "sources": {id: {"cite": each.cite, "read": each.read} for id, each in library.sources.items()},
        "taken": taken(loaded),
        **other_forms(loaded),
    }


def form_script(loaded: Loaded) -> bytes:
    """The data as a script for the site, `assets/contribute-data.js`."""
    text = json.dumps(form_data(loaded), ensure_ascii=False, separators=(",", ":"))
    return f"window.{VARIABLE} = {text};\n".replace("\u2028", "\\u2028").replace("\u2029", "\\u2029").encode()


def _told(more: Mapping[str, Any]) -> dict[str, Any]:
    return {name: more[name] for name in ("about", "dimension", "factor") if name in more}


def _themes(library: Library) -> dict[str, str]:
    """The theme of the things that state each character; empty where they are of several."""
    found: dict[str, set[str]] = {id: set() for id in library.characters}
    for entry in library.entries.values():
        for id in entry.statements:
            found[id].add(entry.theme)
    return {id: next(iter(themes)) if len(themes) == 1 else "" for id, themes in found.items()}


def _character(library: Library, character: Character, theme: str) -> dict[str, Any]:
    return {
        "name": character.name,
        "theme": theme,
        "asks": plain(library, character.asks),
        "look": plain(library, character.look),
        "asksWritten": character.asks,
        "unit": character.unit,
        "magnification": character.magnification,
        "states": {id: state.name for id, state in character.states.items()},
        "misread": character.misread,
    }


def _entry(library: Library, entry: Entry) -> dict[str, Any]:
    return {
        "name": entry.name,
        "scientific": entry.scientific,
        "also": list(entry.also),
        "kind": entry.kind,
        "theme": entry.theme,
        "within": list(entry.within),
        "holds": library.is_group(entry.id),
        "feeding": list(entry.feeding),
        "shows": {id: _showing(each.showing) for id, each in entry.statements.items()},
        "own": [id for id, each in entry.statements.items() if each.stated_by == entry.id],
        "told": [each.character for each in entry.mistaken_for if each.character],
        **({"figure": {"kind": entry.figure.kind, **entry.figure.params}} if entry.figure else {}),
    }


def _kind(kind: Kind) -> dict[str, Any]:
    return {"about": kind.description, "params": {param.name: _param(kind, param) for param in kind.params if param.name != "accent"}}


def _param(kind: Kind, param: Param) -> dict[str, Any]:
    """A parameter of a drawing, and for a number what is said of one that cannot be drawn."""
    told = {"about": param.description, "type": param.type, **({"default": param.default} if param.default is not None else {})}
    if param.type == "choice":
        return {**told, "choices": list(param.choices)}
    if param.type == "flag":
        return told
    return {**told, "low": param.low, "high": param.high, "says": f"{kind.name}: {param.out_of_range}"}


def _key(library: Library, key: Key) -> dict[str, Any]:
    return {
        "title": key.title,
        "scope": list(key.scope),
        "first": key.first,
        "magnification": key.magnification,
        "couplets": {
            couplet.id: {
                "number": couplet.number,
                "asks": plain(library, couplet.asks),
                "characters": list(couplet.characters),
                "leads": {lead.id: _lead(library, lead) for lead in couplet.leads.values()},
            }
            for couplet in key.couplets.values()
        },
    }


def _lead(library: Library, lead: Lead) -> dict[str, Any]:
    goes = {"couplet": lead.couplet} if lead.couplet else {"key": lead.key} if lead.key else {"end": lead.end}
    when: dict[str, Any] = {"otherwise": True} if lead.otherwise else {"when": {id: _showing(each) for id, each in lead.when.items()}}
    return {"text": plain(library, lead.text), **when, **goes}


def _showing(showing: Showing) -> Any:
    if isinstance(showing, States):
        return sorted(showing.ids)
    assert isinstance(showing, Interval)
    return [value if math.isfinite(value) else None for value in (showing.low, showing.high)]
