"""What a lead or a shortcut asks to be seen is a state or a number its character has."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from keytool.library.checks.file_parts import Part, parts
from keytool.library.checks.unknown_ids import missing, not_among, unknown
from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Character

NAME = "asked"
OTHER_KIND = Message(NAME, "'{name}' is {kind}.", allowed="{allowed}")
NO_SUCH_STATE = missing(NAME, "'{state}' is not a state of '{name}'.")
OTHER_UNIT = Message(NAME, "'{name}' is in {unit}, but '{character}' is a {wanted} in {unit_2}.", tip="Name a quantity that is a {wanted}.")
A_RANGE = Message(NAME, "'{name}' is a range, so it cannot part two leads.", allowed="a quantity with value:")
UPSIDE_DOWN = Message(NAME, "'{low}' is not below '{high}', so nothing fits.", tip="Swap the two.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each unknown character, state or quantity, and each quantity that does not fit, in a `when`."""
    for part in parts(loaded):
        if part.path[-1:] == ("when",) and part.kind in ("key", "shortcuts"):
            yield from wrong(loaded, part)


def wrong(loaded: Loaded, when: Part) -> Iterator[Finding]:
    """The findings on one `when`."""
    for id, wanted in when.value.items():
        yield from _wanted(loaded, when, id, wanted)


def _wanted(loaded: Loaded, part: Part, id: str, wanted: Any) -> Iterator[Finding]:
    def place(*path: str | int) -> Place:
        return part.file.place((*part.path, id, *path), of_key=not path)

    yield from unknown(loaded, NAME, "character", id, place())
    character = loaded.library.characters.get(id)
    if character is None:
        return
    if character.is_number is isinstance(wanted, list):
        allowed = "{from: quantity} or {below: quantity}" if character.is_number else "a list of its states, such as "
        first = "" if character.is_number else f"[{next(iter(character.states))}]"
        kind = "a number" if character.is_number else "a choice of states"
        yield OTHER_KIND.at(place(), name=id, kind=kind, allowed=allowed + first)
    elif isinstance(wanted, list):
        for number, state in enumerate(wanted):
            if state not in character.states:
                yield not_among(NO_SUCH_STATE, state, character.states, place(number), state=state, name=id)
    else:
        for word, quantity in wanted.items():
            yield from _threshold(loaded, character, quantity, place(word))
        yield from _order(loaded, wanted, place())


def _threshold(loaded: Loaded, character: Character, id: str, place: Place) -> Iterator[Finding]:
    yield from unknown(loaded, NAME, "quantity", id, place)
    quantity = loaded.library.quantities.get(id)
    if quantity is None:
        return
    units = loaded.library.vocabulary["unit"]
    wanted, given = (units[unit].get("dimension") for unit in (character.unit, quantity.unit))
    if wanted != given:
        yield OTHER_UNIT.at(place, name=id, unit=quantity.unit, character=character.id, wanted=wanted, unit_2=character.unit)
    if quantity.low != quantity.high:
        yield A_RANGE.at(place, name=id)


def _order(loaded: Loaded, wanted: Mapping[str, str], place: Place) -> Iterator[Finding]:
    ends = [loaded.library.quantities.get(wanted.get(word, "")) for word in ("from", "below")]
    if ends[0] and ends[1] and ends[0].unit == ends[1].unit and not ends[0].low < ends[1].low:
        yield UPSIDE_DOWN.at(place, low=ends[0].id, high=ends[1].id)
