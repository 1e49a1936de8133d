"""Read what a contributor types: what is shown of a character, and what it rests on."""

from __future__ import annotations

import re
from typing import Any

from keytool.library.messages import did_you_mean, listed
from keytool.library.model import Character, Library

LONGEST_RANGE = 40
_RANGE = re.compile(r"(?P<low>-?[0-9]+(?:\.[0-9]+)?)?\s*(?:(?P<to>\.\.|to)\s*(?P<high>-?[0-9]+(?:\.[0-9]+)?)?)?\s*(?P<unit>[^0-9.\s].*)?")


class NotUnderstood(Exception):
    """Raised for an answer that cannot be taken; the message says what can."""


def showing(library: Library, character: Character, text: str) -> dict[str, Any]:
    """What is shown, as it stands in a file, from "knobs, flanges", "14..19 µm", "14.. µm", "12 µm" or "any".

    Raises:
        NotUnderstood: a state the character does not have, no number, or a unit of something else.
    """
    if text.strip() == "any":
        return {"any": True}
    return _range(library, character, text.strip()) if character.is_number else {"states": _states(character, text)}


def _states(character: Character, text: str) -> list[str]:
    by_name = {word: id for id, state in character.states.items() for word in (id, state.name.lower())}
    by_name |= {str(number): id for number, id in enumerate(character.states, 1)}
    states = []
    for word in (each.strip().lower() for each in text.split(",") if each.strip()):
        if word not in by_name:
            raise NotUnderstood(
                f"'{word}' is not a state of '{character.id}'. Allowed: {listed(character.states)}, or any. "
                f"{did_you_mean(word, character.states)}".strip()
            )
        states.append(by_name[word])
    if not states:
        raise NotUnderstood(f"Name at least one state of '{character.id}': {listed(character.states)}, or any.")
    return [id for id in character.states if id in states]


def _range(library: Library, character: Character, text: str) -> dict[str, Any]:
    found = _RANGE.fullmatch(text.replace("\u03bc", "µ"))
    if not found or not (found["low"] or found["high"]) or len(text) > LONGEST_RANGE:
        raise NotUnderstood(
            f"'{text[:LONGEST_RANGE]}' is no measure of '{character.id}'. "
            f"Write low..high and the unit, such as 14..19{character.unit}, or any."
        )
    unit = (found["unit"] or character.unit).strip()
    units = library.vocabulary["unit"]
    fitting = [id for id, word in units.items() if word.get("dimension") == units[character.unit].get("dimension")]
    unit = {"um": "µm", "um/s": "µm/s"}.get(unit, unit)
    if unit not in fitting:
        raise NotUnderstood(f"'{unit}' is no unit for '{character.id}'. Allowed: {listed(fitting)}.")
    ends = {"low": found["low"], "high": found["high"] if found["to"] else found["low"]}
    result: dict[str, Any] = {name: _plain(value) for name, value in ends.items() if value is not None}
    if len(result) == 2 and result["low"] > result["high"]:
        raise NotUnderstood(f"{result['low']} is more than {result['high']}. Write the smaller one first.")
    return {**result, "unit": unit}


def _plain(digits: str) -> int | float:
    return float(digits) if "." in digits else int(digits)


def basis(library: Library, text: str) -> dict[str, Any]:
    """A basis as it stands in a file, from "memory", "common-practice", "published:SOURCE:seen" or "computed:FORMULA".

    A note may follow after "; ". Several sources are joined by "+".

    Raises:
        NotUnderstood: no such kind or source, or a part that the kind needs is missing.
    """
    said, _, note = text.partition(";")
    kind, _, rest = (part.strip() for part in said.partition(":"))
    more = {"note": note.strip()} if note.strip() else {}
    if kind not in library.vocabulary["basis"]:
        raise NotUnderstood(
            f"'{kind}' is no kind of basis. Allowed: {listed(library.vocabulary['basis'])}. "
            f"{did_you_mean(kind, library.vocabulary['basis'])}".strip()
        )
    if kind == "published":
        named, _, value = rest.rpartition(":")
        sources = [each.strip() for each in named.split("+") if each.strip()]
        unknown = [each for each in sources if each not in library.sources]
        if not sources or value not in library.vocabulary["value"]:
            raise NotUnderstood(
                f"Write published:SOURCE:HOW, where HOW is {listed(library.vocabulary['value'])}, "
                "such as published:thorne-malek-1968:seen. If you cannot name the source, it is memory."
            )
        if unknown:
            near = did_you_mean(unknown[0], library.sources) or "'wetmount list sources' shows all."
            raise NotUnderstood(f"There is no source '{unknown[0]}'. {near} A new one is written into keydata/sources.yaml first.")
        return {"kind": kind, "sources": sources, "value": value, **more}
    if kind == "computed":
        if not rest:
            raise NotUnderstood("Write the formula with its figures, such as computed:0.61 x 550 nm / 0.65.")
        return {"kind": kind, "how": rest, **more}
    if rest:
        raise NotUnderstood(f"'{kind}' takes nothing after ':'. Write a note after ';'.")
    return {"kind": kind, **more}
