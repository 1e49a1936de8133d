"""What is seen of a character, in the words of the library."""

from __future__ import annotations

import math
from collections.abc import Mapping

from keytool.library.model import Character, Library
from keytool.library.value import Interval, Showing, States
from keytool.library.wording import number


def seen_words(library: Library, seen: Mapping[str, Showing]) -> str:
    """What is seen of several characters, such as "two holes or four holes; width from 18 mm"."""
    return "; ".join(showing_words(library, library.characters[id], showing) for id, showing in seen.items())


def showing_words(library: Library, character: Character, showing: Showing) -> str:
    """What is seen of one character: names of its states, or a stretch of numbers with its unit."""
    if isinstance(showing, States):
        return " or ".join(f"'{state.name}'" for id, state in character.states.items() if id in showing.ids)
    assert isinstance(showing, Interval)
    return f"{character.name.lower()} {_stretch(library, character.unit, showing)}"


def _stretch(library: Library, unit: str, stretch: Interval) -> str:
    factor = float(library.vocabulary["unit"][unit].get("factor"))
    low, high = (number(round(each / factor, 6)) if math.isfinite(each) else "" for each in (stretch.low, stretch.high))
    shown = "" if unit == "1" else f" {unit}"
    if not low and not high:
        return "of any size"
    if not low or not high:
        return f"from {low}{shown}" if low else f"below {high}{shown}"
    return f"{low}{shown}" if low == high else f"{low} to {high}{shown}"
