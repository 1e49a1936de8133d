"""Say in plain words what a schema found wrong, and where."""

from __future__ import annotations

import difflib
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from jsonschema import ValidationError

from keytool.library.finding import Finding, Place
from keytool.library.message import Message
from keytool.library.yaml_file import DataPath, YamlFile

CHECK = "shape"
_TYPES = {
    "string": "text",
    "number": "a number",
    "integer": "a whole number",
    "boolean": "true or false",
    "object": "a mapping (name: value)",
    "array": "a list",
    "null": "nothing",
}
_MISSING = {
    "basis": "Say what it rests on. {kind: memory} is honest where no source was seen.",
    "sources": "A published basis names at least one source of sources.yaml. If you cannot name it, it is memory or common-practice.",
    "value": "Say how the published value is known: seen, quoted or recalled.",
    "how": "Give the formula with its figures.",
    "would-tell": "Say what would settle it: oil immersion, staining, a laboratory.",
}
_MEANT = {
    **dict.fromkeys(("um", "u", "mu", "micron", "microns", "micrometre", "micrometer", "micrometres", "micrometers"), "µm"),
    **dict.fromkeys(("um/s", "microns/s", "um per s"), "µm/s"),
    **dict.fromkeys(("c", "degc", "deg c", "celsius"), "°C"),
}
"""How units are typed where the keyboard has no µ or °, and what is meant."""
_NUMBER_TIP = "Write it in plain digits without quotes or unit, such as 12 or 0.5: no exponent, no leading zero, no fraction sign."


MISSING = Message(CHECK, "'{name}' is missing{inside}.", tip="{tip}")
TOO_SHORT = Message(CHECK, "{name} is {length} long.", "at least {least}", "Say more.")
TOO_LONG = Message(CHECK, "{name} is {length} long.", "at most {most}", "Say it shorter, or split it.")
TOO_FEW = Message(CHECK, "{name} holds {count}.", "at least {least}")
TOO_MANY = Message(CHECK, "{name} holds {count}.", "at most {most}")
OTHER_PATTERN = Message(CHECK, "'{value}' does not fit {what}.")
NO_NUMBER = Message(CHECK, "{name} is text ('{value}').", "a number")


def did_you_mean(word: str, allowed: Iterable[str], likeness: float = 0.6) -> str:
    """A tip that names the nearest allowed word, or an empty text when none is near; `likeness` (0 to 1) is how near it must be."""
    near = difflib.get_close_matches(word, list(allowed), n=1, cutoff=likeness)
    return f"Did you mean '{near[0]}'?" if near else ""


def listed(words: Iterable[str]) -> str:
    """Words as they are listed in a message."""
    return ", ".join(words)


def sentences(error: ValidationError, file: YamlFile) -> Iterator[Finding]:
    """The findings for one schema error, placed where its writer has to look; several where several names are unknown."""
    at = _At(error, file)
    own = at.say.get(at.rule)
    if own:
        yield at.finding(own.format(value=_short(error.instance)))
    elif at.rule in _SPEAKERS:
        yield from _SPEAKERS[at.rule](at)
    else:
        yield at.finding(f"{at.name} does not belong here.", place=at.key_place)


