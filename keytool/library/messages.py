"""Say in plain words what a schema found wrong, and where."""

from __future__ import annotations

import difflib
import json
from collections.abc import Iterable
from typing import Any, cast

from jsonschema import ValidationError

from keytool.library.finding import Finding
from keytool.library.yaml_file import YamlFile

CHECK = "shape"
_TYPES = {"string": "text", "number": "a number", "integer": "a whole number", "boolean": "true or false",
          "object": "a mapping (name: value)", "array": "a list", "null": "nothing"}


def did_you_mean(word: str, allowed: Iterable[str]) -> str:
    """A tip that names the nearest allowed word, or an empty text when none is near."""
    near = difflib.get_close_matches(word, list(allowed), n=1, cutoff=0.6)
    return f"Did you mean '{near[0]}'?" if near else ""


def listed(words: Iterable[str]) -> str:
    """Words as they are listed in a message."""
    return ", ".join(words)


def sentence(error: ValidationError, file: YamlFile) -> Finding:
    """The finding for one schema error, placed where its writer has to look."""
    path = tuple(error.absolute_path)
    schema: Any = error.schema
    rule, wanted, known = str(error.validator), cast(Any, error.validator_value), schema.get("properties", {})
    say = schema.get("x-say", {})
    name = str(path[-1]) if path else "the file"
    place, message, allowed, tip = file.place(path), "", "", say.get("tip", "")
    if rule in say:
        message = say[rule].format(value=_short(error.instance))
    elif rule == "required":
        missing = next(each for each in wanted if each not in error.instance)
        message = f"'{missing}' is missing{_in(path)}."
        place = file.place(path, of_key=True)
    elif rule == "additionalProperties":
        unknown = [each for each in error.instance if each not in known]
        place = file.place((*path, unknown[0]), of_key=True)
        message = f"'{unknown[0]}' is not known{_in(path)}."
        allowed = listed(known)
        tip = did_you_mean(unknown[0], known) or tip
    elif rule == "enum":
        words = [str(each) for each in wanted]
        message = f"'{_short(error.instance)}' is not a word for '{name}'."
        allowed = listed(words)
        tip = did_you_mean(str(error.instance), words) or tip
    elif rule == "type":
        types = wanted if isinstance(wanted, list) else [wanted]
        message = f"'{name}' is {_kind(error.instance)}."
        allowed = " or ".join(_TYPES[each] for each in types)
    elif rule == "pattern":
        message = f"'{_short(error.instance)}' does not fit '{name}'."
    elif rule in ("minLength", "maxLength"):
        message = f"'{name}' has {len(error.instance)} characters."
        allowed = f"{'at least' if rule == 'minLength' else 'at most'} {wanted}"
        tip = tip or ("Say more." if rule == "minLength" else "Say it shorter, or split it.")
    elif rule in ("minItems", "minProperties", "maxProperties"):
        message = f"'{name}' holds {len(error.instance)}."
        allowed = f"{'at least' if rule.startswith('min') else 'at most'} {wanted}"
    elif rule in ("minimum", "maximum", "exclusiveMinimum"):
        message = f"'{name}' is {error.instance}."
        allowed = {"minimum": "at least ", "maximum": "at most ", "exclusiveMinimum": "more than "}[rule] + str(wanted)
    elif rule == "uniqueItems":
        message = f"'{name}' names something twice."
    elif rule == "const":
        message = f"'{name}' is {_short(error.instance)}."
        allowed = json.dumps(wanted)
    elif rule == "dependentRequired":
        message = f"A number without '{next(iter(wanted.values()))[0]}'."
        tip = "Every number needs its unit."
    else:
        message = f"'{name}' does not belong here."
        place = file.place(path, of_key=True)
    return Finding(CHECK, place, message, allowed, tip)


def _in(path: tuple[Any, ...]) -> str:
    return f" in '{path[-1]}'" if path else ""


def _kind(value: Any) -> str:
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return f"true or false ({str(value).lower()})"
    if isinstance(value, (int, float)):
        return f"a number ({value})"
    if isinstance(value, str):
        return f"text ('{_short(value)}')"
    return "a list" if isinstance(value, list) else "a mapping"


def _short(value: Any) -> str:
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 40 else text[:37] + "..."
