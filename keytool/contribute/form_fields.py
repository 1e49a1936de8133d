"""The typed fields of the forms on the site: what each is about, the limits the schema sets, and the words of the checks for it."""

from __future__ import annotations

from typing import Any

from keytool.contribute.photo.record import unbelievable
from keytool.library import Loaded
from keytool.library.messages import TOO_FEW, TOO_MANY, field_messages

ANY = "*"
"""Any id, on the way to a field."""
LOOK_ALIKE = {"id": ("id",), "title": ("title",), "about": ("about",), "decisive": ("decisive", "text")}
PHOTO = {"author": ("author",), "shows": ("shows",)}
STATE = {"id": ("id",), "name": ("states", ANY, "name"), "about": ("states", ANY, "about")}
"""The fields of the smaller forms that are typed, and where each stands in its file."""


def field(loaded: Loaded, kind: str, path: tuple[str, ...]) -> dict[str, Any]:
    """One typed field: "about", the limits of its schema, and "says", the sentence for each rule."""
    schema = loaded.schemas.field(kind, path)
    limits = {name: schema[name] for name in ("pattern", "minLength", "maxLength") if name in schema}
    return {
        "about": _about(loaded, kind, path),
        **limits,
        "says": field_messages(schema, path[path.index(ANY) + 1 :] if ANY in path else path),
    }


def other_forms(loaded: Loaded) -> dict[str, Any]:
    """What the forms for a set of look-alikes, a state and a photograph need besides what the form for an entry has."""
    properties = loaded.schemas.named()["look-alike.schema.json"]["properties"]
    entries, scale = properties["entries"], loaded.library.quantities["photo-pixel"]
    return {
        "lookAlike": {
            "fields": {name: field(loaded, "look-alike", path) for name, path in LOOK_ALIKE.items()},
            "comments": {name: schema["description"] for name, schema in properties.items()},
            "least": entries["minItems"],
            "most": entries["maxItems"],
            "few": TOO_FEW.template(name="'entries'", count=entries["minItems"] - 1, least=entries["minItems"]),
            "many": TOO_MANY.template(name="'entries'", count=entries["maxItems"] + 1, most=entries["maxItems"]),
        },
        "state": {"fields": {name: field(loaded, "character", path) for name, path in STATE.items()}},
        "photo": {
            "fields": {name: field(loaded, "photo", path) for name, path in PHOTO.items()},
            "least": scale.low,
            "most": scale.high,
            "says": {"message": unbelievable(loaded.library, "{value}")},
        },
    }


def _about(loaded: Loaded, kind: str, path: tuple[str, ...]) -> str:
    """What the schema says of a field; of a list, what it says of the list."""
    found: dict[str, Any] = loaded.schemas.named()[f"{kind}.schema.json"]
    for name in path:
        found = found.get("items", found)
        found = found["properties"][name] if "properties" in found else found["additionalProperties"]
    return str(found["description"])