@dataclass(frozen=True)
class _At:
    """One schema error with what is needed to word it."""

    error: ValidationError
    file: YamlFile

    @property
    def rule(self) -> str:
        return str(self.error.validator)

    @property
    def schema(self) -> dict[str, Any]:
        return self.error.schema if isinstance(self.error.schema, dict) else {}

    @property
    def say(self) -> dict[str, str]:
        """The schema's own words for its rules (`x-say`)."""
        words: dict[str, str] = self.schema.get("x-say", {})
        return words

    @property
    def wanted(self) -> Any:
        """What the rule asks for, such as the least number of items."""
        return self.error.validator_value

    @property
    def value(self) -> Any:
        return self.error.instance

    @property
    def path(self) -> DataPath:
        """Where it is; a name that cannot be one stands at its own place."""
        path = tuple(self.error.absolute_path)
        return (*path, self.value) if "propertyNames" in self.error.absolute_schema_path else path

    @property
    def place(self) -> Place:
        is_name = "propertyNames" in self.error.absolute_schema_path
        return self.file.place(self.path, of_key=is_name)

    @property
    def key_place(self) -> Place:
        return self.file.place(self.path, of_key=True)

    @property
    def name(self) -> str:
        """The part at fault as a sentence begins with it."""
        words = _words(self.path)
        return words[0].upper() + words[1:]

    def finding(self, message: str, allowed: str = "", tip: str = "", place: Place | None = None) -> Finding:
        """A finding; the schema's own tip stands in where there is none, unless it speaks of patterns only."""
        return Finding(CHECK, place or self.place, message, allowed, tip or own_tip(self.schema, self.rule))

    def say_as(self, message: Message, place: Place | None = None, **words: object) -> Finding:
        """A finding in the words of a message."""
        said = message.at(place or self.place, **words)
        return self.finding(said.message, said.allowed, said.tip, said.place)


def field_messages(schema: Mapping[str, Any], path: Sequence[str]) -> dict[str, dict[str, str]]:
    """What is said of one typed field, as templates: "missing" (`{inside}` names what holds it), "short", "long", "pattern".

    Of each only where the schema of the field has such a rule; `{value}` and `{length}` are what was typed and how long it is.
    """
    name = path[-1]
    inside = _inside(tuple(path[:-1])) if len(path) > 1 else ""
    found = {"missing": MISSING.template(name=name, inside=inside, tip=_MISSING.get(name, ""))}
    for rule, limit, message in (("short", "minLength", TOO_SHORT), ("long", "maxLength", TOO_LONG)):
        if limit in schema:
            found[rule] = message.template(name=f"'{name}'", least=schema[limit], most=schema[limit])
    if "pattern" in schema:
        say = schema.get("x-say", {})
        own = {"message": say["pattern"], "tip": say.get("tip", "")} if "pattern" in say else {}
        found["pattern"] = own or OTHER_PATTERN.template(what=f"'{name}'")
    return {rule: {part: text for part, text in each.items() if text} for rule, each in found.items()}


def own_tip(schema: Mapping[str, Any], rule: str) -> str:
    """The tip that a schema has for a rule; one that speaks of patterns speaks of nothing else."""
    say: Mapping[str, str] = schema.get("x-say", {})
    return "" if "pattern" in say and rule != "pattern" else say.get("tip", "")


def _words(path: DataPath) -> str:
    if not path:
        return "the file"
    if isinstance(path[-1], int):
        return f"item {path[-1] + 1} of {_words(path[:-1])}"
    return f"'{path[-1]}'"


def _inside(path: DataPath) -> str:
    return f" in {_words(path)}" if path else ""


def _required(at: _At) -> Iterator[Finding]:
    missing = next(each for each in at.wanted if at.error.message.startswith(repr(each)))
    yield at.say_as(MISSING, at.key_place, name=missing, inside=_inside(at.path), tip=_MISSING.get(missing, ""))


def _unknown(at: _At) -> Iterator[Finding]:
    known = at.schema.get("properties", {})
    for name in at.value:
        if name not in known:
            place = at.file.place((*at.path, name), of_key=True)
            before = _before(at.value, name)
            if at.value[name] is None and name.isdecimal() and isinstance(before, int):
                yield at.finding(f"A number is written with a comma: {before},{name}.", tip=f"Write a point: {before}.{name}", place=place)
            elif at.value[name] is None and " " in name:
                yield at.finding(
                    f"A text was cut off at a comma; this is left over: '{_short(name)}'.",
                    tip="Inside { } a text with a comma in it needs quotes.",
                    place=place,
                )
            else:
                yield at.finding(f"'{_short(name)}' is not known{_inside(at.path)}.", listed(known), did_you_mean(name, known), place)


