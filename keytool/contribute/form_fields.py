"""The typed fields of the forms on the site: what each is about, the limits the schema sets, and the words of the checks for it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from keytool.contribute.look_alike_talk import SOUND as SOUND_LOOK_ALIKE
from keytool.contribute.photo.record import LEAST_SCALE, MOST_SCALE, SCALE_SAYS
from keytool.contribute.rule_messages import FILE, message_of, shape_messages
from keytool.library import Loaded
from keytool.library.yaml_file import YamlFile

PROBED = "probed"
LOOK_ALIKE = {"id": ("id",), "title": ("title",), "about": ("about",), "decisive": ("decisive", "text")}
PHOTO = {"author": ("author",), "shows": ("shows",)}
STATE = {"id": ("id",), "name": ("states", PROBED, "name"), "about": ("states", PROBED, "about")}
"""The fields of the smaller forms that are typed, and where each stands in its file."""
SOUND_PHOTO: Mapping[str, Any] = {
    "id": "probed-1",
    "entry": "probed",
    "author": "Probe",
    "licence": "cc0-1.0",
    "shows": "Probe.",
    "scale": {"um-per-pixel": 1, "basis": {"kind": "memory"}},
    **{
        kind: {"file": f"probed-1.{kind}.{ending}", "width": 1, "height": 1, "um-per-pixel": 1, "bar": 1}
        for kind, ending in (("page", "jpg"), ("card", "png"))
    },
    "original": {"sha256": "0" * 64, "width": 1, "height": 1},
}
"""The record of a photograph that no schema objects to."""
SOUND_CHARACTER: Mapping[str, Any] = {
    "id": "probed",
    "name": "Probe",
    "asks": "Probe?",
    "kind": "states",
    "magnification": 40,
    "applies": "everything",
    "look": "Probe.",
    "misread": {"rate": 0.1, "basis": {"kind": "memory"}},
    "states": {each: {"name": "Probe", "about": "Probe."} for each in (PROBED, "other")},
}
"""A character that no schema objects to."""
SOUND: Mapping[str, Mapping[str, Any]] = {"look-alike": SOUND_LOOK_ALIKE, "photo": SOUND_PHOTO, "character": SOUND_CHARACTER}


def field(loaded: Loaded, kind: str, path: tuple[str, ...]) -> dict[str, Any]:
    """One typed field: "about", the limits of its schema, and "says", the sentence for each rule."""
    properties = loaded.schemas.named()[f"{kind}.schema.json"]["properties"]
    schema = _schema(properties, path)
    says = {
        rule: {part: text.replace(f" in '{PROBED}'", "") for part, text in said.items()}
        for rule, said in shape_messages(loaded, path, kind, SOUND.get(kind)).items()
    }
    return {"about": str(schema["description"]), **_limits(loaded, schema), "says": says}


def other_forms(loaded: Loaded) -> dict[str, Any]:
    """What the forms for a set of look-alikes, a state and a photograph need besides what the form for an entry has."""
    properties = loaded.schemas.named()["look-alike.schema.json"]["properties"]
    entries = properties["entries"]
    return {
        "lookAlike": {
            "fields": {name: field(loaded, "look-alike", path) for name, path in LOOK_ALIKE.items()},
            "comments": {name: schema["description"] for name, schema in properties.items()},
            "least": entries["minItems"],
            "most": entries["maxItems"],
            "few": _counted(loaded, entries["minItems"] - 1),
            "many": _counted(loaded, entries["maxItems"] + 1),
        },
        "state": {"fields": {name: field(loaded, "character", path) for name, path in STATE.items()}},
        "photo": {
            "fields": {name: field(loaded, "photo", path) for name, path in PHOTO.items()},
            "least": LEAST_SCALE,
            "most": MOST_SCALE,
            "says": {"message": SCALE_SAYS},
        },
    }


def _counted(loaded: Loaded, number: int) -> dict[str, str]:
    """What the schema says of a set of so many look-alikes."""
    raw = {**SOUND_LOOK_ALIKE, "entries": [f"entry-{n}" for n in range(number)]}
    return message_of(loaded.schemas.findings("look-alike", YamlFile(FILE, raw))[0], {})


def _schema(properties: Mapping[str, Any], path: tuple[str, ...]) -> dict[str, Any]:
    found: dict[str, Any] = properties[path[0]]
    for name in path[1:]:
        found = found["properties"][name] if "properties" in found else found["additionalProperties"]
    return found


def _limits(loaded: Loaded, schema: dict[str, Any]) -> dict[str, Any]:
    """The limits the schema sets for a text: its pattern, its length."""
    schema = schema.get("items", schema)
    if "$ref" in schema:
        file, _, name = schema["$ref"].partition("#/$defs/")
        schema = loaded.schemas.named()[file]["$defs"][name]
    return {name: schema[name] for name in ("pattern", "minLength", "maxLength") if name in schema}