def _before(mapping: dict[str, Any], name: str) -> Any:
    """What stands before a name in a mapping."""
    names = list(mapping)
    return mapping[names[names.index(name) - 1]] if names.index(name) else None


def _enum(at: _At) -> Iterator[Finding]:
    words = [str(each) for each in at.wanted]
    meant = _MEANT.get(str(at.value).lower(), "")
    near = f"Did you mean '{meant}'?" if meant in words else did_you_mean(str(at.value), words)
    yield at.finding(f"'{_short(at.value)}' is not a word for {_words(at.path)}.", listed(words), near)


def _type(at: _At) -> Iterator[Finding]:
    types = at.wanted if isinstance(at.wanted, list) else [at.wanted]
    looks_like_number = "number" in types and isinstance(at.value, str) and re.search(r"\d", at.value)
    with_comma = looks_like_number and re.fullmatch(r"-?\d+,\d+", at.value)
    tip = f"Write a point, without quotes: {at.value.replace(',', '.')}" if with_comma else _NUMBER_TIP if looks_like_number else ""
    yield at.finding(f"{at.name} is {_kind(at.value)}.", " or ".join(_TYPES[each] for each in types), tip)


def _length(at: _At) -> Iterator[Finding]:
    length = f"{len(at.value)} character{'' if len(at.value) == 1 else 's'}"
    message = TOO_SHORT if at.rule == "minLength" else TOO_LONG
    yield at.say_as(message, name=at.name, length=length, least=at.wanted, most=at.wanted)


def _count(at: _At) -> Iterator[Finding]:
    message = TOO_FEW if at.rule.startswith("min") else TOO_MANY
    yield at.say_as(message, name=at.name, count=len(at.value), least=at.wanted, most=at.wanted)


def _bound(at: _At) -> Iterator[Finding]:
    words = {"minimum": "at least", "maximum": "at most", "exclusiveMinimum": "more than"}[at.rule]
    yield at.finding(f"{at.name} is {_short(at.value)}.", f"{words} {at.wanted}")


def _const(at: _At) -> Iterator[Finding]:
    yield at.finding(f"{at.name} is {_short(at.value)}.", json.dumps(at.wanted))


def _pattern(at: _At) -> Iterator[Finding]:
    yield at.say_as(OTHER_PATTERN, value=_short(at.value), what=_words(at.path))


def _twice(at: _At) -> Iterator[Finding]:
    known: set[str] = set()
    for each in at.value:
        written = json.dumps(each, sort_keys=True)
        if written in known:
            break
        known.add(written)
    double = each
    yield at.finding(f"{at.name} names '{_short(double)}' twice.", tip="Keep one of the two.")


def _unit(at: _At) -> Iterator[Finding]:
    yield at.finding(f"{at.name} has a number without a unit.", tip="Every number needs its unit.", place=at.key_place)


_SPEAKERS: dict[str, Callable[[_At], Iterator[Finding]]] = {
    "required": _required,
    "additionalProperties": _unknown,
    "enum": _enum,
    "type": _type,
    "pattern": _pattern,
    "minLength": _length,
    "maxLength": _length,
    "minItems": _count,
    "maxItems": _count,
    "minProperties": _count,
    "maxProperties": _count,
    "minimum": _bound,
    "maximum": _bound,
    "exclusiveMinimum": _bound,
    "uniqueItems": _twice,
    "const": _const,
    "dependentRequired": _unit,
}


def _kind(value: Any) -> str:
    if value is None:
        return "empty"
    if isinstance(value, bool):
        return f"true or false ({str(value).lower()})"
    if isinstance(value, int | float):
        return f"a number ({value})"
    if isinstance(value, str):
        return f"text ('{_short(value)}')"
    return "a list" if isinstance(value, list) else "a mapping (name: value)"


def _short(value: Any) -> str:
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    text = text.replace("\n", " ")
    return text if len(text) <= 40 else text[:37] + "..."
